// The outside of walls: what is seen of a house from without.
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

/// A mitre longer than this many depths is cut square.
constexpr double kMitreLimit = 4;
/// Walls that turn by less than this (sine of the angle) run straight on.
constexpr double kStraight = 1e-6;

Vec2 onPlan(Vec3 p) {
    return {p.x, p.y};
}

bool outerAtStart(const Face& face) {
    return !face.stretches.empty() && face.stretches.front().outer;
}

bool outerAtEnd(const Face& face) {
    return !face.stretches.empty() && face.stretches.back().outer;
}

/// The step between two stretches of which one goes deeper.
void addStep(const Face& face, const Stretch& left, const Stretch& right, meshes::Mesh& mesh) {
    if (left.depth_mm == right.depth_mm) return;
    const auto back = [&](const Stretch& stretch) {
        return onPlan(toHouse(face.frame, {right.from_mm, 0, -stretch.depth_mm}));
    };
    addUpright(mesh, back(left), back(right), topAt(face.outline, right.from_mm));
}

} // namespace

void addUpright(meshes::Mesh& mesh, Vec2 a, Vec2 b, double height_mm) {
    addQuad(mesh, {b.x, b.y, 0}, {a.x, a.y, 0}, {a.x, a.y, height_mm}, {b.x, b.y, height_mm});
}

BackCorner backCorner(const Face& face, const Face& next) {
    const double depth = face.stretches.empty() ? 0 : face.stretches.back().depth_mm;
    const double next_depth = next.stretches.empty() ? 0 : next.stretches.front().depth_mm;
    const Vec2 u = onPlan(face.frame.u);
    const Vec2 next_u = onPlan(next.frame.u);
    const Vec2 corner = onPlan(next.frame.origin_mm);
    BackCorner back;
    back.end = corner - onPlan(face.frame.w) * depth;
    back.start = corner - onPlan(next.frame.w) * next_depth;
    const double turn = cross(u, next_u);
    back.turns_out = turn < -kStraight;
    const double limit = kMitreLimit * std::max(depth, next_depth);
    const double reach = std::abs(turn) > kStraight ? cross(back.start - back.end, next_u) / turn : 2 * limit;
    const double from_start = dot(back.end + u * reach - back.start, next_u);
    back.cut_square = std::abs(reach) > limit || std::abs(from_start) > limit;
    back.reach_mm = back.cut_square ? 0 : reach;
    back.mitre = back.cut_square ? (back.end + back.start) * 0.5 : back.end + u * reach;
    return back;
}

void addOuterWall(const Face& face, const Face* before, const Face* next, std::vector<FabricPart>& parts) {
    if (face.stretches.empty()) return;
    FabricPart skin = fabricPart(FabricPart::Role::OuterWall, face);
    double left = 0;
    double right = face.frame.length_mm;
    if (before != nullptr && outerAtStart(face)) {
        const BackCorner back = backCorner(*before, face);
        if (back.cut_square)
            addUpright(skin.mesh, back.mitre, back.start, topAt(face.outline, 0));
        else
            left = dot(back.mitre - back.start, onPlan(face.frame.u));
    }
    if (next != nullptr && outerAtEnd(face)) {
        const BackCorner back = backCorner(face, *next);
        if (back.cut_square) addUpright(skin.mesh, back.end, back.mitre, topAt(face.outline, right));
        right += back.reach_mm;
    }
    for (std::size_t i = 0; i < face.stretches.size(); ++i) {
        const Stretch& stretch = face.stretches[i];
        const bool last = i + 1 == face.stretches.size();
        if (!last && (stretch.outer || face.stretches[i + 1].outer))
            addStep(face, stretch, face.stretches[i + 1], skin.mesh);
        if (!stretch.outer || stretch.depth_mm <= 0) continue;
        const FaceRect area{i == 0 ? left : stretch.from_mm, last ? right : stretch.to_mm, 0,
                            face.frame.height_mm};
        if (area.right_mm <= area.left_mm) continue;
        for (const auto& polygon : cutFace(face.outline, area, face.holes))
            addPolygon(skin.mesh, face.frame, polygon, -stretch.depth_mm, Seen::FromBehind);
    }
    if (!skin.mesh.empty()) parts.push_back(std::move(skin));
}

} // namespace gangway::geometry
