// Where people lie and sit: the points from which reach and sight are measured. Only for this folder.
#pragma once

#include "checks/point.hpp"

namespace gangway::checks {

/// One who lies or sits somewhere, in house coordinates.
struct BodyPoint {
    plan::Vec3 at_mm;
    std::string side; ///< "left", "right", "lower", "upper"; empty for one alone
};

/// A body of the pack, of the usual measures when the pack has none of that id.
const catalogue::Body& bodyOf(const Facts& facts, std::string_view id);

/// Heads on the pillows of a bed or bunk: in the middle of each half of the mattress, 430 from the wall at
/// its head (from the back of a bed that stands free), at the pack's height of a lying eye; in bunks as high
/// above each mattress as that is above a usual bed. Empty for other pieces.
std::vector<BodyPoint> pillowsOf(const Facts& facts, const plan::Room& room, const plan::Furniture& piece);

/// Hands of those who sit: the middle of each seat cushion of a sofa or armchair, as high as a lying eye.
/// Empty for other pieces.
std::vector<BodyPoint> seatsOf(const plan::Furniture& piece);

} // namespace gangway::checks
