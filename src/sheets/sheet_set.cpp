#include "sheets/sheet_set.hpp"

#include "checks/checks.hpp"
#include "geometry/house_index.hpp"
#include "review/issues.hpp"
#include "sheets/cover_sheet.hpp"
#include "sheets/findings_sheet.hpp"
#include "sheets/in_parallel.hpp"
#include "sheets/lighting_plan.hpp"
#include "sheets/lighting_set_out.hpp"
#include "sheets/room_sheets.hpp"
#include "sheets/schedule_sheets.hpp"
#include "sheets/sheet_prints.hpp"
#include "sheets/storey_plan_sheets.hpp"
#include "sheets/switching_sheets.hpp"
#include "sheets/template_sheets.hpp"
#include "sheets/wall_check_sheets.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

Drawn cover(const SetInput& input, const Options& options) {
    CoverContent content;
    content.pack = input.pack;
    std::vector<drawing::Drawing> drawn;
    content.set = input.set;
    if (content.set == nullptr) {
        auto set = wholeSet(input);
        if (!set) return std::unexpected(std::move(set.error()));
        drawn = std::move(*set);
        content.set = &drawn;
    }
    // A plan that is as it was issued has its prints in the issue; for another they are found again.
    std::vector<plan::IssuedSheet> prints;
    if (!input.plan->issues.empty() && review::issuedAs(*input.plan) == nullptr) {
        auto now = setPrints(input);
        if (!now) return std::unexpected(std::move(now.error()));
        prints = std::move(*now);
        content.prints = &prints;
    }
    return coverSheets(*input.plan, *input.catalogue, content, options);
}

Drawn elevations(const SetInput& input, const Options& options) {
    return elevationSheets(*input.plan, *input.catalogue, options);
}

Drawn rooms(const SetInput& input, const Options& options) {
    return roomSheets(*input.plan, *input.catalogue, options);
}

Drawn plans(const SetInput& input, const Options& options) {
    return storeyPlanSheets(*input.plan, *input.catalogue, options);
}

Drawn switching(const SetInput& input, const Options& options) {
    SwitchingOptions plans;
    plans.paper = options.paper;
    plans.scale = options.scale;
    plans.room = options.room;
    plans.base = options.base;
    if (input.zones_on_plans) plans.wet_zones = input.pack;
    if (input.lamps_from_above) plans.lamps = StoreyPlanOptions::Lamps::TopView;
    return switchingSheets(*input.plan, *input.catalogue, plans);
}

Drawn lighting(const SetInput& input, const Options& options) {
    auto set_out = lightingSetOutSheets(*input.plan, *input.catalogue, options);
    if (!set_out) return set_out;
    auto estimate = lightingSheets(*input.plan, *input.catalogue, *input.pack, options);
    if (!estimate) return estimate;
    set_out->subject += " and light estimate";
    std::ranges::move(estimate->sheets, std::back_inserter(set_out->sheets));
    return set_out;
}

Drawn schedule(const SetInput& input, const Options& options) {
    return scheduleSheets(*input.plan, *input.catalogue, *input.pack, options);
}

Drawn findings(const SetInput& input, const Options& options) {
    if (input.findings != nullptr)
        return findingsSheets(*input.plan, *input.catalogue, *input.pack, *input.findings, options);
    return findingsSheets(
        *input.plan, *input.catalogue, *input.pack,
        checks::check(geometry::HouseIndex(*input.plan), *input.catalogue, *input.pack, options.base),
        options);
}

Drawn wallCheck(const SetInput& input, const Options& options) {
    return wallCheckSheets(*input.plan, *input.catalogue, options);
}

Drawn templates(const SetInput& input, const Options& options) {
    return templateSheets(*input.plan, *input.catalogue, options);
}

// What is carried about on site and cut up is meant for A4.
constexpr std::array kKinds{
    SheetKind{kCoverWord, "Cover: index, key plans, revisions, whom to ask", "A3", true,
              "there is nothing to cover", cover},
    SheetKind{"rooms", "Rooms: plan and elevations on one sheet", "A3", false,
              "there is no plate and no luminaire, so no room sheet is drawn", rooms},
    SheetKind{"elevations", "Wall elevations, dimensioned", "A3", false,
              "there is nothing on these walls, so no sheet is drawn", elevations},
    SheetKind{"plan", "Storey plans: what sits where, and which elevation shows it", "A3", false,
              "there is no room, so no plan is drawn", plans},
    SheetKind{"switching", "Switching plans: what works which lamp", "A3", false,
              "there is no switch and no luminaire, so no switching plan is drawn", switching},
    SheetKind{"lighting", "Lighting: set-out of ceilings, and an estimate of the light", "A3", true,
              "there is no luminaire, so no lighting plan is drawn", lighting},
    SheetKind{"schedule", "Schedules", "A3", true,
              "there is no plate and no luminaire, so no schedule is drawn", schedule},
    SheetKind{"wallcheck", "Wall checks: every box to tick", "A4", false,
              "there is no box and no luminaire, so no wall check is drawn", wallCheck},
    SheetKind{"findings", "Findings, and what was accepted", "A3", true, "nothing was looked at", findings},
    SheetKind{"templates", "Drilling templates at true size", "A4", false,
              "there is no plate, so no drilling template is drawn", templates, true},
};

} // namespace

std::span<const SheetKind> sheetKinds() {
    return kKinds;
}

const SheetKind* findSheetKind(std::string_view word) {
    const auto found = std::ranges::find_if(kKinds, [&](const SheetKind& kind) { return kind.word == word; });
    return found == kKinds.end() ? nullptr : &*found;
}

Drawn drawKind(const SheetKind& kind, const SetInput& input) {
    if (kind.needs_pack && input.pack == nullptr)
        return std::unexpected(fmt::format("no country pack '{}'", input.plan->pack));
    Options options = input.options;
    options.paper = input.paper.empty() ? std::string(kind.paper) : input.paper;
    return kind.draw(input, options);
}

std::vector<Drawn> drawKinds(std::span<const SheetKind* const> kinds, const SetInput& input) {
    return inParallel(kinds.size(), input.options.threads,
                      [&](std::size_t i) { return drawKind(*kinds[i], input); });
}

std::vector<Document> documentsOf(std::vector<std::pair<const SheetKind*, drawing::Drawing>> drawn) {
    const bool covered = drawn.size() > 1 && drawn.front().first->word == kCoverWord;
    std::vector<Document> documents;
    for (auto& [kind, drawing] : drawn) {
        if (!covered || kind->cut_up) {
            documents.push_back({std::string(kind->word), std::move(drawing)});
            continue;
        }
        for (drawing::Sheet& sheet : drawing.sheets)
            sheet.group = kind->name;
        if (kind->word == kCoverWord) {
            drawing.subject = "The set of sheets";
            documents.push_back({"set", std::move(drawing)});
        } else {
            std::ranges::move(drawing.sheets, std::back_inserter(documents.front().drawing.sheets));
        }
    }
    return documents;
}

} // namespace gangway::sheets
