// An empty house of one room, for tests that put their own things into it.
#pragma once

#include "plan/plan.hpp"

#include <string>

namespace gangway::testing {

/// 4000 x 3000 with its south-west corner at (0, 0), on storey "ground"; wall A is its north wall, B, C and D
/// follow clockwise.
inline plan::Plan plainRoom(const std::string& id) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    plan::Room& room = plan.rooms.emplace_back();
    room.id = id;
    room.storey = "ground";
    room.outline = {{0, 3000}, {4000, 3000}, {4000, 0}, {0, 0}};
    for (const char* wall : {"A", "B", "C", "D"})
        room.walls.emplace_back().id = wall;
    return plan;
}

} // namespace gangway::testing
