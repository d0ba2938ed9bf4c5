// Commands on furniture. Lengths mm, angles degrees. Each command is made for the plan given and is to be run
// on that plan; what can't be done comes back as a sentence.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <optional>
#include <string>
#include <vector>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// A piece of a kind of the table (plan/furniture_kinds.hpp) in its usual size, or of a glTF file with the
/// size given; not yet placed. The error names a kind that is not known.
std::expected<plan::Furniture, std::string> usualPiece(const std::string& kind);
plan::Furniture pieceFromFile(const std::string& gltf_file, plan::Size3 size);

/// Adds a piece. An id that is empty or taken is replaced by a free one; an empty room becomes the one of
/// `storey` (empty: the first storey) that `at_mm` lies in.
Refusable addFurniture(const plan::Plan& plan, plan::Furniture piece, const std::string& storey = {});

/// Where a piece stands.
struct Stand {
    plan::Vec2 at_mm;
    double turn_deg = 0;
    bool operator==(const Stand&) const = default;
};
/// Moves and turns a piece with the plates and lamps mounted on it and the devices in it; over another room
/// of the storey all of them belong to that room. Moves of one piece merge ("Move bed by 340 mm").
Refusable moveFurniture(const plan::Plan& plan, const std::string& piece_id, const Stand& stand);
/// Turns a piece about its middle to an angle, counter-clockwise seen from above; merges.
Refusable turnFurniture(const plan::Plan& plan, const std::string& piece_id, double turn_deg);
/// Gives a piece a size about its middle. What is mounted on it stays on its face. Merges.
Refusable resizeFurniture(const plan::Plan& plan, const std::string& piece_id, plan::Size3 size);
/// Sets one of the values its kind takes; the kind's own value takes the key away. Merges.
Refusable setFurnitureValue(const plan::Plan& plan, const std::string& piece_id, const std::string& key,
                            double value);
/// Replaces a piece of the same id; it stays in its place and room unless it says otherwise. `what` names the
/// step.
Refusable changeFurniture(const plan::Plan& plan, plan::Furniture piece, const std::string& what,
                          const std::string& merge_key = {});

/// Removes pieces with what is mounted on them; the name says so: "Remove bed with 2 plates". Devices in them
/// stay.
Refusable removeFurniture(const plan::Plan& plan, const std::vector<std::string>& piece_ids);
/// Adds a copy of each piece, moved by `offset_mm`, without what is mounted on it.
Refusable duplicateFurniture(const plan::Plan& plan, const std::vector<std::string>& piece_ids,
                             plan::Vec2 offset_mm);

/// Where a piece would stand with its back against the nearest wall of its room, when some of it is within
/// 150 mm of that wall; nullopt when no wall is so near. It stays beside the wall's ends where it fits.
std::optional<Stand> snapToWall(const plan::Plan& plan, const plan::Furniture& piece);

} // namespace gangway::edit
