// Banks of switches: how many, in which order, and the same order wherever one is repeated.
#include "checks/comfort.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using catalogue::ModuleKind;
using plan::Severity;
using plan::Vec2;

namespace {
/// Lamps whose distances differ by less than this are as far as each other; common practice, no source.
constexpr double kAlikeMm = 300;
constexpr const char* kOrderSource =
    "near to far, or left to right, and the same at every repeat (C26); common practice, no source";

/// The middle of a leg's lamps in a room, on plan; nullopt when it has none there.
std::optional<Vec2> middleOf(const Facts& facts, const plan::SwitchLeg& leg, const std::string& room) {
    Vec2 sum;
    int count = 0;
    for (const std::string& id : leg.luminaires) {
        const plan::Luminaire* lamp = facts.lamp(id);
        if (lamp == nullptr || lamp->room != room) continue;
        const auto at = geometry::hostPoint(facts.house(), room, lamp->host);
        if (!at) continue;
        sum = sum + Vec2{at->x, at->y};
        ++count;
    }
    if (count == 0) return std::nullopt;
    return sum * (1.0 / count);
}

/// What a plate works in its own room, left to right: how far it is, and where it is along the wall.
struct Worked {
    const plan::SwitchLeg* leg = nullptr;
    double away_mm = 0;
    double along_mm = 0;
};

std::vector<Worked> workedBy(const Facts& facts, const Point& point) {
    std::vector<Worked> worked;
    const auto frame = geometry::hostFrame(facts.house(), point.plate->room, point.plate->host);
    if (!frame) return worked;
    const plan::Vec3 own = geometry::toHouse(*frame, {point.plate->host.u_mm, point.plate->host.v_mm, 0});
    for (const WorkedWay& way : facts.waysOf(point.plate->id)) {
        const auto middle = middleOf(facts, *way.leg, point.plate->room);
        if (!middle) continue;
        worked.push_back({way.leg, length(*middle - Vec2{own.x, own.y}),
                          geometry::toFrame(*frame, {middle->x, middle->y, 0}).x});
    }
    return worked;
}

/// From near to far; what is as far may be in any order.
bool nearToFar(const std::vector<Worked>& worked) {
    for (std::size_t i = 1; i < worked.size(); ++i)
        if (worked[i].away_mm < worked[i - 1].away_mm - kAlikeMm) return false;
    return true;
}

/// As the lamps hang, seen by who faces the switches.
bool leftToRight(const std::vector<Worked>& worked) {
    for (std::size_t i = 1; i < worked.size(); ++i)
        if (worked[i].along_mm <= worked[i - 1].along_mm + kAlikeMm) return false;
    return true;
}

std::string legName(const plan::SwitchLeg& leg) {
    if (!leg.name.empty()) return leg.name;
    return leg.letter.empty() ? leg.id : leg.letter;
}

void findOrder(const Facts& facts, const Point& point, Findings& findings) {
    auto worked = workedBy(facts, point);
    if (worked.size() < 2 || nearToFar(worked) || leftToRight(worked)) return;
    auto finding = about(facts, "bank-order", Severity::Hint, point);
    finding.message = fmt::format("The switches of {} run neither from near to far nor from left to right.",
                                  whoIn(facts, point));
    finding.source = kOrderSource;
    std::ranges::stable_sort(worked, {}, &Worked::away_mm);
    std::string order;
    for (const Worked& one : worked)
        order += (order.empty() ? "" : ", ") + legName(*one.leg);
    finding.remedy = fmt::format("From left to right, near to far: {}.", order);
    findings.push_back(std::move(finding));
}

/// Switches to be told apart on one plate; both ways of a motor are one.
int switchesOn(const Point& point) {
    int count = 0;
    for (const catalogue::Gang& gang : point.made.gangs) {
        if (gang.module == nullptr) continue;
        const ModuleKind kind = gang.module->kind;
        if (kind != ModuleKind::Switch && kind != ModuleKind::Dimmer && kind != ModuleKind::Control) continue;
        count += gang.module->action == catalogue::WayAction::Motor ? 1 : std::max(1, gang.module->ways);
    }
    return count;
}

void findNumber(const Facts& facts, const Point& point, Findings& findings) {
    const double most = facts.limit("bankMost");
    const int count = switchesOn(point);
    if (most <= 0 || count <= most) return;
    auto finding = about(facts, "bank-size", Severity::Hint, point);
    finding.value_mm = count;
    finding.limit_mm = most;
    finding.message = fmt::format("{} has {} switches in one bank, at most {:.0f} are told apart.",
                                  whoIn(facts, point), count, most);
    finding.source = facts.source("bankMost");
    finding.remedy = "Two plates, or fewer groups of lamps.";
    findings.push_back(std::move(finding));
}

/// The legs that two plates both work, in the order of the first.
std::vector<const plan::SwitchLeg*> sharedLegs(const std::vector<WorkedWay>& of,
                                               const std::vector<WorkedWay>& with) {
    std::vector<const plan::SwitchLeg*> shared;
    for (const WorkedWay& way : of)
        if (std::ranges::find(with, way.leg, &WorkedWay::leg) != with.end()) shared.push_back(way.leg);
    return shared;
}

/// The other plates of a plate's legs, each once.
std::vector<std::string> repeatsOf(const Facts& facts, const Point& point) {
    std::vector<std::string> others;
    for (const WorkedWay& way : facts.waysOf(point.plate->id))
        for (const plan::WayRef& control : way.leg->controls)
            if (control.plate != point.plate->id && std::ranges::find(others, control.plate) == others.end())
                others.push_back(control.plate);
    return others;
}

void findRepeats(const Facts& facts, const Point& point, const std::vector<std::string>& bedsides,
                 Findings& findings) {
    const auto& own = facts.waysOf(point.plate->id);
    for (const std::string& id : repeatsOf(facts, point)) {
        if (id > point.plate->id) continue; // said once of a pair
        const bool both_at_bed =
            std::ranges::count(bedsides, id) > 0 && std::ranges::count(bedsides, point.plate->id) > 0;
        const auto& other = facts.waysOf(id);
        const auto here = sharedLegs(own, other);
        if (both_at_bed || here.size() < 2 || here == sharedLegs(other, own)) continue;
        auto finding = about(facts, "bank-order", Severity::Hint, point);
        finding.objects.push_back(id);
        const plan::Plate* plate = plan::findPlate(facts.plan(), id);
        finding.message = fmt::format("{} works the same as {} in another order.", whoIn(facts, point),
                                      plate == nullptr || plate->tag.empty() ? id : plate->tag);
        finding.source = kOrderSource;
        finding.remedy = "Give both the same order.";
        findings.push_back(std::move(finding));
    }
}

/// What a row of modules is, left to right.
std::vector<std::string> rowOf(const plan::Plate& plate) {
    std::vector<std::string> types;
    for (const plan::Module& module : plate.modules)
        types.push_back(module.type);
    return types;
}

void findMirrored(const Facts& facts, const Point& left, const Point& right, const plan::Furniture& bed,
                  Findings& findings) {
    const auto row = rowOf(*left.plate);
    const auto other = rowOf(*right.plate);
    const bool lying = left.plate->direction == plan::Direction::Horizontal &&
                       right.plate->direction == plan::Direction::Horizontal;
    if (!lying || row.size() < 2 || !std::ranges::is_permutation(row, other)) return;
    if (std::ranges::equal(row.rbegin(), row.rend(), other.begin(), other.end())) return;
    auto finding = about(facts, "bank-order", Severity::Warn, right);
    finding.objects.push_back(left.plate->id);
    finding.objects.push_back(bed.id);
    finding.message =
        row == other
            ? fmt::format("{} is a copy of {} on the other side of {}, not its mirror image: the hand finds "
                          "another switch there.",
                          whoIn(facts, right), left.tag(), pieceName(bed))
            : fmt::format("{} is no mirror image of {} on the other side of {}.", whoIn(facts, right),
                          left.tag(), pieceName(bed));
    finding.source = kOrderSource;
    finding.remedy = fmt::format("Turn the order of {} round.", right.tag());
    findings.push_back(std::move(finding));
}

/// Plates by the side of the bed that they are meant for; the ids of all of them.
std::vector<std::string> findBedsides(const Facts& facts, const plan::Room& room, Findings& findings) {
    std::vector<std::string> ids;
    for (const plan::Furniture* bed : facts.house().furnitureIn(room.id)) {
        if (bed->kind != "bed") continue;
        const auto pillows = pillowsOf(facts, room, *bed);
        std::vector<std::vector<const Point*>> sides(pillows.size());
        for (const Point* point : facts.pointsIn(room.id)) {
            const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
            if (!at || !point->control) continue;
            if (const auto side = meantFor(facts, *bed, pillows, *point, *at)) {
                sides[*side].push_back(point);
                ids.push_back(point->plate->id);
            }
        }
        if (sides.size() != 2) continue;
        for (const Point* left : sides[0])
            for (const Point* right : sides[1])
                findMirrored(facts, *left, *right, *bed, findings);
    }
    return ids;
}
} // namespace

void findBanks(const Facts& facts, const plan::Room& room, Findings& findings) {
    const auto bedsides = findBedsides(facts, room, findings);
    for (const Point* point : facts.pointsIn(room.id)) {
        if (!point->control) continue;
        findNumber(facts, *point, findings);
        findRepeats(facts, *point, bedsides, findings);
        // At a bed the order is that of the hand, from the pillow outwards.
        if (std::ranges::count(bedsides, point->plate->id) == 0) findOrder(facts, *point, findings);
    }
}

} // namespace gangway::checks
