// Markers on a plan that point at a wall and name the sheet with its elevation. Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/elevation_work.hpp"
#include "sheets/storey_plan.hpp"

#include <vector>

namespace gangway::sheets {

/// A wall that has an elevation.
struct WallMarker {
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
    std::string sheet; ///< "E-07"; empty: the wall's letter alone
};
/// In the walls' order.
std::vector<WallMarker> wallMarkersOf(const plan::Room& room, const ElevationNumbers& numbers);

/// Those of all walls but open sides, with or without an elevation.
std::vector<WallMarker> allWallsOf(const plan::Room& room, const ElevationNumbers& numbers);

/// Puts markers beside their walls, inside the room, clear of what `items` show of symbols and texts and of
/// `keep_clear`: the wall's name in a circle with a pointer towards the wall, the sheet's number beside it.
/// Items have the id "sheet:E-07". Returns those for which there is no room.
std::vector<WallMarker> drawWallMarkers(std::vector<Item>& items, const PlanMapping& mapping,
                                        const std::vector<std::vector<Pt>>& keep_clear,
                                        const std::vector<WallMarker>& markers);

/// What one means, for a legend.
Block wallMarkerSign(double width_mm);

} // namespace gangway::sheets
