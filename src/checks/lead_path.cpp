#include "checks/lead_path.hpp"

#include "checks/rules.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <utility>

namespace gangway::checks {

namespace {
/// What stands this near to a wall is at that wall: a worktop's depth; common practice, no source.
constexpr double kAtWallMm = 650;
/// Nobody reaches over a hob or sink higher than this; common practice, no source.
constexpr double kOverMm = 2500;
/// What hangs this much higher than a hob or sink hangs over it.
constexpr double kHangsMm = 300;
constexpr double kTouchMm = 1e-6;

/// Underside of the lowest piece over a place of a wall, above `from_mm`.
double undersideOver(const Facts& facts, const plan::Room& room, const geometry::Frame& frame, Interval u,
                     double from_mm) {
    double lowest = kOverMm;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (piece->bottom_mm < from_mm + kHangsMm || piece->bottom_mm > lowest) continue;
        double left = 1e300;
        double right = -1e300;
        double near = 1e300;
        for (const plan::Vec2 corner : geometry::footprint(*piece)) {
            const plan::Vec3 at = geometry::toFrame(frame, {corner.x, corner.y, 0});
            left = std::min(left, at.x);
            right = std::max(right, at.x);
            near = std::min(near, std::abs(at.z));
        }
        if (near < kAtWallMm && left < u.to_mm && right > u.from_mm) lowest = piece->bottom_mm;
    }
    return lowest;
}

double sinceStart(double from_mm, double to_mm, double loop_mm) {
    const double way = std::fmod(to_mm - from_mm, loop_mm);
    return way < -kTouchMm ? way + loop_mm : std::max(way, 0.0);
}

plan::Vec2 onPlan(plan::Vec3 at) {
    return {at.x, at.y};
}
} // namespace

LeadRoom::LeadRoom(const Facts& facts, const plan::Room& room)
    : facts_(facts), room_(room), floor_(facts, room) {
    std::size_t loop_left = room.outline.size();
    std::size_t loop = 0;
    double start = 0;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        if (loop_left == 0) {
            loop_mm_.push_back(start);
            start = 0;
            loop_left = loop < room.columns.size() ? room.columns[loop].size() : 0;
            ++loop;
        }
        WallPart part{geometry::wallFrame(room, wall), loop, start, {}};
        part.spans = spansOf(wall, part.frame);
        start += part.frame.length_mm;
        walls_.push_back(std::move(part));
        --loop_left;
    }
    loop_mm_.push_back(start);
}

std::vector<LeadRoom::Span> LeadRoom::spansOf(std::size_t wall, const geometry::Frame& frame) const {
    std::vector<Span> spans;
    for (const geometry::FaceHole& hole : geometry::faceHoles(facts_.house(), {room_.id, wall})) {
        Span span{hole.left_mm, hole.right_mm, hole.bottom_mm, hole.top_mm, {}, isToFloor(hole)};
        if (span.to_floor)
            span.crossing = Crossing{Crossing::What::Door, hole.opening->id, openingName(*hole.opening)};
        spans.push_back(std::move(span));
    }
    for (const plan::Furniture* piece : facts_.house().furnitureIn(room_.id)) {
        const bool sink = piece->kind == "sink";
        if (!sink && piece->kind != "hob") continue;
        const double half = (sink ? plan::furnitureValue(*piece, "bowlWidth") : piece->size.width_mm) / 2;
        const double offset = sink ? plan::furnitureValue(*piece, "bowlOffset") : 0;
        Span span{1e300, -1e300, piece->bottom_mm + (sink ? piece->size.height_mm : 0), 0, {}, false};
        double near = 1e300;
        for (const double x : {offset - half, offset + half})
            for (const double y : {-piece->size.depth_mm / 2, piece->size.depth_mm / 2}) {
                const plan::Vec3 at =
                    geometry::toFrame(frame, geometry::fromLocal(*piece, plan::Vec3{x, y, 0}));
                span.from_mm = std::min(span.from_mm, at.x);
                span.to_mm = std::max(span.to_mm, at.x);
                near = std::min(near, at.z);
            }
        if (near < -1 || near > kAtWallMm || span.to_mm < 0 || span.from_mm > frame.length_mm) continue;
        span.high_mm = undersideOver(facts_, room_, frame, {span.from_mm, span.to_mm}, span.low_mm);
        span.crossing = Crossing{sink ? Crossing::What::Sink : Crossing::What::Hob, piece->id,
                                 sink ? "the bowl of " + pieceName(*piece) : pieceName(*piece)};
        spans.push_back(std::move(span));
    }
    return spans;
}

/// Where a lead reaches the walls at the height it comes out.
std::vector<LeadRoom::Foot> LeadRoom::feetOf(plan::Vec3 at_mm) const {
    std::vector<Foot> feet;
    for (std::size_t wall = 0; wall < walls_.size(); ++wall) {
        const geometry::Frame& frame = walls_[wall].frame;
        const plan::Vec3 at = geometry::toFrame(frame, at_mm);
        if (at.x < -kTouchMm || at.x > frame.length_mm + kTouchMm || at.z < -1 || at.z > kAtWallMm) continue;
        const plan::Vec3 half_way = geometry::toHouse(frame, {at.x, at.y, at.z / 2});
        if (at.z > 1 && !geometry::insideRoom(room_, onPlan(half_way))) continue;
        feet.push_back({wall, at.x, at.y, std::abs(at.z)});
    }
    return feet;
}

/// What lies along the walls of a loop from a place on for a length.
LeadRoom::Band LeadRoom::bandFrom(std::size_t loop, double begin_mm, double way_mm) const {
    Band band{way_mm, {}, {}};
    for (const WallPart& wall : walls_) {
        if (wall.loop != loop) continue;
        const double corner = sinceStart(begin_mm, wall.start_mm, loop_mm_[loop]);
        if (corner > kTouchMm && corner < way_mm - kTouchMm)
            band.corners.emplace_back(corner, geometry::toHouse(wall.frame, {0, 0, 0}));
        // The way may come by this wall at its end or, having gone round, at its beginning.
        for (const double at : {corner, corner - loop_mm_[loop]})
            for (const Span& span : wall.spans)
                if (at + span.from_mm < way_mm - kTouchMm && at + span.to_mm > kTouchMm)
                    band.spans.push_back(&span);
    }
    std::ranges::sort(band.corners, {}, [](const auto& corner) { return corner.first; });
    return band;
}

/// The height at which a lead goes along a band: the one that makes it shortest, and of those the one at
/// which it crosses least. nullopt when windows leave none.
std::optional<LeadRoom::Level> LeadRoom::levelOf(const Band& band, double from_v_mm, double to_v_mm) {
    std::vector<double> heights = {from_v_mm, to_v_mm};
    for (const Span* span : band.spans)
        heights.insert(heights.end(), {span->low_mm, span->high_mm});
    if (std::ranges::any_of(band.spans, &Span::to_floor)) heights = {0};
    std::optional<Level> best;
    for (const double h : heights) {
        Level level{h, std::abs(from_v_mm - h) + std::abs(to_v_mm - h), {}};
        bool open = false;
        for (const Span* span : band.spans) {
            const bool within = h > span->low_mm - (span->to_floor ? 1 : 0) && h < span->high_mm;
            open = open || (within && !span->crossing);
            if (within && span->crossing) addOnce(level.crossings, *span->crossing);
        }
        if (open) continue;
        const double less = best ? best->upright_mm - level.upright_mm : 1;
        if (less > kTouchMm || (less > -kTouchMm && level.crossings.size() < best->crossings.size()))
            best = std::move(level);
    }
    return best;
}

std::optional<LeadWay> LeadRoom::along(plan::Vec3 exit_mm, const Foot& from, const Foot& to,
                                       bool forward) const {
    const std::size_t loop = walls_[to.wall].loop;
    const Foot& first = forward ? from : to;
    const Foot& last = forward ? to : from;
    const double begin = walls_[first.wall].start_mm + first.u_mm;
    Band band =
        bandFrom(loop, begin, sinceStart(begin, walls_[last.wall].start_mm + last.u_mm, loop_mm_[loop]));
    auto level = levelOf(band, from.v_mm, to.v_mm);
    if (!level) return std::nullopt;
    const auto onWall = [&](const Foot& foot, double v_mm) {
        return geometry::toHouse(walls_[foot.wall].frame, {foot.u_mm, v_mm, 0});
    };
    if (!forward) std::ranges::reverse(band.corners);
    LeadWay way{from.out_mm + band.way_mm + level->upright_mm, {}, std::move(level->crossings)};
    way.points_mm = {exit_mm, onWall(from, from.v_mm), onWall(from, level->v_mm)};
    for (const auto& corner : band.corners)
        way.points_mm.push_back({corner.second.x, corner.second.y, level->v_mm});
    way.points_mm.push_back(onWall(to, level->v_mm));
    way.points_mm.push_back(onWall(to, to.v_mm));
    const auto repeated = std::ranges::unique(way.points_mm);
    way.points_mm.erase(repeated.begin(), repeated.end());
    return way;
}

void LeadRoom::addWallWays(plan::Vec3 exit_mm, const plan::Plate& plate, std::vector<LeadWay>& ways) const {
    const auto wall = plan::wallIndex(room_, plate.host.wall);
    if (!wall) return;
    const Foot to{*wall, plate.host.u_mm, plate.host.v_mm, 0};
    for (const Foot& from : feetOf(exit_mm)) {
        if (walls_[from.wall].loop != walls_[to.wall].loop) continue;
        for (const bool forward : {true, false})
            if (auto way = along(exit_mm, from, to, forward)) ways.push_back(std::move(*way));
    }
}

/// To the wall, up it and square over the ceiling.
void LeadRoom::addCeilingWays(plan::Vec3 exit_mm, plan::Vec3 to_mm, std::vector<LeadWay>& ways) const {
    for (const Foot& foot : feetOf(exit_mm)) {
        const plan::Vec3 at = geometry::toHouse(walls_[foot.wall].frame, {foot.u_mm, foot.v_mm, 0});
        const plan::Vec3 up{at.x, at.y, to_mm.z};
        ways.push_back({foot.out_mm + std::abs(to_mm.z - at.z) + floor_.atLeast(onPlan(at), onPlan(to_mm)),
                        {exit_mm, at, up, to_mm},
                        {}});
    }
}

void LeadRoom::addFloorWays(const plan::Device& device, plan::Vec3 to_mm, const plan::Plate& plate,
                            std::vector<LeadWay>& ways) const {
    const plan::Vec3 exit = device.lead_exit_mm;
    if (!geometry::insideRoom(room_, onPlan(exit)) && feetOf(exit).empty()) return;
    const double upright = std::abs(exit.z) + std::abs(to_mm.z);
    const double least = upright + floor_.atLeast(onPlan(exit), onPlan(to_mm));
    for (const bool clean : {true, false}) {
        const bool beaten = std::ranges::any_of(ways, [&](const LeadWay& way) {
            return way.length_mm <= least + kTouchMm && (!clean || way.crossings.empty());
        });
        // A clean way that the lead can't reach is of no use: what is said then is the shortest of all.
        const bool far = clean && device.lead_mm > 0 && least > device.lead_mm;
        if (beaten || far) continue;
        auto way = floor_.way(onPlan(exit), onPlan(to_mm), clean);
        if (!way) continue;
        way->length_mm += upright;
        way->points_mm.insert(way->points_mm.begin(), exit);
        if (plate.host.kind != plan::Host::Kind::Floor) way->points_mm.push_back(to_mm);
        ways.push_back(std::move(*way));
    }
}

LeadWay LeadRoom::way(const plan::Device& device, const plan::Plate& plate) const {
    using Kind = plan::Host::Kind;
    const plan::Vec3 exit = device.lead_exit_mm;
    const auto frame = geometry::hostFrame(facts_.house(), plate.room, plate.host);
    if (!frame) return {};
    const plan::Vec3 to = geometry::toHouse(*frame, {plate.host.u_mm, plate.host.v_mm, 0});
    const plan::Vec3 at = geometry::toFrame(*frame, exit);
    const LeadWay straight{std::abs(at.x - plate.host.u_mm) + std::abs(at.y - plate.host.v_mm) +
                               std::abs(at.z),
                           {exit, geometry::toHouse(*frame, {at.x, at.y, 0}),
                            geometry::toHouse(*frame, {at.x, plate.host.v_mm, 0}), to},
                           {}};
    std::vector<LeadWay> ways;
    if (plate.host.kind == Kind::Wall) addWallWays(exit, plate, ways);
    if (plate.host.kind == Kind::Furniture && std::abs(at.z) <= kAtWallMm) ways.push_back(straight);
    if (plate.host.kind == Kind::Ceiling)
        addCeilingWays(exit, to, ways);
    else
        addFloorWays(device, to, plate, ways);
    if (ways.empty()) return straight;
    std::ranges::stable_sort(ways, {}, &LeadWay::length_mm);
    const double reach = device.lead_mm > 0 ? device.lead_mm - facts_.limit("leadSlack")
                                            : std::numeric_limits<double>::infinity();
    for (const LeadWay& way : ways)
        if (way.crossings.empty() && way.length_mm <= reach + kTouchMm) return way;
    return ways.front();
}

std::string crossingWords(const LeadWay& way) {
    std::string words;
    bool lane = false; // one walking way is enough to say
    for (const Crossing& crossing : way.crossings) {
        if (crossing.what == Crossing::What::Lane && std::exchange(lane, true)) continue;
        if (!words.empty()) words += " and ";
        switch (crossing.what) {
        case Crossing::What::Door:
            words += fmt::format("across the doorway of {}", crossing.name);
            break;
        case Crossing::What::Lane:
            words += fmt::format("over the walking way between {}", crossing.name);
            break;
        case Crossing::What::Hob:
            words += fmt::format("behind {}", crossing.name);
            break;
        case Crossing::What::Sink:
            words += fmt::format("over {}", crossing.name);
            break;
        }
    }
    return words;
}

} // namespace gangway::checks
