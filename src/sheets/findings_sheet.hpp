// Findings on sheets: by room, each with what it is about, what was measured, why, and what would settle it;
// then those that are accepted, and what was looked at and what was not.
#pragma once

#include "catalogue/pack.hpp"
#include "plan/finding.hpp"
#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets F-01, F-02...; one even when nothing was found. `findings`: of this plan by this pack, as
/// checks::check() gives them. Of `options`, paper, room and base count; findings about the house as a whole
/// stand on the sheets of the whole house only. The error is a sentence: an unknown paper or room.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
findingsSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
               const catalogue::CountryPack& pack, const std::vector<plan::Finding>& findings,
               const Options& options = {});

} // namespace gangway::sheets
