// How what opens moves: leaves turn about an upright edge, flaps about their lower one, drawers slide.
#include "checks/sweeps.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <numbers>

namespace gangway::checks {

using geometry::Solid;
using plan::Vec2;
using plan::Vec3;

namespace {
constexpr double kRadPerDeg = std::numbers::pi / 180;
/// Where a handle is on a door's leaf: the last part of it, at the height of a hand; common practice, no
/// source.
constexpr double kHandlePart = 0.8;
constexpr double kHandleLowMm = 900;
constexpr double kHandleHighMm = 1200;
/// A drawer without a body drawn comes out by this part of its piece's depth; common practice, no source.
constexpr double kPullPart = 0.8;

Vec2 unit(Vec2 v) {
    const double size = length(v);
    return size > 0 ? v * (1 / size) : Vec2{1, 0};
}
} // namespace

double intoTurning(const Turning& leaf, Vec3 at_mm) {
    if (at_mm.z <= leaf.low_mm || at_mm.z >= leaf.high_mm) return 0;
    const Vec2 r = Vec2{at_mm.x, at_mm.y} - leaf.hinge_mm;
    const double along = dot(r, leaf.open);
    // Positive on the side that the leaf turns towards, beyond where it stands open.
    const double turn = cross(leaf.shut, leaf.open) >= 0 ? 1 : -1;
    const double beyond = turn * cross(leaf.open, r);
    if (beyond >= 0) {
        if (along <= 0 || along >= leaf.width_mm) return 0;
        const bool at_handle = along >= leaf.handle_from_mm && along <= leaf.handle_to_mm &&
                               at_mm.z >= leaf.handle_low_mm && at_mm.z <= leaf.handle_high_mm;
        return std::min(leaf.width_mm - along, leaf.thick_mm + (at_handle ? leaf.handle_mm : 0) - beyond);
    }
    const double away = length(r);
    const double angle = std::atan2(turn * cross(leaf.shut, r), dot(leaf.shut, r));
    if (away >= leaf.width_mm || angle < 0 || angle > leaf.angle_rad) return 0;
    return std::min(leaf.width_mm - away, -beyond + leaf.thick_mm);
}

std::vector<Sweep> doorSweeps(const Facts& facts, const plan::Room& room) {
    std::vector<Sweep> sweeps;
    for (const plan::Opening* door : facts.house().doorsInto(room.id)) {
        if (door->kind != plan::Opening::Kind::HingedDoor) continue;
        for (const geometry::Leaf& leaf : geometry::doorLeaves(facts.house(), *door)) {
            if (leaf.swings_into != room.id) continue;
            const Turning turning{leaf.hinge_mm,
                                  unit(leaf.closed_mm - leaf.hinge_mm),
                                  unit(leaf.open_mm - leaf.hinge_mm),
                                  door->stop_deg * kRadPerDeg,
                                  leaf.width_mm,
                                  leaf.bottom_mm,
                                  leaf.top_mm,
                                  leaf.thickness_mm,
                                  facts.limit("leafHandle"),
                                  leaf.width_mm * kHandlePart,
                                  leaf.width_mm,
                                  kHandleLowMm,
                                  kHandleHighMm};
            sweeps.push_back({door->id,
                              openingName(*door),
                              [turning](Vec3 at) { return intoTurning(turning, at); },
                              false,
                              {},
                              {},
                              0,
                              0});
        }
    }
    return sweeps;
}

namespace {
/// A solid's bounds in its piece's own coordinates, z above FFL.
struct Box {
    Vec3 low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
             std::numeric_limits<double>::infinity()};
    Vec3 high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
              -std::numeric_limits<double>::infinity()};
    Vec3 middle() const { return (low + high) * 0.5; }
};

Box boxOf(const plan::Furniture& piece, const Solid& solid) {
    Box box;
    for (const Vec3 p : solid.mesh.positions_mm) {
        const Vec3 at = geometry::toLocal(piece, p);
        box.low = {std::min(box.low.x, at.x), std::min(box.low.y, at.y), std::min(box.low.z, p.z)};
        box.high = {std::max(box.high.x, at.x), std::max(box.high.y, at.y), std::max(box.high.z, p.z)};
    }
    return box;
}

enum class Moves { No, Door, Flap, Drawer };

Moves movesOf(const plan::Furniture& piece, const std::string& solid) {
    for (const char* part : {"handle", "edge", "glass", "tray", "post"})
        if (solid.find(part) != std::string::npos) return Moves::No;
    if (solid == "oven door") return Moves::Flap;
    if (solid.starts_with("drawer")) {
        if (piece.kind == "shoe-cabinet") return Moves::No; // a tilting front stays near its cabinet
        return piece.kind == "dishwasher" ? Moves::Flap : Moves::Drawer;
    }
    const bool door =
        solid.starts_with("door") || solid.ends_with(" door") || solid.starts_with("mirror door");
    const bool slides = piece.kind == "wardrobe" && plan::furnitureValue(piece, "sliding") >= 0.5;
    return door && !slides ? Moves::Door : Moves::No;
}

/// The handle on a front, when one is drawn.
std::optional<Box> handleOn(const std::vector<std::pair<std::string, Box>>& parts, const Box& front) {
    for (const auto& [name, box] : parts) {
        const Vec3 at = box.middle();
        if (name.find("handle") != std::string::npos && at.x >= front.low.x && at.x <= front.high.x &&
            at.z >= front.low.z && at.z <= front.high.z)
            return box;
    }
    return std::nullopt;
}

/// A hinged front turns about the edge away from its handle; without one about its outer edge.
Sweep turned(const plan::Furniture& piece, const Box& front, const std::optional<Box>& handle) {
    const double middle = front.middle().x;
    const bool hinged_left = handle ? handle->middle().x > middle : middle <= 0;
    const double hinge = hinged_left ? front.low.x : front.high.x;
    const double other = hinged_left ? front.high.x : front.low.x;
    const auto house = [&](double x, double y) {
        const Vec3 at = geometry::fromLocal(piece, Vec3{x, y, 0});
        return Vec2{at.x, at.y};
    };
    Turning turning;
    turning.hinge_mm = house(hinge, front.low.y);
    turning.shut = unit(house(other, front.low.y) - turning.hinge_mm);
    const Vec2 free = house(hinge, front.low.y - std::abs(other - hinge));
    turning.open = unit(free - turning.hinge_mm);
    turning.angle_rad = std::numbers::pi / 2;
    turning.width_mm = std::abs(other - hinge);
    turning.low_mm = front.low.z;
    turning.high_mm = front.high.z;
    if (handle) {
        turning.handle_mm = std::max(0.0, front.low.y - handle->low.y);
        const double at = std::abs(handle->middle().x - hinge);
        const double half = (handle->high.x - handle->low.x) / 2;
        turning.handle_from_mm = at - half;
        turning.handle_to_mm = at + half;
        turning.handle_low_mm = handle->low.z;
        turning.handle_high_mm = handle->high.z;
    }
    Sweep sweep;
    sweep.into = [turning](Vec3 at) { return intoTurning(turning, at); };
    sweep.stands = true;
    sweep.hinge_mm = turning.hinge_mm;
    sweep.free_mm = free;
    sweep.low_mm = front.low.z;
    sweep.high_mm = front.high.z;
    return sweep;
}

/// A flap turns down about its lower edge: a quarter of a cylinder before the piece.
Sweep flapped(const plan::Furniture& piece, const Box& front) {
    Sweep sweep;
    sweep.into = [&piece, front](Vec3 at) {
        const Vec3 p = geometry::toLocal(piece, at);
        const double out = front.low.y - p.y;
        const double up = at.z - front.low.z;
        if (out <= 0 || up <= 0) return 0.0;
        return std::min(
            {p.x - front.low.x, front.high.x - p.x, front.high.z - front.low.z - std::hypot(out, up)});
    };
    return sweep;
}

Sweep drawn(const plan::Furniture& piece, const Box& front, double pull_mm) {
    Sweep sweep;
    sweep.into = [&piece, front, pull_mm](Vec3 at) {
        const Vec3 p = geometry::toLocal(piece, at);
        const double out = front.low.y - p.y;
        if (out <= 0) return 0.0;
        return std::min(
            {p.x - front.low.x, front.high.x - p.x, at.z - front.low.z, front.high.z - at.z, pull_mm - out});
    };
    return sweep;
}

double pullOf(const plan::Furniture& piece, const std::vector<std::pair<std::string, Box>>& parts,
              const std::string& drawer) {
    for (const auto& [name, box] : parts)
        if (name == drawer + " tray") return box.high.y - box.low.y;
    return piece.size.depth_mm * kPullPart;
}
} // namespace

std::vector<Sweep> frontSweeps(const Facts& facts, const plan::Furniture& piece) {
    std::vector<Sweep> sweeps;
    if (piece.kind == "gltf") return sweeps;
    std::vector<std::pair<std::string, Box>> parts;
    for (const Solid& solid : geometry::furnitureSolids(piece, facts.base()).solids)
        parts.emplace_back(solid.name, boxOf(piece, solid));
    for (const auto& [name, box] : parts) {
        const Moves moves = movesOf(piece, name);
        if (moves == Moves::No) continue;
        Sweep sweep = moves == Moves::Door   ? turned(piece, box, handleOn(parts, box))
                      : moves == Moves::Flap ? flapped(piece, box)
                                             : drawn(piece, box, pullOf(piece, parts, name));
        sweep.object = piece.id;
        sweep.name = fmt::format("{} of {}", name, pieceName(piece));
        sweeps.push_back(std::move(sweep));
    }
    return sweeps;
}

} // namespace gangway::checks
