// Commands on luminaires, one by one and in grids. Lengths mm. Each command is made for the plan given and is
// to be run on that plan; what can't be done comes back as a sentence.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>
#include <variant>
#include <vector>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// The tag the next luminaire of a room gets: its letter and the lowest number not used ("K-L03").
std::string nextLampTag(const plan::Plan& plan, const std::string& room_id);

/// Adds a luminaire; an id or tag that is empty or taken is replaced by a free one. Refused off its host.
Refusable addLuminaire(const plan::Plan& plan, plan::Luminaire luminaire);

/// A luminaire and the host it goes to.
struct LampMove {
    std::string luminaire;
    plan::Host host;
    std::string room; ///< empty: it stays in its room
};
/// Moves luminaires at once; on walls they are held to the wall, elsewhere a place outside the room is
/// refused. Moves of the same ones merge.
Refusable moveLuminaires(const plan::Plan& plan, const std::vector<LampMove>& moves);
/// Legs that fed them forget them.
Refusable removeLuminaires(const plan::Plan& plan, const std::vector<std::string>& luminaire_ids);
/// Replaces a luminaire of the same id. `what` names the step.
Refusable changeLuminaire(const plan::Plan& plan, plan::Luminaire luminaire, const std::string& what,
                          const std::string& merge_key = {});

/// An upright rectangle on plan between its south-west and north-east corners.
struct PlanRectangle {
    plan::Vec2 low_mm;
    plan::Vec2 high_mm;
};
/// Points in equal spacing with half a spacing at the edges (common practice, no source): row by row from the
/// south, each from the west.
std::vector<plan::Vec2> gridPoints(const PlanRectangle& over, int rows, int columns);
/// The largest upright rectangle inside the outline of a room with square corners; the bounding box of any
/// other room.
PlanRectangle gridRectangle(const plan::Room& room);

struct LampGrid {
    std::string room;
    int rows = 1;         ///< counted northwards, or towards the back of a piece
    int columns = 1;      ///< counted eastwards, or along its front
    plan::Luminaire like; ///< what each one is; id, tag, room and place are given by the grid
    /// What the grid is laid over: the room's own rectangle, one in house coordinates, or the top of a piece
    /// of furniture by its id.
    std::variant<std::monostate, PlanRectangle, std::string> over;
};
/// Adds luminaires in a grid on the ceiling of a room (on the floor when `like` is on a floor). Points
/// outside the room or in a column are left out; refused when none is left.
Refusable gridLuminaires(const plan::Plan& plan, const LampGrid& grid);

} // namespace gangway::edit
