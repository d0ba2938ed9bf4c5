// The parts of a wall check sheet: its table's head, a surface's heading, a row a box, counts and signatures.
// Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/surfaces.hpp"

namespace gangway::sheets {

/// Narrowest that the table can be.
inline constexpr double kLeastCheck = 165;

/// What to do with the sheet and where FFL is, under a room's name.
std::vector<Block> checkIntroduction(const plan::Plan& plan, const plan::Room& room, double width_mm);
Block checkHead(plan::DisplayUnits units, double width_mm);
/// "Wall A: 7 boxes, 2 lamp points", with its photo slot, and from where is measured; no slot again on the
/// next sheet.
Block surfaceHeading(const plan::Room& room, const Surface& surface, double width_mm, bool continued);
/// One row a box or point of what is mounted; at least 7 high, to be ticked by thick fingers in bad light.
std::vector<Block> checkRows(const Mounted& item, plan::DisplayUnits units, double width_mm);
/// Walls without boxes, the room's total with room for what was counted, and a line to sign for each look,
/// `pitch_mm` from each other: 7 to write on with ease, 6 at least.
Block checkTotals(const plan::Room& room, const std::vector<Surface>& surfaces, double width_mm,
                  double pitch_mm);

} // namespace gangway::sheets
