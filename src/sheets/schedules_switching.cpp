// The tables of what works what, and of the circuits.
#include "sheets/schedules_parts.hpp"
#include "switching/group.hpp"
#include "switching/loads.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

void join(std::string& words, const std::string& word, const char* between) {
    if (!words.empty()) words += between;
    words += word;
}

bool inRoom(const Scheduled& scheduled, const std::string& room) {
    return scheduled.room.empty() || room == scheduled.room;
}

/// Whether something that works the leg or is fed by it is in the room.
bool touches(const Scheduled& scheduled, const plan::SwitchLeg& leg) {
    const auto plate = [&](const std::string& id) {
        const plan::Plate* found = scheduled.net->plate(id);
        return found != nullptr && inRoom(scheduled, found->room);
    };
    const auto lamp = [&](const std::string& id) {
        const plan::Luminaire* found = scheduled.net->luminaire(id);
        return found != nullptr && inRoom(scheduled, found->room);
    };
    return scheduled.room.empty() || std::ranges::any_of(leg.controls, plate, &plan::WayRef::plate) ||
           std::ranges::any_of(leg.plates, plate) || std::ranges::any_of(leg.luminaires, lamp);
}

std::string workedFrom(const Scheduled& scheduled, const plan::SwitchLeg& leg) {
    std::string words;
    for (const plan::WayRef& way : leg.controls)
        join(words, switching::wayName(*scheduled.net, way), "; ");
    return words;
}

std::string feeds(const Scheduled& scheduled, const plan::SwitchLeg& leg) {
    std::string words;
    for (const std::string& id : leg.luminaires) {
        const plan::Luminaire* lamp = scheduled.net->luminaire(id);
        join(words, lamp == nullptr || lamp->tag.empty() ? id : lamp->tag, ", ");
    }
    for (const std::string& id : leg.plates) {
        const plan::Plate* plate = scheduled.net->plate(id);
        join(words, plate == nullptr || plate->tag.empty() ? id : plate->tag, ", ");
    }
    return words;
}

std::string circuitKind(const switching::CircuitLoad& load) {
    if (load.circuit == nullptr) return "not described";
    switch (load.circuit->kind) {
    case plan::Circuit::Kind::Lighting:
        return "lighting";
    case plan::Circuit::Kind::Sockets:
        return "sockets";
    case plan::Circuit::Kind::Appliance:
        return "appliance";
    case plan::Circuit::Kind::Motor:
        return "motor";
    }
    return {};
}

/// Ids of the circuits that a plate or leg of the room is on.
std::set<std::string> circuitsOfRoom(const Scheduled& scheduled) {
    std::set<std::string> ids;
    for (const ScheduledPlate& item : scheduled.plates)
        ids.insert(item.plate->circuit);
    for (const plan::SwitchLeg& leg : scheduled.plan->legs)
        if (touches(scheduled, leg)) ids.insert(switching::legCircuit(*scheduled.net, leg));
    return ids;
}

Row circuitRow(const switching::CircuitLoad& load) {
    const plan::Circuit* circuit = load.circuit;
    const double watts = load.lighting_w + load.appliances_w;
    return {circuit != nullptr && !circuit->name.empty() ? circuit->name : load.id,
            circuitKind(load),
            stated(load.rated_a),
            circuit != nullptr ? circuit->protection : "",
            stated(circuit != nullptr ? load.volts : 0), // it may be data
            double(load.plates),
            double(load.outlets),
            double(load.legs),
            stated(load.lighting_w),
            stated(load.appliances_w),
            load.volts > 0 ? stated(watts / load.volts) : Cell(),
            circuit != nullptr ? circuit->note : ""};
}

} // namespace

Table legsTable(const Scheduled& scheduled) {
    Table table{"legs", "Switch legs", {}, {}, {}, {}};
    table.columns = {textColumn("mark", "leg"),
                     textColumn("name", "name"),
                     textColumn("ways", "worked from"),
                     textColumn("arrangement", "arrangement"),
                     textColumn("feeds", "feeds"),
                     numberColumn("luminaires", "luminaires", ""),
                     numberColumn("watts", "power", "W", 2),
                     numberColumn("lumens", "flux", "lm"),
                     numberColumn("sockets", "socket plates", ""),
                     textColumn("circuit", "circuit")};
    table.columns[0].lead = true;
    for (const char* key : {"arrangement", "lumens", "circuit"})
        columnOf(table, key).under = true;
    for (const plan::SwitchLeg& leg : scheduled.plan->legs) {
        if (!touches(scheduled, leg)) continue;
        const auto load = switching::legLoad(*scheduled.net, leg);
        const auto group = switching::groupOf(*scheduled.net, leg);
        table.rows.push_back({switching::legMark(*scheduled.net, leg), leg.name, workedFrom(scheduled, leg),
                              switching::arrangementName(group), feeds(scheduled, leg),
                              stated(load.luminaires), stated(load.watts), stated(load.lumens),
                              stated(load.socket_plates),
                              circuitName(*scheduled.plan, switching::legCircuit(*scheduled.net, leg))});
    }
    if (!scheduled.room.empty())
        table.notes = {"Legs that touch this room, with all they feed in the house."};
    return table;
}

Table circuitsTable(const Scheduled& scheduled, const catalogue::CountryPack& pack) {
    Table table{"circuits", "Circuits", {}, {}, {}, {}};
    table.columns = {textColumn("name", "circuit"),
                     textColumn("kind", "kind"),
                     numberColumn("rated", "rated", "A", 1),
                     textColumn("protection", "protection"),
                     numberColumn("volts", "voltage", "V", 1),
                     numberColumn("plates", "plates", ""),
                     numberColumn("outlets", "outlets", ""),
                     numberColumn("legs", "legs", ""),
                     numberColumn("lighting", "lighting", "W", 2),
                     numberColumn("appliances", "appliances", "W", 2),
                     numberColumn("load", "load", "A", 2),
                     textColumn("note", "note")};
    for (const char* key : {"plates", "outlets", "legs", "lighting", "appliances"})
        columnOf(table, key).total = true;
    for (const char* key : {"kind", "protection", "volts", "note"})
        columnOf(table, key).under = true;
    const auto ids = circuitsOfRoom(scheduled);
    for (const switching::CircuitLoad& load : switching::circuitLoads(*scheduled.net, pack))
        if (scheduled.room.empty() || ids.contains(load.id)) table.rows.push_back(circuitRow(load));
    table.notes = {
        "Designer's information for the electrician, who designs the circuits.",
        "Load: everything known on the circuit on at once, over the voltage; what is plugged in is "
        "known only where the plan says so. Empty: the plan says nothing."};
    if (!scheduled.room.empty())
        table.notes.push_back("Circuits that touch this room, with their loads of the whole house.");
    return table;
}

} // namespace gangway::sheets
