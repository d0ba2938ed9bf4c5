// Everything built of one room, in a fixed order: floor, ceiling, then wall by wall.
#include "geometry/ceiling.hpp"
#include "geometry/wall_build.hpp"

#include <algorithm>
#include <utility>

namespace gangway::geometry {
namespace {

using Role = FabricPart::Role;

FabricPart floorPart(const HouseIndex& house, const plan::Room& room) {
    FabricPart part;
    part.role = Role::Floor;
    part.room = room.id;
    std::vector<Vec2> points = room.outline;
    for (const auto& column : room.columns)
        points.insert(points.end(), column.begin(), column.end());
    for (const Vec2 p : points) {
        part.mesh.positions_mm.push_back({p.x, p.y, 0});
        part.mesh.normals.push_back({0, 0, 1});
    }
    part.mesh.triangles = triangulate(room.outline, room.columns);
    cutVoids(part.mesh, house.floorVoids(room.id));
    return part;
}

FabricPart ceilingPart(const HouseIndex& house, const plan::Room& room) {
    FabricPart part;
    part.role = Role::Ceiling;
    part.room = room.id;
    for (const CeilingTriangle& t : ceilingTriangles(room)) {
        const Vec3 down = cross(t[2] - t[0], t[1] - t[0]);
        const auto first = static_cast<std::uint32_t>(part.mesh.positions_mm.size());
        part.mesh.positions_mm.insert(part.mesh.positions_mm.end(), {t[0], t[2], t[1]});
        part.mesh.normals.insert(part.mesh.normals.end(), 3, down * (1 / length(down)));
        part.mesh.triangles.push_back({first, first + 1, first + 2});
    }
    cutVoids(part.mesh, house.ceilingVoids(room.id));
    return part;
}

FabricPart liningPart(const HouseIndex& house, const plan::Room& room) {
    FabricPart part;
    part.role = Role::Ceiling;
    part.room = room.id;
    addLinings(part.mesh, room, house.ceilingVoids(room.id));
    return part;
}

/// Tops of the columns, seen with the lid off.
FabricPart columnTops(const plan::Room& room) {
    FabricPart part;
    part.role = Role::WallCut;
    part.room = room.id;
    for (const auto& column : room.columns) {
        const auto first = static_cast<std::uint32_t>(part.mesh.positions_mm.size());
        for (const Vec2 p : column) {
            part.mesh.positions_mm.push_back({p.x, p.y, ceilingHeightAt(room, p)});
            part.mesh.normals.push_back({0, 0, 1});
        }
        for (const auto& t : triangulate(column))
            part.mesh.triangles.push_back({first + t[0], first + t[1], first + t[2]});
    }
    return part;
}

/// The wall from left to right: half its thickness where a room lies beyond, all of it elsewhere.
std::vector<Stretch> stretchesOf(const Face& face) {
    std::vector<PairedFace> pairs = face.pairs;
    std::ranges::sort(pairs, {},
                      [](const PairedFace& pair) { return std::pair(pair.from_mm, pair.thickness_mm); });
    const double full = fullThickness(*face.room, face.index);
    std::vector<Stretch> stretches;
    double reached = 0;
    for (const PairedFace& pair : pairs) {
        if (pair.from_mm > reached) stretches.push_back({reached, pair.from_mm, full, true});
        const double from = std::max(reached, pair.from_mm);
        if (pair.to_mm > from) stretches.push_back({from, pair.to_mm, pair.thickness_mm / 2, false});
        reached = std::max(reached, pair.to_mm);
    }
    if (reached < face.frame.length_mm) stretches.push_back({reached, face.frame.length_mm, full, true});
    return stretches;
}

Face makeFace(const HouseIndex& house, const plan::Room& room, std::size_t index) {
    Face face;
    face.house = &house;
    face.room = &room;
    face.wall = &room.walls[index];
    face.index = index;
    face.frame = wallFrame(room, index);
    face.outline = wallOutline(room, index);
    face.pairs = pairedFaces(house, {room.id, index});
    face.holes = faceHoles(house, {room.id, index}, face.pairs);
    face.stretches = stretchesOf(face);
    // Behind a column's face lies the column itself, which gets its own top.
    if (index >= room.outline.size()) face.stretches.clear();
    return face;
}

} // namespace

std::vector<FabricPart> roomFabric(const plan::Plan& plan, const plan::Room& room) {
    return roomFabric(HouseIndex(plan, room.id), room);
}

std::vector<FabricPart> roomFabric(const HouseIndex& house, const plan::Room& room) {
    std::vector<FabricPart> parts;
    for (FabricPart part :
         {floorPart(house, room), ceilingPart(house, room), liningPart(house, room), columnTops(room)})
        if (!part.mesh.empty()) parts.push_back(std::move(part));
    std::vector<Face> faces;
    for (std::size_t i = 0; i < room.walls.size(); ++i)
        faces.push_back(makeFace(house, room, i));
    const std::size_t ring = std::min(room.outline.size(), faces.size());
    for (std::size_t i = 0; i < faces.size(); ++i) {
        const Face* before = i < ring ? &faces[(i + ring - 1) % ring] : nullptr;
        const Face* next = i < ring ? &faces[(i + 1) % ring] : nullptr;
        if (faces[i].wall->structure != plan::WallStructure::None) {
            addWall(faces[i], before, next, parts);
            addOuterWall(faces[i], before, next, parts);
        }
        addLines(faces[i], parts);
        addOpenings(faces[i], parts);
    }
    return parts;
}

} // namespace gangway::geometry
