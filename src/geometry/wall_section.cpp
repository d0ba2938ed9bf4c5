#include "geometry/wall_section.hpp"

#include "geometry/wall_build.hpp"

#include <algorithm>
#include <utility>

namespace gangway::geometry {
namespace {

using Polygon = std::vector<Vec2>;

/// A gap between two rooms behind a face that is no wider than this is the end of the wall between them.
constexpr double kJunctionMm = 600;

/// The wall from left to right, each stretch to the far face of the wall.
std::vector<Stretch> throughStretches(const Face& face) {
    std::vector<PairedFace> pairs = pairedFaces(*face.house, {face.room->id, face.index});
    std::ranges::sort(pairs, {},
                      [](const PairedFace& pair) { return std::pair(pair.from_mm, pair.thickness_mm); });
    const double full = fullThickness(*face.room, face.index);
    std::vector<Stretch> stretches;
    double reached = 0;
    for (const PairedFace& pair : pairs) {
        if (pair.from_mm > reached) {
            const bool junction = pair.from_mm - reached <= kJunctionMm;
            const double left = stretches.empty() ? 0 : stretches.back().depth_mm;
            const double depth = junction ? std::max(left, pair.thickness_mm) : full;
            stretches.push_back({reached, pair.from_mm, depth, !junction});
        }
        if (pair.to_mm > std::max(reached, pair.from_mm))
            stretches.push_back({std::max(reached, pair.from_mm), pair.to_mm, pair.thickness_mm, false});
        reached = std::max(reached, pair.to_mm);
    }
    if (reached < face.frame.length_mm) {
        const bool junction = !stretches.empty() && face.frame.length_mm - reached <= kJunctionMm;
        const double depth = junction ? std::max(stretches.back().depth_mm, full) : full;
        stretches.push_back({reached, face.frame.length_mm, depth, true});
    }
    return stretches;
}

Vec2 onPlan(Vec3 p) {
    return {p.x, p.y};
}

bool solid(const Face& face) {
    return face.wall->structure != plan::WallStructure::None && !face.stretches.empty();
}

void addStretches(const Face& face, std::vector<Polygon>& polygons) {
    const EdgeAxes axes = edgeAxes(*face.room, face.index);
    for (const Stretch& stretch : face.stretches)
        if (stretch.depth_mm > 0)
            polygons.push_back({axes.at(stretch.from_mm), axes.at(stretch.from_mm, -stretch.depth_mm),
                                axes.at(stretch.to_mm, -stretch.depth_mm), axes.at(stretch.to_mm)});
}

void addCorner(const Face& face, const Face& next, std::vector<Polygon>& polygons) {
    const BackCorner back = backCorner(face, next);
    if (back.turns_out) polygons.push_back({onPlan(next.frame.origin_mm), back.end, back.mitre, back.start});
}

} // namespace

std::vector<std::vector<Vec2>> wallSections(const HouseIndex& house, const plan::Room& room) {
    std::vector<Face> faces;
    const std::size_t ring = std::min(room.outline.size(), room.walls.size());
    for (std::size_t i = 0; i < ring; ++i) {
        Face face;
        face.house = &house;
        face.room = &room;
        face.wall = &room.walls[i];
        face.index = i;
        face.frame = wallFrame(room, i);
        face.stretches = throughStretches(face);
        faces.push_back(std::move(face));
    }
    std::vector<Polygon> polygons;
    for (std::size_t i = 0; i < ring; ++i) {
        if (!solid(faces[i])) continue;
        addStretches(faces[i], polygons);
        const Face& next = faces[(i + 1) % ring];
        if (solid(next)) addCorner(faces[i], next, polygons);
    }
    return polygons;
}

} // namespace gangway::geometry
