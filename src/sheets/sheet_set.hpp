// The set: one table of the kinds of sheets there are, in the order of a set, and one way to draw them, for
// the command line and the window alike.
#pragma once

#include "catalogue/pack.hpp"
#include "plan/finding.hpp"
#include "sheets/sheets.hpp"

#include <span>
#include <string_view>
#include <utility>

namespace gangway::sheets {

/// What sheets are drawn from. Everything it points to must outlive the call.
struct SetInput {
    const plan::Plan* plan = nullptr;
    const catalogue::Catalogue* catalogue = nullptr;
    const catalogue::CountryPack* pack = nullptr; ///< may be missing where no kind needs it
    /// What checks::check() found in this plan by this pack; nullptr: it is looked for when a kind needs it.
    const std::vector<plan::Finding>* findings = nullptr;
    Options options;               ///< its paper is not looked at
    std::string paper;             ///< empty: each kind on the paper that it is meant for
    bool lamps_from_above = false; ///< luminaires on plans as seen from above, not as symbols
    bool zones_on_plans = false;   ///< zones of baths and showers on plans too
    /// What the cover has in its index, in order; nullptr: the whole set, drawn for it.
    const std::vector<drawing::Drawing>* set = nullptr;
};

using Drawn = std::expected<drawing::Drawing, std::string>;

struct SheetKind {
    std::string_view word;    ///< on the command line and in names of files
    std::string_view name;    ///< for people
    std::string_view paper;   ///< what it is meant for
    bool needs_pack = false;  ///< draws nothing without a country pack
    std::string_view nothing; ///< the sentence for a house in which there is nothing of this kind to draw
    Drawn (*draw)(const SetInput& input, const Options& options);
    bool cut_up = false; ///< for scissors, not for reading: never bound with others
};

inline constexpr std::string_view kCoverWord = "cover";

/// In the order of a set.
std::span<const SheetKind> sheetKinds();
/// nullptr when no kind has this word.
const SheetKind* findSheetKind(std::string_view word);

/// The sheets of one kind; none where the house has nothing for it. The error is a sentence: an unknown
/// paper, room or wall, a scale at which something does not fit, a pack that is missing.
[[nodiscard]] Drawn drawKind(const SheetKind& kind, const SetInput& input);

/// Several kinds at the same time, in the order asked for.
std::vector<Drawn> drawKinds(std::span<const SheetKind* const> kinds, const SetInput& input);

/// Sheets that are one file where a format holds several: "set", or a kind's word.
struct Document {
    std::string word;
    drawing::Drawing drawing;
};
/// Under a cover all that is read together is one document, its bookmarks by kind; what is cut up stays
/// apart. Without one, or of a cover alone, each kind is a document.
std::vector<Document> documentsOf(std::vector<std::pair<const SheetKind*, drawing::Drawing>> drawn);

} // namespace gangway::sheets
