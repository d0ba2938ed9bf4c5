// Lengths as a house shows them: millimetres, centimetres, metres, or feet and inches. What is shown is
// rounded, what is stored is not.
#pragma once

#include "plan/plan.hpp"

#include <expected>
#include <string>
#include <string_view>

namespace gangway::edit {

/// A length without its metric unit, as sheets print it: to the nearest 0.5 mm ("1073", "107.3", "1.073") or
/// to the nearest 1/16 in ("3'-6 1/2\"", "11 13/16\"", "0\""). Half a step rounds away from zero, a sixteenth
/// too many carries to inches and feet, and what rounds to zero has no sign. 1 in = 25.4 mm exactly.
std::string shownLength(double length_mm, plan::DisplayUnits units);
/// With its unit, for sentences and names of steps: "1050 mm", "105 cm", "1.050 m", "3'-5 5/16\"".
std::string lengthInWords(double length_mm, plan::DisplayUnits units);

/// A length as people type it in such a house (edit/length_input.hpp), in mm: a bare number counts the
/// house's unit, inches where it is feet and inches. What shownLength() gives is read back to within half its
/// step. The error says what was not understood and where.
[[nodiscard]] std::expected<double, std::string> parseLengthIn(std::string_view text,
                                                               plan::DisplayUnits units);

} // namespace gangway::edit
