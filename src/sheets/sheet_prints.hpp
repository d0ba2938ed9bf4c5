// Prints of sheets: what a sheet shows, as a hash, by which the next issue knows the unchanged ones.
#pragma once

#include "sheets/sheet_set.hpp"

namespace gangway::sheets {

/// Hash of each sheet, by its number: everything on it but counts of pages ("7 / 12"). Drawn from a plan
/// without its stamps (review::unstamped), two sheets have one print when an electrician sees no difference.
std::vector<plan::IssuedSheet> printsOf(const std::vector<drawing::Drawing>& set);

/// The whole set but its cover, in its order, without the kinds that the house has nothing for.
[[nodiscard]] std::expected<std::vector<drawing::Drawing>, std::string> wholeSet(const SetInput& input);

/// Prints of the whole set as it would be issued now: drawn without stamps and marks, with nothing chosen but
/// the datum. Of `input`, plan, catalogue, pack, findings and of its options base and datum count.
[[nodiscard]] std::expected<std::vector<plan::IssuedSheet>, std::string> setPrints(const SetInput& input);

} // namespace gangway::sheets
