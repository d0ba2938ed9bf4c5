// The entrances of a house kept by room, and for longer than the plan they were made from.
#pragma once

#include "switching/entrances.hpp"

#include <unordered_map>

namespace gangway::switching {

/// Entrances depend on rooms and openings only. Not to be copied: rooms point to entrances.
class Doorways {
public:
    explicit Doorways(const geometry::HouseIndex& house);
    Doorways(const Doorways&) = delete;
    Doorways& operator=(const Doorways&) = delete;

    /// Speaks of the openings of another plan, which has the same rooms and openings as the one before.
    void pointTo(const plan::Plan& plan);
    const std::vector<Entrance>& all() const { return all_; }
    /// Those that lead into a room.
    const std::vector<const Entrance*>& into(const std::string& room_id) const;

private:
    std::vector<Entrance> all_;
    std::vector<std::size_t> openings_; ///< of each entrance, the place of its opening in the plan
    std::unordered_map<std::string, std::vector<const Entrance*>> into_;
};

} // namespace gangway::switching
