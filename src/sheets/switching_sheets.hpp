// Switching plans: a sheet for each storey, and larger ones for single rooms.
#pragma once

#include "sheets/leg_plan.hpp"

#include <expected>

namespace gangway::sheets {

struct SwitchingOptions {
    std::string paper = "A3";    ///< "A4", "A3", "A2", "A1"
    std::optional<double> scale; ///< 10, 20, 25, 50, 100 or 200; not set: the largest that fits
    std::string room;            ///< only this room id
    StoreyPlanOptions::Lamps lamps = StoreyPlanOptions::Lamps::Symbol;
    LegOptions::Corners corners = LegOptions::Corners::Rounded;
    bool coloured = false;
    std::filesystem::path base; ///< folder of the plan, for glTF files
    /// Whose zones of baths and showers are drawn; nullptr: none. Must outlive the call.
    const catalogue::CountryPack* wet_zones = nullptr;
};

/// Sheets S-01, S-02...: each storey that has a luminaire or a switch, from 1:50 down; after it the rooms
/// that are too crowded there for lines, each larger on its own sheet. What the legend has no room for goes
/// on to "S-01-2". The error is a sentence: an unknown paper, room or scale, or a plan that does not fit.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
switchingSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                const SwitchingOptions& options = {});

} // namespace gangway::sheets
