// Ways of leads over the floor of a room, and what a way is. Only for this folder.
#pragma once

#include "checks/point.hpp"

#include <optional>

namespace gangway::checks {

/// What a lead lies across where it should not.
struct Crossing {
    enum class What { Door, Lane, Hob, Sink };
    What what = What::Door;
    std::string id;   ///< of the opening or piece; of the first opening of a walking way
    std::string name; ///< "kitchen door"; of a walking way "kitchen door and garden door"
};

struct LeadWay {
    double length_mm = 0;
    std::vector<plan::Vec3> points_mm; ///< from the exit to the outlet, house x, y, z above FFL
    std::vector<Crossing> crossings;   ///< each once
};

/// The floor of a room with what is fixed on it, for leads that lie square to the room's first wall.
class LeadFloor {
public:
    LeadFloor(const Facts& facts, const plan::Room& room);

    /// Shortest way on the floor; nullopt when there is none. Not through fixed furniture, but along walls
    /// behind it; pieces that hold one of the ends are left out. `clean`: only ways that cross no doorway and
    /// no walking way. Points have z 0.
    std::optional<LeadWay> way(plan::Vec2 from_mm, plan::Vec2 to_mm, bool clean) const;
    /// Least length of any such way.
    double atLeast(plan::Vec2 from_mm, plan::Vec2 to_mm) const;

private:
    struct Box {
        plan::Vec2 low, high; ///< in the room's own directions
    };
    struct Doorway {
        plan::Vec2 a, b;           ///< on the wall's face, own directions
        plan::Vec2 middle, before; ///< and from its middle as far into the room as a walking way is wide
        Crossing crossing;
    };
    struct Lane {
        std::vector<plan::Vec2> points; ///< own directions
        Crossing crossing;
    };
    struct Search;

    plan::Vec2 own(plan::Vec2 house_mm) const;
    plan::Vec2 house(plan::Vec2 own_mm) const;
    std::vector<Box> boxesFor(plan::Vec2 from, plan::Vec2 to) const;
    bool onWall(plan::Vec2 a, plan::Vec2 b) const;
    bool passes(plan::Vec2 a, plan::Vec2 b, const std::vector<Box>& boxes) const;
    void addCrossings(plan::Vec2 a, plan::Vec2 b, std::vector<Crossing>& crossings) const;
    const std::vector<Lane>& lanes() const;

    const Facts& facts_;
    const plan::Room& room_;
    plan::Vec2 right_{1, 0};                               ///< along the first wall
    std::vector<std::pair<plan::Vec2, plan::Vec2>> edges_; ///< of outline and columns, own directions
    std::vector<Box> fixed_;
    std::vector<Doorway> doorways_;
    mutable std::optional<std::vector<Lane>> lanes_; ///< made when first asked for
};

/// Adds a crossing unless it is there.
void addOnce(std::vector<Crossing>& crossings, const Crossing& crossing);
/// A hole that one walks through: it goes down to the floor.
bool isToFloor(const geometry::FaceHole& hole);

} // namespace gangway::checks
