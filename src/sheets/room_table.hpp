// The set-out of a whole room in one compact table. Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/ceiling_points.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// A centre and the two numbers that mark it.
struct RoomTableRow {
    std::string id;
    std::string tag; ///< "K-04", of several boxes "K-04 1/2"
    double u_mm = 0;
    double v_mm = 0;
};
/// Rows that are measured alike.
struct RoomTableGroup {
    std::string title;    ///< "Wall A, E-07"
    std::string measured; ///< how u and v are measured; empty: as the sheet says for walls
    std::vector<RoomTableRow> rows;
};

/// What is on one wall, as its view prints it; what is on furniture before it stands apart.
std::vector<RoomTableGroup> wallGroups(const WallView& view, const std::string& sheet);
/// What no wall's view shows: ceiling, floor, and faces of furniture that no wall is looked at with.
std::vector<RoomTableGroup> otherGroups(const House& house, const RoomPoints& points);

/// Two rows beside each other where both have room, read down the left half first within a group.
std::vector<Block> roomTable(const std::vector<RoomTableGroup>& groups, double width_mm);

} // namespace gangway::sheets
