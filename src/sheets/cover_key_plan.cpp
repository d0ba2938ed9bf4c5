// Key plans of the storeys: walls without furniture, the letters of rooms and walls, names underneath.
#include "geometry/frames.hpp"
#include "sheets/cover_parts.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using plan::Vec2;

constexpr double kNames = 3;        ///< from the plan down to the names under it
constexpr double kHeadline = 6.5;   ///< the storey's name over its plan
constexpr double kWallLetter = 2.5; ///< height
constexpr double kFromWall = 0.9;   ///< a wall's letter from its wall
constexpr double kCellGap = 8;
constexpr double kAround = 0.5; ///< clear of a letter
constexpr double kTrial = 100;  ///< scale at which sizes are found

struct StoreyWork {
    const plan::Storey* storey = nullptr;
    std::vector<const plan::Room*> rooms;
    double width_mm = 0; ///< on paper at 1:kTrial
    double height_mm = 0;
};

/// Walls, openings and stairs alone.
StoreyBase baseOf(const plan::Plan& plan, const plan::Storey& storey, double scale,
                  const std::filesystem::path& base) {
    StoreyPlanOptions options;
    options.scale = scale;
    options.furniture = false;
    options.base = base;
    StoreyBase drawn = storeyBase(plan, storey.id, options);
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

/// The storeys' plans as they share the paper: so many side by side, at one scale.
struct SideBySide {
    std::size_t across = 1;
    double scale = 0;
};

std::string namesOf(const StoreyWork& storey) {
    std::string names;
    for (const plan::Room* room : storey.rooms)
        names += fmt::format("{}{}{}", names.empty() ? "" : ",  ",
                             room->letter.empty() ? "" : room->letter + " ", room->name);
    return names;
}

/// Height of one storey's cell, at this scale.
double cellHeight(const StoreyWork& storey, double cell_mm, double scale) {
    return kHeadline + storey.height_mm * kTrial / scale + kNames +
           paragraphHeight(wrapped(namesOf(storey), kNoteText, cell_mm), kNoteText);
}

double cellWidth(double width_mm, std::size_t across) {
    return (width_mm - static_cast<double>(across - 1) * kCellGap) / static_cast<double>(across);
}

double heightOf(const std::vector<StoreyWork>& work, double width_mm, const SideBySide& arrangement) {
    double height = 0;
    for (std::size_t first = 0; first < work.size(); first += arrangement.across) {
        double row = 0;
        for (std::size_t i = first; i < std::min(first + arrangement.across, work.size()); ++i)
            row = std::max(row,
                           cellHeight(work[i], cellWidth(width_mm, arrangement.across), arrangement.scale));
        height += row + (first > 0 ? kCellGap / 2 : 0);
    }
    return height;
}

/// The arrangement that shows the house largest.
SideBySide arrangementOf(const std::vector<StoreyWork>& work, double width_mm, double most_height_mm) {
    SideBySide best;
    for (std::size_t across = 1; across <= work.size(); ++across) {
        SideBySide one{across, 1};
        for (const StoreyWork& storey : work)
            one.scale = std::max(one.scale, storey.width_mm * kTrial / cellWidth(width_mm, across));
        while (heightOf(work, width_mm, one) > most_height_mm && one.scale < 2000)
            one.scale *= 1.02;
        if (best.scale == 0 || one.scale < best.scale - 1e-6) best = one;
    }
    return best;
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

/// The room's letter, large, as near its middle as it stands clear.
void drawRoomLetter(std::vector<Item>& items, Occupancy& occupancy, const StoreyBase& base,
                    const plan::Room& room) {
    if (room.letter.empty() || room.outline.size() < 3) return;
    Rect extent{1e300, 1e300, -1e300, -1e300};
    for (const Vec2 corner : room.outline) {
        const Pt p = base.mapping.paper(corner);
        extent = {std::min(extent.left, p.x), std::min(extent.bottom, p.y), std::max(extent.right, p.x),
                  std::max(extent.top, p.y)};
    }
    for (const double height : {kNumberText, kTitleText, kValueText, kNoteText}) {
        // Small beside the walls' letters it could be taken for one.
        const double margin = height > kNoteText ? kWallLetter + kFromWall + 1 : kAround;
        const double half = drawing::measure(room.letter, height).width_mm / 2;
        std::optional<Rect> best;
        double nearest = 1e300;
        constexpr int kSteps = 24;
        for (int ix = 1; ix < kSteps; ++ix)
            for (int iy = 1; iy < kSteps; ++iy) {
                const Pt at{extent.left + extent.width() * ix / kSteps,
                            extent.bottom + extent.height() * iy / kSteps};
                const double far = std::hypot(at.x - extent.centre().x, at.y - extent.centre().y);
                const Rect rect{at.x - half, at.y - height / 2, at.x + half, at.y + height / 2};
                if (far >= nearest || !insideOnPaper(base, room, rect.grown(margin))) continue;
                nearest = far;
                best = rect;
            }
        if (!best) continue;
        occupancy.take(best->grown(1));
        Ink(items, "notes")
            .text({best->centre().x, best->bottom}, room.letter, height, drawing::Align::Centre);
        return;
    }
}

/// A wall's letter inside its room, at its middle or where it is clear along it.
void drawWallLetter(std::vector<Item>& items, Occupancy& occupancy, const StoreyBase& base,
                    const plan::Room& room, std::size_t wall) {
    const auto edge = geometry::wallEdge(room, wall);
    const auto frame = geometry::wallFrame(room, wall);
    drawing::Text letter;
    letter.text = room.walls[wall].id;
    letter.height_mm = kWallLetter;
    letter.align = drawing::Align::Centre;
    const double half_width = drawing::measure(letter.text, kWallLetter).width_mm / 2;
    const double out =
        kFromWall + 0.25 + std::abs(frame.w.x) * half_width + std::abs(frame.w.y) * kWallLetter / 2;
    for (const double part : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88}) {
        const Pt foot = base.mapping.paper(edge.from_mm + (edge.to_mm - edge.from_mm) * part);
        const Pt centre{foot.x + frame.w.x * out, foot.y + frame.w.y * out};
        const Rect rect{centre.x - half_width, centre.y - kWallLetter / 2, centre.x + half_width,
                        centre.y + kWallLetter / 2};
        if (!occupancy.isFree(rect.grown(kAround)) || !insideOnPaper(base, room, rect)) continue;
        letter.at = {centre.x, rect.bottom};
        occupancy.take(rect.grown(kAround));
        Ink(items, "notes").text(letter);
        return;
    }
}

/// A storey's plan with its letters, lower left corner at (0, 0).
std::vector<Item> lettered(const plan::Plan& plan, const StoreyWork& storey, double scale,
                           const std::filesystem::path& folder) {
    const StoreyBase base = baseOf(plan, *storey.storey, scale, folder);
    std::vector<Item> items = base.items;
    const Rect extent = extentOf(items);
    Occupancy occupancy;
    for (const plan::Room* room : storey.rooms)
        drawRoomLetter(items, occupancy, base, *room);
    for (const plan::Room* room : storey.rooms)
        for (std::size_t wall = 0; wall < room->walls.size(); ++wall)
            drawWallLetter(items, occupancy, base, *room, wall);
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
    const SideBySide arrangement = arrangementOf(work, width_mm, most_height_mm);
    const double cell = cellWidth(width_mm, arrangement.across);
    Block block;
    block.gap_after_mm = 5;
    double top = 0;
    for (std::size_t first = 0; first < work.size(); first += arrangement.across) {
        double lowest = top;
        for (std::size_t i = first; i < std::min(first + arrangement.across, work.size()); ++i) {
            const StoreyWork& storey = work[i];
            const double left = static_cast<double>(i - first) * (cell + kCellGap);
            Ink ink(block.items, "notes");
            ink.text({left, top - kValueText}, storey.storey->name, kValueText);
            auto items = lettered(plan, storey, arrangement.scale, base);
            const double bottom = top - kHeadline - extentOf(items).height();
            move(items, left, bottom);
            std::ranges::move(items, std::back_inserter(block.items));
            const auto names = wrapped(namesOf(storey), kNoteText, cell);
            const double last =
                Ink(block.items, "notes").paragraph({left, bottom - kNames - kNoteText}, names, kNoteText);
            lowest = std::min(lowest, last);
        }
        top = lowest - kCellGap / 2;
    }
    Ink ink(block.items, "notes");
    northArrow(ink, {cell - 2, -7});
    block.height_mm = -(top + kCellGap / 2) + 1;
    Block heading =
        headingBlock("Where things are: rooms and walls by their letters, not to scale", width_mm);
    return {heading, block};
}

} // namespace gangway::sheets
