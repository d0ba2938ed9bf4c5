// Names walls that the plan file left unnamed. Private to src/plan.
#pragma once

#include "plan/plan.hpp"

namespace gangway::plan {

/// 0 "A", 25 "Z", 26 "AA", as spreadsheet columns count.
std::string letterName(std::size_t number);

/// Edges of the outline and of all columns: as many as a room has walls.
std::size_t edgeCount(const Room& room);

/// Completes room.walls to one for each edge and gives unnamed ones their letter: A for the north-most
/// edge of the outline (the largest y of the midpoint; of equals the left-most), then clockwise; column
/// edges carry on. A letter already used as a name in the room is passed over for a free one.
void nameWalls(Room& room);

} // namespace gangway::plan
