#include "sheets/plan_pages.hpp"

#include "sheets/request.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr std::size_t kMostParts = 200;
constexpr double kFootnoteInset = 2.5;

/// Without the gap after the last one: nothing follows it.
double heightAlone(const std::vector<Block>& blocks) {
    return blocks.empty() ? 0 : heightOf(blocks) - blocks.back().gap_after_mm;
}

} // namespace

void drawPlanScaleBar(std::vector<Item>& items, Pt upper_right, double scale, double width_mm) {
    Ink ink(items, "notes");
    const double metre = 1000 / scale;
    int metres = scale >= 50 ? 5 : 1;
    if (metre * metres > width_mm) metres = metre * 2 <= width_mm && scale >= 50 ? 2 : 1;
    if (metre * metres > width_mm) return;
    const Rect bar{upper_right.x - metre * metres, upper_right.y - 9.5, upper_right.x, upper_right.y - 8};
    for (int i = 0; i < metres; i += 2)
        ink.fill({bar.left + metre * i, bar.bottom, bar.left + metre * (i + 1), bar.top}, drawing::kBlack);
    ink.rect(bar, kThin);
    ink.text({bar.left, bar.top + 1.5}, "0", kNoteText, drawing::Align::Centre);
    ink.text({bar.right, bar.top + 1.5}, fmt::format("{}000", metres), kNoteText, drawing::Align::Right);
}

void drawNorthArrow(Ink& ink, Pt foot) {
    ink.line(foot, {foot.x, foot.y + 8}, kNarrow);
    ink.fill(
        std::vector<Pt>{{foot.x, foot.y + 8}, {foot.x - 1.2, foot.y + 4.5}, {foot.x + 1.2, foot.y + 4.5}},
        drawing::kBlack);
    ink.text({foot.x + 1.8, foot.y + 0.5}, "N", kNoteText);
}

Rect PlanPages::pictureRoom() const {
    Rect room = layout_.view;
    room.top -= kHeading;
    room.bottom += footnoteHeight(layout_.view.width());
    return room;
}

PackRoom PlanPages::packRoom() const {
    PackRoom room{pictureRoom(), {}};
    if (layout_.paper.upright) return room;
    const double foot = footnoteHeight(layout_.table.right - room.full.left);
    room.low = {room.full.left, layout_.table.bottom + foot, layout_.table.right, room.full.bottom};
    return room;
}

double PlanPages::footnoteHeight(double width_mm) const {
    if (footnote_ == Footnote::DoNotScale) return kFootnote;
    std::vector<Item> lines;
    return 1.9 - drawCautionLines(lines, {0, 0}, width_mm - kFootnoteInset);
}

/// Returns how far down it reaches.
double PlanPages::drawFootnote(std::vector<Item>& items, double bottom) const {
    // Clear of the centring mark, which may be at its height.
    const double left = layout_.view.left + kFootnoteInset;
    if (footnote_ == Footnote::DoNotScale) {
        Ink(items, "notes").text({left, bottom - kFootnote + 0.6}, kDoNotScale, kNoteText);
        return bottom - kFootnote;
    }
    const bool beside_title =
        !layout_.paper.upright && bottom - footnoteHeight(layout_.view.width()) < layout_.view.bottom - 0.01;
    const double right = beside_title ? layout_.table.right : layout_.view.right;
    return drawCautionLines(items, {left, bottom - 1.9}, right - left);
}

PictureSheet PlanPages::centred(PlacedPicture picture, const Rect& extent) const {
    picture.origin = {layout_.view.centre().x - extent.centre().x, layout_.view.top - kHeading - extent.top};
    PictureSheet sheet;
    sheet.bottom = picture.origin.y + extent.bottom;
    sheet.pictures.push_back(std::move(picture));
    return sheet;
}

PlanPages::Page PlanPages::emptyPage(const PlanPage& page, int part) const {
    Page made;
    made.asked_for = page.asked_for;
    drawing::Sheet& sheet = made.sheet;
    sheet.number = part > 1 ? fmt::format("{}-{}", page.number, part) : page.number;
    sheet.title = page.title + (part > 1 ? " (continued)" : "");
    sheet.file_stem = fileStem(sheet.number, page.title, "");
    sheet.scale = page.scale;
    sheet.width_mm = layout_.paper.width_mm;
    sheet.height_mm = layout_.paper.height_mm;
    sheet.items = sheetFrame(layout_.paper);
    made.fields.sheet_id = sheet.number;
    made.fields.title = page.title;
    if (part > 1) made.fields.supplement = "continued";
    made.fields.document_type = page.document_type;
    made.fields.paper = layout_.paper.id;
    return made;
}

void PlanPages::drawHeading(std::vector<Item>& items, const PlanPage& page) const {
    Ink ink(items, "notes");
    const Rect& view = layout_.view;
    ink.text({view.left, view.top - kTitleText}, page.title, kTitleText);
    ink.text({view.left, view.top - kTitleText - 5.4}, page.under, kValueText);
    if (page.marks == PlanPage::Marks::None) return;
    const double words = std::max(drawing::measure(page.title, kTitleText).width_mm,
                                  drawing::measure(page.under, kValueText).width_mm);
    drawPlanScaleBar(items, {view.right - 14, view.top}, page.scale, view.width() - words - 20);
    drawNorthArrow(ink, {view.right - 4, view.top - 11});
}

/// Room to sign beside the revisions.
void PlanPages::drawStrip(std::vector<Item>& items) const {
    const Pt strip{layout_.title_corner.x, layout_.title_corner.y + kTitleHeight};
    drawRevisions(items, strip, plan_);
    Ink lines(items, "frame");
    lines.line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight}, kNarrow);
    constexpr double kSignature = 82;
    lines.line({strip.x - kSignature + 42, strip.y + 4}, {strip.x - 3, strip.y + 4}, kThin);
    Ink(items, "notes").text({strip.x - kSignature, strip.y + 4}, "Name, date, signature:", kNoteText);
}

/// The side column, then what is left under the plan beside the title block.
std::vector<Rect> PlanPages::columnsBeside(double bottom) const {
    if (layout_.paper.upright) return noteColumns(layout_, bottom);
    std::vector<Rect> columns = layout_.side;
    const Rect table{layout_.table.left, layout_.table.bottom, layout_.table.right, bottom};
    for (const Rect& column : columnsBelow(layout_, table))
        columns.push_back(column);
    return columns;
}

/// Columns of a sheet without a plan, under `top`.
std::vector<Rect> PlanPages::widthColumns(double top) const {
    if (layout_.paper.upright) return noteColumns(layout_, top + kGutter);
    const Rect wide = wideTable(layout_).front();
    const double low = layout_.frame.grown(-5.5).bottom;
    const double free_until = layout_.frame.right - kTitleWidth - 2;
    std::vector<Rect> columns;
    for (double x = wide.left; x + layout_.note_width_mm <= wide.right + 1;
         x += layout_.note_width_mm + 2 * kGutter) {
        const double right = x + layout_.note_width_mm;
        columns.push_back({x, right <= free_until ? low : wide.bottom, right, top});
    }
    return columns;
}

/// Puts each part whole into the first column that holds it; one that none holds is parted over them, and
/// says so where it carries on. Takes what was placed from `parts`.
void PlanPages::place(std::vector<Item>& items, std::vector<SheetPart>& parts,
                      std::vector<Rect> columns) const {
    for (SheetPart& part : parts) {
        const auto whole = std::ranges::find_if(
            columns, [&](const Rect& column) { return heightAlone(part.blocks) <= column.height(); });
        if (whole != columns.end()) {
            flow(items, part.blocks, *whole);
            part.blocks.clear();
            continue;
        }
        for (Rect& column : columns) {
            const std::size_t placed = flow(items, part.blocks, column);
            if (placed == 0) continue;
            part.blocks.erase(part.blocks.begin(), part.blocks.begin() + static_cast<std::ptrdiff_t>(placed));
            if (part.blocks.empty()) break;
            part.blocks.insert(part.blocks.begin(),
                               headingBlock(part.title + ", continued", layout_.note_width_mm));
        }
    }
    std::erase_if(parts, [](const SheetPart& part) { return part.blocks.empty(); });
}

void PlanPages::drawPictures(Page& page, const PlanPage& subject, PictureSheet sheet,
                             std::vector<SheetPart>& parts) const {
    auto& items = page.sheet.items;
    drawHeading(items, subject);
    for (PlacedPicture& picture : sheet.pictures)
        placePicture(page.sheet, std::move(picture.items), picture.origin, std::move(picture.name),
                     picture.scale, std::move(picture.placed));
    place(items, parts, columnsBeside(drawFootnote(items, sheet.bottom)));
}

std::vector<PlanPages::Page> PlanPages::drawn(PlanPage subject) const {
    std::vector<Page> pages;
    auto& parts = subject.parts;
    std::erase_if(parts, [](const SheetPart& part) { return part.blocks.empty(); });
    for (std::size_t i = 0; (i < subject.sheets.size() || !parts.empty()) && i < kMostParts; ++i) {
        const bool pictured = i < subject.sheets.size();
        Page page = emptyPage(subject, static_cast<int>(i) + 1);
        page.fields.scale = pictured ? subject.scale : 0;
        if (pictured) {
            drawPictures(page, subject, std::move(subject.sheets[i]), parts);
        } else {
            const Rect wide = wideTable(layout_).front();
            const double top = drawCautionLines(page.sheet.items, {wide.left, wide.top}, wide.width()) - 2;
            place(page.sheet.items, parts, widthColumns(top));
        }
        drawStrip(page.sheet.items);
        pages.push_back(std::move(page));
    }
    return pages;
}

void PlanPages::add(PlanPage page) {
    std::ranges::move(drawn(std::move(page)), std::back_inserter(pages_));
}

std::size_t PlanPages::sheetsTaken(const PlanPage& page) const {
    return drawn(page).size();
}

drawing::Drawing PlanPages::finished(std::string subject) {
    drawing::Drawing drawing = drawingOf(plan_.project, std::move(subject));
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        Page& page = pages_[i];
        if (!page.asked_for) continue;
        page.fields.sheet_of = fmt::format("{} / {}", i + 1, pages_.size());
        drawTitleBlock(page.sheet.items, layout_.title_corner, plan_.project, page.fields);
        drawing.sheets.push_back(std::move(page.sheet));
    }
    pages_.clear();
    return drawing;
}

} // namespace gangway::sheets
