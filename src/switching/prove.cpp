#include "switching/prove.hpp"

#include "switching/proof.hpp"

#include <array>

namespace gangway::switching {

namespace {

struct Row {
    Rule rule;
    void (*prove)(const Proof&, Findings&);
};

// Every rule once. Numbers that differ between countries are the pack's.
constexpr std::array kRows = {
    Row{{"way-feeds-nothing", "A way of a switch, sensor or motor control that works nothing."},
        proveWaysFeed},
    Row{{"way-missing", "A leg worked from a way that its module does not have."}, proveWaysExist},
    Row{{"way-twice", "A way that works several legs, or is listed twice on one."}, proveWaysOnce},
    Row{{"lamp-without-control", "A luminaire that no switch works."}, proveLampsControlled},
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
    Row{{"dark-entrance", "An entrance with no switch in reach that lights the room."}, proveEntrancesLit},
    Row{{"stairs-two-way", "A stair whose light can't be worked from its foot and its head."}, proveStairs},
    Row{{"circuit-over-load", "Lighting that takes more than its circuit carries."}, proveCircuitLoads},
    Row{{"circuit-unknown", "A circuit that plates or legs name and nothing describes."},
        proveCircuitsDescribed},
};

constexpr auto kRules = [] {
    std::array<Rule, kRows.size()> rules{};
    for (std::size_t i = 0; i < kRows.size(); ++i)
        rules[i] = kRows[i].rule;
    return rules;
}();

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

} // namespace gangway::switching
