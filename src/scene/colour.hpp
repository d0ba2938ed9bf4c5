// Colours: "#RRGGBB" of the plan to linear RGB, and colour temperatures of lamps to the colour of their
// light.
#pragma once

#include "plan/vec.hpp"

#include <glm/glm.hpp>

#include <string>

namespace gangway::scene {

/// Linear RGB, 0 to 1, of an sRGB colour "#RRGGBB"; `fallback` when the text is not of that form.
/// IEC 61966-2-1:1999, 5.2.
glm::vec3 linearFromHex(const std::string& srgb_hex, glm::vec3 fallback = glm::vec3(0.8f));

/// Chromaticity (x, y) of CIE 1931 of a black body at `kelvin`, clamped to 1000 to 15000 K.
/// Krystek, An algorithm to calculate correlated colour temperature, Color Research and Application 10
/// (1985).
plan::Vec2 planckianChromaticity(double kelvin);

/// Linear RGB of a lamp's light, greatest channel 1, as a camera white-balanced to 4000 K sees it (the eye
/// adapts to a room's light; common practice, no source), so that 2700 K is warm and not orange.
glm::vec3 lightColour(double kelvin);

} // namespace gangway::scene
