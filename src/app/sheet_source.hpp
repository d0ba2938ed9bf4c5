// A copy of all that sheets are drawn from, to be used on another thread while the plan goes on changing.
#pragma once

#include "sheets/sheet_set.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace gangway::app {

struct SheetSource {
    plan::Plan plan;
    catalogue::Catalogue catalogue;             ///< with the plan's own formats
    std::optional<catalogue::CountryPack> pack; ///< the plan's; not set: there is none of that name
    std::filesystem::path base;                 ///< folder of the plan, for glTF files
    std::optional<plan::Plan> since;            ///< an older state, whose differences are marked
};

/// The sheets of one kind; the error is a sentence.
[[nodiscard]] sheets::Drawn drawnFrom(const SheetSource& source, const sheets::SheetKind& kind);

} // namespace gangway::app
