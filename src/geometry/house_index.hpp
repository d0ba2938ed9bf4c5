// A plan's rooms, openings and furniture found by id and by place, so that a question about one room costs
// what is in and around that room, and not what is in the house.
#pragma once

#include "geometry/frames.hpp"

#include <cstdint>
#include <span>
#include <string_view>
#include <unordered_map>

namespace gangway::geometry {

/// Where a stair passes through a ceiling or a floor: the footprint of its flight.
struct StairVoid {
    const plan::Furniture* stair = nullptr;
    std::vector<Vec2> outline_mm; ///< convex, clockwise
    /// FFL of the storey it leads to above the FFL of the room it stands in; not set when there is none.
    std::optional<double> rise_mm;
};

/// Made from a plan in time and memory linear in it. A copy costs as much; the plan must outlive it and stay
/// unchanged. Everything is answered in the plan's order.
class HouseIndex {
public:
    explicit HouseIndex(const plan::Plan& plan);
    /// Only for questions about one room and its walls: scans the plan, keeps what is in and around the room.
    HouseIndex(const plan::Plan& plan, const std::string& room_id);
    explicit HouseIndex(plan::Plan&&) = delete;

    const plan::Plan& plan() const { return *plan_; }
    /// By id; nullptr when there is none.
    const plan::Room* room(const std::string& id) const;
    const plan::Furniture* furniture(const std::string& id) const;

    /// Openings in the walls of a room.
    std::span<const plan::Opening* const> openingsOf(const std::string& room_id) const;
    /// Openings with a leaf that may stand in a room, by what the plan says; its own and others'.
    std::span<const plan::Opening* const> doorsInto(const std::string& room_id) const;
    std::span<const plan::Furniture* const> furnitureIn(const std::string& room_id) const;
    /// What the stairs that stand in a room cut out of its ceiling, and those from below out of its floor.
    std::span<const StairVoid> ceilingVoids(const std::string& room_id) const;
    std::span<const StairVoid> floorVoids(const std::string& room_id) const;

    /// Rooms of a storey that, with their walls and 60 mm of play, may reach into a box on plan.
    std::vector<const plan::Room*> roomsNear(const std::string& storey, Vec2 low_mm, Vec2 high_mm) const;

private:
    struct Entry {
        const plan::Room* room = nullptr;
        Vec2 low_mm, high_mm; ///< with the walls
        std::vector<const plan::Opening*> openings;
        std::vector<const plan::Opening*> doors;
        std::vector<const plan::Furniture*> furniture;
        std::vector<StairVoid> ceiling_voids;
        std::vector<StairVoid> floor_voids;
    };
    struct Cell {
        std::uint32_t storey = 0;
        std::int32_t column = 0;
        std::int32_t row = 0;
        bool operator==(const Cell&) const = default;
    };
    struct CellHash {
        std::size_t operator()(const Cell& cell) const;
    };
    struct Cells {
        std::int32_t first_column, last_column, first_row, last_row;
        bool many() const;
    };

    void addRoom(const plan::Room& room);
    void sortIntoCells();
    void addOpening(const plan::Opening& opening);
    void addStair(const plan::Furniture& piece);
    Cells cellsOf(Vec2 low_mm, Vec2 high_mm) const;
    const Entry* entry(std::string_view room_id) const;
    Entry* entry(std::string_view room_id);

    const plan::Plan* plan_;
    bool whole_ = true; ///< false: kept for one room, others are looked up in the plan
    std::vector<Entry> entries_;
    std::unordered_map<std::string_view, std::uint32_t> by_room_;
    std::unordered_map<std::string_view, const plan::Furniture*> furniture_;
    std::unordered_map<std::string_view, std::uint32_t> storeys_;
    std::unordered_map<Cell, std::vector<std::uint32_t>, CellHash> cells_;
    std::vector<std::uint32_t> large_; ///< rooms that would fill too many cells
    double cell_mm_ = 1000;
};

/// The storey that a stair standing on `lower` leads to: the one whose FFL is nearest to the stair's top,
/// within 500 mm; nullptr for none.
const plan::Storey* storeyReached(const plan::Plan& plan, const plan::Storey& lower,
                                  const plan::Furniture& stair);

} // namespace gangway::geometry
