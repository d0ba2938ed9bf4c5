// Where furniture is screwed to the wall it stands or hangs before. Only for this folder.
#pragma once

#include "geometry/frames.hpp"

namespace gangway::checks {

/// Screws of a piece in a wall, in the wall's (u, v), by the table of kinds in fixings.cpp. Empty for what is
/// not screwed to walls, and for a piece whose back is not against this one.
std::vector<plan::Vec2> fixingPoints(const plan::Furniture& piece, const geometry::Frame& wall);

} // namespace gangway::checks
