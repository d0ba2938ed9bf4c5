// Wet zones as outlines: on plan and on the faces of walls.
#include "checks/wet_zones.hpp"

#include "geometry/house_index.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace gangway::checks {

using plan::Vec2;
using Outline = std::vector<Vec2>;

namespace {
constexpr double kStepRad = 5 * std::numbers::pi / 180;
constexpr double kCellMm = 20;  ///< of the grid that bent zones are traced on
constexpr double kAlongMm = 10; ///< steps along a wall
constexpr int kHalvings = 16;

/// What lies at the left of the line from `a` to `b` (Sutherland and Hodgman, 1974).
Outline leftOf(const Outline& outline, Vec2 a, Vec2 b) {
    Outline kept;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 p = outline[i];
        const Vec2 q = outline[(i + 1) % outline.size()];
        const double p_side = cross(b - a, p - a);
        const double q_side = cross(b - a, q - a);
        if (p_side >= 0) kept.push_back(p);
        if ((p_side > 0 && q_side < 0) || (p_side < 0 && q_side > 0))
            kept.push_back(p + (q - p) * (p_side / (p_side - q_side)));
    }
    return kept;
}

/// The part of an outline within a convex one, counter-clockwise.
Outline within(Outline outline, const Outline& convex) {
    const double turn = geometry::signedArea(convex) < 0 ? -1 : 1;
    for (std::size_t i = 0; i < convex.size() && !outline.empty(); ++i) {
        const Vec2 a = convex[i];
        const Vec2 b = convex[(i + 1) % convex.size()];
        outline = turn > 0 ? leftOf(outline, a, b) : leftOf(outline, b, a);
    }
    return outline;
}

void addArc(Outline& outline, Vec2 middle, double radius, double from_rad, double to_rad) {
    const int steps = std::max(1, static_cast<int>(std::ceil((to_rad - from_rad) / kStepRad - 1e-9)));
    for (int i = 0; i <= steps; ++i) {
        const double angle_rad = from_rad + (to_rad - from_rad) * i / steps;
        outline.push_back(middle + Vec2{std::cos(angle_rad), std::sin(angle_rad)} * radius);
    }
}

/// A clockwise convex outline, or one point, with what is nearer than `by` to it; counter-clockwise.
Outline grown(Outline outline, double by) {
    std::ranges::reverse(outline);
    if (by <= 0 && outline.size() > 2) return outline;
    Outline round;
    const std::size_t count = outline.size();
    if (count == 1) {
        addArc(round, outline.front(), by, 0, 2 * std::numbers::pi);
        round.pop_back();
        return round;
    }
    for (std::size_t i = 0; i < count; ++i) {
        const Vec2 before = outline[i] - outline[(i + count - 1) % count];
        const Vec2 after = outline[(i + 1) % count] - outline[i];
        const double from_rad = std::atan2(-before.x, before.y);
        double to_rad = std::atan2(-after.x, after.y);
        if (to_rad < from_rad) to_rad += 2 * std::numbers::pi;
        addArc(round, outline[i], by, from_rad, to_rad);
    }
    return round;
}

/// A clockwise convex outline moved inwards by `by`; counter-clockwise.
Outline shrunk(const Outline& outline, double by) {
    Outline inner(outline.rbegin(), outline.rend());
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i];
        const Vec2 along = outline[(i + 1) % outline.size()] - a;
        if (length(along) == 0) continue;
        const Vec2 in = Vec2{along.y, -along.x} * (by / length(along));
        inner = leftOf(inner, a + along + in, a + in);
    }
    return inner;
}

/// Where the inside of something ends between a point inside and one outside.
template <class Inside>
Vec2 edgeBetween(Vec2 in, Vec2 out, const Inside& inside) {
    for (int i = 0; i < kHalvings; ++i) {
        const Vec2 middle = (in + out) * 0.5;
        (inside(middle) ? in : out) = middle;
    }
    return in;
}

/// Without corners on a straight line.
Outline simplified(const Outline& outline) {
    Outline kept;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 before = kept.empty() ? outline.back() : kept.back();
        const Vec2 after = outline[(i + 1) % outline.size()];
        const double off = std::abs(cross(after - before, outline[i] - before));
        if (off > 0.05 * std::max(length(after - before), 1.0)) kept.push_back(outline[i]);
    }
    return kept;
}

/// Outer outlines of what is inside, by marching squares over a grid.
template <class Inside>
class Tracer {
public:
    Tracer(Vec2 low, Vec2 high, const Inside& inside) : low_(low), inside_(inside) {
        columns_ = static_cast<int>(std::ceil((high.x - low.x) / kCellMm)) + 1;
        rows_ = static_cast<int>(std::ceil((high.y - low.y) / kCellMm)) + 1;
        for (int row = 0; row < rows_; ++row)
            for (int column = 0; column < columns_; ++column)
                in_.push_back(inside(at(column, row)));
    }

    std::vector<Outline> outlines() {
        for (int row = 0; row + 1 < rows_; ++row)
            for (int column = 0; column + 1 < columns_; ++column)
                addCell(column, row);
        std::vector<Outline> found;
        while (!next_.empty()) {
            Outline loop;
            auto step = next_.begin();
            while (step != next_.end()) {
                const Edge to = step->second;
                loop.push_back(point(step->first));
                next_.erase(step);
                step = next_.find(to);
            }
            loop = simplified(loop);
            if (geometry::signedArea(loop) > 0) found.push_back(std::move(loop));
        }
        return found;
    }

private:
    /// An edge of the grid: its lower left end, and whether it goes up.
    struct Edge {
        int column, row;
        bool up;
        auto operator<=>(const Edge&) const = default;
    };
    Vec2 at(int column, int row) const { return low_ + Vec2{column * kCellMm, row * kCellMm}; }
    bool in(int column, int row) const {
        return in_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                   static_cast<std::size_t>(column)];
    }
    Vec2 point(const Edge& edge) const {
        const Vec2 a = at(edge.column, edge.row);
        const Vec2 b = at(edge.column + (edge.up ? 0 : 1), edge.row + (edge.up ? 1 : 0));
        return in(edge.column, edge.row) ? edgeBetween(a, b, inside_) : edgeBetween(b, a, inside_);
    }
    /// With the inside at the left: from where the cell's rim, gone round counter-clockwise, leaves it to
    /// where it comes back.
    void addCell(int c, int r) {
        const bool corner[] = {in(c, r), in(c + 1, r), in(c + 1, r + 1), in(c, r + 1)};
        const Edge side[] = {{c, r, false}, {c + 1, r, true}, {c, r + 1, false}, {c, r, true}};
        for (int i = 0; i < 4; ++i) {
            if (!corner[i] || corner[(i + 1) % 4]) continue;
            int back = (i + 1) % 4;
            while (!corner[(back + 1) % 4])
                back = (back + 1) % 4;
            next_.emplace(side[i], side[back]);
        }
    }

    Vec2 low_;
    const Inside& inside_;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<bool> in_;
    std::map<Edge, Edge> next_;
};

std::vector<Outline> traced(const plan::Room& room, const WetZone& zone, double reach) {
    Vec2 low = zone.outline_mm.front();
    Vec2 high = low;
    for (const Vec2 corner : zone.outline_mm) {
        low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
        high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
    }
    const double beyond = reach + zone.radius_mm + 2 * kCellMm;
    const auto inside = [&](Vec2 at) {
        return geometry::insideRoom(room, at) && fromZone1(zone, at) <= reach;
    };
    return Tracer(low - Vec2{beyond, beyond}, high + Vec2{beyond, beyond}, inside).outlines();
}

std::vector<Outline> outlinesOf(const plan::Room& room, const WetZone& zone, const WetShell& shell) {
    if (shell.reach_mm < 0) return {shrunk(zone.outline_mm, -shell.reach_mm)};
    if (!zone.string.alwaysStraight()) {
        if (shell.reach_mm > 0 || zone.radius_mm > 0) return traced(room, zone, shell.reach_mm);
        return {grown(zone.outline_mm, 0)};
    }
    return {within(grown(zone.outline_mm, shell.reach_mm + zone.radius_mm), room.outline)};
}

/// Places along a wall, from its left end, where a zone begins or ends, with both ends of the wall.
std::vector<double> breaksAlong(const WetZone& zone, const geometry::Frame& frame) {
    std::vector<double> breaks{0, frame.length_mm};
    const auto steps = std::max(1, static_cast<int>(std::ceil(frame.length_mm / kAlongMm)));
    const auto onPlan = [&](double u) {
        const plan::Vec3 at = geometry::toHouse(frame, {u, 0, 0});
        return Vec2{at.x, at.y};
    };
    for (const WetShell& shell : zone.shells) {
        const auto inside = [&](Vec2 at) {
            return shell.reach_mm >= 0 && fromZone1(zone, at) <= shell.reach_mm + 1e-6;
        };
        bool was = inside(onPlan(0));
        for (int i = 1; i <= steps; ++i) {
            const double u = frame.length_mm * i / steps;
            const bool is = inside(onPlan(u));
            if (is != was) {
                const Vec2 left = onPlan(frame.length_mm * (i - 1) / steps);
                const Vec2 at =
                    is ? edgeBetween(onPlan(u), left, inside) : edgeBetween(left, onPlan(u), inside);
                breaks.push_back(geometry::toFrame(frame, {at.x, at.y, 0}).x);
            }
            was = is;
        }
    }
    std::ranges::sort(breaks);
    return breaks;
}

struct Strip {
    int number;
    double left, right, bottom, top;
};

/// What each zone takes between two breaks, from the floor up: what is not an inner zone's.
void addStrips(const WetZone& zone, const geometry::Frame& frame, double left, double right,
               std::vector<Strip>& strips) {
    const plan::Vec3 middle = geometry::toHouse(frame, {(left + right) / 2, 0, 0});
    const double away = fromZone1(zone, {middle.x, middle.y});
    double free_from = 0;
    for (const WetShell& shell : zone.shells) {
        if (shell.reach_mm < 0 || away > shell.reach_mm + 1e-6 || shell.top_mm <= free_from) continue;
        const double bottom = std::max(free_from, shell.bottom_mm);
        free_from = shell.top_mm;
        const auto before = std::ranges::find_if(strips, [&](const Strip& strip) {
            return strip.number == shell.number && strip.right == left && strip.bottom == bottom &&
                   strip.top == shell.top_mm;
        });
        if (before != strips.end())
            before->right = right;
        else
            strips.push_back({shell.number, left, right, bottom, shell.top_mm});
    }
}
} // namespace

std::vector<WetVolume> wetVolumes(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                  const std::string& room_id) {
    std::vector<WetVolume> volumes;
    const plan::Room* room = house.room(room_id);
    for (const WetZone& zone : wetZones(house, pack, room_id))
        for (const WetShell& shell : zone.shells)
            for (Outline& outline : outlinesOf(*room, zone, shell))
                if (outline.size() > 2)
                    volumes.push_back(
                        {zone.piece, shell.number, std::move(outline), shell.bottom_mm, shell.top_mm});
    return volumes;
}

std::vector<WetWallArea> wallZoneAreas(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                       const plan::Room& room, std::size_t wall) {
    std::vector<WetWallArea> areas;
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    const Outline face = geometry::wallOutline(room, wall);
    for (const WetZone& zone : wetZones(house, pack, room.id)) {
        std::vector<Strip> strips;
        const auto breaks = breaksAlong(zone, frame);
        for (std::size_t i = 1; i < breaks.size(); ++i)
            if (breaks[i] - breaks[i - 1] > 0.01) addStrips(zone, frame, breaks[i - 1], breaks[i], strips);
        for (const Strip& strip : strips) {
            Outline area = within(face, {{strip.left, strip.bottom},
                                         {strip.right, strip.bottom},
                                         {strip.right, strip.top},
                                         {strip.left, strip.top}});
            if (area.size() > 2) areas.push_back({zone.piece, strip.number, std::move(area)});
        }
    }
    return areas;
}

} // namespace gangway::checks
