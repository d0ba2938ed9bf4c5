// Elevation sheets: which walls get one, at what scale, and how view, schedule and notes share the paper.
#include "sheets/block.hpp"
#include "sheets/elevation_work.hpp"
#include "sheets/in_parallel.hpp"
#include "sheets/key_plan.hpp"
#include "sheets/legend.hpp"
#include "sheets/portions.hpp"
#include "sheets/request.hpp"
#include "sheets/revision_marks.hpp"
#include "sheets/schedule_table.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/sheets.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/title_block.hpp"
#include "sheets/view_scale.hpp"
#include "sheets/zone_hatch.hpp"

#include <algorithm>
#include <span>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

/// One metre with a tick every 100, so that a copy at another size shows it.
void drawScaleBar(std::vector<Item>& items, Pt upper_right, double scale) {
    Ink ink(items, "notes");
    const double metre = 1000 / scale;
    const Rect bar{upper_right.x - metre, upper_right.y - 9.5, upper_right.x, upper_right.y - 8};
    for (int i = 0; i < 10; i += 2)
        ink.fill({bar.left + metre * i / 10, bar.bottom, bar.left + metre * (i + 1) / 10, bar.top},
                 drawing::kBlack);
    ink.rect(bar, kThin);
    for (int i = 0; i <= 10; ++i) {
        const double x = bar.left + metre * i / 10;
        ink.line({x, bar.top}, {x, bar.top + (i % 5 == 0 ? 2.0 : 1.2)}, kThin);
    }
    ink.text({bar.left, bar.top + 3}, "0", kNoteText, drawing::Align::Centre);
    ink.text({bar.right, bar.top + 3}, "1000", kNoteText, drawing::Align::Right);
}

void drawHeading(std::vector<Item>& items, const WallView& view, const Rect& place, double scale) {
    Ink ink(items, "notes");
    const std::string title = fmt::format("{}, wall {}", view.room->name, view.data().id);
    ink.text({place.left, place.top - kTitleText}, title, kTitleText);
    const std::string part = portionWords(view);
    ink.text({place.left, place.top - kTitleText - 5.4},
             fmt::format("{} as seen from inside the room, 1:{:g}{}{}",
                         view.fix == Fix::First ? "first fix: boxes on the bare wall," : "elevation", scale,
                         part.empty() ? "" : "; ", part),
             kValueText);
    drawScaleBar(items, {place.right, place.top}, scale);
}

std::vector<drawing::PlacedObject> placedOn(const WallView& view) {
    std::vector<drawing::PlacedObject> placed;
    for (const Mounted& item : view.mounted) {
        const Pt at{item.at_mm.x, item.at_mm.y};
        placed.push_back({"plates", item.id, item.tag, at, at.y, at.x, {}, 0});
        for (Vec2 box : item.box_centres_mm)
            placed.back().boxes_mm.push_back({box.x, box.y});
    }
    return placed;
}

/// Moves the view into its place under the heading; returns the y under its footnote, which is running text
/// of all cautions under a view over the whole width.
double placeView(drawing::Sheet& sheet, const WallView& view, Picture picture, const Layout& layout,
                 const std::string& footnote) {
    const double spare = layout.view.width() - picture.extent.width();
    const double dx = layout.view.left + spare / 2 - picture.extent.left;
    const double dy = layout.view.top - kHeading - picture.extent.top;
    const double bottom = picture.extent.bottom + dy;
    placePicture(sheet, std::move(picture.items), {dx, dy}, sheet.title, picture.scale, placedOn(view));
    if (layout.arrangement == Arrangement::WholeWidth)
        drawCautionLines(sheet.items, {layout.view.left, bottom - 1.9}, layout.view.width());
    else
        Ink(sheet.items, "notes").text({layout.view.left, bottom - kFootnote + 0.6}, footnote, kNoteText);
    return bottom - footnoteOf(layout);
}

/// What is still to be placed on this sheet or the next.
struct Remaining {
    std::size_t rows_placed = 0;
    std::size_t rows = 0;
    Density density = Density::Roomy;
    std::vector<Block> notes; ///< the legend's blocks last
    std::size_t before_legend = 0;
    bool legend_begun = false;
    bool legend_parted = false;
    /// True when nothing is left that must be on paper.
    bool done() const {
        return rows_placed == rows &&
               std::all_of(notes.begin(), notes.end(), [](const Block& block) { return block.optional; });
    }
};

/// Places notes from the front, at most `most` of them, in a column; returns what is left of it.
Rect placeNotes(std::vector<Item>& items, Remaining& rest, Rect column, std::size_t most = 10000) {
    const bool needed =
        std::any_of(rest.notes.begin(), rest.notes.end(), [](const Block& block) { return !block.optional; });
    if (rest.notes.empty() || (rest.legend_begun && !needed)) return column;
    // Only the legend is ever parted: everything else is one block under its heading.
    if (rest.legend_begun && !rest.notes.front().keep_with_next) {
        rest.notes.insert(rest.notes.begin(), headingBlock("Legend, continued", column.width()));
        rest.notes.front().optional = true;
    }
    const std::span<const Block> blocks(rest.notes.data(), std::min(most, rest.notes.size()));
    const std::size_t placed = flow(items, blocks, column);
    rest.legend_parted = rest.legend_parted || (rest.legend_begun && placed > 0);
    rest.notes.erase(rest.notes.begin(), rest.notes.begin() + static_cast<std::ptrdiff_t>(placed));
    rest.legend_begun = rest.legend_begun || placed > rest.before_legend;
    rest.before_legend -= std::min(placed, rest.before_legend);
    return column;
}

bool holdsAll(const Rect& column, const std::vector<Block>& blocks) {
    double height = 0;
    double gap = 0;
    for (const Block& block : blocks) {
        height += gap + block.height_mm;
        gap = block.gap_after_mm;
    }
    return height <= column.height();
}

/// Places the legend whole in the first column that holds it; parted over them in order when none does.
void placeLegend(std::vector<Item>& items, Remaining& rest, const std::vector<Rect>& columns) {
    if (rest.before_legend == 0 && !rest.legend_begun) {
        const auto whole = std::find_if(columns.begin(), columns.end(),
                                        [&](const Rect& column) { return holdsAll(column, rest.notes); });
        if (whole != columns.end()) placeNotes(items, rest, *whole);
    }
    for (const Rect& column : columns)
        placeNotes(items, rest, column);
}

/// Places rows of the schedule; returns what is left of the column under them.
Rect placeRows(std::vector<Item>& items, Remaining& rest, const WallView& view, Rect column, bool continued) {
    if (rest.rows_placed == rest.rows || column.width() <= 0) return column;
    auto blocks = scheduleHead(view, column.width(), rest.density, continued);
    const std::size_t head = blocks.size();
    auto rows = scheduleRows(view, view.house->catalogue(), column.width(), rest.density);
    blocks.insert(blocks.end(), rows.begin() + static_cast<std::ptrdiff_t>(rest.rows_placed), rows.end());
    const std::size_t placed = flow(items, blocks, column);
    if (placed > head) rest.rows_placed += placed - head;
    return column;
}

/// Height of the rows still to come in a table of this width, with its head.
double rowsHeight(const Remaining& rest, const WallView& view, double width_mm) {
    double height = 0;
    for (const Block& block : scheduleHead(view, width_mm, rest.density, true))
        height += block.height_mm + block.gap_after_mm;
    const auto rows = scheduleRows(view, view.house->catalogue(), width_mm, rest.density);
    for (std::size_t i = rest.rows_placed; i < rows.size(); ++i)
        height += rows[i].height_mm + rows[i].gap_after_mm;
    return height;
}

/// A sheet whose title block waits until the sheets are counted.
struct Untitled {
    drawing::Sheet sheet;
    TitleFields fields;
    Pt title_corner;
    std::size_t title_at = 0; ///< place of the title block among the sheet's items
};

Untitled withBorders(drawing::Sheet sheet, const WallView& view, const Layout& layout, TitleFields fields) {
    auto frame = sheetFrame(layout.paper);
    sheet.items.insert(sheet.items.begin(), std::make_move_iterator(frame.begin()),
                       std::make_move_iterator(frame.end()));
    sheet.width_mm = layout.paper.width_mm;
    sheet.height_mm = layout.paper.height_mm;
    fields.paper = layout.paper.id;
    fields.scale = sheet.scale;
    const std::size_t title_at = sheet.items.size();
    const Pt strip{layout.title_corner.x, layout.title_corner.y + kTitleHeight};
    drawRevisions(sheet.items, strip, *view.plan);
    drawAgreement(sheet.items, strip, view);
    Ink(sheet.items, "frame")
        .line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight}, kNarrow);
    return {std::move(sheet), std::move(fields), layout.title_corner, title_at};
}

/// The sheet with its title block, as number `page` of `pages`.
drawing::Sheet titled(Untitled untitled, const plan::Project& project, std::size_t page, std::size_t pages) {
    untitled.fields.sheet_of = fmt::format("{} / {}", page, pages);
    std::vector<Item> block;
    drawTitleBlock(block, untitled.title_corner, project, untitled.fields);
    auto& items = untitled.sheet.items;
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(untitled.title_at),
                 std::make_move_iterator(block.begin()), std::make_move_iterator(block.end()));
    return std::move(untitled.sheet);
}

/// A numbered wall: its place among all walls that have something on them, whatever was asked for.
struct Numbered {
    std::size_t number = 0;
    std::size_t count = 0;
    int first_part = 1; ///< of its sheets, where those before show other parts of the wall
};

drawing::Sheet emptySheet(const WallView& view, const Numbered& numbered, double scale, int part) {
    drawing::Sheet sheet;
    sheet.number = sheetNumber(view.fix == Fix::First ? 'B' : 'E', numbered.number, numbered.count, part);
    sheet.title = fmt::format("{}, wall {}", view.room->name, view.data().id);
    if (view.portion)
        sheet.title += fmt::format(", part {} of {}", view.portion->number, view.portion->count);
    if (part > numbered.first_part) sheet.title += " (continued)";
    sheet.file_stem = fileStem(sheet.number, view.room->name, view.data().id);
    sheet.scale = scale;
    return sheet;
}

TitleFields fieldsOf(const WallView& view, const drawing::Sheet& sheet, bool continued) {
    TitleFields fields;
    fields.sheet_id = sheet.number;
    fields.title = fmt::format("{}, wall {}", view.room->name, view.data().id);
    if (view.fix == Fix::First) fields.document_type = "first fix, boxes on the bare wall";
    fields.supplement = portionWords(view);
    if (continued) fields.supplement += fields.supplement.empty() ? "continued" : ", continued";
    return fields;
}

/// How a wall's sheets are put together.
struct Variant {
    Density density = Density::Roomy;
    bool rows_under_notes = false; ///< under a view over the whole width: the schedule too, when it is short
    bool lean_legend = false;      ///< without the signs that only help
};

/// Where paper is short, what dotted zones are stands under the view, if there is room in its line.
std::string footnoteFor(const WallView& view, const Layout& layout, const Variant& variant) {
    if (variant.density == Density::Roomy) return kDoNotScale;
    const std::string cable = zoneNotes(view, Wording::Short).cable;
    const std::string both = cable.empty() ? kDoNotScale : fmt::format("{} {}", kDoNotScale, cable);
    return drawing::measure(both, kNoteText).width_mm <= layout.view.width() ? both : kDoNotScale;
}

Remaining contentOf(const WallView& view, const Layout& layout, const Variant& variant) {
    const double width = layout.note_width_mm;
    const bool tight = variant.density == Density::Tight;
    Remaining rest;
    rest.density = variant.density;
    rest.rows = view.mounted.size();
    rest.notes.push_back(keyPlan(view, width, tight ? kSmallKeyPlan : kKeyPlan));
    const auto add = [&](const std::vector<Block>& blocks) {
        rest.notes.insert(rest.notes.end(), blocks.begin(), blocks.end());
    };
    add(detailBlocks(view, width));
    add(datumNotes(view, layout.measure_width_mm));
    // A view over the whole width has the cautions in its footnote.
    const Wording wording = tight ? Wording::Short : Wording::Full;
    ZoneNotes zones = zoneNotes(view, wording);
    if (layout.arrangement != Arrangement::WholeWidth) {
        add(cautions(width, wording));
        if (footnoteFor(view, layout, variant) != kDoNotScale) zones.cable.clear();
    }
    add(zoneBlocks(zones, width, wording));
    rest.before_legend = rest.notes.size();
    // With the legend: columns of its width are to be had in every arrangement.
    add(revisionNotes(view, width));
    add(legend(view, width));
    if (variant.lean_legend) std::erase_if(rest.notes, [](const Block& block) { return block.optional; });
    return rest;
}

/// Notes under a view over the whole width, where each part has its own place; with them the schedule when it
/// was asked for and is short enough.
void placeUnderView(std::vector<Item>& items, Remaining& rest, const WallView& view, const Layout& layout,
                    const Variant& variant, double view_bottom) {
    const auto columns = noteColumns(layout, view_bottom);
    const Rect under_plan = placeNotes(items, rest, columns[0], 1);
    const Rect under_notes = placeNotes(items, rest, columns[1], rest.before_legend);
    const Rect table{columns[0].left - 1, columns[0].bottom, columns[1].right,
                     std::min(under_plan.top, under_notes.top)};
    const bool rows_here =
        variant.rows_under_notes && rowsHeight(rest, view, table.width()) <= table.height();
    if (rows_here) placeRows(items, rest, view, table, false);
    placeLegend(items, rest,
                rows_here ? std::vector{columns[2], columns[3]}
                          : std::vector{under_plan, under_notes, columns[2], columns[3]});
}

Untitled firstSheet(const WallView& view, Picture picture, const Layout& layout, const Numbered& numbered,
                    const Variant& variant, Remaining& rest) {
    drawing::Sheet sheet = emptySheet(view, numbered, picture.scale, numbered.first_part);
    drawHeading(sheet.items, view, layout.view, picture.scale);
    const double view_bottom =
        placeView(sheet, view, std::move(picture), layout, footnoteFor(view, layout, variant));
    if (layout.arrangement == Arrangement::WholeWidth) {
        placeUnderView(sheet.items, rest, view, layout, variant, view_bottom);
    } else {
        Rect table = layout.table;
        table.top = view_bottom - kGutter;
        const Rect left = placeRows(sheet.items, rest, view, table, false);
        std::vector<Rect> columns;
        for (const Rect& column : noteColumns(layout, view_bottom))
            columns.push_back(placeNotes(sheet.items, rest, column, rest.before_legend));
        for (const Rect& column : columnsBelow(layout, left))
            columns.push_back(column);
        placeLegend(sheet.items, rest, columns);
    }
    const TitleFields fields = fieldsOf(view, sheet, false);
    return withBorders(std::move(sheet), view, layout, fields);
}

Untitled continuationSheet(const WallView& view, const Layout& layout, const Numbered& numbered, double scale,
                           int part, Remaining& rest) {
    drawing::Sheet sheet = emptySheet(view, numbered, scale, part);
    auto tables = wideTable(layout);
    const Pt corner{tables.front().left, tables.front().top};
    const double top = drawCautionLines(sheet.items, corner, tables.front().width()) - 2;
    if (rowsHeight(rest, view, tables.front().width()) > top - tables.front().bottom)
        tables = tallTables(layout);
    for (Rect table : tables) {
        table.top = top;
        const Rect left = placeRows(sheet.items, rest, view, table, true);
        placeLegend(sheet.items, rest, columnsBelow(layout, left));
    }
    const TitleFields fields = fieldsOf(view, sheet, true);
    return withBorders(std::move(sheet), view, layout, fields);
}

/// A wall's sheets in one variant.
struct Composed {
    std::vector<Untitled> sheets;
    bool legend_parted = false;
    bool lean_legend = false;
    /// Fewer sheets first, then all signs, then a legend in one piece.
    auto rank() const { return std::tuple(sheets.size(), lean_legend, legend_parted); }
};

Composed composed(const WallView& view, const Picture& picture, const Numbered& numbered,
                  const Variant& variant) {
    const Layout& layout = picture.layout;
    Remaining rest = contentOf(view, layout, variant);
    Composed done;
    done.sheets.push_back(firstSheet(view, picture, layout, numbered, variant, rest));
    // A block taller than a whole sheet could never be placed; the bound keeps that from going on for ever.
    constexpr int kMostParts = 200;
    for (int part = numbered.first_part + 1; !rest.done() && part <= numbered.first_part + kMostParts; ++part)
        done.sheets.push_back(continuationSheet(view, layout, numbered, picture.scale, part, rest));
    done.legend_parted = rest.legend_parted;
    done.lean_legend = variant.lean_legend;
    return done;
}

/// The best variant, the roomier one of equals.
std::vector<Untitled> sheetsOf(const WallView& view, const Picture& picture, const Numbered& numbered) {
    Composed best;
    for (const bool lean : {false, true}) {
        for (const Density density : {Density::Roomy, Density::Tight}) {
            for (const bool rows_under_notes : {false, true}) {
                if (rows_under_notes && picture.layout.arrangement != Arrangement::WholeWidth) continue;
                auto next = composed(view, picture, numbered, {density, rows_under_notes, lean});
                if (best.sheets.empty() || next.rank() < best.rank()) best = std::move(next);
                if (best.sheets.size() == 1 && (lean || !best.legend_parted)) return std::move(best.sheets);
            }
        }
        if (best.sheets.size() == 1) break;
    }
    return std::move(best.sheets);
}

/// A wall's sheets at the scale asked for, or at the one that is read best: instead of 1:50 it is 1:25 where
/// that costs no more sheets.
std::expected<std::vector<Untitled>, std::string> wallSheets(const WallView& view, const Paper& paper,
                                                             const Options& options, Numbered numbered) {
    constexpr double kSmall = 50;
    constexpr double kLarger = 25;
    const auto shown = picturesOf(view, paper, options.scale);
    if (!shown) return std::unexpected(shown.error());
    std::vector<Untitled> sheets;
    for (const Shown& part : *shown) {
        for (Untitled& sheet : sheetsOf(part.view, part.picture, numbered))
            sheets.push_back(std::move(sheet));
        numbered.first_part = static_cast<int>(sheets.size()) + 1;
    }
    if (options.scale || shown->size() > 1 || shown->front().picture.scale != kSmall) return sheets;
    numbered.first_part = 1;
    if (const auto larger = pictureThatFits(view, paper, kLarger); larger && larger->crowded.empty()) {
        auto clearer = sheetsOf(view, *larger, numbered);
        if (clearer.size() <= sheets.size()) return clearer;
    }
    return sheets;
}

} // namespace

std::expected<drawing::Drawing, std::string>
elevationSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    if (auto problem = problemWith(plan, options); !problem.empty())
        return std::unexpected(std::move(problem));
    const Paper paper = *findPaper(options.paper);
    drawing::Drawing drawing =
        drawingOf(plan.project, options.fix == Fix::First ? "First fix: boxes on the bare walls"
                                                          : "Wall elevations with plate set-out");
    const House house(plan, catalogue, options.base);
    const WallLooks looks(house, options);
    const auto work = wallsWithSomething(house);
    const auto askedFor = [&](const WallWork& wall) {
        return (options.room.empty() || wall.room->id == options.room) &&
               (options.wall.empty() || wall.room->walls[wall.wall].id == options.wall);
    };
    // Walls that were not asked for are put on sheets too: a sheet has its number in the whole set.
    using Sheets = std::expected<std::vector<Untitled>, std::string>;
    auto made = inParallel(work.size(), options.threads, [&](std::size_t i) -> Sheets {
        const auto view = looks.at(work[i]);
        if (!view) return std::unexpected(view.error());
        return wallSheets(*view, paper, options, {i + 1, work.size()});
    });
    std::vector<std::pair<Untitled, bool>> all;
    for (std::size_t i = 0; i < work.size(); ++i) {
        const bool asked_for = askedFor(work[i]);
        if (!made[i] && asked_for) return std::unexpected(std::move(made[i].error()));
        if (!made[i]) continue;
        for (Untitled& sheet : *made[i])
            all.emplace_back(std::move(sheet), asked_for);
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].second)
            drawing.sheets.push_back(titled(std::move(all[i].first), plan.project, i + 1, all.size()));
    if (drawing.sheets.empty() && !(options.room.empty() && options.wall.empty()))
        return std::unexpected(
            fmt::format("nothing is mounted on {}{}, so there is no elevation to draw",
                        options.wall.empty() ? "any wall" : fmt::format("wall '{}'", options.wall),
                        options.room.empty() ? "" : fmt::format(" of room '{}'", options.room)));
    return drawing;
}

} // namespace gangway::sheets
