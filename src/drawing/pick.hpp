// Which item of a sheet a point is on: for clicks in the sheet preview.
#pragma once

#include "drawing/drawing.hpp"

#include <functional>
#include <optional>

namespace gangway::drawing {

/// How far a point is from an item's ink, in mm on paper: 0 on it, and inside of fills, closed outlines,
/// full circles and the boxes of texts. Infinite for an item with nothing to draw.
double distanceTo(const Primitive& primitive, Pt at);

/// Index into sheet.items of what a point within `reach_mm` means: the nearest item that is `wanted` (every
/// one where it is empty); of equally near ones the smallest, so that a plate wins over the wardrobe that it
/// is drawn in, and of equally small ones the one drawn last. nullopt: nothing is there.
std::optional<std::size_t> itemAt(const Sheet& sheet, Pt at, double reach_mm,
                                  const std::function<bool(const Item&)>& wanted = {});

} // namespace gangway::drawing
