#include "checks/spacing.hpp"

#include "checks/standing.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

namespace {
/// Feet and inches are not exact in binary.
constexpr double kExactMm = 1e-6;
/// Tops laid side by side are one.
constexpr double kJointMm = 20;
/// What stands this near to a wall stands at it; skirtings and pipes push furniture off.
constexpr double kAtWallMm = 100;
/// A hob or sink this near to a wall is in the worktop of that wall; common practice, no source.
constexpr double kInTopMm = 650;
constexpr double kOnFloorMm = 20;

bool isOnWall(const Along& along, double length_mm, double within_mm) {
    return along.near_mm > -kAtWallMm && along.near_mm <= within_mm && along.far_mm > 0 &&
           along.u.to_mm > kExactMm && along.u.from_mm < length_mm - kExactMm;
}

Interval within(Interval part, double length_mm) {
    return {std::max(0.0, part.from_mm), std::min(length_mm, part.to_mm)};
}

std::vector<Interval> joined(std::vector<Interval> parts) {
    std::ranges::sort(parts, {}, &Interval::from_mm);
    std::vector<Interval> whole;
    for (const Interval& part : parts) {
        if (!whole.empty() && part.from_mm <= whole.back().to_mm + kJointMm)
            whole.back().to_mm = std::max(whole.back().to_mm, part.to_mm);
        else
            whole.push_back(part);
    }
    return whole;
}

/// Breaks as they are: a pier between two doors is a wall however narrow it is.
std::vector<Interval> without(const std::vector<Interval>& covered, std::vector<Interval> broken) {
    std::ranges::sort(broken, {}, &Interval::from_mm);
    std::vector<Interval> left;
    for (const Interval& part : covered) {
        double from = part.from_mm;
        for (const Interval& hole : broken) {
            if (hole.to_mm <= from || hole.from_mm >= part.to_mm) continue;
            if (hole.from_mm > from + kExactMm) left.push_back({from, hole.from_mm});
            from = std::max(from, hole.to_mm);
        }
        if (part.to_mm > from + kExactMm) left.push_back({from, part.to_mm});
    }
    return left;
}

bool breaksWall(const plan::Opening& opening, double bottom_mm) {
    using Kind = plan::Opening::Kind;
    if (opening.kind == Kind::Window) return false;
    return bottom_mm <= kOnFloorMm || (opening.kind != Kind::Plain && opening.kind != Kind::Hatch);
}

bool isFixedOnFloor(const plan::Furniture& piece) {
    const Standing standing = standingOf(piece);
    return piece.bottom_mm <= kOnFloorMm &&
           (standing == Standing::Fixed || standing == Standing::Cupboard || standing == Standing::Appliance);
}

std::vector<Interval> wallBreaks(const Facts& facts, const plan::Room& room, const Perimeter& perimeter) {
    std::vector<Interval> broken;
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        const auto take = [&](Interval part) {
            const Interval cut = within(part, frame.length_mm);
            broken.push_back({perimeter.along(wall, cut.from_mm), perimeter.along(wall, cut.to_mm)});
        };
        for (const geometry::FaceHole& hole : geometry::faceHoles(facts.house(), {room.id, wall}))
            if (breaksWall(*hole.opening, hole.bottom_mm)) take({hole.left_mm, hole.right_mm});
        for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
            if (!isFixedOnFloor(*piece)) continue;
            const Along along = alongWall(frame, *piece, piece->size.width_mm, 0);
            if (isOnWall(along, frame.length_mm, kAtWallMm)) take(along.u);
        }
    }
    return broken;
}

/// Worked by a switch, so that it may be dead when it is wanted.
bool isSwitched(const Facts& facts, const plan::Plate& plate) {
    return std::ranges::any_of(facts.plan().legs, [&](const plan::SwitchLeg& leg) {
        return std::ranges::find(leg.plates, plate.id) != leg.plates.end();
    });
}

void put(const Point& point, double along_mm, double whole_mm, std::vector<PlacedRun>& runs) {
    for (PlacedRun& run : runs) {
        const auto offset = run.offsetOf(along_mm, whole_mm);
        if (!offset) continue;
        const auto at = std::ranges::upper_bound(run.run.sockets_mm, *offset);
        run.points.insert(run.points.begin() + (at - run.run.sockets_mm.begin()), &point);
        run.run.sockets_mm.insert(at, *offset);
        return;
    }
}

/// The place on the wall line nearest to a floor box, when it is near enough to serve it.
std::optional<double> servedFromFloor(const Facts& facts, const plan::Room& room, const Perimeter& perimeter,
                                      const Point& point) {
    const auto at = geometry::hostPoint(facts.house(), room.id, point.plate->host);
    if (!at) return std::nullopt;
    double nearest = facts.limit("spacingFloor") + kExactMm;
    std::optional<double> along;
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        const plan::Vec3 seen = geometry::toFrame(frame, *at);
        if (seen.x < 0 || seen.x > frame.length_mm || seen.z < 0 || seen.z > nearest) continue;
        nearest = seen.z;
        along = perimeter.along(wall, seen.x);
    }
    return along;
}

/// Of a piece whose back is to the wall.
bool facesAway(const geometry::Frame& frame, const plan::Furniture& piece) {
    const plan::Vec3 back =
        geometry::fromLocal(piece, plan::Vec3{0, 1, 0}) - geometry::fromLocal(piece, plan::Vec3{0, 0, 0});
    return dot(back, frame.w) < -0.7;
}

std::vector<Interval> counterBreaks(const Facts& facts, const plan::Room& room, const Perimeter& perimeter) {
    std::vector<Interval> broken;
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
            const bool sink = piece->kind == "sink";
            if ((!sink && piece->kind != "hob") || !facesAway(frame, *piece)) continue;
            const Along along = alongWall(
                frame, *piece, sink ? plan::furnitureValue(*piece, "bowlWidth") : piece->size.width_mm,
                sink ? plan::furnitureValue(*piece, "bowlOffset") : 0);
            if (!isOnWall(along, frame.length_mm, kInTopMm)) continue;
            const Interval cut = within(along.u, frame.length_mm);
            broken.push_back({perimeter.along(wall, cut.from_mm), perimeter.along(wall, cut.to_mm)});
        }
    }
    return broken;
}

/// Height of the top that one works at; nullopt for a piece without one.
std::optional<double> topOf(const plan::Furniture& piece) {
    const double top = piece.bottom_mm + piece.size.height_mm;
    if (piece.kind == "worktop") return top - plan::furnitureValue(piece, "upstand");
    if (piece.kind == "base-unit" || piece.kind == "drawer-unit" || piece.kind == "dishwasher")
        return plan::furnitureValue(piece, "worktopThickness") > 0 ? std::optional(top) : std::nullopt;
    const bool whole_sink = piece.kind == "sink" && plan::furnitureValue(piece, "unit") > 0;
    return whole_sink || piece.kind == "vanity" ? std::optional(top) : std::nullopt;
}
} // namespace

int socketsNeeded(double length_mm, double least_mm, double reach_mm) {
    if (length_mm < least_mm - kExactMm || reach_mm <= 0) return 0;
    return static_cast<int>(std::ceil((length_mm - kExactMm) / (2 * reach_mm)));
}

int islandSocketsNeeded(double area_m2, double first_m2, double next_m2) {
    constexpr double kExactM2 = 1e-9;
    if (first_m2 <= 0) return 0;
    if (area_m2 <= first_m2 + kExactM2 || next_m2 <= 0) return 1;
    return 1 + static_cast<int>(std::ceil((area_m2 - first_m2 - kExactM2) / next_m2));
}

Farthest farthestPoint(const Run& run) {
    const std::vector<double>& at = run.sockets_mm;
    if (at.empty()) return {run.length_mm, run.length_mm / 2};
    Farthest farthest;
    const auto take = [&](double distance_mm, double at_mm) {
        if (distance_mm > farthest.distance_mm) farthest = {distance_mm, at_mm};
    };
    if (run.closed) {
        const double gap = at.front() + run.length_mm - at.back();
        take(gap / 2, std::fmod(at.back() + gap / 2, run.length_mm));
    } else {
        take(at.front(), 0);
        take(run.length_mm - at.back(), run.length_mm);
    }
    for (std::size_t i = 1; i < at.size(); ++i)
        take((at[i] - at[i - 1]) / 2, (at[i] + at[i - 1]) / 2);
    return farthest;
}

Perimeter::Perimeter(const plan::Room& room) : starts_{0} {
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall)
        starts_.push_back(starts_.back() + geometry::wallFrame(room, wall).length_mm);
}

Perimeter::Place Perimeter::placeAt(double along_mm) const {
    const double on = std::fmod(along_mm, length_mm());
    const auto next = std::upper_bound(starts_.begin(), starts_.end() - 1, on);
    const auto wall = static_cast<std::size_t>(next - starts_.begin()) - 1;
    return {wall, on - starts_[wall]};
}

std::optional<double> PlacedRun::offsetOf(double along_mm, double whole_mm) const {
    const double offset =
        along_mm < start_mm - kExactMm ? along_mm + whole_mm - start_mm : std::max(0.0, along_mm - start_mm);
    return offset <= run.length_mm + kExactMm ? std::optional(offset) : std::nullopt;
}

std::vector<PlacedRun> runsOf(std::vector<Interval> covered, const std::vector<Interval>& broken,
                              double whole_mm) {
    std::vector<Interval> parts = without(joined(std::move(covered)), broken);
    std::vector<PlacedRun> runs;
    for (const Interval& part : parts)
        runs.push_back({{part.to_mm - part.from_mm, false, {}}, part.from_mm, {}});
    if (runs.empty()) return runs;
    const bool from_start = parts.front().from_mm <= kExactMm;
    const bool to_end = parts.back().to_mm >= whole_mm - kExactMm;
    if (!from_start || !to_end) return runs;
    if (runs.size() == 1) {
        runs.front().run.closed = true;
    } else {
        runs.back().run.length_mm += runs.front().run.length_mm;
        runs.erase(runs.begin());
    }
    return runs;
}

Along alongWall(const geometry::Frame& wall, const plan::Furniture& piece, double width_mm,
                double offset_mm) {
    Along along{{1e300, -1e300}, 1e300, -1e300};
    for (const double x : {offset_mm - width_mm / 2, offset_mm + width_mm / 2})
        for (const double y : {-piece.size.depth_mm / 2, piece.size.depth_mm / 2}) {
            const plan::Vec3 at = geometry::toFrame(wall, geometry::fromLocal(piece, plan::Vec3{x, y, 0}));
            along.u = {std::min(along.u.from_mm, at.x), std::max(along.u.to_mm, at.x)};
            along.near_mm = std::min(along.near_mm, at.z);
            along.far_mm = std::max(along.far_mm, at.z);
        }
    return along;
}

std::vector<Top> topsAlong(const Facts& facts, const plan::Room& room) {
    std::vector<Top> tops;
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
            const auto top = topOf(*piece);
            if (!top) continue;
            const Along along = alongWall(frame, *piece, piece->size.width_mm, 0);
            if (isOnWall(along, frame.length_mm, kAtWallMm))
                tops.push_back({wall, within(along.u, frame.length_mm), *top, along.far_mm});
        }
    }
    return tops;
}

const Top* topUnder(const std::vector<Top>& tops, const plan::Room& room, const Point& point,
                    double high_mm) {
    if (point.plate->host.kind != plan::Host::Kind::Wall) return nullptr;
    const auto wall = plan::wallIndex(room, point.plate->host.wall);
    const plan::Vec2 at = point.centre_mm();
    const Top* under = nullptr;
    for (const Top& top : tops) {
        const double above = at.y - top.top_mm;
        if (!wall || top.wall != *wall || at.x < top.u.from_mm - kExactMm || at.x > top.u.to_mm + kExactMm ||
            above <= 0 || above > high_mm + kExactMm)
            continue;
        if (under == nullptr || top.top_mm > under->top_mm) under = &top;
    }
    return under;
}

std::vector<PlacedRun> wallRuns(const Facts& facts, const plan::Room& room) {
    const Perimeter perimeter(room);
    const double whole = perimeter.length_mm();
    auto runs = runsOf({{0, whole}}, wallBreaks(facts, room, perimeter), whole);
    const double highest = facts.limit("spacingHighest");
    for (const Point* point : facts.pointsIn(room.id)) {
        if (!point->socket || isSwitched(facts, *point->plate)) continue;
        const plan::Host& host = point->plate->host;
        if (host.kind == plan::Host::Kind::Floor) {
            if (const auto along = servedFromFloor(facts, room, perimeter, *point))
                put(*point, *along, whole, runs);
        } else if (host.kind == plan::Host::Kind::Wall && (highest <= 0 || host.v_mm <= highest + kExactMm)) {
            const auto wall = plan::wallIndex(room, host.wall);
            if (wall && *wall < room.outline.size())
                put(*point, perimeter.along(*wall, host.u_mm), whole, runs);
        }
    }
    return runs;
}

std::vector<PlacedRun> counterRuns(const Facts& facts, const plan::Room& room, bool split, double high_mm) {
    const Perimeter perimeter(room);
    const double whole = perimeter.length_mm();
    const std::vector<Top> tops = topsAlong(facts, room);
    std::vector<Interval> covered;
    for (const Top& top : tops)
        covered.push_back({perimeter.along(top.wall, top.u.from_mm), perimeter.along(top.wall, top.u.to_mm)});
    auto runs = runsOf(std::move(covered),
                       split ? counterBreaks(facts, room, perimeter) : std::vector<Interval>{}, whole);
    for (const Point* point : facts.pointsIn(room.id)) {
        if (!point->socket || topUnder(tops, room, *point, high_mm) == nullptr) continue;
        const auto wall = plan::wallIndex(room, point->plate->host.wall);
        put(*point, perimeter.along(*wall, point->plate->host.u_mm), whole, runs);
    }
    return runs;
}

} // namespace gangway::checks
