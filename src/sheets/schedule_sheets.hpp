// Schedules on sheets: what is where over the whole width, then what to order.
#pragma once

#include "catalogue/pack.hpp"
#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets ...: plates, luminaires, legs and circuits over the width of the paper, then the order
/// lists, side by side where the paper lies. Tables without rows are left out; none at all give no sheet. Of
/// `options`, paper and room count. The error is a sentence: an unknown paper or room.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
scheduleSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
               const catalogue::CountryPack& pack, const Options& options = {});

} // namespace gangway::sheets
