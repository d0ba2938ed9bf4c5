// What stands beside a switching plan: its legs, its symbols, and a line for every way of every switch plate.
#pragma once

#include "sheets/block.hpp"
#include "sheets/leg_plan.hpp"

#include <span>

namespace gangway::sheets {

/// A heading and a line for each leg: its line as drawn (or "marks"), its mark, name and what it feeds.
std::vector<Block> legLegend(const switching::Net& net, std::span<const DrawnLeg> legs, double width_mm);

/// A heading and an entry for each symbol of these plates and luminaires.
std::vector<Block> symbolLegend(const switching::Net& net, std::span<const plan::Plate* const> plates,
                                std::span<const plan::Luminaire* const> luminaires,
                                StoreyPlanOptions::Lamps lamps, double width_mm);

/// A heading and a block for each plate with ways: tag, room and height above FFL, then every way in order
/// with its module's code, mark, what it feeds and what else works that.
std::vector<Block> plateLegend(const switching::Net& net, std::span<const plan::Plate* const> plates,
                               double width_mm);

/// The line of one way as the plate legend prints it, unwrapped: "1 SW2 L1 kitchen downlights: 10 luminaires,
/// two-way with K-03".
std::string wayLine(const switching::Net& net, const switching::Way& way, std::size_t number);

/// What the plan shows and what it doesn't, with the cautions.
std::vector<Block> switchingNotes(double width_mm, const std::vector<std::string>& more);

} // namespace gangway::sheets
