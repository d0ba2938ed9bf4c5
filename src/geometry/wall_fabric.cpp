// One wall of a room: its face with the holes cut, and the half of the wall behind it, so that a house
// seen from above with the lid off shows walls of their real thickness.
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

/// A mitre longer than this many depths is cut square.
constexpr double kMitreLimit = 4;

/// Top and back of one stretch.
void addStretch(const Face& face, const Stretch& stretch, meshes::Mesh& mesh) {
    if (stretch.depth_mm <= 0) return;
    const FaceRect area{stretch.from_mm, stretch.to_mm, 0, face.frame.height_mm};
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

/// An upright face from a to b on plan that is seen from the left of that direction.
void addUpright(meshes::Mesh& mesh, Vec2 a, Vec2 b, double height) {
    addQuad(mesh, raised(b, 0), raised(a, 0), raised(a, height), raised(b, height));
}

/// The piece of wall outside a corner that points outwards, between the ends of its two walls.
void addCorner(const Face& face, const Face& next, meshes::Mesh& mesh) {
    const double depth = face.stretches.empty() ? 0 : face.stretches.back().depth_mm;
    const double next_depth = next.stretches.empty() ? 0 : next.stretches.front().depth_mm;
    const Vec2 u{face.frame.u.x, face.frame.u.y};
    const Vec2 next_u{next.frame.u.x, next.frame.u.y};
    const double turn = cross(u, next_u);
    if (turn > -1e-6 || depth + next_depth <= 0)
        return; // inner corners and straight joints are closed already
    const Vec2 corner{next.frame.origin_mm.x, next.frame.origin_mm.y};
    const Vec2 w{face.frame.w.x, face.frame.w.y};
    const Vec2 next_w{next.frame.w.x, next.frame.w.y};
    const Vec2 end = corner - w * depth;
    const Vec2 start = corner - next_w * next_depth;
    const double reach = cross(start - end, next_u) / turn;
    const Vec2 mitre =
        reach > kMitreLimit * std::max(depth, next_depth) ? (end + start) * 0.5 : end + u * reach;
    const double height = topAt(face.outline, face.frame.length_mm);
    addQuad(mesh, raised(corner, height), raised(start, height), raised(mitre, height), raised(end, height));
    addUpright(mesh, end, mitre, height);
    addUpright(mesh, mitre, start, height);
}

} // namespace

void addWall(const Face& face, const Face* next, std::vector<FabricPart>& parts) {
    FabricPart front = fabricPart(FabricPart::Role::Wall, face);
    front.colour = face.wall->colour.empty() ? face.room->wall_colour : face.wall->colour;
    const FaceRect whole{0, face.frame.length_mm, 0, face.frame.height_mm};
    for (const auto& polygon : cutFace(face.outline, whole, face.holes))
        addPolygon(front.mesh, face.frame, polygon, 0, Seen::FromRoom);
    if (!front.mesh.empty()) parts.push_back(std::move(front));

    FabricPart cut = fabricPart(FabricPart::Role::WallCut, face);
    for (const Stretch& stretch : face.stretches)
        addStretch(face, stretch, cut.mesh);
    if (next != nullptr) addCorner(face, *next, cut.mesh);
    if (!cut.mesh.empty()) parts.push_back(std::move(cut));
}

} // namespace gangway::geometry
