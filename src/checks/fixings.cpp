#include "checks/fixings.hpp"

#include "geometry/furniture.hpp"
#include "geometry/host_at.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace gangway::checks {

using plan::Vec2;
using plan::Vec3;

namespace {
constexpr double kParallel = 0.02; // sine of the angle up to which a back lies against a wall

/// Screws are level with each other in one or two rows, each row in a pair or, with one screw, in the middle.
struct Fixing {
    std::string_view kind;
    double in_mm = 0;    ///< from the piece's sides; 0 with a pair: half of `apart_mm` from the middle
    double apart_mm = 0; ///< 0 with no `in_mm`: one screw in the middle
    double down_mm = 0;  ///< upper row below the piece's top
    double up_mm = -1;   ///< lower row above its underside; -1: none
};

/// Usual places, to be held against the maker's sheet: common practice, no source.
constexpr auto kFixings = std::to_array<Fixing>({
    {"wall-unit", 40, 0, 40},
    {"mirror", 100, 0, 100},
    {"mirror-cabinet", 60, 0, 60},
    {"picture", 0, 0, 60},
    {"shelf", 100, 0, 30},
    {"tv-wall", 0, 400, 200, 200},
    {"radiator", 150, 0, 80, 80},
    {"hood", 120, 0, 100},
    {"boiler", 100, 0, 80},
    {"basin", 0, 280, 100},
    {"vanity", 60, 0, 80},
    {"bookcase", 60, 0, 30},
    {"shoe-cabinet", 60, 0, 60},
});

/// Offsets along the piece from its middle.
std::vector<double> across(const Fixing& fixing, double width_mm) {
    const double half = fixing.in_mm > 0 ? width_mm / 2 - fixing.in_mm : fixing.apart_mm / 2;
    return half > 0 ? std::vector<double>{-half, half} : std::vector<double>{0};
}
} // namespace

std::vector<Vec2> fixingPoints(const plan::Furniture& piece, const geometry::Frame& wall) {
    const auto found = std::ranges::find(kFixings, std::string_view(piece.kind), &Fixing::kind);
    if (found == kFixings.end()) return {};
    const double back = piece.size.depth_mm / 2;
    const double half = piece.size.width_mm / 2;
    const Vec3 left = geometry::toFrame(wall, geometry::fromLocal(piece, {-half, back, 0}));
    const Vec3 right = geometry::toFrame(wall, geometry::fromLocal(piece, {half, back, 0}));
    // Seen from the room its left is the wall's left, or the wall lies before it.
    if (right.x <= left.x || std::abs(right.z - left.z) > kParallel * piece.size.width_mm ||
        std::abs(left.z) > geometry::kOnHostMm)
        return {};
    std::vector<Vec2> points;
    for (const double off : across(*found, piece.size.width_mm)) {
        const double u = (left.x + right.x) / 2 + off;
        if (u < 0 || u > wall.length_mm) continue;
        points.push_back({u, piece.bottom_mm + piece.size.height_mm - found->down_mm});
        if (found->up_mm >= 0) points.push_back({u, piece.bottom_mm + found->up_mm});
    }
    return points;
}

} // namespace gangway::checks
