// A copy of all that sheets are drawn from, to be used on another thread while the plan goes on changing.
#pragma once

#include "sheets/sheet_set.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

namespace gangway::app {

struct SheetSource {
    plan::Plan plan;                            ///< stamped, as its sheets are to say it
    catalogue::Catalogue catalogue;             ///< with the plan's own formats
    std::optional<catalogue::CountryPack> pack; ///< the plan's; not set: there is none of that name
    std::filesystem::path base;                 ///< folder of the plan, for glTF files
    std::optional<plan::Plan> since;            ///< an older state, whose differences are marked
    sheets::Datum datum;
};

/// The same as the command line draws: changes are marked against the issue that the plan is to be compared
/// with, and a plan that was issued goes on counting as it was issued.
SheetSource sheetSource(const plan::Plan& plan, const catalogue::Catalogue& shipped,
                        const catalogue::CountryPacks& packs, std::filesystem::path base);

/// The sheets of one kind; the error is a sentence. `set`: what a cover has in its index; nullptr: all.
[[nodiscard]] sheets::Drawn drawnFrom(const SheetSource& source, const sheets::SheetKind& kind,
                                      const std::vector<drawing::Drawing>* set = nullptr);

} // namespace gangway::app
