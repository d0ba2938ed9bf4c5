// The tables of what is to be ordered: modules, frames, boxes and luminaires, counted.
#include "catalogue/parts.hpp"
#include "sheets/schedules_parts.hpp"

#include <map>
#include <utility>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using catalogue::Part;

/// Rows of equal cells counted: each key once, in its order, its count behind it.
using Counted = std::map<Row, int>;

std::vector<Row> rowsOf(const Counted& counted) {
    std::vector<Row> rows;
    for (const auto& [cells, count] : counted) {
        rows.push_back(cells);
        rows.back().emplace_back(std::in_place_type<double>, count);
    }
    return rows;
}

bool isInsert(Part::Kind kind) {
    return kind == Part::Kind::Module || kind == Part::Kind::Blank || kind == Part::Kind::Unknown;
}

} // namespace

Table modulesTable(const Scheduled& scheduled) {
    Table table{"modules", "Modules to order", {}, {}, {}, {}};
    table.columns = {textColumn("code", "code"), textColumn("name", "name"), textColumn("finish", "finish"),
                     countColumn()};
    Counted counted;
    for (const ScheduledPlate& item : scheduled.plates)
        for (const Part& part : catalogue::parts(*scheduled.catalogue, *item.plate, item.face))
            if (isInsert(part.kind)) counted[{part.code, part.name, part.finish}] += part.count;
    table.rows = rowsOf(counted);
    return table;
}

Table framesTable(const Scheduled& scheduled) {
    Table table{"frames", "Frames to order", {}, {}, {}, {}};
    table.columns = {textColumn("format", "format"), numberColumn("gangs", "gangs", ""),
                     textColumn("finish", "finish"), countColumn()};
    Counted counted;
    for (const ScheduledPlate& item : scheduled.plates) {
        const auto* format = item.face.format;
        ++counted[{format != nullptr ? format->name : item.plate->format, double(item.face.gang_count),
                   finishName(*scheduled.catalogue, item.face.finish)}];
    }
    table.rows = rowsOf(counted);
    return table;
}

Table boxesTable(const Scheduled& scheduled) {
    Table table{"boxes", "Back boxes to order", {}, {}, {}, {}};
    table.columns = {textColumn("boxKind", "box, mm"), numberColumn("boxDepth", "depth", "mm", 1),
                     countColumn()};
    Counted counted;
    int barriers = 0;
    for (const ScheduledPlate& item : scheduled.plates) {
        for (const catalogue::Box& box : item.face.boxes)
            ++counted[{boxName(box.spec), stated(catalogue::boxDepth(*item.plate, item.face))}];
        barriers += item.plate->barrier ? 1 : 0;
    }
    table.rows = rowsOf(counted);
    table.notes = {"Depth: as stated for the plate; else its format's, or the next its modules need."};
    if (barriers > 0)
        table.notes.push_back(fmt::format("Barriers between mains and extra-low voltage: {}.", barriers));
    return table;
}

Table lampsTable(const Scheduled& scheduled) {
    Table table{"lamps", "Luminaires to order", {}, {}, {}, {}};
    table.columns = {textColumn("name", "name"),
                     textColumn("kind", "kind"),
                     numberColumn("watts", "power", "W", 2),
                     numberColumn("lumens", "flux", "lm"),
                     numberColumn("kelvin", "colour", "K"),
                     numberColumn("beam", "beam", "deg", 1),
                     textColumn("dimmable", "dimmable"),
                     textColumn("ies", "IES file"),
                     countColumn()};
    Counted counted;
    for (const plan::Luminaire* lamp : scheduled.luminaires)
        ++counted[{lamp->name, kindName(lamp->kind), stated(lamp->watts), stated(lamp->lumens),
                   stated(lamp->kelvin), stated(lamp->beam_deg), lamp->dimmable ? "yes" : "no", lamp->ies}];
    table.rows = rowsOf(counted);
    return table;
}

} // namespace gangway::sheets
