#include "scene/colour.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::scene {
namespace {

constexpr double kWhiteBalanceKelvin = 4000; // common practice, no source

int hexDigit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

float linearFromByte(int byte) {
    const double s = byte / 255.0;
    return static_cast<float>(s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4));
}

// XYZ of unit luminance to linear sRGB, IEC 61966-2-1:1999; what lies outside the gamut is clipped.
glm::dvec3 linearRgb(plan::Vec2 xy) {
    const double x = xy.x / xy.y;
    const double z = (1 - xy.x - xy.y) / xy.y;
    const glm::dvec3 rgb(3.2406 * x - 1.5372 - 0.4986 * z, -0.9689 * x + 1.8758 + 0.0415 * z,
                         0.0557 * x - 0.2040 + 1.0570 * z);
    return glm::max(rgb, glm::dvec3(0.001));
}

} // namespace

glm::vec3 linearFromHex(const std::string& srgb_hex, glm::vec3 fallback) {
    if (srgb_hex.size() != 7 || srgb_hex[0] != '#') return fallback;
    glm::vec3 linear(0);
    for (int channel = 0; channel < 3; ++channel) {
        const auto at = static_cast<std::size_t>(1 + 2 * channel);
        const int high = hexDigit(srgb_hex[at]);
        const int low = hexDigit(srgb_hex[at + 1]);
        if (high < 0 || low < 0) return fallback;
        linear[channel] = linearFromByte(high * 16 + low);
    }
    return linear;
}

plan::Vec2 planckianChromaticity(double kelvin) {
    const double t = std::clamp(kelvin, 1000.0, 15000.0);
    const double u = (0.860117757 + 1.54118254e-4 * t + 1.28641212e-7 * t * t) /
                     (1 + 8.42420235e-4 * t + 7.08145163e-7 * t * t);
    const double v = (0.317398726 + 4.22806245e-5 * t + 4.20481691e-8 * t * t) /
                     (1 - 2.89741816e-5 * t + 1.61456053e-7 * t * t);
    const double scale = 2 * u - 8 * v + 4; // CIE 1960 (u, v) to CIE 1931 (x, y)
    return {3 * u / scale, 2 * v / scale};
}

glm::vec3 lightColour(double kelvin) {
    const glm::dvec3 rgb =
        linearRgb(planckianChromaticity(kelvin)) / linearRgb(planckianChromaticity(kWhiteBalanceKelvin));
    return glm::vec3(rgb / std::max({rgb.x, rgb.y, rgb.z}));
}

} // namespace gangway::scene
