// Key plans of the storeys: walls without furniture, the letters of rooms and walls, names underneath.
#include "geometry/frames.hpp"
#include "sheets/cover_parts.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using plan::Vec2;

constexpr double kNames = 3;           ///< from the plan down to the names under it
constexpr double kHeadline = 6.5;      ///< the storey's name over its plan
constexpr double kWallLetter = 2.5;    ///< height
constexpr double kFromWall = 0.7;      ///< a wall's letter from its wall
constexpr double kCellGap = 8;         ///< between storeys side by side
constexpr std::size_t kMostNamed = 40; ///< rooms of a storey
constexpr double kRowGap = 4;
constexpr double kUnderHeading = 1.5;
constexpr double kLeastNames = 30; ///< width of the names under a small plan
constexpr double kAround = 0.35;   ///< clear of a letter
constexpr double kTrial = 100;     ///< scale at which sizes are found

struct StoreyWork {
    const plan::Storey* storey = nullptr;
    std::vector<const plan::Room*> rooms;
    double width_mm = 0; ///< on paper at 1:kTrial
    double height_mm = 0;
};

Rect extentOfPolygon(const std::vector<Pt>& corners) {
    Rect extent{1e300, 1e300, -1e300, -1e300};
    for (const Pt p : corners)
        extent = {std::min(extent.left, p.x), std::min(extent.bottom, p.y), std::max(extent.right, p.x),
                  std::max(extent.top, p.y)};
    return extent;
}

/// Walls, openings and stairs alone; of what is to be kept clear, the doors' leaves.
StoreyBase baseOf(const plan::Plan& plan, const plan::Storey& storey, double scale,
                  const std::filesystem::path& base) {
    StoreyPlanOptions options;
    options.scale = scale;
    options.furniture = false;
    options.base = base;
    StoreyBase drawn = storeyBase(plan, storey.id, options);
    // Names of rooms are drawn last: they go, with the places that they took.
    const auto names = std::ranges::count_if(drawn.items, [](const Item& item) {
        return item.layer == "text" && std::holds_alternative<drawing::Text>(item.primitive);
    });
    drawn.keep_clear.resize(drawn.keep_clear.size() -
                            std::min(drawn.keep_clear.size(), static_cast<std::size_t>(names)));
    std::erase_if(drawn.items,
                  [](const Item& item) { return std::holds_alternative<drawing::Text>(item.primitive); });
    return drawn;
}

std::vector<StoreyWork> storeysOf(const plan::Plan& plan, const std::filesystem::path& base) {
    std::vector<StoreyWork> work;
    for (const plan::Storey& storey : plan.storeys) {
        StoreyWork one{&storey, {}, 0, 0};
        for (const plan::Room& room : plan.rooms)
            if (room.storey == storey.id) one.rooms.push_back(&room);
        if (one.rooms.empty()) continue;
        const Rect extent = extentOf(baseOf(plan, storey, kTrial, base).items);
        one.width_mm = extent.width();
        one.height_mm = extent.height();
        work.push_back(std::move(one));
    }
    return work;
}

/// "K: Kitchen; H: Hall" in lines, no letter parted from its name.
std::vector<std::string> namesOf(const StoreyWork& storey, double width_mm) {
    if (storey.rooms.size() > kMostNamed)
        return wrapped("Names of rooms: on their sheets.", kNoteText, width_mm);
    std::vector<std::string> lines;
    std::string line;
    for (const plan::Room* room : storey.rooms) {
        const std::string name = room->letter.empty() ? room->name : room->letter + ": " + room->name;
        const std::string longer = line.empty() ? name : line + "; " + name;
        if (!line.empty() && drawing::measure(longer + ";", kNoteText).width_mm > width_mm) {
            lines.push_back(line + ";");
            line = name;
        } else {
            line = longer;
        }
    }
    if (!line.empty()) lines.push_back(line);
    std::vector<std::string> fitting;
    for (const std::string& one : lines)
        std::ranges::move(wrapped(one, kNoteText, width_mm), std::back_inserter(fitting));
    return fitting;
}

/// Where a storey stands in a row of them, on paper.
struct Place {
    double left_mm = 0;
    double width_mm = 0; ///< of plan and names
    std::size_t row = 0;
};

/// The storeys beside each other as long as there is width, then in another row.
std::vector<Place> placesAt(const std::vector<StoreyWork>& work, double width_mm, double scale) {
    std::vector<Place> places;
    double left = 0;
    std::size_t row = 0;
    for (const StoreyWork& storey : work) {
        const double wide = std::max(storey.width_mm * kTrial / scale, kLeastNames);
        if (left > 0 && left + wide > width_mm) {
            left = 0;
            ++row;
        }
        places.push_back({left, std::min(wide, width_mm), row});
        left += wide + kCellGap;
    }
    // The last of a row has its names as wide as the row is.
    for (std::size_t i = 0; i < places.size(); ++i)
        if (i + 1 == places.size() || places[i + 1].row != places[i].row)
            places[i].width_mm = width_mm - places[i].left_mm;
    return places;
}

double heightOf(const StoreyWork& storey, const Place& place, double scale) {
    return kHeadline + storey.height_mm * kTrial / scale + kNames + kNoteText +
           paragraphHeight(namesOf(storey, place.width_mm), kNoteText);
}

/// Heights of the rows.
std::vector<double> rowsOf(const std::vector<StoreyWork>& work, const std::vector<Place>& places,
                           double scale) {
    std::vector<double> rows;
    for (std::size_t i = 0; i < work.size(); ++i) {
        rows.resize(places[i].row + 1);
        rows.back() = std::max(rows.back(), heightOf(work[i], places[i], scale));
    }
    return rows;
}

/// The largest scale at which they fit; at the smallest they may be too high.
double scaleFor(const std::vector<StoreyWork>& work, double width_mm, double most_height_mm) {
    constexpr double kLargest = 50;
    constexpr double kSmallest = 1000;
    double scale = kLargest;
    for (; scale < kSmallest; scale *= 1.02) {
        const bool wide = std::ranges::any_of(
            work, [&](const StoreyWork& storey) { return storey.width_mm * kTrial / scale > width_mm; });
        const auto rows = rowsOf(work, placesAt(work, width_mm, scale), scale);
        double height = static_cast<double>(rows.size() - 1) * kRowGap;
        for (const double row : rows)
            height += row;
        if (!wide && height <= most_height_mm) break;
    }
    return scale;
}

bool insideOnPaper(const StoreyBase& base, const plan::Room& room, const Rect& rect) {
    const auto corners = cornersOf(rect);
    if (!std::ranges::all_of(corners,
                             [&](Pt p) { return geometry::insideRoom(room, base.mapping.house(p)); }))
        return false;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        if (crosses(rect, base.mapping.paper(edge.from_mm), base.mapping.paper(edge.to_mm))) return false;
    }
    return true;
}

/// What may not be written on: door leaves and their swings, and letters that are there.
struct Taken {
    Occupancy all;
    Occupancy letters;
    void add(const Rect& rect) {
        all.take(rect);
        letters.take(rect);
    }
    /// A disc, by two rectangles that cover it.
    void addDisc(Pt centre, double radius) {
        const double narrow = radius * std::numbers::sqrt2 / 2;
        add({centre.x - radius, centre.y - narrow, centre.x + radius, centre.y + narrow});
        add({centre.x - narrow, centre.y - radius, centre.x + narrow, centre.y + radius});
    }
};

/// How a room's letter is tried: how high, how far from walls, and clear of doors or not.
struct RoomLetter {
    double height_mm = kNoteText;
    double margin_mm = 0;
    bool clear = true;
};

/// The room's letter in a circle, as near the room's middle as it stands; false where it does not.
bool drawRoomLetter(std::vector<Item>& items, Taken& taken, const StoreyBase& base, const plan::Room& room,
                    const RoomLetter& tried) {
    std::vector<Pt> outline;
    for (const Vec2 corner : room.outline)
        outline.push_back(base.mapping.paper(corner));
    const Rect extent = extentOfPolygon(outline);
    const double radius =
        std::hypot(drawing::measure(room.letter, tried.height_mm).width_mm, tried.height_mm) / 2 + 0.4;
    std::optional<Pt> best;
    double nearest = 1e300;
    constexpr int kSteps = 40;
    for (int ix = 1; ix < kSteps; ++ix)
        for (int iy = 1; iy < kSteps; ++iy) {
            const Pt at{extent.left + extent.width() * ix / kSteps,
                        extent.bottom + extent.height() * iy / kSteps};
            const double far = std::hypot(at.x - extent.centre().x, at.y - extent.centre().y);
            const Rect rect = Rect{at.x, at.y, at.x, at.y}.grown(radius);
            if (far >= nearest || (tried.clear && !taken.all.isFree(rect)) ||
                !insideOnPaper(base, room, rect.grown(tried.margin_mm)))
                continue;
            nearest = far;
            best = at;
        }
    if (!best) return false;
    taken.addDisc(*best, radius + kAround);
    Ink ink(items, "notes");
    ink.fill(disc(*best, radius), drawing::kWhite);
    ink.circle(*best, radius, kThin);
    ink.text({best->x, best->y - tried.height_mm / 2}, room.letter, tried.height_mm, drawing::Align::Centre);
    return true;
}

/// A wall's letter inside its room, at its middle or where it is clear along it.
void drawWallLetter(std::vector<Item>& items, Taken& taken, const StoreyBase& base, const plan::Room& room,
                    std::size_t wall) {
    const auto edge = geometry::wallEdge(room, wall);
    const auto frame = geometry::wallFrame(room, wall);
    drawing::Text letter;
    letter.text = room.walls[wall].id;
    letter.height_mm = kWallLetter;
    letter.align = drawing::Align::Centre;
    const double half_width = drawing::measure(letter.text, kWallLetter).width_mm / 2;
    const double out =
        kFromWall + 0.25 + std::abs(frame.w.x) * half_width + std::abs(frame.w.y) * kWallLetter / 2;
    constexpr std::array kParts{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88};
    // Where a door swings over all of a wall, its letter stands on the swing, in a white box.
    for (const bool over : {false, true})
        for (const double part : kParts) {
            const Pt foot = base.mapping.paper(edge.from_mm + (edge.to_mm - edge.from_mm) * part);
            const Pt centre{foot.x + frame.w.x * out, foot.y + frame.w.y * out};
            const Rect rect{centre.x - half_width, centre.y - kWallLetter / 2, centre.x + half_width,
                            centre.y + kWallLetter / 2};
            if (!(over ? taken.letters : taken.all).isFree(rect.grown(kAround)) ||
                !insideOnPaper(base, room, rect.grown(over ? 0 : kAround / 2)))
                continue;
            letter.at = {centre.x, rect.bottom};
            letter.knock_out = over;
            taken.add(rect.grown(kAround));
            Ink(items, "notes").text(letter);
            return;
        }
}

/// The letters of a room and its walls: the room's as large as it may be without taking a wall's place.
void letterRoom(std::vector<Item>& items, Taken& taken, const StoreyBase& base, const plan::Room& room) {
    if (room.outline.size() < 3) return;
    std::vector<Item> best;
    Taken best_taken;
    constexpr double kBeside = kWallLetter + 2 * kFromWall;
    for (const RoomLetter& tried :
         {RoomLetter{kNumberText, kBeside, true}, RoomLetter{kTitleText, kBeside, true},
          RoomLetter{kValueText, kAround, true}, RoomLetter{kNoteText, kAround, true},
          RoomLetter{kNoteText, 0, true}, RoomLetter{kNoteText, 0, false}}) {
        std::vector<Item> drawn;
        Taken now = taken;
        if (!room.letter.empty() && !drawRoomLetter(drawn, now, base, room, tried)) continue;
        for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
            drawWallLetter(drawn, now, base, room, wall);
        if (drawn.size() <= best.size()) continue;
        best = std::move(drawn);
        best_taken = std::move(now);
    }
    if (best.empty()) return;
    std::ranges::move(best, std::back_inserter(items));
    taken = std::move(best_taken);
}

/// The line of a door's swing.
void takeArc(Occupancy& occupancy, const drawing::Arc& arc) {
    constexpr int kPieces = 10;
    for (int i = 0; i <= kPieces; ++i) {
        const double at =
            (arc.start_deg + (arc.end_deg - arc.start_deg) * i / kPieces) * std::numbers::pi / 180;
        const Pt p{arc.centre.x + arc.radius_mm * std::cos(at), arc.centre.y + arc.radius_mm * std::sin(at)};
        occupancy.take(Rect{p.x, p.y, p.x, p.y}.grown(0.3));
    }
}

/// A storey's plan with its letters, lower left corner at (0, 0).
std::vector<Item> lettered(const plan::Plan& plan, const StoreyWork& storey, double scale,
                           const std::filesystem::path& folder) {
    const StoreyBase base = baseOf(plan, *storey.storey, scale, folder);
    std::vector<Item> items = base.items;
    const Rect extent = extentOf(items);
    Taken taken;
    for (const auto& leaf : base.keep_clear)
        taken.all.take(extentOfPolygon(leaf));
    for (const Item& item : base.items)
        if (const auto* swing = std::get_if<drawing::Arc>(&item.primitive)) takeArc(taken.all, *swing);
    for (const plan::Room* room : storey.rooms)
        letterRoom(items, taken, base, *room);
    move(items, -extent.left, -extent.bottom);
    return items;
}

void northArrow(Ink& ink, Pt foot) {
    ink.line(foot, {foot.x, foot.y + 6}, kNarrow);
    ink.fill({{foot.x - 1.2, foot.y + 3.5}, {foot.x + 1.2, foot.y + 3.5}, {foot.x, foot.y + 7}},
             drawing::kBlack);
    ink.text({foot.x - 1.8, foot.y + 4}, "N", kNoteText, drawing::Align::Right);
}

} // namespace

std::vector<Block> storeyKeyPlans(const plan::Plan& plan, double width_mm, double most_height_mm,
                                  const std::filesystem::path& base) {
    const auto work = storeysOf(plan, base);
    if (work.empty()) return {};
    constexpr double kNorth = 6; ///< kept for the arrow, at the right
    const double scale = scaleFor(work, width_mm - kNorth, most_height_mm);
    const auto places = placesAt(work, width_mm - kNorth, scale);
    const auto rows = rowsOf(work, places, scale);
    Block block;
    block.gap_after_mm = 2;
    block.height_mm = kUnderHeading;
    for (const double row : rows)
        block.height_mm += row + kRowGap;
    block.height_mm -= kRowGap;
    for (std::size_t i = 0; i < work.size(); ++i) {
        double top = -kUnderHeading;
        for (std::size_t row = 0; row < places[i].row; ++row)
            top -= rows[row] + kRowGap;
        Ink ink(block.items, "notes");
        ink.text({places[i].left_mm, top - kValueText}, work[i].storey->name, kValueText);
        auto items = lettered(plan, work[i], scale, base);
        const double bottom = top - kHeadline - extentOf(items).height();
        move(items, places[i].left_mm, bottom);
        std::ranges::move(items, std::back_inserter(block.items));
        Ink(block.items, "notes")
            .paragraph({places[i].left_mm, bottom - kNames - kNoteText}, namesOf(work[i], places[i].width_mm),
                       kNoteText);
    }
    Ink ink(block.items, "notes");
    northArrow(ink, {width_mm - 1.5, -kUnderHeading - 8});
    return {
        headingBlock("Where things are: rooms in circles, walls by their letters; not to scale", width_mm),
        block};
}

} // namespace gangway::sheets
