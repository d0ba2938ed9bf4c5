// Bars: what a plate's centre is kept away from on a wall. Every rule about a place on a wall is a bar, so
// that the same numbers find what is wrong, say where there is room, and by how much a right place is right.
//
// All in the wall's (u, v), mm.
#pragma once

#include "plan/finding.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gangway::checks {

struct Interval {
    double from_mm = 0;
    double to_mm = 0;
    bool operator==(const Interval&) const = default;
};

/// Free space wanted between a plate's edge and an area, by the side of the area that the plate is on.
struct Keep {
    double left_mm = 0;
    double right_mm = 0;
    double below_mm = 0;
    double above_mm = 0;
};
inline Keep keepAround(double mm) {
    return {mm, mm, mm, mm};
}

struct Bar {
    std::string rule; ///< id of the rule (checks.hpp)
    plan::Severity severity = plan::Severity::Warn;
    std::string object;              ///< id of what bars: furniture, opening, plate, room
    std::string name;                ///< as a person says it: "radiator"
    std::vector<plan::Vec2> area_mm; ///< convex, counter-clockwise
    Keep keep;
    std::optional<double> value_mm; ///< what was measured, when it is not the free space: a depth
    double limit_mm = 0;            ///< what that is held against; else the side's Keep
    std::string why;                ///< "a straight plug needs 55 mm": ends the sentence of a finding
    std::string source;
    bool proven_elsewhere = false; ///< closes gaps, but the switching proof reports it
};

/// Two bars over one area: over it at all, and, less badly, nearer to it than `keep`.
void addOverAndNear(std::vector<Bar>& bars, Bar over, plan::Severity near, const Keep& keep);

/// Centres u at which a plate of half size `half_mm` at height v comes nearer to the area than the bar keeps
/// free; both ends are themselves free. nullopt: none at that height. Exact for convex areas.
std::optional<Interval> barredAlong(const Bar& bar, plan::Vec2 half_mm, double v_mm);
/// The same for heights v at a place u.
std::optional<Interval> barredUp(const Bar& bar, plan::Vec2 half_mm, double u_mm);

/// How far a plate's centre may be out in both directions at once before the plate comes nearer to the area
/// than the bar keeps free; less than 0 when it does. Exact for convex areas: the rectangle and the area are
/// parted by an edge of one of them (separating axes; Ericson, Real-Time Collision Detection, 2005, 5.2), and
/// growing the rectangle by e closes e (|nx| + |ny|) across an edge with the normal n.
double playOf(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm);
/// The same to the area itself: the free space beside or over it, less than 0 when the plate reaches over it.
double gapTo(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm);
/// How much of a plate's width lies over the area.
double overlapAlong(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm);

/// Nearest points of two convex areas, the first's first; where they overlap, the ends of the shorter way out
/// along u: from the first's edge to the second's.
std::pair<plan::Vec2, plan::Vec2> nearestPoints(const std::vector<plan::Vec2>& a,
                                                const std::vector<plan::Vec2>& b);

/// A rectangle as an area.
std::vector<plan::Vec2> rectangle(double left_mm, double right_mm, double bottom_mm, double top_mm);

} // namespace gangway::checks
