// Small plans made in code, and the moves that each geometric claim is repeated under.
#pragma once

#include "geometry/coverage.hpp"

#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

namespace gangway::test {

using geometry::Vec2;
using geometry::Vec3;

/// Walls A, B, C ... for every edge of the outline and the columns.
inline void addWalls(plan::Room& room, double thickness_mm = 100) {
    std::size_t edges = room.outline.size();
    for (const auto& column : room.columns)
        edges += column.size();
    for (std::size_t i = 0; i < edges; ++i) {
        plan::Wall wall;
        wall.id = std::string(1, static_cast<char>('A' + i));
        wall.thickness_mm = thickness_mm;
        room.walls.push_back(wall);
    }
}

/// A rectangular room: wall A north, B east, C south, D west.
inline plan::Room boxRoom(const std::string& id, double x, double y, double width, double depth,
                          double height = 2500) {
    plan::Room room;
    room.id = id;
    room.name = id;
    room.storey = "ground";
    room.outline = {{x, y + depth}, {x + width, y + depth}, {x + width, y}, {x, y}};
    room.ceiling.heights_mm = {height};
    addWalls(room);
    return room;
}

inline plan::Plan planOf(std::vector<plan::Room> rooms) {
    plan::Plan plan;
    plan.storeys.push_back({"ground", "Ground floor", 0, "", std::nullopt, {}});
    plan.rooms = std::move(rooms);
    return plan;
}

inline plan::Host onWall(std::string wall, double u, double v) {
    plan::Host host;
    host.wall = std::move(wall);
    host.u_mm = u;
    host.v_mm = v;
    return host;
}

/// An opening with its places and sizes in the order in which a plan file gives them.
inline plan::Opening opening(std::string id, plan::Opening::Kind kind, std::string room, std::string wall,
                             double left, double width, double sill, double height) {
    plan::Opening made;
    made.id = std::move(id);
    made.kind = kind;
    made.room = std::move(room);
    made.wall = std::move(wall);
    made.left_mm = left;
    made.width_mm = width;
    made.sill_mm = sill;
    made.height_mm = height;
    return made;
}

/// A piece by the box of its footprint as the demo house lists it, its back to the side named by `turn_deg`
/// (0 north, 90 west, 180 south, 270 east).
inline plan::Furniture pieceIn(const std::string& kind, const std::string& room, Vec2 x, Vec2 y, Vec2 z,
                               double turn_deg = 0) {
    plan::Furniture piece;
    piece.id = kind;
    piece.kind = kind;
    piece.room = room;
    piece.layer = plan::kLayerFurniture;
    piece.at_mm = {(x.x + x.y) / 2, (y.x + y.y) / 2};
    piece.bottom_mm = z.x;
    piece.turn_deg = turn_deg;
    const bool sideways = turn_deg == 90 || turn_deg == 270;
    const double across = x.y - x.x;
    const double along = y.y - y.x;
    piece.size = {sideways ? along : across, sideways ? across : along, z.y - z.x};
    return piece;
}

/// A turn about the origin and a shift.
struct Move {
    const char* name;
    double turn_deg;
    Vec2 shift;
    Vec2 operator()(Vec2 p) const {
        const double a = turn_deg * std::numbers::pi / 180;
        return {p.x * std::cos(a) - p.y * std::sin(a) + shift.x,
                p.x * std::sin(a) + p.y * std::cos(a) + shift.y};
    }
};

inline const std::vector<Move> kMoves = {
    {"as drawn", 0, {0, 0}},
    {"turned 30", 30, {0, 0}},
    {"turned 90", 90, {0, 0}},
    {"turned 211.7", 211.7, {0, 0}},
    {"far away", 0, {800'000, -650'000}},
    {"turned and far", 63.4, {-500'000, 900'000}},
};

inline plan::Plan moved(plan::Plan plan, const Move& move) {
    for (plan::Room& room : plan.rooms) {
        for (Vec2& corner : room.outline)
            corner = move(corner);
        for (auto& column : room.columns)
            for (Vec2& corner : column)
                corner = move(corner);
    }
    for (plan::Furniture& piece : plan.furniture) {
        piece.at_mm = move(piece.at_mm);
        piece.turn_deg += move.turn_deg;
    }
    return plan;
}

inline double meshArea(const meshes::Mesh& mesh) {
    double sum = 0;
    for (const auto& t : mesh.triangles)
        sum += length(cross(mesh.positions_mm[t[1]] - mesh.positions_mm[t[0]],
                            mesh.positions_mm[t[2]] - mesh.positions_mm[t[0]])) /
               2;
    return sum;
}

} // namespace gangway::test
