// Where a piece of furniture stands: its own coordinates to the house and back, and its footprint.
#include "geometry/furniture.hpp"

#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

/// Cosine and sine, exact for quarter turns so that squarely placed pieces keep round numbers.
Vec2 direction(double turn_deg) {
    const double quarter = std::fmod(std::fmod(turn_deg, 360.0) + 360.0, 360.0) / 90.0;
    if (quarter == 0) return {1, 0};
    if (quarter == 1) return {0, 1};
    if (quarter == 2) return {-1, 0};
    if (quarter == 3) return {0, -1};
    const double angle_rad = turn_deg * std::numbers::pi / 180.0;
    return {std::cos(angle_rad), std::sin(angle_rad)};
}

} // namespace

Vec3 fromLocal(const plan::Furniture& piece, Vec3 local_mm) {
    const Vec2 d = direction(piece.turn_deg);
    return {piece.at_mm.x + d.x * local_mm.x - d.y * local_mm.y,
            piece.at_mm.y + d.y * local_mm.x + d.x * local_mm.y, piece.bottom_mm + local_mm.z};
}

Vec3 toLocal(const plan::Furniture& piece, Vec3 house_mm) {
    const Vec2 d = direction(piece.turn_deg);
    const Vec2 offset = Vec2{house_mm.x, house_mm.y} - piece.at_mm;
    return {dot(d, offset), cross(d, offset), house_mm.z - piece.bottom_mm};
}

std::vector<Vec2> footprint(const plan::Furniture& piece) {
    const double x = piece.size.width_mm / 2;
    const double y = piece.size.depth_mm / 2;
    std::vector<Vec2> corners;
    for (const Vec2 p : {Vec2{-x, -y}, Vec2{-x, y}, Vec2{x, y}, Vec2{x, -y}}) {
        const Vec3 house = fromLocal(piece, {p.x, p.y, 0});
        corners.push_back({house.x, house.y});
    }
    return corners;
}

} // namespace gangway::geometry
