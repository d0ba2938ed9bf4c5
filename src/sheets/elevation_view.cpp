#include "sheets/elevation_view.hpp"

#include "sheets/elevation_dimensions.hpp"
#include "sheets/revision_marks.hpp"
#include "sheets/zone_hatch.hpp"

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

std::vector<Tag> tagsOf(const WallView& view, OnPaper paper) {
    std::vector<Tag> tags;
    for (const Mounted& item : view.mounted) {
        Tag tag;
        tag.text = item.tag;
        if (paper.compact)
            tag.note.clear();
        else if (!item.behind.empty())
            tag.note = "behind " + item.behind;
        else if (!item.on.empty())
            tag.note = item.out_mm > kFurnitureReach
                           ? fmt::format("on {}, {:.0f} before the wall", item.on, item.out_mm)
                           : "on " + item.on;
        tag.id = item.id;
        tag.target = outlineOf(item, paper);
        tags.push_back(tag);
    }
    return tags;
}

/// Extension lines and plates' centre lines had better stay readable.
void takeLines(Occupancy& occupancy, const std::vector<Item>& items) {
    for (const Item& item : items)
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const auto& line : dimension->lines)
                occupancy.takeLine(line.from, line.to);
}

/// Numbers stay clear of the circles with the neighbours' letters.
void takeReturns(Occupancy& occupancy, const WallView& view, OnPaper paper) {
    const double height = paper.mm(view.top_mm());
    const double length = paper.mm(view.length_mm());
    const double least = paper.compact ? 5.0 : 8.0;
    occupancy.take({-std::max(returnWidth(view, paper, End::Left), least), 0, 0, height});
    occupancy.take({length, 0, length + std::max(returnWidth(view, paper, End::Right), least), height});
}

} // namespace

std::vector<Item> drawElevation(const WallView& view, OnPaper paper) {
    std::vector<Item> items;
    std::vector<Label> names;
    std::vector<Label> furniture;
    drawWallLines(items, names, view, paper);
    if (paper.compact) names.clear();
    std::vector<Label> zones;
    drawWallZones(items, zones, view, paper);
    drawOpenings(items, names, view, paper);
    drawFurniture(items, furniture, view, paper);
    drawOpenLeaves(items, names, view, paper);
    drawFabric(items, view, paper);
    if (!paper.compact) drawLevels(items, names, view, paper);
    drawDimensions(items, view, paper);
    drawMounted(items, view, paper);

    Occupancy occupancy;
    occupancy.takeTexts(items);
    takeLines(occupancy, items);
    takeReturns(occupancy, view, paper);
    drawRevisionMarks(items, occupancy, view, paper);
    const Rect wall{0, 0, paper.mm(view.length_mm()), paper.mm(view.top_mm())};
    placeTags(items, occupancy, tagsOf(view, paper), wall);
    // What must stand first, then what names things, as far as there is room.
    std::vector<Label> musts;
    std::vector<Label> mays;
    for (Label& label : names)
        (label.need == Label::Need::Always ? musts : mays).push_back(std::move(label));
    placeLabels(items, occupancy, musts);
    placeLabels(items, occupancy, mays);
    placeZoneLabels(items, occupancy, zones);
    placeLabels(items, occupancy, furniture);
    return items;
}

} // namespace gangway::sheets
