// What stands in a plate where the catalogue does not know the module. Inside scene only.
#pragma once

#include "catalogue/catalogue.hpp"

#include <vector>

namespace gangway::scene::detail {

/// A plain box that stands out of the frame, with a question mark in relief on it: nothing that is sold looks
/// so.
std::vector<catalogue::FrontShape> unknownFront(double width_mm, double height_mm);

} // namespace gangway::scene::detail
