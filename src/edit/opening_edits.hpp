// Commands on doors, windows and other holes in walls. Lengths mm. Each command is made for the plan given
// and is to be run on that plan; what can't be done comes back as a sentence.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>
#include <vector>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// An opening of that kind in the usual size (common practice, no source), without id or place.
plan::Opening usualOpening(plan::Opening::Kind kind);

/// Adds an opening to its room and wall as near as possible to its `left_mm`: on the wall and clear of other
/// openings in it, from either side. An id that is empty or taken is replaced by a free one; `joins`, when
/// empty, becomes the room found behind the wall. Refused where no gap of the wall is wide enough.
Refusable addOpening(const plan::Plan& plan, plan::Opening opening);

/// Slides an opening along its wall to the nearest free place; moves of one opening merge ("Move door 'hall'
/// by 120 mm").
Refusable moveOpening(const plan::Plan& plan, const std::string& opening_id, double left_mm);

struct OpeningSize {
    double left_mm = 0; ///< structural edges
    double width_mm = 0;
    double sill_mm = 0;
    double height_mm = 0;
};
/// Gives an opening other edges; its leaves take up the difference in width. Refused off the wall, over
/// another opening, above the ceiling, or where frame or leaf would have no width left. Merges.
Refusable resizeOpening(const plan::Plan& plan, const std::string& opening_id, const OpeningSize& size);

/// Replaces an opening of the same id. `what` names the step: "Rename door 'hall'". Commands with one merge
/// key merge.
Refusable changeOpening(const plan::Plan& plan, plan::Opening opening, const std::string& what,
                        const std::string& merge_key = {});
/// The other hand: a hinged door's hinge, or the side where another leaf parks.
Refusable swapHinge(const plan::Plan& plan, const std::string& opening_id);
/// Into the room, or out of it; hinged doors only.
Refusable swapSwing(const plan::Plan& plan, const std::string& opening_id);
/// Another kind in the same hole, with that kind's usual frame, leaf and cavity.
Refusable changeOpeningKind(const plan::Plan& plan, const std::string& opening_id, plan::Opening::Kind kind);

/// Plates kept at a distance from them stay where they are.
Refusable removeOpenings(const plan::Plan& plan, const std::vector<std::string>& opening_ids);

} // namespace gangway::edit
