// The parts of a cover: tables and notes about the set as a whole. Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/cover_sheet.hpp"
#include "sheets/table.hpp"

#include <optional>

namespace gangway::sheets {

/// "Issue B" with "of 2026-05-02, for first fix", or that and why the plan is no issue.
struct IssueState {
    const plan::Issue* issue = nullptr; ///< the one that the plan is exactly; nullptr: none
    std::string headline;
    std::string below;
};
IssueState issueStateOf(const plan::Plan& plan);
/// What the QR code says: "gangway issue B 2026-05-02 0123456789abcdef".
std::string qrText(const plan::Issue& issue);

/// Every sheet of the set by kind: number, title, scale, revision and whether it changed. Sheets in a row
/// with one title and one answer share a line.
Table sheetIndex(const plan::Plan& plan, const CoverContent& content);
/// Every issue, the newest first, and what changed with each in words.
Table revisionTable(const plan::Plan& plan);
/// The five boxes on walls that may be out by the fewest mm before a check fails; one that fails as it stands
/// is a finding and not counted here.
Table fragileTable(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                   const catalogue::CountryPack& pack, const std::filesystem::path& base);

std::vector<Block> conventions(const plan::Plan& plan, const Datum& datum, double width_mm);
std::vector<Block> whomToAsk(const plan::Project& project, double width_mm);

/// Key plans of all storeys, side by side as they are largest, at one scale, at most `most_height_mm` high:
/// letters of rooms and walls, names of rooms under each.
std::vector<Block> storeyKeyPlans(const plan::Plan& plan, double width_mm, double most_height_mm,
                                  const std::filesystem::path& base);

} // namespace gangway::sheets
