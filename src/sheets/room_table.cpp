#include "sheets/room_table.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kGap = 4;     ///< between the two halves
constexpr double kBetween = 2; ///< between tag, u and v
constexpr double kRow = 5.2;

RoomTableRow rowOf(const Mounted& item, std::size_t box, Vec2 printed) {
    const std::size_t count = item.box_centres_mm.size();
    return {item.id, count > 1 ? fmt::format("{} {}/{}", item.tag, box + 1, count) : item.tag, printed.x,
            printed.y};
}

/// Widths of the columns of a group.
struct Columns {
    double tag_mm = 0;
    double u_mm = 0;
    double v_mm = 0;
    double tag_height_mm = kValueText;
    double width() const { return tag_mm + u_mm + v_mm + 2 * kBetween; }
};

Columns columnsOf(const RoomTableGroup& group, double tag_height_mm) {
    Columns columns;
    columns.tag_height_mm = tag_height_mm;
    const auto widen = [](double& column, const std::string& words, double height) {
        column = std::max(column, drawing::measure(words, height).width_mm);
    };
    for (const RoomTableRow& row : group.rows) {
        widen(columns.tag_mm, row.tag, tag_height_mm);
        widen(columns.u_mm, drawing::number(row.u_mm), kValueText);
        widen(columns.v_mm, drawing::number(row.v_mm), kValueText);
    }
    return columns;
}

void drawEntry(Ink& ink, double left, const Columns& columns, const RoomTableRow& row) {
    constexpr double kBaseline = -kRow + 1.2;
    double x = left;
    ink.text({x, kBaseline}, row.tag, columns.tag_height_mm);
    x += columns.tag_mm + kBetween + columns.u_mm;
    ink.text({x, kBaseline}, drawing::number(row.u_mm), kValueText, drawing::Align::Right);
    x += kBetween + columns.v_mm;
    ink.text({x, kBaseline}, drawing::number(row.v_mm), kValueText, drawing::Align::Right);
}

Block groupHead(const RoomTableGroup& group, double width_mm) {
    Block head;
    Ink ink(head.items, "notes");
    ink.text({0, -kNoteText - 1.6}, group.title, kNoteText);
    double y = -kNoteText - 1.6;
    if (!group.measured.empty()) {
        const auto lines = wrapped(group.measured, kNoteText, width_mm);
        y = ink.paragraph({0, y - 1.5 * kNoteText}, lines, kNoteText);
    }
    head.height_mm = -y + 1.4;
    ink.line({0, -head.height_mm}, {width_mm, -head.height_mm}, kNarrow);
    head.keep_with_next = true;
    return head;
}

/// In two halves, with smaller tags if need be; else one under the other.
void addRows(std::vector<Block>& blocks, const RoomTableGroup& group, double width_mm) {
    const double half = (width_mm - kGap) / 2;
    Columns columns = columnsOf(group, kValueText);
    if (columns.width() > half && columnsOf(group, kNoteText).width() <= half)
        columns = columnsOf(group, kNoteText);
    const bool narrow = columns.width() <= half;
    const bool in_halves = narrow && group.rows.size() > 1;
    const std::size_t lines = in_halves ? (group.rows.size() + 1) / 2 : group.rows.size();
    // The numbers of all groups stand under each other.
    const double spread = narrow ? half - columns.width() : 0;
    columns.tag_mm += spread;
    for (std::size_t line = 0; line < lines; ++line) {
        Block block;
        block.height_mm = kRow;
        for (std::size_t i = line; i < group.rows.size(); i += lines) {
            Ink ink(block.items, "text", group.rows[i].id);
            drawEntry(ink, i == line ? 0 : half + kGap, columns, group.rows[i]);
        }
        Ink(block.items, "notes").line({0, -kRow}, {width_mm, -kRow}, kThin);
        blocks.push_back(std::move(block));
    }
    blocks.back().gap_after_mm = 0.8;
}

} // namespace

std::vector<RoomTableGroup> wallGroups(const WallView& view, const std::string& sheet) {
    std::vector<RoomTableGroup> groups{{fmt::format("Wall {}, {}", view.data().id, sheet), {}, {}}};
    for (const Mounted& item : view.mounted) {
        std::string title = groups.front().title;
        if (!item.on.empty())
            title += fmt::format(": on {}, {:.0f} before the wall", item.on, std::round(item.out_mm));
        auto group = std::ranges::find(groups, title, &RoomTableGroup::title);
        if (group == groups.end()) group = groups.insert(groups.end(), {title, {}, {}});
        for (std::size_t i = 0; i < item.box_centres_mm.size(); ++i)
            group->rows.push_back(rowOf(item, i, view.printed(item.box_centres_mm[i])));
    }
    std::erase_if(groups, [](const RoomTableGroup& group) { return group.rows.empty(); });
    return groups;
}

std::vector<RoomTableGroup> otherGroups(const House& house, const RoomPoints& points) {
    std::vector<RoomTableGroup> groups;
    RoomTableGroup level;
    level.title = "Ceiling and floor";
    level.measured =
        fmt::format("u from wall {}, v from wall {}, finished faces, seen from above",
                    points.room->walls[points.left_wall].id, points.room->walls[points.bottom_wall].id);
    for (const CeilingPoint& point : points.points)
        level.rows.push_back({point.id, point.tag, point.x_mm, point.y_mm});
    if (!level.rows.empty()) groups.push_back(std::move(level));
    for (const Surface& surface : surfacesOf(house, *points.room)) {
        if (surface.kind != Surface::Kind::Furniture) continue;
        RoomTableGroup group;
        group.title = surface.name;
        group.measured = measuredInWords(surface);
        for (const Mounted& item : surface.mounted) {
            const plan::Host& host = item.plate != nullptr ? item.plate->host : item.luminaire->host;
            if (spotOf(house, *points.room, host)) continue; // a wall's view shows it
            for (std::size_t i = 0; i < item.box_centres_mm.size(); ++i)
                group.rows.push_back(rowOf(item, i, item.box_centres_mm[i]));
        }
        if (!group.rows.empty()) groups.push_back(std::move(group));
    }
    return groups;
}

std::vector<Block> roomTable(const std::vector<RoomTableGroup>& groups, double width_mm) {
    if (groups.empty()) return {};
    std::vector<Block> blocks{headingBlock("Centres: tag, u, v", width_mm)};
    for (const RoomTableGroup& group : groups) {
        blocks.push_back(groupHead(group, width_mm));
        addRows(blocks, group, width_mm);
    }
    blocks.back().gap_after_mm = 3;
    return blocks;
}

} // namespace gangway::sheets
