// Symbols of a plan that would lie on each other, pulled apart along the normal of the wall they stand at.
#pragma once

#include "drawing/drawing.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::drawing {

/// A symbol as it stands at its wall: a box with one side on the wall, all in mm on paper.
struct SymbolBox {
    std::string id;
    Pt anchor;           ///< on the wall's face; never moves
    Pt normal{0, 1};     ///< unit, out of the wall into the room
    double from_mm = -1; ///< reach along the wall from the anchor; to the right where the normal points up
    double to_mm = 1;
    double depth_mm = 2;    ///< reach along the normal
    double rank = 0;        ///< of those that collide the lowest stays nearest to the wall: mounting height
    std::optional<Pt> drag; ///< where the user pulled it to, from its place at the wall; it stays there
};

/// Where a symbol is drawn: how far from its place at the wall, and whether a leader joins it to its anchor.
struct SymbolSpot {
    Pt shift;
    bool leader = false;
};

/// One spot for each box, in the order of `boxes`. Symbols that collide with none stay at the wall, dragged
/// ones where they were dragged; of the others the first that can stays at the wall, and the rest go out
/// along their normals to the nearest free place, `gap_mm` clear of all. The order of `boxes` does not
/// matter: ties of rank go by id, then by anchor. A symbol that is added, moved or taken away changes only
/// those it collides with, directly or by way of others.
std::vector<SymbolSpot> separateSymbols(const std::vector<SymbolBox>& boxes, double gap_mm = 0.8);

/// Corners of the box where `spot` puts it, counter-clockwise from the wall's side.
std::vector<Pt> cornersOf(const SymbolBox& box, const SymbolSpot& spot, double margin_mm = 0);

} // namespace gangway::drawing
