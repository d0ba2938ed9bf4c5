// gangway devices: what is plugged in where, what could be, and what has nothing to be plugged into.
#include "cli/commands.hpp"

#include "checks/forgotten.hpp"
#include "checks/outlet_assignment.hpp"
#include "switching/loads.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;
using checks::DeviceOutlet;
using checks::PlateUse;

struct Arguments {
    std::string plan;
    std::string pack;
    bool json = false;
};

/// All that is printed, worked out once.
struct Report {
    const plan::Plan& plan;
    const checks::Facts& facts;
    checks::OutletAssignment outlets;
    std::vector<switching::CircuitLoad> circuits;
    std::vector<checks::Forgotten> forgotten;
};

std::string tagOf(const plan::Plate* plate) {
    if (plate == nullptr) return {};
    return plate->tag.empty() ? plate->id : plate->tag;
}

std::string roomOf(const plan::Plan& plan, const std::string& id) {
    const plan::Room* room = plan::findRoom(plan, id);
    return room == nullptr || room->name.empty() ? id : room->name;
}

double rounded(double value) {
    return std::round(value * 10) / 10;
}

/// Circuits that something is plugged into or that state a rating.
bool isShown(const switching::CircuitLoad& load) {
    return load.appliances_w > 0 || load.rated_a > 0;
}

void printDevices(const Report& report) {
    fmt::print("{:<24} {:<18} {:>7} {:>7} {:>7}  {}\n", "device", "room", "W", "lead", "way", "outlet");
    for (const DeviceOutlet& outlet : report.outlets.devices) {
        const plan::Device& device = *outlet.device;
        const std::string where = outlet.plate == nullptr ? "none: " + outlet.why
                                  : outlet.decided        ? tagOf(outlet.plate)
                                                          : tagOf(outlet.plate) + ", proposed";
        fmt::print("{:<24} {:<18} {:>7.0f} {:>7.0f} {:>7}  {}{}\n",
                   device.name.empty() ? device.id : device.name, roomOf(report.plan, device.room),
                   device.watts, device.lead_mm,
                   outlet.way ? fmt::format("{:.0f}", outlet.way->length_mm) : "-", where,
                   outlet.data == nullptr ? "" : ", data at " + tagOf(outlet.data));
    }
}

void printPlates(const Report& report) {
    fmt::print("\n{:<10} {:<18} {:>7} {:>7} {:>9} {:>9}\n", "plate", "room", "outlets", "free", "W",
               "carries");
    for (const PlateUse& use : report.outlets.plates)
        fmt::print("{:<10} {:<18} {:>7} {:>7} {:>9.0f} {:>9}\n", use.point->tag(),
                   roomOf(report.plan, use.point->plate->room), use.outlets, use.free - use.given, use.watts,
                   use.limit_w > 0 ? fmt::format("{:.0f}", use.limit_w) : "-");
}

void printCircuits(const Report& report) {
    fmt::print("\n{:<20} {:>9} {:>9} {:>9}\n", "circuit", "plugged W", "lamps W", "carries");
    for (const switching::CircuitLoad& load : report.circuits)
        if (isShown(load))
            fmt::print("{:<20} {:>9.0f} {:>9.0f} {:>9}\n", load.id, load.appliances_w, load.lighting_w,
                       load.limit_w > 0 ? fmt::format("{:.0f}", load.limit_w) : "-");
}

void printText(const Report& report) {
    printDevices(report);
    printPlates(report);
    printCircuits(report);
    if (!report.forgotten.empty()) fmt::print("\nOften forgotten, and not in the plan:\n");
    for (const checks::Forgotten& one : report.forgotten)
        fmt::print("  {}: {}\n", roomOf(report.plan, one.room->id), one.thing->name);
    fmt::print("\nWays and leads in mm; watts as stated, all at once, by country pack '{}'. The electrician "
               "designs the circuits.\n",
               report.facts.pack().id);
}

Json deviceJson(const DeviceOutlet& outlet) {
    const plan::Device& device = *outlet.device;
    Json entry = {{"id", device.id},          {"name", device.name},
                  {"room", device.room},      {"watts", device.watts},
                  {"lead", device.lead_mm},   {"plate", outlet.plate == nullptr ? "" : outlet.plate->id},
                  {"decided", outlet.decided}};
    if (outlet.data != nullptr) entry["data"] = outlet.data->id;
    if (!outlet.why.empty()) entry["why"] = outlet.why;
    if (!outlet.way) return entry;
    entry["way"] = rounded(outlet.way->length_mm);
    Json points = Json::array();
    for (const plan::Vec3& at : outlet.way->points_mm)
        points.push_back({rounded(at.x), rounded(at.y), rounded(at.z)});
    entry["points"] = std::move(points);
    Json crosses = Json::array();
    for (const checks::Crossing& crossing : outlet.way->crossings)
        crosses.push_back(crossing.id);
    if (!crosses.empty()) entry["crosses"] = std::move(crosses);
    return entry;
}

void printJson(const Report& report) {
    Json model = {{"gangwayDevices", 1},
                  {"project", report.plan.project.name},
                  {"pack", report.facts.pack().id},
                  {"lengths", "mm"},
                  {"devices", Json::array()},
                  {"plates", Json::array()},
                  {"circuits", Json::array()},
                  {"forgotten", Json::array()}};
    for (const DeviceOutlet& outlet : report.outlets.devices)
        model["devices"].push_back(deviceJson(outlet));
    for (const PlateUse& use : report.outlets.plates)
        model["plates"].push_back({{"id", use.point->plate->id},
                                   {"outlets", use.outlets},
                                   {"free", use.free - use.given},
                                   {"proposed", use.given},
                                   {"watts", use.watts},
                                   {"carries", rounded(use.limit_w)}});
    for (const switching::CircuitLoad& load : report.circuits)
        if (isShown(load))
            model["circuits"].push_back({{"id", load.id},
                                         {"plugged", load.appliances_w},
                                         {"lamps", load.lighting_w},
                                         {"carries", rounded(load.limit_w)}});
    for (const checks::Forgotten& one : report.forgotten)
        model["forgotten"].push_back({{"room", one.room->id},
                                      {"name", one.thing->name},
                                      {"watts", one.thing->watts},
                                      {"lead", one.thing->lead_mm},
                                      {"data", one.thing->data},
                                      {"source", one.thing->source}});
    fmt::print("{}\n", model.dump(2));
}

int run(const Arguments& arguments) {
    const auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    const auto catalogue = loadCatalogue(*plan);
    if (!catalogue) return kBadInput;
    const auto pack = loadPack(*plan, arguments.pack, arguments.plan);
    if (!pack) return kBadInput;
    const geometry::HouseIndex house(*plan);
    const checks::Facts facts(house, *catalogue, *pack, std::filesystem::path(arguments.plan).parent_path());
    checks::LeadRooms rooms(facts);
    const Report report{*plan, facts, checks::assignOutlets(facts, rooms),
                        switching::circuitLoads(switching::Net(*plan, *catalogue), *pack),
                        checks::forgottenThings(facts)};
    if (arguments.json)
        printJson(report);
    else
        printText(report);
    return kDone;
}
} // namespace

Command addDevices(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand(
        "devices", "Print what is plugged in where, what could be, and watts by plate and circuit");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("--pack", arguments->pack, "Country pack whose numbers count (default: the plan's)");
    app->add_flag("--json", arguments->json,
                  "As JSON, lengths and places in mm, with the way of each lead, watts in W");
    app->footer(
        "The way of a lead goes along walls and floor. A device without a plate gets the outlet that keeps\n"
        "the ways of all together shortest; nothing is written to the plan. At the end stands what is often\n"
        "forgotten in such rooms.\n"
        "Exit codes: 0 printed, 2 the plan can't be read.\n"
        "Examples:\n  gangway devices house.plan.json\n  gangway devices house.plan.json --json > "
        "devices.json");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
