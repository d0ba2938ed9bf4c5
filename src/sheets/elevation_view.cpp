#include "sheets/elevation_view.hpp"

#include "sheets/elevation_dimensions.hpp"
#include "sheets/plan_clip.hpp"
#include "sheets/portions.hpp"
#include "sheets/revision_marks.hpp"
#include "sheets/zone_hatch.hpp"

#include <cmath>
#include <sstream>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

std::vector<Tag> tagsOf(const WallView& view, OnPaper paper) {
    std::vector<Tag> tags;
    for (const Mounted& item : view.mounted) {
        if (item.detail != 0) continue;
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
    if (view.shows(End::Left))
        occupancy.take({-std::max(returnWidth(view, paper, End::Left), least), 0, 0, height});
    if (view.shows(End::Right))
        occupancy.take({length, 0, length + std::max(returnWidth(view, paper, End::Right), least), height});
}

/// Of a portion, what is in its window; names keep to what is left of their things.
void cutToPortion(std::vector<Item>& items, std::vector<Label>& names, std::vector<Label>& zones,
                  std::vector<Label>& furniture, const WallView& view, OnPaper paper) {
    const Rect window = windowOf(view, paper);
    items = clipped(items, window);
    for (std::vector<Label>* labels : {&names, &zones, &furniture}) {
        for (Label& label : *labels) {
            const double whole = label.within.width();
            label.within = {
                std::max(label.within.left, window.left), std::max(label.within.bottom, window.bottom),
                std::min(label.within.right, window.right), std::min(label.within.top, window.top)};
            // What is cut is named where more of it is seen.
            if (label.within.width() < whole / 2 || label.within.height() <= 0) label.lines.clear();
        }
        std::erase_if(*labels, [](const Label& label) { return label.lines.empty(); });
    }
    drawPortionEdges(items, names, view, paper);
}

/// What stands on the edges of a portion: nothing else may.
void takePortionEdges(Occupancy& occupancy, const WallView& view, OnPaper paper) {
    if (!view.portion) return;
    const Rect window = windowOf(view, paper);
    const double top = paper.mm(view.top_mm());
    const double foot = paper.mm(view.slab_mm());
    for (const double x : {window.left, window.right})
        occupancy.takeLeader({x, std::max(foot, window.bottom)}, {x, std::min(top, window.top)});
    if (!view.portion->v_mm) return;
    for (const double y : {window.bottom, window.top})
        occupancy.takeLeader({window.left, y}, {window.right, y});
}

/// Ids of what had its value moved so far that the eye loses it.
void addFarValues(std::vector<std::string>& crowded, const std::vector<Item>& items) {
    constexpr double kFar = 15;
    for (const Item& item : items) {
        const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive);
        if (dimension == nullptr || dimension->texts.empty()) continue;
        const drawing::Text& text = dimension->texts.front();
        const bool row = dimension->kind == drawing::Dimension::Kind::Running;
        if (!row && dimension->kind != drawing::Dimension::Kind::Height) continue;
        const double moved = row ? text.at.x - text.height_mm / 2 - dimension->to.x
                                 : text.at.y + text.height_mm / 2 - dimension->to.y;
        if (std::abs(moved) < kFar) continue;
        std::istringstream ids(dimension->id);
        for (std::string id; ids >> id;)
            crowded.push_back(id);
    }
}

} // namespace

std::vector<Item> drawElevation(const WallView& view, OnPaper paper, std::vector<std::string>* crowded) {
    std::vector<Item> items;
    std::vector<Label> names;
    std::vector<Label> furniture;
    drawWallLines(items, names, view, paper);
    if (paper.compact) names.clear();
    std::vector<Label> zones;
    drawWallZones(items, zones, view, paper);
    drawOpenings(items, names, view, paper);
    if (view.fix == Fix::Second) {
        drawFurniture(items, furniture, view, paper);
        drawOpenLeaves(items, names, view, paper);
    }
    drawFabric(items, view, paper);
    if (view.portion) cutToPortion(items, names, zones, furniture, view, paper);
    const bool detail = view.portion && view.portion->v_mm;
    if (!paper.compact && !detail) drawLevels(items, names, view, paper);
    drawDimensions(items, view, paper);
    drawMounted(items, view, paper);

    Occupancy occupancy;
    occupancy.takeTexts(items);
    takeLines(occupancy, items);
    takeReturns(occupancy, view, paper);
    takePortionEdges(occupancy, view, paper);
    drawDetailFrames(items, occupancy, view, paper);
    drawRevisionMarks(items, occupancy, view, paper);
    Rect wall = paper.rect(view.left_mm(), 0, view.right_mm(), view.top_mm());
    if (detail) wall = windowOf(view, paper);
    const auto tags = tagsOf(view, paper);
    const auto roomless = placeTags(items, occupancy, tags, wall);
    if (crowded != nullptr) {
        addFarValues(*crowded, items);
        for (const std::size_t i : roomless)
            crowded->push_back(tags[i].id);
    }
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
