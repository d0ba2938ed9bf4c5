// What becomes of a page on the way to the site: a copier's black and white, an A3 printed on A4; and what on
// it belongs to which object.
#pragma once

#include "drawing/bounds.hpp"
#include "drawing/drawing.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace gangway::app {

/// A3 printed on A4: 1 / sqrt(2) (ISO 216).
inline constexpr double kA3OnA4 = 0.70710678118654752;
/// Lettering under this height is not to be relied on (ISO 3098-1, as drawing-standards.md has it).
inline constexpr double kLeastLettering_mm = 2.5;

/// The grey a copier makes of a colour, 0 black to 255 white: by its brightness, light tints lost and dark
/// ones full. Common practice, no source.
std::uint8_t copied(drawing::Colour colour);
/// The sheet in such greys only. Of the drawing and not of its pixels: a thin black line stays black, however
/// small it is looked at.
drawing::Sheet copied(drawing::Sheet sheet);

/// "A3", or its size where it has no such name; and "1:20", or all scales of its views, or nothing.
std::string paperName(const drawing::Sheet& sheet);
std::string scaleWords(const drawing::Sheet& sheet);
/// True for a page of A3's size, whichever way it lies.
bool isA3(const drawing::Sheet& sheet);

/// Texts that come out smaller than kLeastLettering_mm when the page is printed `factor` times as large. The
/// 3.5 of drawings becomes 2.47, which passes: sizes of ISO 3098 are rounded steps of sqrt(2).
struct SmallTexts {
    std::vector<drawing::Bounds> boxes; ///< on the page, in its own mm
    double smallest_mm = 0;             ///< as printed; 0: there are none
};
SmallTexts smallTexts(const drawing::Sheet& sheet, double factor);

/// Ids of what the sheet draws and `wanted` says yes to, each once, in reading order: rows from the top, each
/// from left to right. Only where something of it is drawn in a view.
std::vector<std::string> objectsOn(const drawing::Sheet& sheet,
                                   const std::function<bool(const std::string& id)>& wanted);
/// Around each drawing of an object on the sheet, its texts and dimensions left aside: one for each view that
/// shows it.
std::vector<drawing::Bounds> outlinesOf(const drawing::Sheet& sheet, const std::string& id);

/// Whether something is marked as changed since an older state of the plan.
bool marksChange(const drawing::Sheet& sheet);

} // namespace gangway::app
