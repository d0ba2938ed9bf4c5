// One wall of a room: its face with the holes cut, and the half of the wall behind it, so that a house
// seen from above with the lid off shows walls of their real thickness.
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

/// Top of one stretch, and its back where that is the middle of a wall between rooms.
void addStretch(const Face& face, const Stretch& stretch, meshes::Mesh& mesh) {
    if (stretch.depth_mm <= 0) return;
    const FaceRect area{stretch.from_mm, stretch.to_mm, 0, face.frame.height_mm};
    if (!stretch.outer)
        for (const auto& polygon : cutFace(face.outline, area, face.holes))
            addPolygon(mesh, face.frame, polygon, -stretch.depth_mm, Seen::FromBehind);
    std::vector<double> us = {stretch.from_mm, stretch.to_mm};
    for (std::size_t i = 2; i < face.outline.size(); ++i)
        if (face.outline[i].x > stretch.from_mm && face.outline[i].x < stretch.to_mm)
            us.push_back(face.outline[i].x);
    std::ranges::sort(us);
    for (std::size_t i = 0; i + 1 < us.size(); ++i) {
        const double left = topAt(face.outline, us[i]);
        const double right = topAt(face.outline, us[i + 1]);
        addQuad(mesh, toHouse(face.frame, {us[i], left, 0}), toHouse(face.frame, {us[i + 1], right, 0}),
                toHouse(face.frame, {us[i + 1], right, -stretch.depth_mm}),
                toHouse(face.frame, {us[i], left, -stretch.depth_mm}));
    }
}

Vec3 raised(Vec2 p, double z) {
    return {p.x, p.y, z};
}

/// A level triangle that is seen from above, corners counter-clockwise.
void addLevel(meshes::Mesh& mesh, Vec2 a, Vec2 b, Vec2 c, double height) {
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    mesh.positions_mm.insert(mesh.positions_mm.end(),
                             {raised(a, height), raised(b, height), raised(c, height)});
    mesh.normals.insert(mesh.normals.end(), 3, {0, 0, 1});
    mesh.triangles.push_back({first, first + 1, first + 2});
}

Vec2 leftCorner(const Face& face) {
    return {face.frame.origin_mm.x, face.frame.origin_mm.y};
}

/// This wall's part of the corner to the next: the top as far as the mitre, and the mitred end, which shows
/// when the next wall is cut away.
void addEnd(const Face& face, const Face& next, meshes::Mesh& mesh) {
    if (face.stretches.empty() || face.stretches.back().depth_mm <= 0) return;
    const BackCorner back = backCorner(face, next);
    const Vec2 corner = leftCorner(next);
    const double height = topAt(face.outline, face.frame.length_mm);
    addUpright(mesh, back.mitre, corner, height);
    if (!back.turns_out) return; // at an inner corner the walls run into each other
    addLevel(mesh, corner, back.mitre, back.end, height);
    if (!face.stretches.back().outer) addUpright(mesh, back.end, back.mitre, height);
}

/// The same at the wall's left end.
void addStart(const Face& before, const Face& face, meshes::Mesh& mesh) {
    if (face.stretches.empty() || face.stretches.front().depth_mm <= 0) return;
    const BackCorner back = backCorner(before, face);
    const Vec2 corner = leftCorner(face);
    const double height = topAt(face.outline, 0);
    addUpright(mesh, corner, back.mitre, height);
    if (!back.turns_out) return;
    addLevel(mesh, corner, back.start, back.mitre, height);
    if (!face.stretches.front().outer) addUpright(mesh, back.mitre, back.start, height);
}

} // namespace

void addWall(const Face& face, const Face* before, const Face* next, std::vector<FabricPart>& parts) {
    FabricPart front = fabricPart(FabricPart::Role::Wall, face);
    front.colour = face.wall->colour.empty() ? face.room->wall_colour : face.wall->colour;
    const FaceRect whole{0, face.frame.length_mm, 0, face.frame.height_mm};
    for (const auto& polygon : cutFace(face.outline, whole, face.holes))
        addPolygon(front.mesh, face.frame, polygon, 0, Seen::FromRoom);
    if (!front.mesh.empty()) parts.push_back(std::move(front));

    FabricPart cut = fabricPart(FabricPart::Role::WallCut, face);
    for (const Stretch& stretch : face.stretches)
        addStretch(face, stretch, cut.mesh);
    if (before != nullptr) addStart(*before, face, cut.mesh);
    if (next != nullptr) addEnd(face, *next, cut.mesh);
    if (!cut.mesh.empty()) parts.push_back(std::move(cut));
}

} // namespace gangway::geometry
