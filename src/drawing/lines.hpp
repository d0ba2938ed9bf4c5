// Line types by ISO 128-2 laid on real lines: which stretches of a polyline take a dash pattern of their own,
// so that corners and ends always carry a dash.
#pragma once

#include "drawing/drawing.hpp"

#include <vector>

namespace gangway::drawing {

/// A stretch of a polyline drawn with one pattern. An empty pattern is a continuous line.
struct DashRun {
    std::vector<Pt> points;
    bool closed = false;
    std::vector<double> pattern_mm; ///< dash, gap, ... starting with a dash at the first point
};

/// Splits a polyline at its corners (turns of more than 30 degrees); between two corners the pattern is
/// stretched to begin and end on a dash. A continuous pen gives one run, the polyline itself.
std::vector<DashRun> dashRuns(const std::vector<Pt>& points, bool closed, const Pen& pen);

/// The pattern for a closed smooth line (a circle) of that length: a whole number of repeats.
std::vector<double> dashPatternAround(const Pen& pen, double length_mm);

/// The dash, gap, dash ... of a pen in mm where nothing is stretched, for formats whose readers lay dashes
/// themselves; empty: a continuous line.
std::vector<double> dashes(const Pen& pen);

/// After how many mm a pen's dashes come again where nothing is stretched; 0: a continuous line.
double repeat(const Pen& pen);

double length(const std::vector<Pt>& points, bool closed);

} // namespace gangway::drawing
