// Lighting sheets: which storeys get one, at what scale, and how plan, table and notes share the paper.
#include "sheets/lighting_plan.hpp"

#include "lighting/light_grid.hpp"
#include "sheets/light_table.hpp"
#include "sheets/light_view.hpp"
#include "sheets/request.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <array>
#include <span>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr std::array<double, 5> kScales{20, 25, 50, 100, 200};
constexpr double kInset = 5.5;

/// The view's place, and columns for table and notes on the first sheet and on those after it.
struct Places {
    Paper paper;
    Rect frame;
    Rect view;
    std::vector<Rect> first;
    std::vector<Rect> later;
    double column_width_mm = 0;
};

/// Plan at the left, everything else in a column over the title block; or (upright paper, wide storeys) the
/// plan over the whole width, and what does not fit beside the title block on the next sheet.
enum class Share { Beside, Above };

Places placesOn(const Paper& paper, Share share) {
    Places places{paper, frameOf(paper), {}, {}, {}, 0};
    const Rect content = places.frame.grown(-kInset);
    const double over = places.frame.bottom + kTitleHeight + kStripHeight + 3;
    const double middle = places.frame.right - kTitleWidth;
    if (paper.upright) {
        places.column_width_mm = content.width();
        places.view = {content.left, over, content.right, content.top};
        places.later = {places.view};
        return places;
    }
    const Rect right{middle + 2, over, content.right, content.top};
    places.column_width_mm = right.width();
    const Rect left{content.left, content.bottom, content.left + right.width(), content.top};
    places.later = {left, right};
    if (share == Share::Beside) {
        places.view = {content.left - 2, content.bottom, middle - 4, content.top};
        places.first = {right};
    } else {
        places.view = {content.left, over, content.right, content.top};
        places.first = {{left.left, left.bottom, left.right, over - 2}};
    }
    return places;
}

/// The drawing brings a white margin of its own, most of which may lie under heading and footnote.
constexpr double kOverlap = 12;

bool fits(const StoreyBase& base, const Rect& view) {
    return base.width_mm <= view.width() && base.height_mm - kOverlap <= view.height() - kHeading - kFootnote;
}

struct Chosen {
    Places places;
    double scale = 0;
};

std::expected<Chosen, std::string> choose(const plan::Plan& plan, const plan::Storey& storey,
                                          const Paper& paper, const std::optional<double>& asked) {
    StoreyPlanOptions bare;
    bare.furniture = false;
    for (double scale : kScales) {
        if (asked && *asked != scale) continue;
        bare.scale = scale;
        const StoreyBase base = storeyBase(plan, storey.id, bare);
        for (Share share : {Share::Beside, Share::Above}) {
            Places places = placesOn(paper, share);
            if (fits(base, places.view)) return Chosen{std::move(places), scale};
        }
    }
    return std::unexpected(fmt::format("storey '{}' does not fit on {} at {}", storey.name, paper.id,
                                       asked ? fmt::format("1:{:g}", *asked) : "1:200"));
}

/// A storey with its rooms' light.
struct StoreyWork {
    const plan::Storey* storey = nullptr;
    std::vector<lighting::RoomLight> rooms;
};

std::vector<StoreyWork> litStoreys(const plan::Plan& plan) {
    std::vector<StoreyWork> work;
    for (const plan::Storey& storey : plan.storeys) {
        const bool lit = std::ranges::any_of(plan.luminaires, [&](const plan::Luminaire& lamp) {
            const plan::Room* room = plan::findRoom(plan, lamp.room);
            return room != nullptr && room->storey == storey.id;
        });
        if (lit) work.push_back({&storey, {}});
    }
    return work;
}

void fillRooms(StoreyWork& work, const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
               const Options& options) {
    lighting::LightOptions light_options;
    light_options.base = options.base;
    const lighting::LitStorey lit(house, work.storey->id, light_options);
    for (const plan::Room& room : house.plan().rooms) {
        if (room.storey != work.storey->id || (!options.room.empty() && room.id != options.room)) continue;
        auto light = lighting::roomLight(lit, pack, room.id);
        if (!light) continue;
        light->walls_lx = lighting::wallsAverage(lit, room);
        work.rooms.push_back(std::move(*light));
    }
}

/// What is still to be placed.
struct Remaining {
    std::vector<Block> rows;
    std::vector<Block> notes;
    bool begun = false;
    bool done() const { return rows.empty() && notes.empty(); }
};

void place(std::vector<Item>& items, Remaining& rest, const std::vector<Rect>& columns) {
    for (Rect column : columns) {
        if (!rest.rows.empty()) {
            auto blocks = lightTableHead(column.width(), rest.begun);
            const std::size_t head = blocks.size();
            blocks.insert(blocks.end(), rest.rows.begin(), rest.rows.end());
            const std::size_t placed = flow(items, blocks, column);
            if (placed > head) {
                rest.begun = true;
                rest.rows.erase(rest.rows.begin(),
                                rest.rows.begin() + static_cast<std::ptrdiff_t>(placed - head));
            }
            if (!rest.rows.empty()) continue;
        }
        const std::size_t placed = flow(items, rest.notes, column);
        rest.notes.erase(rest.notes.begin(), rest.notes.begin() + static_cast<std::ptrdiff_t>(placed));
    }
}

/// A sheet that waits for its title block until the sheets are counted.
struct Untitled {
    drawing::Sheet sheet;
    Pt corner;
    TitleFields fields;
};

Untitled emptySheet(const plan::Plan& plan, const StoreyWork& work, const Chosen& chosen, std::size_t number,
                    int part) {
    Untitled made;
    drawing::Sheet& sheet = made.sheet;
    sheet.number = fmt::format("LX-{:02}", number) + (part > 1 ? fmt::format("-{}", part) : "");
    sheet.title = fmt::format("{}, light{}", work.storey->name, part > 1 ? " (continued)" : "");
    sheet.file_stem = fileStem(sheet.number, work.storey->name, "light");
    sheet.scale = chosen.scale;
    sheet.width_mm = chosen.places.paper.width_mm;
    sheet.height_mm = chosen.places.paper.height_mm;
    sheet.items = sheetFrame(chosen.places.paper);
    made.corner = {chosen.places.frame.right, chosen.places.frame.bottom};
    made.fields.sheet_id = sheet.number;
    made.fields.title = fmt::format("{}, light", work.storey->name);
    if (part > 1) made.fields.supplement = "continued";
    made.fields.document_type = "light estimate, direct light only";
    made.fields.paper = chosen.places.paper.id;
    made.fields.scale = part > 1 ? 0 : chosen.scale;
    const Pt strip{made.corner.x, made.corner.y + kTitleHeight};
    drawRevisions(sheet.items, strip, plan);
    Ink(sheet.items, "notes")
        .paragraph({strip.x - kTitleWidth / 2 + 8, strip.y + kStripHeight - 4},
                   {"Estimate, direct light only; no verdict.",
                    "A placing proposal, not an electrical design:", "the licensed electrician decides."},
                   kNoteText);
    Ink(sheet.items, "frame")
        .line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight}, kNarrow);
    return made;
}

void drawView(drawing::Sheet& sheet, const StoreyWork& work, const Chosen& chosen, LightView view) {
    const Rect& place = chosen.places.view;
    Ink ink(sheet.items, "notes");
    ink.text({place.left + 2, place.top - kTitleText}, fmt::format("{}: light", work.storey->name),
             kTitleText);
    ink.text(
        {place.left + 2, place.top - kTitleText - 5.4},
        fmt::format("{}; horizontal illuminance in lx, 1:{:g}, north up", lighting::kEstimate, chosen.scale),
        kValueText);
    ink.text({place.left + 2, place.bottom + 0.6}, "Do not scale. For choosing lamps, not for setting out.",
             kNoteText);
    const double spare = place.height() - kHeading - kFootnote - view.height_mm;
    const Pt corner{place.left + (place.width() - view.width_mm) / 2, place.bottom + kFootnote + spare / 2};
    placePicture(sheet, std::move(view.items), {corner.x + view.zero.x, corner.y + view.zero.y}, sheet.title,
                 chosen.scale, std::move(view.placed));
}

std::vector<Untitled> sheetsOf(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                               const catalogue::CountryPack& pack, const StoreyWork& work,
                               const Chosen& chosen, std::size_t number, const Options& options) {
    Remaining rest{lightTableRows(plan, pack, work.rooms, chosen.places.column_width_mm),
                   lightNotes(plan, pack, work.rooms, chosen.places.column_width_mm), false};
    std::vector<Untitled> sheets;
    sheets.push_back(emptySheet(plan, work, chosen, number, 1));
    drawView(sheets.back().sheet, work, chosen,
             lightView(plan, catalogue, work.storey->id, work.rooms, chosen.scale, options.base));
    place(sheets.back().sheet.items, rest, chosen.places.first);
    // A block taller than a whole sheet could never be placed; the bound keeps that from going on for ever.
    constexpr int kMostParts = 200;
    for (int part = 2; !rest.done() && part <= kMostParts; ++part) {
        sheets.push_back(emptySheet(plan, work, chosen, number, part));
        place(sheets.back().sheet.items, rest, chosen.places.later);
    }
    return sheets;
}

} // namespace

std::expected<drawing::Drawing, std::string> lightingSheets(const plan::Plan& plan,
                                                            const catalogue::Catalogue& catalogue,
                                                            const catalogue::CountryPack& pack,
                                                            const Options& options) {
    const auto requested = requestedPaper(plan, options, "lighting sheets", kScales);
    if (!requested) return std::unexpected(requested.error());
    const Paper& paper = *requested;
    drawing::Drawing drawing = drawingOf(plan.project, "Light by storey, estimate, direct light only");
    const geometry::HouseIndex house(plan);
    auto work = litStoreys(plan);
    std::vector<Untitled> sheets;
    for (std::size_t i = 0; i < work.size(); ++i) {
        if (!options.room.empty() && plan::findRoom(plan, options.room)->storey != work[i].storey->id)
            continue;
        const auto chosen = choose(plan, *work[i].storey, paper, options.scale);
        if (!chosen) return std::unexpected(chosen.error());
        fillRooms(work[i], house, pack, options);
        for (Untitled& sheet : sheetsOf(plan, catalogue, pack, work[i], *chosen, i + 1, options))
            sheets.push_back(std::move(sheet));
    }
    if (sheets.empty() && !options.room.empty())
        return std::unexpected(fmt::format(
            "no luminaire is on the storey of room '{}', so there is no light to draw", options.room));
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        sheets[i].fields.sheet_of = fmt::format("{} / {}", i + 1, sheets.size());
        drawTitleBlock(sheets[i].sheet.items, sheets[i].corner, plan.project, sheets[i].fields);
        drawing.sheets.push_back(std::move(sheets[i].sheet));
    }
    return drawing;
}

} // namespace gangway::sheets
