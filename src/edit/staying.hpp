// Whether a plate stays within its wall and room. Private to src/edit.
#pragma once

#include "catalogue/catalogue.hpp"
#include "edit/plate_edits.hpp"

#include <expected>
#include <optional>
#include <string>
#include <vector>

namespace gangway::edit::detail {

/// A sentence when a plate, as large as the catalogue composes it, would pass the ends, the floor or the
/// ceiling of its host, or lie outside its room; nullopt when it stays.
std::optional<std::string> leavesHost(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                      const plan::Plate& plate);

/// The plates of these ids in their order, each once; the error names one that is not in the plan, or says
/// that there are too few.
std::expected<std::vector<const plan::Plate*>, std::string>
platesOf(const plan::Plan& plan, const std::vector<std::string>& ids, std::size_t least = 1);

/// "K-04", "3 plates"
std::string wordsFor(const std::vector<const plan::Plate*>& plates);

/// Moves plates and adds plates as one step; refused when one of them would leave its host. Added plates come
/// with the id and tag of what they are copies of, to be named by, and are given the next free ones.
std::expected<Command, std::string> arranged(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                             std::string name, std::vector<PlateMove> moves,
                                             std::vector<plan::Plate> added = {});

} // namespace gangway::edit::detail
