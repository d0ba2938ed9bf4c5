#include "sheets/switching_sheets.hpp"

#include "sheets/plan_clip.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/storey_plan_parts.hpp"
#include "sheets/switching_legend.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kAroundRoom = 3;  ///< paper around a single room, beyond its walls
constexpr double kRoomWalls = 250; ///< how much of the walls around a single room is shown, real mm
constexpr int kMostParts = 200;

/// What one plan shows: a storey, or a room of it.
struct Subject {
    const plan::Storey* storey = nullptr;
    const plan::Room* room = nullptr; ///< nullptr: the whole storey
    std::string title() const { return room != nullptr ? room->name : storey->name; }
};

/// A plan drawn at some scale around the house's zero point.
struct PlanPicture {
    double scale = 50;
    std::vector<Item> items;
    std::vector<drawing::PlacedObject> placed;
    Rect extent;
    StoreyLegs legs;
};

class Maker {
public:
    Maker(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const SwitchingOptions& options,
          const Paper& paper)
        : plan_(plan), catalogue_(catalogue), options_(options), net_(plan, catalogue),
          layout_(layoutOn(paper, Arrangement::SideColumn)), marks_(marksAtSymbols(plan)),
          plates_(platesOfSwitching(net_)) {}

    /// An error for a plan that does not fit.
    std::expected<drawing::Drawing, std::string> make() {
        for (const plan::Storey& storey : plan_.storeys) {
            if (!options_.room.empty()) break;
            if (!isWorthASheet({&storey, nullptr})) continue;
            const auto crowded = add({&storey, nullptr}, {});
            if (!crowded) return std::unexpected(crowded.error());
        }
        if (const plan::Room* room = net_.room(options_.room))
            if (const auto done = add({plan::findStorey(plan_, room->storey), room}, {}); !done)
                return std::unexpected(done.error());
        return finished();
    }

private:
    /// A heading with what stands under it.
    struct Part {
        std::string title;
        std::vector<Block> blocks;
    };
    struct Page {
        drawing::Sheet sheet;
        TitleFields fields;
    };

    bool isIn(const Subject& subject, const std::string& room_id) const {
        const plan::Room* room = net_.room(room_id);
        if (room == nullptr || room->storey != subject.storey->id) return false;
        return subject.room == nullptr || subject.room == room;
    }
    std::vector<const plan::Plate*> platesOf(const Subject& subject) const {
        std::vector<const plan::Plate*> plates;
        for (const plan::Plate& plate : plan_.plates)
            if (std::ranges::binary_search(plates_, plate.id) && isIn(subject, plate.room))
                plates.push_back(&plate);
        return plates;
    }
    std::vector<const plan::Luminaire*> luminairesOf(const Subject& subject) const {
        std::vector<const plan::Luminaire*> luminaires;
        for (const plan::Luminaire& luminaire : plan_.luminaires)
            if (isIn(subject, luminaire.room)) luminaires.push_back(&luminaire);
        return luminaires;
    }
    bool isWorthASheet(const Subject& subject) const {
        return !platesOf(subject).empty() || !luminairesOf(subject).empty();
    }

    PlanPicture drawn(const Subject& subject, double scale) const {
        StoreyPlanOptions look;
        look.scale = scale;
        look.luminaire_tags = true;
        look.lamps = options_.lamps;
        look.only_plates = plates_;
        look.marks = marks_;
        look.base = options_.base;
        look.wet_zones = options_.wet_zones;
        const StoreyBase base = storeyBase(plan_, subject.storey->id, look);
        const StoreySymbols symbols = storeySymbols(plan_, catalogue_, base, look);
        LegOptions legs;
        legs.corners = options_.corners;
        legs.coloured = options_.coloured;
        if (subject.room != nullptr) legs.room = subject.room->id;
        PlanPicture picture;
        picture.scale = scale;
        picture.legs = legsOnPlan(net_, base, symbols, legs);
        picture.items = base.items;
        makeQuiet(picture.items);
        const auto append = [&](const std::vector<Item>& more) {
            picture.items.insert(picture.items.end(), more.begin(), more.end());
        };
        append(picture.legs.items);
        append(symbols.items);
        if (subject.room != nullptr) {
            std::vector<Pt> corners;
            for (Vec2 p : subject.room->outline)
                corners.push_back(base.mapping.paper(p));
            picture.items =
                clipped(picture.items, extentOfPoints(corners).grown(kRoomWalls / scale + kAroundRoom));
        }
        move(picture.items, -base.mapping.origin.x, -base.mapping.origin.y);
        picture.placed = symbols.placed;
        std::erase_if(picture.placed, [&](const drawing::PlacedObject& object) {
            return std::ranges::none_of(picture.items, [&](const Item& item) {
                return item.id == object.id && item.layer == object.layer;
            });
        });
        picture.extent = extentOf(picture.items);
        return picture;
    }

    /// Furniture stands behind what the sheet is about.
    static void makeQuiet(std::vector<Item>& items) {
        for (Item& item : items) {
            if (item.layer != "furniture") continue;
            std::vector<Item> one{item};
            makeLight(one, 0);
            item = std::move(one.front());
        }
    }

    std::expected<PlanPicture, std::string> fitting(const Subject& subject) const {
        std::vector<double> scales{50, 100, 200};
        if (subject.room != nullptr) scales.insert(scales.begin(), {20, 25});
        if (options_.scale) scales = {*options_.scale};
        const double wide = layout_.view.width();
        const double high = layout_.view.height() - kHeading - kFootnote;
        PlanPicture picture;
        for (const double scale : scales) {
            picture = drawn(subject, scale);
            if (picture.extent.width() <= wide && picture.extent.height() <= high) return picture;
        }
        return std::unexpected(
            fmt::format("{} takes {:.0f} x {:.0f} mm of paper at 1:{:g}, and {} has {:.0f} x "
                        "{:.0f}; take a smaller scale or larger paper",
                        subject.title(), picture.extent.width(), picture.extent.height(), picture.scale,
                        layout_.paper.id, wide, high));
    }

    std::string numberOf(int part) const {
        const std::string number = fmt::format("S-{:02}", plans_);
        return part > 1 ? fmt::format("{}-{}", number, part) : number;
    }

    Page emptyPage(const Subject& subject, double scale, int part) const {
        Page page;
        page.sheet.number = numberOf(part);
        page.sheet.title = fmt::format("{}, switching{}", subject.title(), part > 1 ? " (continued)" : "");
        page.sheet.file_stem = fileStem(page.sheet.number, subject.title() + " switching", "");
        page.sheet.scale = scale;
        page.sheet.width_mm = layout_.paper.width_mm;
        page.sheet.height_mm = layout_.paper.height_mm;
        page.fields.sheet_id = page.sheet.number;
        page.fields.title = fmt::format("{}, switching", subject.title());
        if (part > 1) page.fields.supplement = "continued";
        page.fields.document_type = "switching plan";
        page.fields.paper = layout_.paper.id;
        page.fields.scale = part > 1 ? 0 : scale;
        page.sheet.items = sheetFrame(layout_.paper);
        return page;
    }

    void drawHeading(std::vector<Item>& items, const Subject& subject, double scale) const {
        Ink ink(items, "notes");
        const Rect& view = layout_.view;
        ink.text({view.left, view.top - kTitleText}, subject.title() + ", switching", kTitleText);
        ink.text({view.left, view.top - kTitleText - 5.4},
                 fmt::format("seen from above, 1:{:g}; lines show control, not cable route", scale),
                 kValueText);
        drawScaleBar(items, {view.right - 14, view.top}, scale);
        drawNorth(ink, {view.right - 4, view.top - 11});
    }

    /// Five metres (of a room: one) with a tick each.
    static void drawScaleBar(std::vector<Item>& items, Pt upper_right, double scale) {
        Ink ink(items, "notes");
        const int metres = scale >= 50 ? 5 : 1;
        const double metre = 1000 / scale;
        const Rect bar{upper_right.x - metre * metres, upper_right.y - 9.5, upper_right.x, upper_right.y - 8};
        for (int i = 0; i < metres; i += 2)
            ink.fill({bar.left + metre * i, bar.bottom, bar.left + metre * (i + 1), bar.top},
                     drawing::kBlack);
        ink.rect(bar, kThin);
        ink.text({bar.left, bar.top + 1.5}, "0", kNoteText, drawing::Align::Centre);
        ink.text({bar.right, bar.top + 1.5}, fmt::format("{}000", metres), kNoteText, drawing::Align::Right);
    }

    static void drawNorth(Ink& ink, Pt foot) {
        ink.line(foot, {foot.x, foot.y + 8}, kNarrow);
        ink.fill(
            std::vector<Pt>{{foot.x, foot.y + 8}, {foot.x - 1.2, foot.y + 4.5}, {foot.x + 1.2, foot.y + 4.5}},
            drawing::kBlack);
        ink.text({foot.x + 1.8, foot.y + 0.5}, "N", kNoteText);
    }

    /// Room to sign beside the revisions.
    void drawStrip(std::vector<Item>& items) const {
        const Pt strip{layout_.title_corner.x, layout_.title_corner.y + kTitleHeight};
        drawRevisions(items, strip, plan_);
        Ink lines(items, "frame");
        lines.line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight},
                   kNarrow);
        constexpr double kSignature = 82;
        lines.line({strip.x - kSignature + 42, strip.y + 4}, {strip.x - 3, strip.y + 4}, kThin);
        Ink(items, "notes").text({strip.x - kSignature, strip.y + 4}, "Name, date, signature:", kNoteText);
    }

    /// Columns of a sheet without a plan, under `top`.
    std::vector<Rect> widthColumns(double top) const {
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

    static double heightOf(const std::vector<Block>& blocks) {
        double height = 0;
        for (const Block& block : blocks)
            height += block.height_mm + block.gap_after_mm;
        return blocks.empty() ? 0 : height - blocks.back().gap_after_mm;
    }

    /// Puts each part whole into the first column that holds it; one that none holds is parted over them, and
    /// says so where it carries on. Takes what was placed from `parts`.
    void place(std::vector<Item>& items, std::vector<Part>& parts, std::vector<Rect> columns) const {
        for (Part& part : parts) {
            const auto whole = std::ranges::find_if(
                columns, [&](const Rect& column) { return heightOf(part.blocks) <= column.height(); });
            if (whole != columns.end()) {
                flow(items, part.blocks, *whole);
                part.blocks.clear();
                continue;
            }
            for (Rect& column : columns) {
                const std::size_t placed = flow(items, part.blocks, column);
                if (placed == 0) continue;
                part.blocks.erase(part.blocks.begin(),
                                  part.blocks.begin() + static_cast<std::ptrdiff_t>(placed));
                if (part.blocks.empty()) break;
                part.blocks.insert(part.blocks.begin(),
                                   headingBlock(part.title + ", continued", layout_.note_width_mm));
            }
        }
        std::erase_if(parts, [](const Part& part) { return part.blocks.empty(); });
    }

    std::vector<Part> partsFor(const Subject& subject, const PlanPicture& picture,
                               std::vector<std::string> notes) const {
        const double width = layout_.note_width_mm;
        if (options_.wet_zones != nullptr)
            notes.push_back(fmt::format("Zones of baths and showers: {}. Measure again on site.",
                                        options_.wet_zones->limit("wetZone1Top").source));
        const auto plates = platesOf(subject);
        std::vector<Part> parts{
            {"How to read", switchingNotes(width, notes)},
            {"Legs on this sheet", legLegend(net_, picture.legs.legs, width)},
            {"Symbols", symbolLegend(net_, plates, luminairesOf(subject), options_.lamps, width)},
            {"Switch plates", plateLegend(net_, plates, width)}};
        std::erase_if(parts, [](const Part& part) { return part.blocks.empty(); });
        return parts;
    }

    /// Rooms too crowded for lines get larger sheets of their own, which the storey's sheet names.
    std::vector<std::string> crowdedNotes(const std::vector<const plan::Room*>& crowded) const {
        std::vector<std::string> notes;
        for (std::size_t i = 0; i < crowded.size(); ++i)
            notes.push_back(fmt::format("{}: told by marks here, larger with lines on sheet S-{:02}.",
                                        crowded[i]->name, plans_ + static_cast<int>(i) + 1));
        return notes;
    }

    std::expected<void, std::string> add(const Subject& subject, const std::vector<std::string>& more) {
        auto picture = fitting(subject);
        if (!picture) return std::unexpected(picture.error());
        ++plans_;
        std::vector<const plan::Room*> crowded;
        if (subject.room == nullptr)
            for (const std::string& id : picture->legs.crowded_rooms)
                crowded.push_back(net_.room(id));
        auto notes = crowdedNotes(crowded);
        notes.insert(notes.end(), more.begin(), more.end());
        addPages(subject, std::move(*picture), notes);
        for (const plan::Room* room : crowded)
            if (const auto done = add({subject.storey, room}, {}); !done)
                return std::unexpected(done.error());
        return {};
    }

    void addPages(const Subject& subject, PlanPicture picture, const std::vector<std::string>& notes) {
        std::vector<Part> parts = partsFor(subject, picture, notes);
        Page first = emptyPage(subject, picture.scale, 1);
        auto& items = first.sheet.items;
        drawHeading(items, subject, picture.scale);
        const Rect& view = layout_.view;
        const double dx = view.centre().x - picture.extent.centre().x;
        const double dy = view.top - kHeading - picture.extent.top;
        const double bottom = picture.extent.bottom + dy;
        placePicture(first.sheet, std::move(picture.items), {dx, dy}, first.sheet.title, picture.scale,
                     std::move(picture.placed));
        // Clear of the centring mark, which may be at its height.
        Ink(items, "notes").text({view.left + 2.5, bottom - kFootnote + 0.6}, kDoNotScale, kNoteText);
        place(items, parts, columnsBeside(bottom - kFootnote));
        drawStrip(items);
        pages_.push_back(std::move(first));
        for (int part = 2; !parts.empty() && part <= kMostParts; ++part) {
            Page page = emptyPage(subject, picture.scale, part);
            const Rect wide = wideTable(layout_).front();
            const double top = drawCautionLines(page.sheet.items, {wide.left, wide.top}, wide.width()) - 2;
            place(page.sheet.items, parts, widthColumns(top));
            drawStrip(page.sheet.items);
            pages_.push_back(std::move(page));
        }
    }

    /// The side column, then what is left under the plan beside the title block.
    std::vector<Rect> columnsBeside(double bottom) const {
        if (layout_.paper.upright) return noteColumns(layout_, bottom);
        std::vector<Rect> columns = layout_.side;
        const Rect table{layout_.table.left, layout_.table.bottom, layout_.table.right, bottom};
        for (const Rect& column : columnsBelow(layout_, table))
            columns.push_back(column);
        return columns;
    }

    drawing::Drawing finished() {
        drawing::Drawing drawing;
        drawing.title = plan_.project.name;
        drawing.subject = "Switching plans";
        drawing.author = plan_.project.designer;
        drawing.date = plan_.project.date;
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            Page& page = pages_[i];
            page.fields.sheet_of = fmt::format("{} / {}", i + 1, pages_.size());
            drawTitleBlock(page.sheet.items, layout_.title_corner, plan_.project, page.fields);
            drawing.sheets.push_back(std::move(page.sheet));
        }
        return drawing;
    }

    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const SwitchingOptions& options_;
    switching::Net net_;
    Layout layout_;
    std::map<std::string, std::string> marks_;
    std::vector<std::string> plates_; ///< ids of those that switch or are switched, sorted
    std::vector<Page> pages_;
    int plans_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string> switchingSheets(const plan::Plan& plan,
                                                             const catalogue::Catalogue& catalogue,
                                                             const SwitchingOptions& options) {
    const auto paper = findPaper(options.paper);
    if (!paper)
        return std::unexpected(
            fmt::format("there is no paper '{}'; give one of {}", options.paper, paperNames()));
    constexpr std::array<double, 6> kScales{10, 20, 25, 50, 100, 200};
    if (options.scale && std::ranges::find(kScales, *options.scale) == kScales.end())
        return std::unexpected(fmt::format(
            "1:{:g} is not a scale of switching plans; give 10, 20, 25, 50, 100 or 200", *options.scale));
    if (!options.room.empty() && plan::findRoom(plan, options.room) == nullptr)
        return std::unexpected(fmt::format("there is no room '{}'", options.room));
    return Maker(plan, catalogue, options, *paper).make();
}

} // namespace gangway::sheets
