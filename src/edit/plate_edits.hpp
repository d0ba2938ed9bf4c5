// Commands on plates: new ones, changed ones, moved ones, removed ones.
#pragma once

#include "edit/edit.hpp"

#include <string>
#include <vector>

namespace gangway::edit {

/// Adds a plate. An empty id or tag, or one that is taken, is given the next free one of its room ("K-05").
Command addPlate(const plan::Plan& plan, plan::Plate plate);
/// The id and tag the next plate of a room gets: the room's letter and the lowest number not used.
std::string nextTag(const plan::Plan& plan, const std::string& room_id);
std::string freePlateId(const plan::Plan& plan, const std::string& wanted);
/// Removes plates; legs and devices that named them forget them.
Command removePlates(const plan::Plan& plan, const std::vector<std::string>& plate_ids);
/// Replaces a plate's contents: format, direction, gangs, modules, finish and box stay with `contents`; where
/// it is, its id, tag and what it is for stay with the plate.
Command recomposePlate(const plan::Plan& plan, const std::string& plate_id, const plan::Plate& contents);
/// Replaces everything but the id. `what` names the step: "Rename K-04".
Command changePlate(const plan::Plan& plan, plan::Plate plate, const std::string& what,
                    const std::string& merge_key = {});

/// A plate and the host it goes to.
struct PlateMove {
    std::string plate;
    plan::Host host;
    std::string room; ///< empty: it stays in its room
};
/// Moves plates at once, to other hosts and rooms too; moves of the same plates in a row are one undo step,
/// named by the whole way ("Move K-04 by 71 mm"). Kept distances take the new value; a link to something that
/// is not at the new host is cut.
Command movePlates(const plan::Plan& plan, const std::vector<PlateMove>& moves);
/// Within its host to (u, v).
Command movePlate(const plan::Plan& plan, const std::string& plate_id, double u_mm, double v_mm);
/// By so many mm along and up, each within its host; for arrow keys.
Command nudgePlates(const plan::Plan& plan, const std::vector<std::string>& plate_ids, double du_mm,
                    double dv_mm);
/// Where the plan symbol was dragged to, from the plate's own place; nullopt puts it back.
Command moveSymbol(const plan::Plan& plan, const std::string& plate_id,
                   const std::optional<plan::Vec2>& offset_mm);

} // namespace gangway::edit
