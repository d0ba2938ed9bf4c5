// Plans made up by arithmetic: houses of any size for measuring, and random ones for round trips.
#pragma once

#include "plan/plan.hpp"

#include <cstdint>

namespace gangway::plan::samples {

/// A valid house of rectangular rooms in rows, each with a door, 12 plates, 6 pieces of furniture, 2 lamps
/// and a switch leg.
Plan house(std::size_t rooms);

/// A valid plan with every type and most keys in it, by a fixed seed.
Plan random(std::uint32_t seed);

} // namespace gangway::plan::samples
