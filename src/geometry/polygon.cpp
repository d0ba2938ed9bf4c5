// Polygons on plan: area, inside or not, and which room a point is in.
#include "geometry/house_index.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::geometry {
namespace {

/// Points nearer to an edge than this count as on it.
constexpr double kOnEdgeMm = 1e-6;

double distanceToSegment(Vec2 at, Vec2 from, Vec2 to) {
    const Vec2 along = to - from;
    const double squared = dot(along, along);
    if (squared == 0) return length(at - from);
    const double part = std::clamp(dot(at - from, along) / squared, 0.0, 1.0);
    return length(at - (from + along * part));
}

} // namespace

double signedArea(const std::vector<Vec2>& polygon) {
    if (polygon.size() < 3) return 0;
    // Taken about the first corner, so that a house far from the origin loses no digits.
    double twice = 0;
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
        twice += cross(polygon[i] - polygon[0], polygon[i + 1] - polygon[0]);
    return twice / 2;
}

bool insidePolygon(const std::vector<Vec2>& polygon, Vec2 at_mm) {
    bool inside = false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2 a = polygon[i];
        const Vec2 b = polygon[(i + 1) % polygon.size()];
        if (distanceToSegment(at_mm, a, b) <= kOnEdgeMm) return true;
        if ((a.y > at_mm.y) == (b.y > at_mm.y)) continue;
        if (at_mm.x < a.x + (at_mm.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    }
    return inside;
}

bool insideRoom(const plan::Room& room, Vec2 at_mm) {
    if (!insidePolygon(room.outline, at_mm)) return false;
    return std::ranges::none_of(room.columns,
                                [&](const auto& column) { return insidePolygon(column, at_mm); });
}

const plan::Room* roomAt(const plan::Plan& plan, const std::string& storey, Vec2 at_mm) {
    const auto found = std::ranges::find_if(
        plan.rooms, [&](const plan::Room& room) { return room.storey == storey && insideRoom(room, at_mm); });
    return found == plan.rooms.end() ? nullptr : &*found;
}

const plan::Room* roomAt(const HouseIndex& house, const std::string& storey, Vec2 at_mm) {
    for (const plan::Room* room : house.roomsNear(storey, at_mm, at_mm))
        if (insideRoom(*room, at_mm)) return room;
    return nullptr;
}

} // namespace gangway::geometry
