#include "sheets/ceiling_view.hpp"

#include "drawing/dimensions.hpp"
#include "sheets/leg_plan.hpp"
#include "sheets/tag_placement.hpp"
#include "sheets/wall_markers.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kFirstRow = 10; ///< first dimension line from the outline (drawing-standards 1.2)
constexpr double kSymbol = 2.6;  ///< from a point to where its extension line begins

std::string wallName(const RoomPoints& points, std::size_t wall) {
    return points.room->walls[wall].id;
}

void nameRow(std::vector<Item>& items, Pt right, const std::string& words) {
    Ink(items, "notes").text(right, words, kNoteText, drawing::Align::Right);
}

/// Where rows and columns of numbers stand, in the base's paper.
struct RowPlaces {
    Rect room; ///< the room's extent
    double origin_x = 0;
    double origin_y = 0;
    double row_y = 0;
    double column_x = 0;
};

RowPlaces placesOf(const RoomPoints& points, const PlanMapping& mapping) {
    std::vector<Pt> corners;
    for (Vec2 p : points.room->outline)
        corners.push_back(mapping.paper(p));
    RowPlaces places;
    places.room = extentOfPoints(corners);
    places.origin_x = mapping.paper(wallLineOnPlan(*points.room, points.left_wall).from_mm).x;
    places.origin_y = mapping.paper(wallLineOnPlan(*points.room, points.bottom_wall).from_mm).y;
    const double walls = shownAround(mapping.scale);
    places.row_y = places.room.bottom - std::max(kFirstRow, walls + 3);
    places.column_x = places.room.left - std::max(kFirstRow, walls + 3);
    return places;
}

void drawRows(std::vector<Item>& items, const RoomPoints& points, const PlanMapping& mapping) {
    if (!points.square || points.points.empty()) return;
    const RowPlaces places = placesOf(points, mapping);
    // The walls' faces themselves have the extension lines of the zeros.
    std::vector<drawing::RunningMark> xs{{{places.origin_x, places.room.bottom}, places.origin_x, 0, {}}};
    std::vector<drawing::RunningMark> ys{{{places.room.left, places.origin_y}, places.origin_y, 0, {}}};
    for (const CeilingPoint& point : points.points) {
        const Pt at = mapping.paper(point.at_mm);
        xs.push_back({{at.x, at.y - kSymbol}, at.x, point.x_mm, point.id});
        ys.push_back({{at.x - kSymbol, at.y}, at.y, point.y_mm, point.id});
    }
    const auto append = [&](std::vector<Item> more) {
        items.insert(items.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    };
    append(drawing::runningRow(places.origin_x, places.row_y, std::move(xs), {}, "dimensions"));
    append(drawing::runningColumn(places.column_x, places.origin_y, std::move(ys), {}, "dimensions"));
    const double right = std::min(places.origin_x, places.room.left) - 3;
    nameRow(items, {right, places.row_y - kNoteText / 2},
            "x from wall " + wallName(points, points.left_wall));
    nameRow(items, {places.column_x + 1.5, places.origin_y - 7},
            "y from wall " + wallName(points, points.bottom_wall));
}

/// Equal spacing beside its line, where nothing is in the way.
void drawSpacings(std::vector<Item>& items, Occupancy& occupancy, const RoomPoints& points,
                  const PlanMapping& mapping) {
    std::vector<Label> labels;
    for (const EqualSpacing& spacing : points.spacings()) {
        const Pt first = mapping.paper(spacing.points.front()->at_mm);
        const Pt last = mapping.paper(spacing.points.back()->at_mm);
        constexpr double kAside = 9;
        Label label;
        label.lines = {spacing.words()};
        label.layer = "dimensions";
        label.within = spacing.along_x ? Rect{first.x, first.y - kAside, last.x, first.y + kAside}
                                       : Rect{first.x - kAside, first.y, first.x + kAside, last.y};
        if (!spacing.along_x) label.turn_deg = 90;
        labels.push_back(std::move(label));
    }
    placeLabels(items, occupancy, labels);
}

void takeAll(Occupancy& occupancy, const std::vector<Item>& items) {
    occupancy.takeTexts(items);
    for (const Item& item : items) {
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const auto& line : dimension->lines)
                occupancy.takeLine(line.from, line.to);
        else if (item.layer == "symbols" || item.layer == "plates")
            occupancy.take(extentOf(item.primitive));
    }
}

/// A tag that had to go outside the room gives way to the rows there; the table has it.
void leaveOutTagsOn(StoreySymbols& symbols, const std::vector<Item>& rows) {
    Occupancy numbers;
    numbers.takeTexts(rows);
    std::vector<std::string> ids;
    for (const Item& item : symbols.items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
            if (item.layer == "text" && !numbers.isFree(extentOf(*text))) ids.push_back(item.id);
    std::erase_if(symbols.items, [&](const Item& item) {
        return item.layer == "text" && std::ranges::find(ids, item.id) != ids.end();
    });
}

// --- the table

constexpr double kTagColumn = 16;
constexpr double kLeastNumber = 12.5; ///< width of a number's column
constexpr double kPad = 1.2;
constexpr double kLeastRow = 5.4;

/// How wide a number's column has to be for all of a room's.
double numberColumn(const RoomPoints& points) {
    double widest = 0;
    const auto take = [&](double value) {
        widest = std::max(widest, drawing::measure(drawing::number(value), kValueText).width_mm);
    };
    for (const CeilingPoint& point : points.points)
        for (const double value : {point.x_mm, point.y_mm, point.height_mm})
            take(value);
    for (const OtherPoint& point : points.others)
        for (const double value : {point.u_mm, point.v_mm})
            take(value);
    return std::max(kLeastNumber, widest + 2.4);
}

struct RowTexts {
    std::string id;
    std::string tag;
    std::vector<std::string> numbers; ///< up to three
    std::string what;
};

Block tableRow(const RowTexts& texts, double number_mm, double width_mm) {
    const double left = kTagColumn + 3 * number_mm + kPad;
    const auto what = wrapped(texts.what, kNoteText, width_mm - left);
    const auto tag = wrapped(texts.tag, kValueText, kTagColumn - kPad);
    Block row;
    row.height_mm =
        std::max({kLeastRow, paragraphHeight(what, kNoteText) + 2.4, paragraphHeight(tag, kValueText) + 2.4});
    Ink ink(row.items, "text", texts.id);
    const auto middle = [&](const std::vector<std::string>& lines, double height) {
        return -(row.height_mm - paragraphHeight(lines, height)) / 2 - height;
    };
    ink.paragraph({0, middle(tag, kValueText)}, tag, kValueText);
    for (std::size_t i = 0; i < texts.numbers.size(); ++i)
        ink.text({kTagColumn + static_cast<double>(i + 1) * number_mm - kPad,
                  middle({texts.numbers[i]}, kValueText)},
                 texts.numbers[i], kValueText, drawing::Align::Right);
    if (!what.empty()) ink.paragraph({left, middle(what, kNoteText)}, what, kNoteText);
    Ink(row.items, "notes").line({0, -row.height_mm}, {width_mm, -row.height_mm}, kThin);
    return row;
}

Block columnTitles(const std::vector<std::string>& numbers, const std::string& what, double number_mm,
                   double width_mm) {
    Block head;
    head.height_mm = kNoteText + 2.2;
    head.keep_with_next = true;
    Ink ink(head.items, "notes");
    const double y = -kNoteText - 0.8;
    ink.text({0, y}, "tag", kNoteText);
    for (std::size_t i = 0; i < numbers.size(); ++i)
        ink.text({kTagColumn + static_cast<double>(i + 1) * number_mm - kPad, y}, numbers[i], kNoteText,
                 drawing::Align::Right);
    ink.text({kTagColumn + 3 * number_mm + kPad, y}, what, kNoteText);
    ink.line({0, -head.height_mm}, {width_mm, -head.height_mm}, kNarrow);
    return head;
}

Block sentences(const std::vector<std::string>& words, double width_mm) {
    Block block;
    std::vector<std::string> lines;
    for (const std::string& sentence : words)
        std::ranges::move(wrapped(sentence, kNoteText, width_mm), std::back_inserter(lines));
    block.height_mm = paragraphHeight(lines, kNoteText) + 2.2;
    Ink(block.items, "notes").paragraph({0, -kNoteText - 0.8}, lines, kNoteText);
    return block;
}

std::string namesOf(const std::vector<const CeilingPoint*>& points) {
    std::string names;
    for (const CeilingPoint* point : points)
        names += (names.empty() ? "" : ", ") + point->tag;
    return names;
}

/// What the numbers want said: walls that end before a point, equal spacing.
std::vector<std::string> remarksOn(const RoomPoints& points) {
    std::vector<std::string> remarks;
    const auto beside = [&](bool CeilingPoint::* is_beside, std::size_t wall) {
        std::vector<const CeilingPoint*> found;
        for (const CeilingPoint& point : points.points)
            if (point.*is_beside) found.push_back(&point);
        if (!found.empty())
            remarks.push_back(fmt::format("{}: the face of wall {} ends before it; carry it on in its line.",
                                          namesOf(found), wallName(points, wall)));
    };
    beside(&CeilingPoint::beside_x, points.left_wall);
    beside(&CeilingPoint::beside_y, points.bottom_wall);
    for (const EqualSpacing& spacing : points.spacings())
        remarks.push_back(fmt::format("Equal along {}: {} {}.", spacing.along_x ? "x" : "y",
                                      namesOf(spacing.points), spacing.words()));
    return remarks;
}

void addPoints(std::vector<Block>& blocks, const RoomPoints& points, double width_mm) {
    if (points.points.empty()) return;
    const double number_mm = numberColumn(points);
    Block from =
        sentences({fmt::format("x from wall {}, y from wall {}, finished faces; height above FFL.",
                               wallName(points, points.left_wall), wallName(points, points.bottom_wall))},
                  width_mm);
    from.keep_with_next = true;
    blocks.push_back(std::move(from));
    blocks.push_back(columnTitles({"x", "y", "height"}, "what", number_mm, width_mm));
    for (const CeilingPoint& point : points.points)
        blocks.push_back(tableRow(
            {point.id,
             point.tag,
             {drawing::number(point.x_mm), drawing::number(point.y_mm), drawing::number(point.height_mm)},
             point.what},
            number_mm, width_mm));
    if (const auto remarks = remarksOn(points); !remarks.empty())
        blocks.push_back(sentences(remarks, width_mm));
}

void addOthers(std::vector<Block>& blocks, const RoomPoints& points, double width_mm) {
    if (!points.others.empty()) {
        const double number_mm = numberColumn(points);
        const bool flat = std::ranges::any_of(points.others, [](const auto& one) { return !one.upright; });
        Block how = sentences({flat ? "Not on the ceiling: u from the left corner or edge, v above FFL; on "
                                      "undersides and tops v towards the back."
                                    : "Not on the ceiling: u from the left corner or edge, v above FFL."},
                              width_mm);
        how.keep_with_next = true;
        blocks.push_back(std::move(how));
        blocks.push_back(columnTitles({"u", "v"}, "what, where", number_mm, width_mm));
        for (const OtherPoint& point : points.others)
            blocks.push_back(tableRow({point.id,
                                       point.tag,
                                       {drawing::number(point.u_mm), drawing::number(point.v_mm)},
                                       point.what + "; " + point.where},
                                      number_mm, width_mm));
    }
    if (points.plugged.empty()) return;
    std::string tags;
    for (const std::string& tag : points.plugged)
        tags += (tags.empty() ? "" : ", ") + tag;
    blocks.push_back(sentences({fmt::format("Plugged in, no point to set out: {}.", tags)}, width_mm));
}

} // namespace

CeilingStorey ceilingStorey(const House& house, const plan::Storey& storey, double scale,
                            const std::filesystem::path& folder) {
    StoreyPlanOptions look;
    look.scale = scale;
    look.furniture = false;
    look.luminaire_tags = true;
    look.tags_only_with_room = true;
    look.marks = marksAtSymbols(house.plan());
    look.base = folder;
    std::vector<std::string> plates;
    for (const plan::Plate& plate : house.plan().plates)
        if (plate.host.kind == plan::Host::Kind::Ceiling || plate.host.kind == plan::Host::Kind::Floor)
            plates.push_back(plate.id);
    std::ranges::sort(plates);
    look.only_plates = std::move(plates);
    CeilingStorey drawn;
    drawn.base = storeyBase(house.plan(), storey.id, look);
    drawn.symbols = storeySymbols(house.plan(), house.catalogue(), drawn.base, look);
    return drawn;
}

PlanPicture ceilingPicture(const CeilingStorey& storey, const House& house, const RoomPoints& points,
                           const ElevationNumbers& numbers) {
    StoreySymbols symbols = storey.symbols;
    keepOnly(symbols, thingsIn(house.plan(), *points.room));
    std::vector<Item> rows;
    drawRows(rows, points, storey.base.mapping);
    leaveOutTagsOn(symbols, rows);
    std::vector<Item> taken = storey.base.items;
    taken.insert(taken.end(), symbols.items.begin(), symbols.items.end());
    std::vector<Item> marks;
    {
        std::vector<Item> around = taken;
        around.insert(around.end(), rows.begin(), rows.end());
        const std::size_t others = around.size();
        drawWallMarkers(around, storey.base.mapping, storey.base.keep_clear,
                        allWallsOf(*points.room, numbers));
        std::move(around.begin() + static_cast<std::ptrdiff_t>(others), around.end(),
                  std::back_inserter(marks));
    }
    taken.insert(taken.end(), marks.begin(), marks.end());
    taken.insert(taken.end(), rows.begin(), rows.end());
    Occupancy occupancy;
    takeAll(occupancy, taken);
    drawSpacings(marks, occupancy, points, storey.base.mapping);
    std::ranges::move(marks, std::back_inserter(symbols.items));
    // Rows stand outside the walls that are shown, so they come after the cut.
    PlanPicture picture = planPicture(storey.base, {}, {}, points.room);
    // The room's name stands over the picture.
    std::erase_if(picture.items,
                  [&](const Item& item) { return item.layer == "text" && item.id == points.room->id; });
    const Pt zero = storey.base.mapping.origin;
    for (std::vector<Item>* more : {&rows, &symbols.items}) {
        move(*more, -zero.x, -zero.y);
        std::ranges::move(*more, std::back_inserter(picture.items));
    }
    putTextsOver(picture.items);
    picture.placed = symbols.placed;
    picture.extent = extentOf(picture.items);
    return picture;
}

std::vector<Block> ceilingTable(const RoomPoints& points, double width_mm) {
    std::vector<Block> blocks{headingBlock(points.room->name, width_mm)};
    addPoints(blocks, points, width_mm);
    addOthers(blocks, points, width_mm);
    blocks.back().gap_after_mm = 3;
    return blocks;
}

} // namespace gangway::sheets
