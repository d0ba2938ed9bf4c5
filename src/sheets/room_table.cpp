#include "sheets/room_table.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kGap = 4; ///< between the two halves
constexpr double kPad = 0.8;
constexpr double kRow = 5.2;
constexpr double kNumber = 11.5; ///< width of a number's column

RoomTableRow rowOf(const Mounted& item, std::size_t box, Vec2 printed) {
    const std::size_t count = item.box_centres_mm.size();
    return {item.id, count > 1 ? fmt::format("{} {}/{}", item.tag, box + 1, count) : item.tag, printed.x,
            printed.y};
}

/// Half a line: tag, u, v.
void drawHalf(Ink& ink, double left, double right, double baseline, const std::string& tag,
              const std::string& u, const std::string& v) {
    const double room = right - left - 2 * kNumber - kPad;
    const bool large = drawing::measure(tag, kValueText).width_mm <= room;
    ink.text({left, baseline}, tag, large ? kValueText : kNoteText);
    ink.text({right - kNumber - kPad, baseline}, u, kValueText, drawing::Align::Right);
    ink.text({right - kPad, baseline}, v, kValueText, drawing::Align::Right);
}

/// A tag that is too long for its half stands on a line of its own.
bool isLong(const RoomTableRow& row, double half_mm) {
    return drawing::measure(row.tag, kNoteText).width_mm > half_mm - 2 * kNumber - kPad;
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

void addRows(std::vector<Block>& blocks, const RoomTableGroup& group, double width_mm) {
    const double half = (width_mm - kGap) / 2;
    const bool wide = std::ranges::any_of(group.rows, [&](const auto& row) { return isLong(row, half); });
    const std::size_t lines = wide ? group.rows.size() : (group.rows.size() + 1) / 2;
    for (std::size_t line = 0; line < lines; ++line) {
        Block block;
        block.height_mm = kRow;
        for (const std::size_t i : {line, line + lines}) {
            if (i >= group.rows.size()) continue;
            const RoomTableRow& row = group.rows[i];
            const double left = i == line ? 0 : half + kGap;
            Ink ink(block.items, "text", row.id);
            drawHalf(ink, left, wide ? width_mm : left + half, -kRow + 1.3, row.tag,
                     drawing::number(row.u_mm), drawing::number(row.v_mm));
        }
        Ink(block.items, "notes").line({0, -kRow}, {width_mm, -kRow}, kThin);
        blocks.push_back(std::move(block));
    }
    blocks.back().gap_after_mm = 0.8;
}

} // namespace

RoomTableGroup wallGroup(const WallView& view, const std::string& sheet) {
    RoomTableGroup group;
    group.title = fmt::format("Wall {}, {}", view.data().id, sheet);
    for (const Mounted& item : view.mounted)
        for (std::size_t i = 0; i < item.box_centres_mm.size(); ++i)
            group.rows.push_back(rowOf(item, i, view.printed(item.box_centres_mm[i])));
    return group;
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
