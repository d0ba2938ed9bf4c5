// Rooms and their light as rows of a table, and the words that belong to them.
#pragma once

#include "catalogue/pack.hpp"
#include "lighting/light.hpp"
#include "sheets/block.hpp"

namespace gangway::sheets {

/// Heading and column titles.
std::vector<Block> lightTableHead(double width_mm, bool continued);

/// A row a room: area, flux, average, least, uniformity, room index, lumen method, and what is usual as a bar
/// on a scale with both estimates marked; no verdict.
std::vector<Block> lightTableRows(const plan::Plan& plan, const catalogue::CountryPack& pack,
                                  const std::vector<lighting::RoomLight>& rooms, double width_mm);

/// What the numbers are and are not, the factors with their sources, where the usual ranges are from, and
/// what could not be read.
std::vector<Block> lightNotes(const plan::Plan& plan, const catalogue::CountryPack& pack,
                              const std::vector<lighting::RoomLight>& rooms, double width_mm);

} // namespace gangway::sheets
