// The wall strip: a room unrolled for the screen, drawn by the elevations' own code.
#include "sheets/elevation_view.hpp"
#include "sheets/wall_strip.hpp"

#include <algorithm>

namespace gangway::sheets {

namespace {

constexpr double kGap = 6; ///< paper between one wall's picture and the next
constexpr double kMargin = 2;

/// The wall's name over its left end, clear of tags that stand over the wall; returns its extent.
Rect heading(std::vector<Item>& items, const WallView& view, Pt lower_left, const Rect& picture) {
    drawing::Text name;
    name.text = "wall " + view.data().id;
    name.at = lower_left;
    Occupancy occupancy;
    occupancy.takeTexts(items);
    if (!occupancy.isFree(extentOf(name))) name.at.y = std::max(name.at.y, picture.top + 1.2);
    Ink(items, "text").text(name);
    return extentOf(name);
}

} // namespace

Strip wallStrip(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const plan::Room& room,
                double scale, const std::filesystem::path& base) {
    Strip strip;
    strip.sheet.title = room.name;
    strip.sheet.scale = scale;
    const House house(plan, catalogue, base, room);
    auto mounted = mountedByWall(house, room);
    const OnPaper paper{scale, true};
    double x = kMargin;
    double bottom = 0;
    double top = 0;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        findCovers(house, room, mounted[wall]);
        const WallView view = lookAt(house, room, wall, std::move(mounted[wall]));
        auto items = drawElevation(view, paper);
        const Rect extent = extentOf(items);
        const double left = x - extent.left;
        move(items, left, 0);
        const Rect name = heading(items, view, {left, paper.mm(view.top_mm()) + 1.8}, extent);
        strip.sheet.items.insert(strip.sheet.items.end(), std::make_move_iterator(items.begin()),
                                 std::make_move_iterator(items.end()));
        strip.walls.push_back({wall, {left, 0}, view.length_mm()});
        bottom = std::min(bottom, extent.bottom);
        top = std::max({top, extent.top, name.top});
        x = left + std::max(extent.right, name.right - left) + kGap;
    }
    // Paper starts at the lowest ink.
    const double lift = kMargin - bottom;
    move(strip.sheet.items, 0, lift);
    for (StripWall& wall : strip.walls)
        wall.origin.y += lift;
    strip.sheet.width_mm = std::max(x - kGap + kMargin, 2 * kMargin);
    strip.sheet.height_mm = top + lift + kMargin;
    return strip;
}

} // namespace gangway::sheets
