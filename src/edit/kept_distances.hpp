// Distances that are kept: from a corner, an opening's edge, a piece of furniture or another plate to a
// plate, so that the plate follows when that moves.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>
#include <vector>

namespace gangway::edit {

enum class Along { U, V }; ///< the direction of the host that a kept distance holds: along it, or in height

/// Where the edge that a distance is kept from lies in the (u, v) frame of the plate's host, mm. A door's
/// edge is its casing's outer edge (design.md 9). The error is a sentence naming what is missing.
std::expected<double, std::string> keptEdge(const plan::Plan& plan, const plan::Plate& plate,
                                            const plan::KeptDistance& kept, Along along);

/// Something a distance of a plate can be kept from, for a list to choose from.
struct KeepChoice {
    plan::KeptDistance kept; ///< with the distance as it is now
    std::string name;        ///< "left corner", "door to the hall, right edge", "K-02"
};
/// Everything on the plate's host it can be kept from in that direction, nearest first: corners or floor,
/// openings, furniture that stands at the wall, other plates. Only things of the plate's own room.
std::vector<KeepChoice> keepChoices(const plan::Plan& plan, const plan::Plate& plate, Along along);
/// "85 from the door to the hall, right edge"
std::string keptSentence(const plan::Plan& plan, const plan::KeptDistance& kept, Along along);

/// Keeps a plate at a distance from something. The plate moves there at once. Refused (the error is a
/// sentence) when the reference is not there or would, through others, follow the plate itself.
std::expected<Command, std::string> keepDistance(const plan::Plan& plan, const std::string& plate_id,
                                                 const plan::KeptDistance& kept, Along along);
/// Cuts the link; the plate stays.
Command cutLink(const plan::Plan& plan, const std::string& plate_id, Along along);

} // namespace gangway::edit
