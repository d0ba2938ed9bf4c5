#include "lighting/lumen_method.hpp"

namespace gangway::lighting {

double lumenMethod(double lumens, double utilisation, double maintenance, double area_m2) {
    return area_m2 > 0 ? lumens * utilisation * maintenance / area_m2 : 0;
}

double lumensFor(double lux, double utilisation, double maintenance, double area_m2) {
    const double factor = utilisation * maintenance;
    return factor > 0 ? lux * area_m2 / factor : 0;
}

double roomIndex(double area_m2, double perimeter_m, double height_m) {
    return height_m > 0 && perimeter_m > 0 ? area_m2 / (perimeter_m / 2 * height_m) : 0;
}

} // namespace gangway::lighting
