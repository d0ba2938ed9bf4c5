// Sockets along walls and worktops: runs without a break, how far their points are from a socket, how many
// sockets they need. Lengths in mm, areas in m2. The rules are those of NEC 210.52(A) and (C), by trade facts
// 3.1 to 3.8; every number is the country pack's.
#pragma once

#include "checks/point.hpp"

namespace gangway::checks {

/// A length of wall or worktop without a break, and where on it the sockets are that serve it.
struct Run {
    double length_mm = 0;
    bool closed = false;            ///< goes round without any break
    std::vector<double> sockets_mm; ///< from its start, in order
};

/// None below `least_mm`, else one for each `2 reach_mm` begun: a socket serves that far to both sides.
int socketsNeeded(double length_mm, double least_mm, double reach_mm);
/// Of an island: one for the first `first_m2`, one more for each further `next_m2` begun. 0 when `first_m2`
/// is.
int islandSocketsNeeded(double area_m2, double first_m2, double next_m2);

/// The point of a run that is farthest from a socket, along the run; one without sockets is as far as it is
/// long.
struct Farthest {
    double distance_mm = 0;
    double at_mm = 0; ///< from the run's start
};
Farthest farthestPoint(const Run& run);

/// A room's outline as one line, clockwise from its first corner: measured round its corners.
class Perimeter {
public:
    struct Place {
        std::size_t wall = 0;
        double u_mm = 0;
    };
    explicit Perimeter(const plan::Room& room);
    double length_mm() const { return starts_.back(); }
    double along(std::size_t wall, double u_mm) const { return starts_[wall] + u_mm; }
    /// Past the end it goes on at the beginning.
    Place placeAt(double along_mm) const;

private:
    std::vector<double> starts_; ///< of each wall, then the whole length
};

/// A run and where on the perimeter it begins; it may pass the perimeter's end.
struct PlacedRun {
    Run run;
    double start_mm = 0;
    std::vector<const Point*> points; ///< of run.sockets_mm, the same order
    /// From the run's start to a place on the perimeter; nullopt when it is not on the run.
    std::optional<double> offsetOf(double along_mm, double whole_mm) const;
};

/// What is left of `covered` without `broken`, both on a line of `whole_mm` that closes to a ring; pieces
/// that touch are one.
std::vector<PlacedRun> runsOf(std::vector<Interval> covered, const std::vector<Interval>& broken,
                              double whole_mm);

/// The extent of a part of a piece along a wall, `width_mm` wide and `offset_mm` to the right of the piece's
/// middle.
struct Along {
    Interval u;
    double near_mm = 0; ///< from the wall
    double far_mm = 0;
};
Along alongWall(const geometry::Frame& wall, const plan::Furniture& piece, double width_mm, double offset_mm);

/// A top that one works at, along the wall it stands at.
struct Top {
    std::size_t wall = 0;
    Interval u;
    double top_mm = 0;   ///< above FFL
    double depth_mm = 0; ///< from the wall to its front edge
};
std::vector<Top> topsAlong(const Facts& facts, const plan::Room& room);
/// The top that a plate on a wall hangs over, nullptr for none; `high_mm`: what hangs higher does not count.
const Top* topUnder(const std::vector<Top>& tops, const plan::Room& room, const Point& point, double high_mm);

/// The room's wall line: broken by doors, openings to the floor and what is fixed to the wall and stands on
/// the floor; windows do not break it (210.52(A)(2)). With the sockets that serve it: on the wall, not higher
/// than the pack's spacingHighest, or in the floor nearer than spacingFloor; not those that a switch works.
std::vector<PlacedRun> wallRuns(const Facts& facts, const plan::Room& room);
/// The room's worktops along its walls, with the sockets over them up to `high_mm` above the top. Broken by
/// hobs and sinks where `split` (210.52(C)); what is no worktop breaks them anyway.
std::vector<PlacedRun> counterRuns(const Facts& facts, const plan::Room& room, bool split, double high_mm);

} // namespace gangway::checks
