#include "scene/building_parts.hpp"

#include "geometry/walls.hpp"
#include "scene/colour.hpp"
#include "scene/palette.hpp"

#include <algorithm>
#include <optional>

namespace gangway::scene::detail {
namespace {

using plan::Vec3;
using Role = geometry::FabricPart::Role;

PartKind kindOf(const geometry::FabricPart& part) {
    if (!part.opening.empty()) return PartKind::Opening;
    switch (part.role) {
    case Role::WallCut:
        return PartKind::WallCut;
    case Role::Floor:
        return PartKind::Floor;
    case Role::Ceiling:
        return PartKind::Ceiling;
    default:
        return PartKind::Wall;
    }
}

Vec3 middleOf(const meshes::Mesh& mesh) {
    Vec3 low = mesh.positions_mm.front();
    Vec3 high = low;
    for (const Vec3 p : mesh.positions_mm) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
    }
    return (low + high) * 0.5;
}

// The tile field that a part shows: the one whose middle is nearest to the part's.
const plan::WallLine* tileFieldAt(const plan::Wall& wall, const geometry::Frame& frame, Vec3 house_mm) {
    const Vec3 at = geometry::toFrame(frame, house_mm);
    const plan::WallLine* nearest = nullptr;
    double least = 0;
    for (const plan::WallLine& line : wall.lines) {
        if (line.kind != plan::WallLine::Kind::Tiles) continue;
        const double u = (line.from_mm.value_or(0) + line.to_mm.value_or(frame.length_mm)) / 2;
        const double away = plan::length(plan::Vec2{at.x - u, at.y - line.bottom_mm - line.height_mm / 2});
        if (nearest == nullptr || away < least) {
            nearest = &line;
            least = away;
        }
    }
    return nearest;
}

Material tiled(Material material, const plan::WallLine& line, const geometry::Frame& frame,
               double elevation_mm) {
    if (line.tile_width_mm <= 0 || line.tile_height_mm <= 0) return material;
    material.pattern = 2;
    material.pattern_size_m = {static_cast<float>((line.tile_width_mm + line.joint_mm) / 1000),
                               static_cast<float>((line.tile_height_mm + line.joint_mm) / 1000)};
    material.joint_m = static_cast<float>(line.joint_mm / 1000);
    material.pattern_origin =
        toScene(geometry::toHouse(frame, {line.start_u_mm, line.start_v_mm, 0}), elevation_mm);
    material.pattern_along = toSceneDirection(frame.u);
    return material;
}

// Boards run along the room's longer side, and every pattern starts in its south-west corner.
Material laid(Material material, const plan::Room& room, double elevation_mm) {
    plan::Vec2 low = room.outline.front();
    plan::Vec2 high = low;
    for (const plan::Vec2 p : room.outline) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    material.pattern_origin = toScene({low.x, low.y, 0}, elevation_mm);
    const bool runs_north = high.y - low.y > high.x - low.x;
    // The first size is the board's width, so its direction is across the boards.
    material.pattern_along = toSceneDirection(runs_north ? Vec3{1, 0, 0} : Vec3{0, 1, 0});
    return material;
}

struct Context {
    const plan::Room& room;
    double elevation_mm = 0;
};

Material materialOf(const Context& context, const geometry::FabricPart& part,
                    std::optional<std::size_t> wall) {
    if (part.role == Role::Floor) {
        return laid(floorMaterial(context.room.floor_finish, part.colour), context.room,
                    context.elevation_mm);
    }
    Material material = fabricMaterial(part.role, part.colour);
    if (part.role != Role::Tiles || !wall) return material;
    const geometry::Frame frame = geometry::wallFrame(context.room, *wall);
    const plan::WallLine* line = tileFieldAt(context.room.walls[*wall], frame, middleOf(part.mesh));
    return line != nullptr ? tiled(material, *line, frame, context.elevation_mm) : material;
}

} // namespace

void addRoom(Scene& scene, const geometry::HouseIndex& house, const plan::Room& room,
             double storey_elevation_mm) {
    const Context context{room, storey_elevation_mm};
    std::vector<std::pair<Part, ObjectParts>> objects;
    for (const geometry::FabricPart& fabric : geometry::roomFabric(house, room)) {
        if (fabric.mesh.empty()) continue;
        const auto wall = plan::wallIndex(room, fabric.wall);
        Part label;
        label.kind = kindOf(fabric);
        label.object = fabric.opening.empty() ? room.id : fabric.opening;
        label.room = room.id;
        label.storey = room.storey;
        label.layer = plan::kLayerBuilding;
        label.wall = fabric.wall;
        if (wall) label.facing = toSceneDirection(geometry::wallFrame(room, *wall).w);
        auto object = std::find_if(objects.begin(), objects.end(), [&](const auto& entry) {
            return entry.first.kind == label.kind && entry.first.object == label.object &&
                   entry.first.wall == label.wall;
        });
        if (object == objects.end()) object = objects.emplace(objects.end(), std::move(label), ObjectParts());
        meshes::append(object->second.of(materialOf(context, fabric, wall)), fabric.mesh);
    }
    for (const auto& [label, parts] : objects)
        addToScene(scene, label, parts, storey_elevation_mm);
}

} // namespace gangway::scene::detail
