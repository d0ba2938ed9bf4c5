#include "scene/zone_volumes.hpp"

#include "geometry/walls.hpp"
#include "scene/object_parts.hpp"

#include <algorithm>
#include <array>

namespace gangway::scene {

namespace {
/// From the faces they touch, so that neither flickers through the other.
constexpr double kInsetMm = 6;

Material tint(int number) {
    // Deep in the basin, where the water falls, where it splashes.
    constexpr auto kColours = std::to_array<glm::vec3>(
        {{0.02f, 0.10f, 0.30f}, {0.05f, 0.25f, 0.50f}, {0.15f, 0.50f, 0.55f}, {0.40f, 0.60f, 0.45f}});
    Material material;
    material.colour = kColours[static_cast<std::size_t>(std::clamp(number, 0, 3))];
    material.roughness = 1;
    material.opacity = 0.3f;
    return material;
}

/// Without corners that lie on the one before: where an outline was cut by a wall, two may be one.
std::vector<plan::Vec2> withoutDoubles(const std::vector<plan::Vec2>& outline) {
    constexpr double kSameMm = 0.01;
    std::vector<plan::Vec2> kept;
    for (const plan::Vec2 corner : outline)
        if (kept.empty() || length(corner - kept.back()) > kSameMm) kept.push_back(corner);
    while (kept.size() > 1 && length(kept.front() - kept.back()) <= kSameMm)
        kept.pop_back();
    return kept;
}

/// The outline moved inwards; corners along the line that halves them.
std::vector<plan::Vec2> inset(const std::vector<plan::Vec2>& outline) {
    std::vector<plan::Vec2> moved;
    const std::size_t count = outline.size();
    for (std::size_t i = 0; i < count; ++i) {
        const plan::Vec2 before = outline[i] - outline[(i + count - 1) % count];
        const plan::Vec2 after = outline[(i + 1) % count] - outline[i];
        const double a = length(before);
        const double b = length(after);
        // Left of a counter-clockwise edge is inside.
        const plan::Vec2 in =
            plan::Vec2{-before.y, before.x} * (1 / a) + plan::Vec2{-after.y, after.x} * (1 / b);
        const double size = std::max(dot(in, in), 0.5);
        moved.push_back(outline[i] + in * (2 * kInsetMm / size));
    }
    return moved;
}

void addTop(meshes::Mesh& mesh, const std::vector<plan::Vec2>& outline, double z) {
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    for (const plan::Vec2 at : outline) {
        mesh.positions_mm.push_back({at.x, at.y, z});
        mesh.normals.push_back({0, 0, 1});
    }
    for (const auto& triangle : geometry::triangulate(outline))
        mesh.triangles.push_back({first + triangle[0], first + triangle[1], first + triangle[2]});
}

void addSide(meshes::Mesh& mesh, plan::Vec2 from, plan::Vec2 to, double bottom, double top) {
    const plan::Vec2 along = to - from;
    const double size = length(along);
    if (size == 0) return; // moved inwards onto each other
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    const plan::Vec3 out{along.y / size, -along.x / size, 0};
    for (const plan::Vec3 corner : {plan::Vec3{from.x, from.y, bottom}, plan::Vec3{to.x, to.y, bottom},
                                    plan::Vec3{to.x, to.y, top}, plan::Vec3{from.x, from.y, top}}) {
        mesh.positions_mm.push_back(corner);
        mesh.normals.push_back(out);
    }
    mesh.triangles.push_back({first, first + 1, first + 2});
    mesh.triangles.push_back({first, first + 2, first + 3});
}
} // namespace

void addZoneVolumes(Scene& scene, const plan::Plan& plan, std::span<const ZoneVolume> volumes) {
    for (const ZoneVolume& volume : volumes) {
        const plan::Room* room = plan::findRoom(plan, volume.room);
        const plan::Storey* storey = room == nullptr ? nullptr : plan::findStorey(plan, room->storey);
        const auto corners = withoutDoubles(volume.outline_mm);
        if (storey == nullptr || corners.size() < 3) continue;
        const auto outline = inset(corners);
        const double bottom = volume.bottom_mm + kInsetMm;
        const double top = volume.top_mm - kInsetMm;
        detail::ObjectParts parts;
        meshes::Mesh& mesh = parts.of(tint(volume.number));
        for (std::size_t i = 0; i < outline.size(); ++i)
            addSide(mesh, outline[i], outline[(i + 1) % outline.size()], bottom, top);
        addTop(mesh, outline, top);
        Part label;
        label.kind = PartKind::Zone;
        label.room = volume.room;
        label.storey = room->storey;
        label.layer = kLayerZones;
        detail::addToScene(scene, label, parts, storey->elevation_mm);
    }
}

} // namespace gangway::scene
