// The light estimate of a storey on a sheet: lines of equal illuminance and values on the plan, a table of
// its rooms with what is usual there.
#pragma once

#include "catalogue/pack.hpp"
#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// One drawing for each storey with luminaires, numbered LX-01, LX-02 ...; a table that does not fit carries
/// on on LX-01-2. All luminaires are on. Of `options`, paper, scale (also 100), room and base count: with a
/// room, its storey alone, with that room's lines and row. The error is a sentence: an unknown room or paper,
/// a scale at which a storey does not fit, a room on whose storey nothing gives light.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
lightingSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
               const catalogue::CountryPack& pack, const Options& options = {});

} // namespace gangway::sheets
