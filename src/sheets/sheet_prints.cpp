#include "sheets/sheet_prints.hpp"

#include "review/issues.hpp"
#include "review/review.hpp"

#include <algorithm>

namespace gangway::sheets {

namespace {
constexpr std::size_t kDigits = 12;

/// "7 / 12": it changes on every sheet when one is added anywhere.
bool isPageCount(const drawing::Item& item) {
    const auto* text = std::get_if<drawing::Text>(&item.primitive);
    if (text == nullptr) return false;
    const std::size_t slash = text->text.find(" / ");
    if (slash == std::string::npos || slash == 0) return false;
    const auto digits = [](std::string_view part) {
        return !part.empty() && part.find_first_not_of("0123456789") == std::string_view::npos;
    };
    const std::string_view all = text->text;
    return digits(all.substr(0, slash)) && digits(all.substr(slash + 3));
}

std::string printOf(const drawing::Sheet& sheet) {
    drawing::Sheet bare;
    bare.number = sheet.number;
    bare.title = sheet.title;
    bare.width_mm = sheet.width_mm;
    bare.height_mm = sheet.height_mm;
    bare.scale = sheet.scale;
    std::ranges::copy_if(sheet.items, std::back_inserter(bare.items),
                         [](const drawing::Item& item) { return !isPageCount(item); });
    return review::sha256(drawing::dump(bare)).substr(0, kDigits);
}
} // namespace

std::vector<plan::IssuedSheet> printsOf(const std::vector<drawing::Drawing>& set) {
    std::vector<plan::IssuedSheet> prints;
    for (const drawing::Drawing& drawing : set)
        for (const drawing::Sheet& sheet : drawing.sheets)
            prints.push_back({sheet.number, printOf(sheet), {}});
    return prints;
}

std::expected<std::vector<drawing::Drawing>, std::string> wholeSet(const SetInput& input) {
    std::vector<drawing::Drawing> set;
    for (const SheetKind& kind : sheetKinds()) {
        if (kind.word == kCoverWord) continue;
        auto drawn = drawKind(kind, input);
        if (!drawn) return std::unexpected(std::move(drawn.error()));
        if (!drawn->sheets.empty()) set.push_back(std::move(*drawn));
    }
    return set;
}

std::expected<std::vector<plan::IssuedSheet>, std::string> setPrints(const SetInput& input) {
    const plan::Plan bare = review::unstamped(*input.plan);
    SetInput plain;
    plain.plan = &bare;
    plain.catalogue = input.catalogue;
    plain.pack = input.pack;
    plain.findings = input.findings;
    plain.options.base = input.options.base;
    plain.options.pack = input.pack;
    plain.options.datum = input.options.datum;
    const auto set = wholeSet(plain);
    if (!set) return std::unexpected(set.error());
    return printsOf(*set);
}

} // namespace gangway::sheets
