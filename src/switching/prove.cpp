#include "switching/prove.hpp"

#include "switching/proof.hpp"

#include <algorithm>
#include <array>

namespace gangway::switching {

namespace {

/// By which of its objects a finding is put to a room: its first, a plate or a lamp, or its last, the room.
enum class Subject { Plate, Lamp, Room, Stairs, Circuits };

struct Row {
    Rule rule;
    void (*prove)(const Proof&, Findings&);
    Subject subject = Subject::Plate;
};

// Every rule once. Numbers that differ between countries are the pack's.
constexpr std::array kRows = {
    Row{{"way-feeds-nothing", "A way of a switch, sensor or motor control that works nothing."},
        proveWaysFeed},
    Row{{"way-missing", "A leg worked from a way that its module does not have."}, proveWaysExist},
    Row{{"way-twice", "A way that works several legs, or is listed twice on one."}, proveWaysOnce},
    Row{{"lamp-without-control", "A luminaire that no switch works."}, proveLampsControlled, Subject::Lamp},
    Row{{"group-one-member", "A two-way or intermediate switch alone on its leg."}, proveGroupNotAlone},
    Row{{"group-one-way-member", "A one-way switch or dimmer among several positions."}, proveGroupNoOneWay},
    Row{{"group-intermediate-missing", "Three or more positions without an intermediate between the ends."},
        proveGroupIntermediates},
    Row{{"group-ends-missing", "Several positions without a two-way switch at each end."}, proveGroupEnds},
    Row{{"group-mixed", "A leg worked by motor or heating controls and by others."}, proveGroupOneTrade},
    Row{{"push-without-relay", "A push-button on a leg without a relay."}, provePushHasRelay},
    Row{{"relay-without-push", "A switch that is no push-button on a leg with a relay."}, proveRelayHasPush},
    Row{{"dimmer-not-dimmable", "A luminaire on a dimmer that can't be dimmed."}, proveDimmerLamps},
    Row{{"dimmer-over-load", "A dimmer that carries more than it is made for."}, proveDimmerGreatest},
    Row{{"dimmer-under-minimum", "A dimmer that carries less than it needs."}, proveDimmerLeast},
    Row{{"switch-hinge-side", "A switch beside a door, on its hinge side."}, proveSwitchSide},
    Row{{"switch-behind-leaf", "A switch that an open door leaf stands before."}, proveSwitchUncovered},
    Row{{"dark-entrance", "An entrance with no switch in reach that lights the room."},
        proveEntrancesLit,
        Subject::Room},
    Row{{"stairs-two-way", "A stair whose light can't be worked from its foot and its head."},
        proveStairs,
        Subject::Stairs},
    Row{{"circuit-over-load", "Lighting that takes more than its circuit carries."},
        proveCircuitLoads,
        Subject::Circuits},
    Row{{"circuit-unknown", "A circuit that plates or legs name and nothing describes."},
        proveCircuitsDescribed,
        Subject::Circuits},
};

constexpr auto kRules = [] {
    std::array<Rule, kRows.size()> rules{};
    for (std::size_t i = 0; i < kRows.size(); ++i)
        rules[i] = kRows[i].rule;
    return rules;
}();

Speaks speaksOf(Subject subject) {
    if (subject == Subject::Stairs) return Speaks::OfStairs;
    return subject == Subject::Circuits ? Speaks::OfCircuits : Speaks::OfRoom;
}

std::string roomOf(const Proof& proof, Subject subject, const plan::Finding& finding) {
    if (subject == Subject::Room) return finding.objects.back();
    if (subject == Subject::Plate)
        if (const plan::Plate* plate = proof.net.plate(finding.objects.front())) return plate->room;
    if (subject == Subject::Lamp)
        if (const plan::Luminaire* lamp = proof.net.luminaire(finding.objects.front())) return lamp->room;
    return {};
}

} // namespace

std::span<const Rule> rules() {
    return kRules;
}

std::vector<plan::Finding> prove(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                 const catalogue::CountryPack& pack) {
    const Proof proof(house, catalogue, pack);
    Findings findings;
    for (const Row& row : kRows)
        row.prove(proof, findings);
    return findings;
}

Speaks speaksOf(std::size_t rule) {
    return speaksOf(kRows[rule].subject);
}

std::vector<Proven> provePart(const geometry::HouseIndex& house, const plan::Plan& part,
                              const Doorways& doorways, const catalogue::Catalogue& catalogue,
                              const catalogue::CountryPack& pack, std::initializer_list<Speaks> speaks) {
    const Proof proof(house, part, doorways, catalogue, pack);
    std::vector<Proven> proven;
    Findings findings;
    for (std::size_t row = 0; row < kRows.size(); ++row) {
        const Subject subject = kRows[row].subject;
        if (std::ranges::find(speaks, speaksOf(subject)) == speaks.end()) continue;
        kRows[row].prove(proof, findings);
        for (plan::Finding& finding : findings) {
            std::string room = roomOf(proof, subject, finding);
            proven.push_back({row, std::move(room), std::move(finding)});
        }
        findings.clear();
    }
    return proven;
}

} // namespace gangway::switching
