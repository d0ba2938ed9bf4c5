// What does not add up about a composed plate, in words. Private to src/catalogue.
#pragma once

#include "catalogue/place.hpp"

namespace gangway::catalogue::detail {

/// Each module: is it made for the format, does its front fit the opening, is the box deep enough.
void checkModules(const PlateFormat& format, const std::vector<Placed>& placed,
                  const std::vector<Gang>& gangs, const std::vector<Box>& boxes, Problems& problems);

/// Extra-low voltage and mains in one box need a barrier between them.
void checkVoltages(const PlateFormat& format, const std::vector<Placed>& placed, bool barrier,
                   Problems& problems);

} // namespace gangway::catalogue::detail
