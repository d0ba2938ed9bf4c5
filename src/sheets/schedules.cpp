// The tables of what is where: plates and luminaires, by room.
#include "sheets/schedules.hpp"

#include "catalogue/parts.hpp"
#include "sheets/schedules_parts.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

std::string tagOf(const std::string& tag, const std::string& id) {
    return tag.empty() ? id : tag;
}

std::string roomName(const Scheduled& scheduled, const std::string& id) {
    const plan::Room* room = scheduled.net->room(id);
    return room != nullptr ? room->name : id;
}

/// "wall A", "floor", "headboard, front".
std::string hostName(const Scheduled& scheduled, const plan::Host& host) {
    switch (host.kind) {
    case plan::Host::Kind::Wall:
        return "wall " + host.wall;
    case plan::Host::Kind::Floor:
        return "floor";
    case plan::Host::Kind::Ceiling:
        return "ceiling";
    case plan::Host::Kind::Furniture:
        break;
    }
    const plan::Furniture* piece = plan::findFurniture(*scheduled.plan, host.furniture);
    return fmt::format("{}, {}", piece != nullptr ? piece->name : host.furniture, host.face);
}

/// On floors, ceilings and faces that lie flat a place has no height of its own.
bool liesFlat(const plan::Host& host) {
    using Kind = plan::Host::Kind;
    return host.kind == Kind::Floor || host.kind == Kind::Ceiling ||
           (host.kind == Kind::Furniture && (host.face == "top" || host.face == "bottom"));
}

/// Set-out and height, or east and north.
std::array<Cell, 4> placeOf(const plan::Host& host) {
    if (liesFlat(host)) return {Cell(), Cell(), host.u_mm, host.v_mm};
    return {host.u_mm, host.v_mm, Cell(), Cell()};
}

void addPlaceColumns(std::vector<Column>& columns) {
    columns.push_back(numberColumn("setOut", "set-out", "mm", 1));
    columns.push_back(numberColumn("height", "height", "mm", 1));
    columns.push_back(numberColumn("east", "east", "mm", 1));
    columns.push_back(numberColumn("north", "north", "mm", 1));
}

/// Modules in order, each with what sets it apart: "SO-F + SW-1 'hob' + blank".
std::string modulesInOrder(const Scheduled& scheduled, const catalogue::ComposedPlate& face) {
    std::string words;
    for (const catalogue::Gang& gang : face.gangs) {
        std::string one = gang.module != nullptr ? gang.module->code : gang.unknown ? "unknown" : "blank";
        if (!gang.label.empty()) one += fmt::format(" '{}'", gang.label);
        if (gang.finish != face.finish && !gang.finish.empty())
            one += fmt::format(" ({})", finishName(*scheduled.catalogue, gang.finish));
        words += fmt::format("{}{}", words.empty() ? "" : " + ", one);
    }
    return words;
}

Row plateRow(const Scheduled& scheduled, const ScheduledPlate& item) {
    const plan::Plate& plate = *item.plate;
    const catalogue::ComposedPlate& face = item.face;
    const bool boxed = !face.boxes.empty();
    const auto place = placeOf(plate.host);
    return {roomName(scheduled, plate.room),
            tagOf(plate.tag, plate.id),
            hostName(scheduled, plate.host),
            place[0],
            place[1],
            place[2],
            place[3],
            plate.direction == plan::Direction::Vertical ? "vertical" : "horizontal",
            face.format != nullptr ? face.format->name : plate.format,
            double(face.gang_count),
            modulesInOrder(scheduled, face),
            finishName(*scheduled.catalogue, face.finish),
            double(face.boxes.size()),
            boxed ? boxName(face.boxes.front().spec) : "no box",
            stated(catalogue::boxDepth(plate, face)),
            circuitName(*scheduled.plan, plate.circuit),
            plate.purpose,
            plate.note};
}

std::string legsOf(const Scheduled& scheduled, const std::string& luminaire) {
    std::string words;
    for (const plan::SwitchLeg* leg : scheduled.net->legsOfLuminaire(luminaire))
        words += fmt::format("{}{}", words.empty() ? "" : ", ", switching::legMark(*scheduled.net, *leg));
    return words;
}

Row luminaireRow(const Scheduled& scheduled, const plan::Luminaire& lamp) {
    std::string legs = legsOf(scheduled, lamp.id);
    if (legs.empty() && switching::hasOwnSwitch(lamp)) legs = "own switch";
    const auto place = placeOf(lamp.host);
    return {roomName(scheduled, lamp.room),
            tagOf(lamp.tag, lamp.id),
            lamp.name,
            kindName(lamp.kind),
            hostName(scheduled, lamp.host),
            place[0],
            place[1],
            place[2],
            place[3],
            stated(lamp.watts),
            stated(lamp.lumens),
            stated(lamp.kelvin),
            stated(lamp.beam_deg),
            lamp.dimmable ? "yes" : "no",
            lamp.ies,
            legs};
}

constexpr const char* kPlaceNote =
    "Set-out: from the left corner of the wall, as seen from inside the room, to the centre. Height: above "
    "FFL, to the centre. East and north, on floors, ceilings and faces that lie flat: from the south-west "
    "corner of the room's extent (of the face), to the centre. To finished faces.";

Scheduled gather(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const switching::Net& net,
                 const std::string& room) {
    Scheduled scheduled{&plan, &catalogue, &net, room, {}, {}};
    std::unordered_map<const plan::Room*, std::size_t> order;
    for (const plan::Room& each : plan.rooms)
        order.emplace(&each, order.size());
    const auto place = [&](const std::string& id) {
        const auto at = order.find(net.room(id));
        return at == order.end() ? order.size() : at->second;
    };
    for (const plan::Plate& plate : plan.plates)
        if (room.empty() || plate.room == room)
            scheduled.plates.push_back({&plate, net.room(plate.room), catalogue::compose(catalogue, plate)});
    for (const plan::Luminaire& lamp : plan.luminaires)
        if (room.empty() || lamp.room == room) scheduled.luminaires.push_back(&lamp);
    std::ranges::stable_sort(scheduled.plates, {},
                             [&](const ScheduledPlate& item) { return place(item.plate->room); });
    std::ranges::stable_sort(scheduled.luminaires, {},
                             [&](const plan::Luminaire* lamp) { return place(lamp->room); });
    return scheduled;
}

} // namespace

Column textColumn(std::string key, std::string title) {
    Column column;
    column.key = std::move(key);
    column.title = std::move(title);
    return column;
}

Column numberColumn(std::string key, std::string title, std::string unit, int decimals) {
    Column column = textColumn(std::move(key), std::move(title));
    column.unit = std::move(unit);
    column.kind = Column::Kind::Number;
    column.decimals = decimals;
    return column;
}

Column countColumn() {
    Column column = numberColumn("count", "count", "");
    column.total = true;
    return column;
}

Column& columnOf(Table& table, const std::string& key) {
    return *std::ranges::find(table.columns, key, &Column::key);
}

std::string finishName(const catalogue::Catalogue& catalogue, const std::string& id) {
    const catalogue::Finish* finish = catalogue.finish(id);
    return finish != nullptr ? finish->name : id;
}

std::string circuitName(const plan::Plan& plan, const std::string& id) {
    const auto at = std::ranges::find(plan.circuits, id, &plan::Circuit::id);
    return at == plan.circuits.end() || at->name.empty() ? id : at->name;
}

std::string kindName(plan::Luminaire::Kind kind) {
    using Kind = plan::Luminaire::Kind;
    switch (kind) {
    case Kind::Ceiling:
        return "ceiling";
    case Kind::Wall:
        return "wall";
    case Kind::Pendant:
        return "pendant";
    case Kind::Recessed:
        return "recessed";
    case Kind::Linear:
        return "linear";
    case Kind::UnderUnit:
        return "under-unit";
    case Kind::Floor:
        return "floor";
    case Kind::Table:
        return "table";
    }
    return {};
}

std::string boxName(const catalogue::BoxSpec& spec) {
    if (spec.shape == catalogue::BoxSpec::Shape::Round) return fmt::format("{:g} dia", spec.width_mm);
    return fmt::format("{:.4g} x {:.4g}", spec.width_mm, spec.height_mm);
}

Cell stated(double value) {
    if (value > 0) return value;
    return std::monostate{};
}

Table platesTable(const Scheduled& scheduled) {
    Table table{"plates", "Plates by room", {}, {}, 0, {kPlaceNote}};
    const auto under = [](Column column) {
        column.under = true;
        return column;
    };
    table.columns = {textColumn("room", "room"), textColumn("tag", "tag"), textColumn("on", "on")};
    addPlaceColumns(table.columns);
    const std::vector<Column> rest{under(textColumn("direction", "direction")),
                                   under(textColumn("format", "format")),
                                   numberColumn("gangs", "gangs", ""),
                                   textColumn("modules", "modules in order"),
                                   textColumn("finish", "finish"),
                                   numberColumn("boxes", "boxes", ""),
                                   textColumn("boxKind", "box, mm"),
                                   numberColumn("boxDepth", "depth", "mm", 1),
                                   under(textColumn("circuit", "circuit")),
                                   under(textColumn("for", "for")),
                                   under(textColumn("note", "note"))};
    table.columns.insert(table.columns.end(), rest.begin(), rest.end());
    table.columns[1].lead = true;
    for (const char* key : {"east", "north"})
        columnOf(table, key).under = true;
    columnOf(table, "direction").usual = "horizontal";
    columnOf(table, "format").shared = true;
    columnOf(table, "boxes").total = true;
    for (const ScheduledPlate& item : scheduled.plates)
        table.rows.push_back(plateRow(scheduled, item));
    table.notes.push_back(
        "Plates are horizontal where nothing else is said. Modules stand from left to right, "
        "of vertical plates from top to bottom. What their codes mean: modules to order.");
    return table;
}

Table luminairesTable(const Scheduled& scheduled) {
    Table table{"luminaires", "Luminaires by room", {}, {}, 0, {kPlaceNote}};
    table.columns = {textColumn("room", "room"), textColumn("tag", "tag"), textColumn("name", "name"),
                     textColumn("kind", "kind"), textColumn("on", "on")};
    addPlaceColumns(table.columns);
    const std::vector<Column> rest{numberColumn("watts", "power", "W", 2),
                                   numberColumn("lumens", "flux", "lm"),
                                   numberColumn("kelvin", "colour", "K"),
                                   numberColumn("beam", "beam", "deg", 1),
                                   textColumn("dimmable", "dimmable"),
                                   textColumn("ies", "IES file"),
                                   textColumn("legs", "legs")};
    table.columns.insert(table.columns.end(), rest.begin(), rest.end());
    table.columns[1].lead = true;
    for (const char* key : {"watts", "lumens"})
        columnOf(table, key).total = true;
    for (const char* key : {"kind", "kelvin", "beam", "dimmable", "ies"})
        columnOf(table, key).under = true;
    for (const plan::Luminaire* lamp : scheduled.luminaires)
        table.rows.push_back(luminaireRow(scheduled, *lamp));
    return table;
}

std::vector<std::string> scheduleKeys() {
    return {"plates", "luminaires", "legs", "circuits", "modules", "frames", "boxes", "lamps"};
}

std::vector<Table> schedules(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                             const catalogue::CountryPack& pack, const std::string& room) {
    const switching::Net net(plan, catalogue);
    const Scheduled scheduled = gather(plan, catalogue, net, room);
    return {platesTable(scheduled),         luminairesTable(scheduled), legsTable(scheduled),
            circuitsTable(scheduled, pack), modulesTable(scheduled),    framesTable(scheduled),
            boxesTable(scheduled),          lampsTable(scheduled)};
}

std::string scheduleCaution() {
    return "A placing proposal, not an electrical design: the licensed electrician decides, and the local "
           "code prevails. Check on site before ordering and drilling.";
}

} // namespace gangway::sheets
