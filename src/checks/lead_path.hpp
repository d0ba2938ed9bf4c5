// Ways of leads: from where a lead leaves its device to an outlet, along the faces of walls and the floor.
// Only for this folder.
#pragma once

#include "checks/lead_floor.hpp"
#include "checks/point.hpp"

namespace gangway::checks {

/// A room made ready for leads, in time linear in its walls and furniture. Facts must outlive it.
class LeadRoom {
public:
    LeadRoom(const Facts& facts, const plan::Room& room);

    /// The way a lead takes from a device to a plate of this room: the shortest that crosses nothing when the
    /// lead is long enough for it with the pack's slack, else the shortest of all. Along walls and on the
    /// floor leads lie square, so on one wall it measures |du| + |dv| + |dw|. A device further from all walls
    /// than a worktop's depth lets its lead down to the floor first. Where no way is found (the device is in
    /// another room) that measure is taken straight to the plate's own wall.
    LeadWay way(const plan::Device& device, const plan::Plate& plate) const;

private:
    /// A stretch of a wall that is not free for leads: an opening, or the wall behind a hob or sink.
    struct Span {
        double from_mm = 0; ///< along the wall
        double to_mm = 0;
        double low_mm = 0;
        double high_mm = 0;
        std::optional<Crossing> crossing; ///< not set: a window; leads go under or over it
        bool to_floor = false;
    };
    struct WallPart {
        geometry::Frame frame;
        std::size_t loop = 0; ///< the outline, or a column
        double start_mm = 0;  ///< of its left corner along the loop
        std::vector<Span> spans;
    };
    struct Foot {
        std::size_t wall = 0;
        double u_mm = 0;
        double v_mm = 0;
        double out_mm = 0;
    };

    /// What a way along the walls comes by.
    struct Band {
        double way_mm = 0;
        std::vector<const Span*> spans;
        std::vector<std::pair<double, plan::Vec3>> corners; ///< by the way to them; at FFL
    };
    /// The height a way keeps along the walls.
    struct Level {
        double v_mm = 0;
        double upright_mm = 0; ///< up and down to it at both ends
        std::vector<Crossing> crossings;
    };

    std::vector<Span> spansOf(std::size_t wall, const geometry::Frame& frame) const;
    std::vector<Foot> feetOf(plan::Vec3 at_mm) const;
    Band bandFrom(std::size_t loop, double begin_mm, double way_mm) const;
    static std::optional<Level> levelOf(const Band& band, double from_v_mm, double to_v_mm);
    std::optional<LeadWay> along(plan::Vec3 exit_mm, const Foot& from, const Foot& to, bool forward) const;
    void addWallWays(plan::Vec3 exit_mm, const plan::Plate& plate, std::vector<LeadWay>& ways) const;
    void addCeilingWays(plan::Vec3 exit_mm, plan::Vec3 to_mm, std::vector<LeadWay>& ways) const;
    void addFloorWays(const plan::Device& device, plan::Vec3 to_mm, const plan::Plate& plate,
                      std::vector<LeadWay>& ways) const;

    const Facts& facts_;
    const plan::Room& room_;
    std::vector<WallPart> walls_;
    std::vector<double> loop_mm_; ///< length of each loop
    LeadFloor floor_;
};

/// "the doorway of kitchen door", "the walking way ...": what a way crosses, in words.
std::string crossingWords(const LeadWay& way);

} // namespace gangway::checks
