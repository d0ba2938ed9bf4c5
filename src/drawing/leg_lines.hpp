// Lines that join symbols on a plan and keep off words and other symbols: straight, as arcs, or square.
#pragma once

#include "drawing/drawing.hpp"

#include <functional>
#include <span>
#include <vector>

namespace gangway::drawing {

/// An upright box on paper, mm.
struct PaperBox {
    double left = 0, bottom = 0, right = 0, top = 0;
    Pt middle() const { return {(left + right) / 2, (bottom + top) / 2}; }
    bool operator==(const PaperBox&) const = default;
};

/// Arc: one quadratic curve; its usual sag is 0.15 of the chord (drawing-standards section 3, our proposal).
/// Rounded, Square: two or three runs along the sheet's axes.
enum class LegShape { Straight, Arc, Rounded, Square };
inline constexpr double kLegSag = 0.15;

/// Symbols are left and met radially: the line is aimed at the middle and begins at the symbol's edge.
struct LegEnd {
    PaperBox symbol;
    bool round = false; ///< the circle inside the box counts as its edge
};

struct LegLine {
    std::vector<Pt> points; ///< none when the symbols touch
    double covered_mm = 0;  ///< how much of it runs through obstacles
};

/// A quadratic curve whose middle lies `sag_part` of the chord to the left of from->to (negative: right).
std::vector<Pt> arcPoints(Pt from, Pt to, double sag_part);

/// Runs along x and y through the points, with quarter turns of `radius_mm` (less where a run is short); 0:
/// square corners.
std::vector<Pt> roundedRuns(const std::vector<Pt>& corners, double radius_mm);

/// Length of a line inside a box, mm.
double lengthInside(std::span<const Pt> line, const PaperBox& box);

/// The best of several lines of a shape: the least length through `obstacles` and outside `wanted` (the
/// room; empty: anywhere), then the usual sag. A box that is an end's own symbol is no obstacle. `beside` are
/// lines between the same symbols that were drawn before: it keeps off them where its shape allows.
LegLine legLine(LegShape shape, const LegEnd& from, const LegEnd& to, std::span<const PaperBox> obstacles,
                const std::function<bool(Pt)>& wanted = {}, std::span<const std::vector<Pt>> beside = {});

} // namespace gangway::drawing
