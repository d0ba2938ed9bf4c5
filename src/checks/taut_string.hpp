// The shortest way on plan from a bath or shower to a place in its room, round what stands between: a string
// pulled taut (IEC 60364-7-701, 701.30).
#pragma once

#include "plan/plan.hpp"

#include <vector>

namespace gangway::checks {

/// A fixed partition on plan, as the line of its middle, house mm.
struct Partition {
    plan::Vec2 from_mm;
    plan::Vec2 to_mm;
};

/// Exact to 0.01 mm: straight, or round ends of partitions and the room's corners. The room's walls are
/// partitions too.
class TautString {
public:
    /// `from_mm`: a convex outline, clockwise, or one point, house mm, inside the room. The room must outlive
    /// it. A partition that ends 20 mm or less before a wall or another partition is joined to it.
    TautString(const plan::Room& room, std::vector<plan::Vec2> from_mm, std::vector<Partition> partitions);

    /// Length of the string to a place in the room, 0 inside the outline; infinite when partitions close the
    /// outline off.
    double to(plan::Vec2 at_mm) const;
    /// Nothing can be between: the room is convex and has no partition.
    bool alwaysStraight() const { return edges_.empty(); }

private:
    struct Node {
        plan::Vec2 at_mm;     ///< a hair away from the corner, for seeing
        plan::Vec2 corner_mm; ///< for measuring
        double string_mm = 0; ///< to the outline
    };
    void addNodes(plan::Vec2 corner_mm);
    void measureNodes();
    bool sees(plan::Vec2 from_mm, plan::Vec2 to_mm) const;
    double straight(plan::Vec2 seen_from_mm, plan::Vec2 corner_mm) const;
    plan::Vec2 offWalls(plan::Vec2 at_mm) const;

    const plan::Room* room_;
    std::vector<plan::Vec2> from_;
    plan::Vec2 middle_;
    std::vector<Partition> edges_; ///< of the room and its partitions, drawn out by a hair
    std::vector<Node> nodes_;
};

} // namespace gangway::checks
