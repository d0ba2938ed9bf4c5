// Cases, doors, drawers, plinths, legs and taps, shared by many kinds of furniture.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

constexpr double kGapMm = 3; // between neighbouring fronts; common practice, no source

/// A bar handle in front of a door or drawer front: a bar on two posts.
void addHandle(Maker& maker, std::string name, Vec3 middle, double length_mm, bool upright) {
    const double half = length_mm / 2;
    const Vec3 reach = upright ? Vec3{0, 0, half} : Vec3{half, 0, 0};
    meshes::Mesh mesh = cylinder(middle - reach, middle + reach, 5, 10);
    for (const double end : {-0.8, 0.8}) {
        const Vec3 post = middle + reach * end;
        append(mesh, cylinder(post, post + Vec3{0, kHandleRoomMm - 6, 0}, 3.5, 8));
    }
    maker.add(std::move(name), tone::kSteel, Surface::Metal, mesh);
}

/// Which side of a door the handle is on: doors in pairs open from the middle of the pair, a single one at
/// the right.
bool handleAtRight(int door, int doors) {
    if (door == doors - 1 && doors % 2 == 1) return doors == 1;
    return door % 2 == 0;
}

} // namespace

void addCase(Maker& maker, Block block, const std::string& colour) {
    const Vec3 l = block.low;
    const Vec3 h = block.high;
    const double t = kBoardMm;
    const auto board = [&](const char* name, Vec3 low, Vec3 high) {
        maker.board(name, colour, Surface::Matt, {low, high}, 1.5);
    };
    board("side left", l, {l.x + t, h.y, h.z});
    board("side right", {h.x - t, l.y, l.z}, h);
    board("bottom", {l.x + t, l.y, l.z}, {h.x - t, h.y, l.z + t});
    board("top", {l.x + t, l.y, h.z - t}, {h.x - t, h.y, h.z});
    board("back", {l.x + t, h.y - t / 2, l.z + t}, {h.x - t, h.y, h.z - t});
}

void addDoors(Maker& maker, Block block, int doors, const std::string& colour, Handles handles) {
    const double width = (block.high.x - block.low.x) / std::max(doors, 1);
    const double face = block.low.y - kDoorMm;
    for (int i = 0; i < doors; ++i) {
        const double left = block.low.x + width * i + kGapMm / 2;
        const double right = left + width - kGapMm;
        const std::string name = doors == 1 ? "door" : fmt::format("door {}", i + 1);
        maker.board(
            name, colour, Surface::Matt,
            {{left, face, block.low.z + kGapMm / 2}, {right, block.low.y, block.high.z - kGapMm / 2}});
        if (handles == Handles::None) continue;
        const double tall = block.high.z - block.low.z;
        const double bar = std::min(tall * 0.4, tall > 1200 ? 420.0 : 160.0);
        // On tall fronts where a hand is, on low ones near the top, on wall units near the bottom.
        double z = block.high.z - 60 - bar / 2;
        if (tall > 1200)
            z = block.low.z + tall / 2;
        else if (block.low.z == 0)
            z = block.low.z + 60 + bar / 2;
        const double x = handleAtRight(i, doors) ? right - 40 : left + 40;
        addHandle(maker, name + " handle", {x, face - kHandleRoomMm + 6, z}, bar, true);
    }
}

void addDrawers(Maker& maker, Block block, int drawers, const std::string& colour, double tray_depth_mm) {
    const double tall = (block.high.z - block.low.z) / std::max(drawers, 1);
    const double face = block.low.y - kDoorMm;
    for (int i = 0; i < drawers; ++i) {
        const double bottom = block.low.z + tall * i + kGapMm / 2;
        const double top = bottom + tall - kGapMm;
        const std::string name = fmt::format("drawer {}", drawers - i);
        const double left = block.low.x + kGapMm / 2;
        const double right = block.high.x - kGapMm / 2;
        maker.board(name, colour, Surface::Matt, {{left, face, bottom}, {right, block.low.y, top}});
        const double bar = std::min(220.0, (right - left) * 0.4);
        addHandle(maker, name + " handle",
                  {(left + right) / 2, face - kHandleRoomMm + 6, top - std::min(45.0, tall / 2)}, bar, false);
        const double l = left + kBoardMm + 8, r = right - kBoardMm - 8;
        const double b = bottom + 15, t = bottom + tall * 0.7;
        const double end = block.low.y + tray_depth_mm;
        if (tray_depth_mm < 60 || t - b < 30 || r - l < 60) continue;
        meshes::Mesh tray = box({l, block.low.y, b}, {r, end, b + 10});
        append(tray, box({l, block.low.y, b + 10}, {l + 12, end, t}));
        append(tray, box({r - 12, block.low.y, b + 10}, {r, end, t}));
        append(tray, box({l + 12, end - 12, b + 10}, {r - 12, end, t}));
        maker.add(name + " tray", tone::kWhite, Surface::Matt, tray);
    }
}

void addPlinth(Maker& maker, Block block, const std::string& colour) {
    if (block.high.z - block.low.z < 1) return;
    maker.board("plinth", colour, Surface::Matt,
                {block.low, {block.high.x, block.low.y + kBoardMm, block.high.z}}, 1);
}

void addLegs(Maker& maker, Block block, double width_mm, const std::string& colour, Surface surface) {
    constexpr const char* kNames[] = {"leg front left", "leg front right", "leg back left", "leg back right"};
    for (int i = 0; i < 4; ++i) {
        const double x = i % 2 == 0 ? block.low.x : block.high.x - width_mm;
        const double y = i < 2 ? block.low.y : block.high.y - width_mm;
        maker.board(kNames[i], colour, surface,
                    {{x, y, block.low.z}, {x + width_mm, y + width_mm, block.high.z}}, 3);
    }
}

void addTap(Maker& maker, Vec3 foot, double height_mm, double reach_mm) {
    meshes::Mesh mesh = cylinder(foot, foot + Vec3{0, 0, 6}, 26, 18);
    append(mesh, cylinder(foot + Vec3{0, 0, 6}, foot + Vec3{0, 0, height_mm}, 13, 14));
    const Vec3 bend = foot + Vec3{0, 0, height_mm - 12};
    append(mesh, cylinder(bend, bend + Vec3{0, -reach_mm, 0}, 11, 14));
    const Vec3 mouth = bend + Vec3{0, -reach_mm + 11, 0};
    append(mesh, cylinder(mouth, mouth - Vec3{0, 0, 28}, 10, 14));
    append(mesh, cylinder(foot + Vec3{0, 0, height_mm}, foot + Vec3{0, 0, height_mm + 14}, 15, 14));
    append(mesh, cylinder(foot + Vec3{0, 0, height_mm + 8}, foot + Vec3{48, 0, height_mm + 22}, 5, 10));
    maker.add("tap", tone::kSteel, Surface::Metal, mesh);
}

} // namespace gangway::geometry
