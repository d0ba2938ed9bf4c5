// The set-out schedule of a wall: for each plate where its boxes are, what they are, and what goes in.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// How much room rows and notes take: as they read best, or tighter where that saves a sheet.
enum class Density { Roomy, Tight };

/// Heading and column titles of the schedule, for the head of each column of rows.
std::vector<Block> scheduleHead(const WallView& view, double width_mm, Density density, bool continued);

/// One row a plate or luminaire. Each box centre has its own u and v; text never shrinks, rows grow.
std::vector<Block> scheduleRows(const WallView& view, const catalogue::Catalogue& catalogue, double width_mm,
                                Density density = Density::Roomy);

} // namespace gangway::sheets
