// The cover of a set: what is in it, where things are, what changed, how to measure, whom to ask.
#pragma once

#include "catalogue/pack.hpp"
#include "sheets/sheets.hpp"

#include <expected>
#include <string>
#include <vector>

namespace gangway::sheets {

/// What a cover is made of beside the plan. All of it must outlive the call.
struct CoverContent {
    const std::vector<drawing::Drawing>* set = nullptr; ///< the other sheets, in the order of the set
    /// Prints of the set as it would be issued now (see setPrints); nullptr: whether a sheet has changed is
    /// said only of a plan that is as it was issued.
    const std::vector<plan::IssuedSheet>* prints = nullptr;
    const catalogue::CountryPack* pack = nullptr; ///< of the most fragile boxes; nullptr: they are left out
};

/// C-01 and, for a long set, more: title, QR code with the fingerprint, key plans, index, revisions,
/// conventions, the five most fragile boxes, cautions, whom to ask. Of `options`, paper, base and datum
/// count. The error is a sentence: an unknown paper.
[[nodiscard]] std::expected<drawing::Drawing, std::string> coverSheets(const plan::Plan& plan,
                                                                       const catalogue::Catalogue& catalogue,
                                                                       const CoverContent& content,
                                                                       const Options& options);

} // namespace gangway::sheets
