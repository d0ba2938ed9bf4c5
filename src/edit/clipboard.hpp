// Plates, furniture and luminaires as a text for the clipboard, and back into this plan or another one.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// Ids of what is copied. What is mounted on a piece is copied only when it is named too.
struct Selection {
    std::vector<std::string> plates;
    std::vector<std::string> furniture;
    std::vector<std::string> luminaires;
    bool empty() const { return plates.empty() && furniture.empty() && luminaires.empty(); }
};

/// The chosen things as text: a small plan file (plan/io.hpp) with a mark of its own, holding them, the rooms
/// and pieces they are on and the formats they need. The error names an id that is not in the plan.
std::expected<std::string, std::string> copyToText(const plan::Plan& plan, const Selection& selection);
/// Whether a text was made by copyToText().
bool isClip(std::string_view text);

/// Where a paste goes.
struct PasteTarget {
    std::string room; ///< empty: the rooms it came from, by their ids
    /// Host and place of the first plate or luminaire; the others keep their distance from it. Not set: the
    /// wall of the same name, the floor, the ceiling, or the piece it was on, in the target room.
    std::optional<plan::Host> host;
    plan::Vec2 offset_mm; ///< added to every place: along the host's u and v, for furniture east and north
};
/// Adds what a text holds, with ids and tags of its own, in one step. A format of the designer's that this
/// plan lacks comes along, under another id when that one means something else here. Links to what was not
/// copied are cut. Refused, with a sentence, for a text that is not ours and where a host is missing.
Refusable paste(const plan::Plan& plan, std::string_view text, const PasteTarget& target);

/// Copies and pastes within one plan, moved by `offset_mm` as in a paste.
Refusable duplicate(const plan::Plan& plan, const Selection& selection, plan::Vec2 offset_mm);

} // namespace gangway::edit
