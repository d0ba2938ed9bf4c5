// Proposals for switching a room: where a switch would go and what it would feed. Never applied by itself.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "switching/net.hpp"

namespace gangway::switching {

struct Suggestion {
    /// A module of a plate that is there already, to be another type.
    struct ModuleChange {
        std::string plate;
        int module = 1; ///< from 1
        std::string type;
    };
    std::string title; ///< "Two-way at both doors of the hall for its 3 ceiling lamps"
    std::string why;   ///< in a sentence or two, with its source
    std::string room;
    std::vector<plan::Plate> plates; ///< new ones, with ids and tags that are free, not yet in the plan
    std::vector<ModuleChange> changes;
    plan::SwitchLeg leg; ///< a new one, or one of the plan by its id with what it would be
    bool new_leg = true;
};

/// Proposals for the lamps of a room that no way works yet, and for legs of it whose positions fall short:
/// one door: a one-way switch on its latch side feeding the room's ceiling lamps; two doors: two-way at both;
/// a bed: two-way at both bedsides and the door, with intermediates between. A position that stands in the
/// wall already and has a free way is used before a new plate is proposed. Places keep clear of casings,
/// other plates, furniture and open leaves where they can; a proposal whose place is not free says so in
/// `why`.
std::vector<Suggestion> suggest(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                const catalogue::CountryPack& pack, const std::string& room_id);

} // namespace gangway::switching
