// Collision of a box before a wall with furniture by FCL (Flexible Collision Library), a general-purpose
// library: the reference that the checks' own geometry is held against, pair by pair.
#pragma once

#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"

#include <fcl/fcl.h>

#include <algorithm>
#include <memory>
#include <vector>

namespace gangway::testing {

using FclMesh = fcl::BVHModel<fcl::OBBRSSd>;

inline std::shared_ptr<FclMesh> fclMesh(const meshes::Mesh& mesh) {
    auto model = std::make_shared<FclMesh>();
    std::vector<fcl::Vector3d> points;
    for (const plan::Vec3 p : mesh.positions_mm)
        points.emplace_back(p.x, p.y, p.z);
    std::vector<fcl::Triangle> triangles;
    for (const auto& t : mesh.triangles)
        triangles.emplace_back(t[0], t[1], t[2]);
    model->beginModel();
    model->addSubModel(points, triangles);
    model->endModel();
    return model;
}

/// A solid of a piece, for FCL and for the question whether a point is within it: FCL's meshes are surfaces.
struct FclSolid {
    std::shared_ptr<FclMesh> model;
    meshes::Mesh mesh;
};

inline std::vector<FclSolid> fclSolids(const plan::Furniture& piece) {
    std::vector<FclSolid> solids;
    for (auto& solid : geometry::furnitureSolids(piece).solids)
        solids.push_back({fclMesh(solid.mesh), solid.mesh});
    return solids;
}

/// Of a closed convex mesh whose triangles are counter-clockwise seen from outside.
inline bool isWithin(const meshes::Mesh& mesh, plan::Vec3 at) {
    for (const auto& t : mesh.triangles) {
        const plan::Vec3 a = mesh.positions_mm[t[0]];
        const plan::Vec3 normal = cross(mesh.positions_mm[t[1]] - a, mesh.positions_mm[t[2]] - a);
        if (dot(normal, at - a) > 0) return false;
    }
    return !mesh.empty();
}

/// The box over a plate's rectangle, from `from_mm` to `to_mm` out of its wall.
inline fcl::CollisionObjectd boxBefore(const geometry::Frame& wall, plan::Vec2 centre_mm, plan::Vec2 half_mm,
                                       double from_mm, double to_mm) {
    const plan::Vec3 at = geometry::toHouse(wall, {centre_mm.x, centre_mm.y, (from_mm + to_mm) / 2});
    fcl::Transform3d pose = fcl::Transform3d::Identity();
    fcl::Matrix3d turn;
    turn << wall.u.x, wall.v.x, wall.w.x, wall.u.y, wall.v.y, wall.w.y, wall.u.z, wall.v.z, wall.w.z;
    pose.linear() = turn;
    pose.translation() = fcl::Vector3d(at.x, at.y, at.z);
    return {std::make_shared<fcl::Boxd>(2 * half_mm.x, 2 * half_mm.y, to_mm - from_mm), pose};
}

/// Whether the box meets or is within a solid that comes out of the wall at all.
inline bool collides(const fcl::CollisionObjectd& box, const geometry::Frame& wall,
                     const std::vector<FclSolid>& solids) {
    const fcl::Vector3d middle = box.getTranslation();
    for (const FclSolid& solid : solids) {
        double far = -1e9;
        for (const plan::Vec3 p : solid.mesh.positions_mm)
            far = std::max(far, geometry::toFrame(wall, p).z);
        if (far <= 0.5) continue;
        if (isWithin(solid.mesh, {middle.x(), middle.y(), middle.z()})) return true;
        const fcl::CollisionObjectd object(solid.model);
        fcl::CollisionRequestd request;
        fcl::CollisionResultd result;
        if (fcl::collide(&box, &object, request, result) > 0) return true;
    }
    return false;
}

} // namespace gangway::testing
