#include "app/sheet_source.hpp"

#include "review/issues.hpp"

#include <algorithm>
#include <thread>

namespace gangway::app {

SheetSource sheetSource(const plan::Plan& plan, const catalogue::Catalogue& shipped,
                        const catalogue::CountryPacks& packs, std::filesystem::path base) {
    SheetSource source;
    source.plan = review::stamped(plan);
    source.catalogue = catalogue::withOwn(shipped, plan);
    // The plan's own, nothing in its place: what is printed must not go by another country's numbers unsaid.
    if (const auto* pack = packs.pack(plan.pack)) source.pack = *pack;
    source.base = std::move(base);
    if (const plan::Issue* issue = review::comparedWith(plan)) source.since = review::stateAt(plan, *issue);
    if (!plan.issues.empty()) source.datum = sheets::datumOf(plan.issues.back());
    return source;
}

sheets::Drawn drawnFrom(const SheetSource& source, const sheets::SheetKind& kind,
                        const std::vector<drawing::Drawing>* set) {
    sheets::SetInput input;
    input.plan = &source.plan;
    input.catalogue = &source.catalogue;
    input.pack = source.pack ? &*source.pack : nullptr;
    input.set = set;
    input.options.base = source.base;
    input.options.pack = input.pack;
    input.options.since = source.since ? &*source.since : nullptr;
    input.options.datum = source.datum;
    // One core is left to the window.
    input.options.threads = std::max(2U, std::thread::hardware_concurrency()) - 1;
    return sheets::drawKind(kind, input);
}

} // namespace gangway::app
