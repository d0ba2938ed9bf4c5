// The sign-off booklet: what the homeowner says to each plate, on paper to be signed.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// The sign of a state, told from the others by its shape alone and the same as on screen: open a ring,
/// agreed a ticked disc, queried a filled diamond, reopened a ring filled on its right. 3 mm high around
/// `centre`.
void drawState(Ink& ink, Pt centre, review::State state);

/// A plate's place in words and numbers: "wall A, 760 from its left corner, 1075 above FFL".
std::string placeInWords(const House& house, const plan::Plate& plate);

/// Rows of a room's plates under a table head of this width; `answers` must be of the same plan.
Block agreementHead(double width_mm);
std::vector<Block> agreementRows(const House& house, const Answers& answers, const plan::Room& room,
                                 double width_mm);

/// The first page's parts, top to bottom.
std::vector<Block> signingBlocks(const House& house, const Answers& answers,
                                 const std::vector<const plan::Room*>& rooms, double width_mm);

} // namespace gangway::sheets
