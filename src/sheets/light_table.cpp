#include "sheets/light_table.hpp"

#include "sheets/light_view.hpp"
#include "sheets/site_notes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kRowHeight = 6.4;
constexpr double kHeadHeight = 12.6;
constexpr double kPad = 1.2;
constexpr double kScaleEnd_lx = 500; ///< right end of the bars' scale
constexpr drawing::Colour kBand{0xD2, 0xD2, 0xD2};

struct Column {
    std::string title;
    double part; ///< of the table's width
};
const std::array<Column, 11>& columns() {
    static const std::array<Column, 11> kColumns{{{"Room", 0.15},
                                                  {"area m2", 0.06},
                                                  {"lamps lm", 0.075},
                                                  {"average lx", 0.095},
                                                  {"least lx", 0.07},
                                                  {"least / average", 0.095},
                                                  {"walls lx", 0.075},
                                                  {"k", 0.045},
                                                  {"lumen method lx", 0.09},
                                                  {"usual lx", 0.095},
                                                  {"on a scale, lx", 0.15}}};
    return kColumns;
}

Rect cellOf(std::size_t column, double width_mm, double height_mm) {
    double left = 0;
    for (std::size_t i = 0; i < column; ++i)
        left += columns()[i].part * width_mm;
    return {left, -height_mm, left + columns()[column].part * width_mm, 0};
}

/// Where a value stands in the scale's cell; past its end at the end.
double onScale(const Rect& cell, double lux) {
    const double from = cell.left + 2.5;
    const double to = cell.right - 4;
    return from + (to - from) * std::min(lux, kScaleEnd_lx) / kScaleEnd_lx;
}

const catalogue::LightTarget* usualFor(const catalogue::CountryPack& pack, const plan::Room& room) {
    if (room.use == plan::RoomUse::Unstated) return nullptr;
    const auto found = std::ranges::find_if(pack.light, [&](const catalogue::LightTarget& target) {
        return target.use == room.use && target.task.empty();
    });
    return found == pack.light.end() ? nullptr : &*found;
}

std::string rangeText(const catalogue::LightTarget& target) {
    return target.low_lx == target.high_lx ? fmt::format("{:g}", target.low_lx)
                                           : fmt::format("{:g}-{:g}", target.low_lx, target.high_lx);
}

void drawScale(Block& block, const Rect& cell, const catalogue::LightTarget* usual,
               const lighting::RoomLight& light) {
    Ink ink(block.items, "notes", light.room);
    const double axis = cell.centre().y;
    if (usual != nullptr) {
        const double from = onScale(cell, usual->low_lx);
        const double to = std::max(onScale(cell, usual->high_lx), from + 0.8);
        ink.fill({from, axis - 1.3, to, axis + 1.3}, kBand);
        ink.rect({from, axis - 1.3, to, axis + 1.3}, kThin);
    }
    ink.line({onScale(cell, 0), axis}, {onScale(cell, kScaleEnd_lx), axis}, kThin);
    for (double lux : {0.0, 250.0, 500.0})
        ink.line({onScale(cell, lux), axis - 0.7}, {onScale(cell, lux), axis + 0.7}, kThin);
    if (light.lumens <= 0) return;
    const double method = onScale(cell, light.lumen_method_lx);
    ink.fill(disc({method, axis}, 0.75), drawing::kWhite);
    ink.circle({method, axis}, 0.75, kNarrow);
    const double average = onScale(cell, light.levels.average_lx);
    ink.fill({{average, axis}, {average + 1.1, axis + 2.4}, {average - 1.1, axis + 2.4}}, drawing::kBlack);
    if (std::max(light.levels.average_lx, light.lumen_method_lx) > kScaleEnd_lx)
        ink.polyline(
            {{cell.right - 2.6, axis + 0.8}, {cell.right - 1.4, axis}, {cell.right - 2.6, axis - 0.8}}, false,
            kThin);
}

Block rowOf(const plan::Room& room, const catalogue::CountryPack& pack, const lighting::RoomLight& light,
            double width_mm) {
    const auto* usual = usualFor(pack, room);
    const bool lit = light.levels.maximum_lx > 0;
    const bool lamps = light.lumens > 0;
    const auto orDash = [](bool there, const std::string& text) { return there ? text : std::string("-"); };
    const std::array<std::string, 9> values{
        fmt::format("{:.1f}", light.area_m2),
        orDash(lamps, fmt::format("{:.0f}", light.lumens)),
        orDash(lit, luxText(light.levels.average_lx)),
        orDash(lit, luxText(light.levels.minimum_lx)),
        orDash(lit, fmt::format("{:.2f}", light.levels.uniformity)),
        orDash(light.walls_lx.value_or(0) > 0, luxText(light.walls_lx.value_or(0))),
        orDash(light.room_index > 0, fmt::format("{:.2f}", light.room_index)),
        orDash(lamps, luxText(light.lumen_method_lx)),
        usual == nullptr ? "-" : rangeText(*usual)};
    Block block;
    Ink texts(block.items, "notes", room.id);
    const Rect name_cell = cellOf(0, width_mm, kRowHeight);
    const auto names =
        wrapped(room.name.empty() ? room.id : room.name, kNoteText, name_cell.width() - 2 * kPad);
    block.height_mm = kRowHeight + (names.empty() ? 0.0 : static_cast<double>(names.size() - 1) * 4.2);
    const double baseline = -kRowHeight / 2 - kNoteText / 2;
    texts.paragraph({name_cell.left + kPad, baseline}, names, kNoteText);
    for (std::size_t i = 0; i < values.size(); ++i)
        texts.text({cellOf(i + 1, width_mm, kRowHeight).right - kPad, baseline}, values[i], kNoteText,
                   drawing::Align::Right);
    drawScale(block, cellOf(10, width_mm, kRowHeight), usual, light);
    texts.line({0, -block.height_mm}, {width_mm, -block.height_mm}, kThin);
    return block;
}

std::string sourced(const catalogue::Sourced& value) {
    return fmt::format("{:g} ({})", value.value, value.source);
}

std::vector<std::string> rangeNotes(const plan::Plan& plan, const catalogue::CountryPack& pack,
                                    const std::vector<lighting::RoomLight>& rooms) {
    std::vector<std::string> notes = {
        "What is usual for the use of a room, not a requirement and no verdict on these "
        "rooms. Tasks such as reading or cooking want more where they are done."};
    bool unstated = false;
    for (const lighting::RoomLight& light : rooms) {
        const plan::Room* room = plan::findRoom(plan, light.room);
        const auto* usual = usualFor(pack, *room);
        unstated = unstated || room->use == plan::RoomUse::Unstated;
        if (usual == nullptr) continue;
        const std::string note = fmt::format("{} lx: {}.", rangeText(*usual), usual->source);
        if (std::ranges::find(notes, note) == notes.end()) notes.push_back(note);
    }
    if (unstated) notes.emplace_back("Rooms with a dash have no use stated in the plan.");
    return notes;
}

} // namespace

std::vector<Block> lightTableHead(double width_mm, bool continued) {
    Block head;
    Ink ink(head.items, "notes");
    head.height_mm = kHeadHeight;
    head.keep_with_next = true;
    for (std::size_t i = 0; i < columns().size(); ++i) {
        const Rect cell = cellOf(i, width_mm, kHeadHeight);
        const auto lines = wrapped(columns()[i].title, kNoteText, cell.width() - 2 * kPad);
        const bool right = i > 0 && i + 1 < columns().size();
        const double x = right ? cell.right - kPad : cell.left + kPad;
        ink.paragraph({x, -kNoteText - 0.6}, lines, kNoteText,
                      right ? drawing::Align::Right : drawing::Align::Left);
    }
    const Rect scale = cellOf(10, width_mm, kHeadHeight);
    for (double lux : {0.0, 500.0})
        ink.text({onScale(scale, lux), -kHeadHeight + 1.4}, fmt::format("{:g}", lux), kNoteText,
                 drawing::Align::Centre);
    ink.line({0, -kHeadHeight}, {width_mm, -kHeadHeight}, kOutline);
    return {headingBlock(continued ? "Light in the rooms, continued"
                                   : "Light in the rooms: estimate, direct light only",
                         width_mm),
            head};
}

std::vector<Block> lightTableRows(const plan::Plan& plan, const catalogue::CountryPack& pack,
                                  const std::vector<lighting::RoomLight>& rooms, double width_mm) {
    std::vector<Block> rows;
    for (const lighting::RoomLight& light : rooms)
        rows.push_back(rowOf(*plan::findRoom(plan, light.room), pack, light, width_mm));
    if (!rows.empty()) rows.back().gap_after_mm = 4;
    return rows;
}

std::vector<Block> lightNotes(const plan::Plan& plan, const catalogue::CountryPack& pack,
                              const std::vector<lighting::RoomLight>& rooms, double width_mm) {
    std::vector<std::string> method{
        fmt::format("Numbers are an {}: walls and ceilings reflect nothing here, so rooms are lighter than "
                    "this. All luminaires on, no daylight.",
                    lighting::kEstimate),
        fmt::format(
            "Point method on squares of {:g}, E = I cos t / d2, with the shadows of walls, doors as "
            "they stand open and furniture. Work plane {} above FFL; on tops up to {:g} higher the "
            "light is taken on them; inside taller furniture there is no value. Average and least leave a "
            "strip of {:g} % of the shorter side along the walls out, {:g} at most (EN 12464-1, from "
            "memory). Walls: the average on the wall faces, behind furniture too.",
            rooms.empty() ? 250.0 : rooms.front().grid.cell_mm, sourced(pack.work_plane_mm),
            lighting::kPlaneRise_mm, 100 * lighting::kMarginPart, lighting::kMostMargin_mm),
        fmt::format("Lumen method: lamps' lm x UF x MF / area, UF {}, MF {}; k is the room index.",
                    sourced(pack.utilisation), sourced(pack.maintenance)),
        "Luminaires without an IES file spread their light as is usual for their kind; common practice, no "
        "source.",
        "Lines: thick 10, 100, 1000 lx; thin 20, 200 lx; dashed 50, 500 lx. On the scale: triangle, point "
        "average; circle, lumen method; grey, usual."};
    for (const lighting::RoomLight& light : rooms)
        method.insert(method.end(), light.problems.begin(), light.problems.end());
    std::vector<Block> blocks{headingBlock("How this is worked out", width_mm), notesBlock(method, width_mm),
                              headingBlock(fmt::format("Usual light, pack {}", pack.name), width_mm),
                              notesBlock(rangeNotes(plan, pack, rooms), width_mm)};
    for (Block& block : cautions(width_mm, Wording::Short))
        blocks.push_back(std::move(block));
    return blocks;
}

} // namespace gangway::sheets
