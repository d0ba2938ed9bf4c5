// The lumen method: what a room's lamps give on average, walls and ceiling included, by two factors.
#pragma once

namespace gangway::lighting {

inline constexpr double kLuxPerFootcandle = 10.764; ///< trade-facts 8.8 (from memory)

/// Average illuminance in lx: E = flux UF MF / area (8.1). 0 for a room without area.
double lumenMethod(double lumens, double utilisation, double maintenance, double area_m2);

/// Flux in lm that gives `lux` on average: E A / (UF MF). 0 when a factor is 0.
double lumensFor(double lux, double utilisation, double maintenance, double area_m2);

/// Room index k = L W / ((L + W) Hm) (8.2), for rooms of any shape with area and half the perimeter for L W
/// and L + W; Hm is how high the lamps are over the work plane, m. 0 when that is 0. The pack's utilisation
/// factor is one number whatever k is: k is printed for those who have a luminaire's own table.
double roomIndex(double area_m2, double perimeter_m, double height_m);

} // namespace gangway::lighting
