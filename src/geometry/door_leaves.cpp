// Where door leaves stand on plan.
#include "geometry/wall_build.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

using Kind = plan::Opening::Kind;

/// Air between a barn door and the wall it hangs before; common practice, no source.
constexpr double kBarnAirMm = 20;
/// Above this part of the opening's width a sliding leaf needs the wall beside it to park.
constexpr double kPaneParts = 0.6;

/// The wall an opening is in, and the opening's place on it.
struct Site {
    const plan::Room* room = nullptr;
    EdgeAxes axes;
    double through_mm = 0;
    std::string beyond; ///< room on the other side, as drawn or as stated
};

std::optional<Site> siteOf(const HouseIndex& house, const plan::Opening& opening) {
    const plan::Room* room = house.room(opening.room);
    const auto index = room == nullptr ? std::nullopt : plan::wallIndex(*room, opening.wall);
    if (!index) return std::nullopt;
    Site site{room, edgeAxes(*room, *index), fullThickness(*room, *index), opening.joins};
    // A leaf that swings in hangs on this face: what lies beyond need not be looked for.
    if (opening.kind == Kind::HingedDoor && opening.swing == plan::Swing::In) return site;
    for (const PairedFace& pair : pairedFaces(house, {room->id, *index})) {
        const double shared = std::min(opening.left_mm + opening.width_mm, pair.to_mm) -
                              std::max(opening.left_mm, pair.from_mm);
        if (shared < opening.width_mm / 2) continue;
        site.through_mm = pair.thickness_mm;
        if (site.beyond.empty()) site.beyond = pair.other.room;
        break;
    }
    return site;
}

double leafWidth(const plan::Opening& opening) {
    if (opening.leaf_mm) return *opening.leaf_mm;
    return (opening.width_mm - 2 * opening.frame_mm) / std::max(opening.leaves, 1);
}

Leaf blankLeaf(const plan::Opening& opening) {
    Leaf leaf;
    leaf.opening = &opening;
    leaf.width_mm = leafWidth(opening);
    leaf.bottom_mm = opening.sill_mm;
    leaf.top_mm = opening.sill_mm + opening.height_mm - opening.frame_mm;
    return leaf;
}

/// Clockwise outline of a bar from a to b, reaching `left` to the left of that direction and `right` to the
/// right.
std::vector<Vec2> bar(Vec2 a, Vec2 b, double left, double right) {
    const Vec2 along = b - a;
    const double size = length(along);
    if (size == 0) return {};
    const Vec2 to_left = Vec2{-along.y, along.x} * (1 / size);
    return {a + to_left * left, b + to_left * left, b - to_left * right, a - to_left * right};
}

/// One leaf hung at one side of the opening.
Leaf hingedLeaf(const plan::Opening& opening, const Site& site, plan::Side side) {
    Leaf leaf = blankLeaf(opening);
    const bool left = side == plan::Side::Left;
    const bool in = opening.swing == plan::Swing::In;
    const double jamb =
        left ? opening.left_mm + opening.frame_mm : opening.left_mm + opening.width_mm - opening.frame_mm;
    const double out = in ? 0 : -site.through_mm; // flush with the face it opens towards
    leaf.hinge_mm = site.axes.at(jamb, out);
    const Vec2 shut = left ? site.axes.u : site.axes.u * -1;
    const Vec2 open = in ? site.axes.w : site.axes.w * -1;
    const double stop_rad = opening.stop_deg * std::numbers::pi / 180;
    const Vec2 stands = shut * (opening.stop_deg == 90 ? 0 : std::cos(stop_rad)) + open * std::sin(stop_rad);
    leaf.closed_mm = leaf.hinge_mm + shut * leaf.width_mm;
    leaf.open_mm = leaf.hinge_mm + stands * leaf.width_mm;
    leaf.swings_into = in ? opening.room : site.beyond;
    const bool jamb_on_left = cross(stands, shut) < 0; // the side turned away from the opening
    leaf.standing_mm = bar(leaf.hinge_mm, leaf.open_mm, jamb_on_left ? leaf.thickness_mm : 0,
                           jamb_on_left ? 0 : leaf.thickness_mm);
    return leaf;
}

/// How far from the host face the middle of a leaf runs that slides.
double trackOut(const plan::Opening& opening, const Leaf& leaf, const Site& site, bool beside) {
    if (opening.kind == Kind::BarnDoor || (opening.kind == Kind::SlidingDoor && beside))
        return kBarnAirMm + leaf.thickness_mm / 2;
    return -site.through_mm / 2;
}

Leaf slidingLeaf(const plan::Opening& opening, const Site& site, plan::Side side) {
    Leaf leaf = blankLeaf(opening);
    const double right_mm = opening.left_mm + opening.width_mm;
    const bool glides_inside = opening.kind == Kind::SlidingDoor &&
                               (!opening.leaf_mm || *opening.leaf_mm <= opening.width_mm * kPaneParts);
    if (glides_inside && !opening.leaf_mm) leaf.width_mm = opening.width_mm / 2;
    const double out = trackOut(opening, leaf, site, !glides_inside);
    const bool left = side == plan::Side::Left;
    const double edge = left ? opening.left_mm : right_mm;
    const double away = left ? -1 : 1;
    // Near end: the end next to the opening, or within it for panes that glide before each other.
    const double near_u = glides_inside ? edge - away * leaf.width_mm : edge;
    const double shut_u = glides_inside ? (left ? right_mm : opening.left_mm) : edge - away * leaf.width_mm;
    leaf.hinge_mm = site.axes.at(near_u, out);
    leaf.open_mm = site.axes.at(near_u + away * leaf.width_mm, out);
    leaf.closed_mm = site.axes.at(shut_u, out);
    leaf.swings_into = out > 0 ? opening.room : std::string();
    leaf.standing_mm = bar(leaf.hinge_mm, leaf.open_mm, leaf.thickness_mm / 2, leaf.thickness_mm / 2);
    return leaf;
}

} // namespace

std::vector<Leaf> doorLeaves(const plan::Plan& plan, const plan::Opening& opening) {
    return doorLeaves(HouseIndex(plan, opening.room), opening);
}

std::vector<Leaf> doorLeaves(const HouseIndex& house, const plan::Opening& opening) {
    if (opening.kind == Kind::Window || opening.kind == Kind::Plain || opening.kind == Kind::Hatch) return {};
    const auto site = siteOf(house, opening);
    if (!site) return {};
    const bool hinged = opening.kind == Kind::HingedDoor;
    const auto make = [&](plan::Side side) {
        return hinged ? hingedLeaf(opening, *site, side) : slidingLeaf(opening, *site, side);
    };
    const bool both_sides = opening.leaves > 1 && opening.kind != Kind::SlidingDoor;
    if (both_sides) return {make(plan::Side::Left), make(plan::Side::Right)};
    return {make(hinged ? opening.hinge : opening.parks)};
}

} // namespace gangway::geometry
