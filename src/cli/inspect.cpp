// gangway inspect: the resolved model, as a table for people or JSON for programs.
#include "cli/commands.hpp"

#include "catalogue/catalogue.hpp"
#include "geometry/frames.hpp"
#include "review/review.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;

struct Arguments {
    std::string plan;
    bool json = false;
    bool rooms = false;
    bool places = false;
};

/// mm to six decimals, so that frame arithmetic does not show as 449.99999999999994.
double tidy(double value_mm) {
    const double rounded = std::round(value_mm * 1e6) / 1e6;
    return rounded == 0 ? 0 : rounded;
}

std::string hostWord(const plan::Host& host) {
    switch (host.kind) {
    case plan::Host::Kind::Wall:
        return "wall " + host.wall;
    case plan::Host::Kind::Floor:
        return "floor";
    case plan::Host::Kind::Ceiling:
        return "ceiling";
    case plan::Host::Kind::Furniture:
        return host.furniture + " " + host.face;
    }
    return {};
}

/// Centre of a gang in house mm, z from the house's datum.
plan::Vec3 worldPoint(const plan::Plan& plan, const plan::Room& room, const geometry::Frame& frame, double u,
                      double v) {
    plan::Vec3 point = geometry::toHouse(frame, {u, v, 0});
    if (const auto* storey = plan::findStorey(plan, room.storey)) point.z += storey->elevation_mm;
    return point;
}

Json plateJson(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    const plan::Room* room = plan::findRoom(plan, plate.room);
    const auto frame = geometry::hostFrame(plan, plate.room, plate.host);
    Json entry = {{"id", plate.id},
                  {"tag", plate.tag},
                  {"room", plate.room},
                  {"on", hostWord(plate.host)},
                  {"wall", plate.host.wall},
                  {"setOut", tidy(plate.host.u_mm)},
                  {"height", tidy(plate.host.v_mm)}};
    entry["state"] = std::string(review::word(review::stateOf(plan, plate)));
    entry["fingerprint"] = review::fingerprint(plan, plate);
    if (room == nullptr || !frame) return entry;
    const auto point = [&](plan::Vec2 offset) {
        const plan::Vec3 at =
            worldPoint(plan, *room, *frame, plate.host.u_mm + offset.x, plate.host.v_mm + offset.y);
        return Json::array({tidy(at.x), tidy(at.y), tidy(at.z)});
    };
    entry["at"] = point({});
    const auto composed = catalogue::compose(catalogue, plate);
    entry["size"] = {composed.width_mm, composed.height_mm};
    entry["modules"] = Json::array();
    for (const auto& gang : composed.gangs) {
        const auto number = static_cast<std::size_t>(gang.module_number);
        entry["modules"].push_back({{"number", gang.module_number},
                                    {"type", number > 0 ? plate.modules[number - 1].type : "blank"},
                                    {"setOut", tidy(plate.host.u_mm + gang.centre_mm.x)},
                                    {"height", tidy(plate.host.v_mm + gang.centre_mm.y)},
                                    {"at", point(gang.centre_mm)}});
    }
    entry["boxes"] = Json::array();
    for (const auto& box : composed.boxes)
        entry["boxes"].push_back({{"setOut", tidy(plate.host.u_mm + box.centre_mm.x)},
                                  {"height", tidy(plate.host.v_mm + box.centre_mm.y)},
                                  {"drill", box.spec.drill_mm},
                                  {"depth", plate.box_depth_mm.value_or(box.spec.depth_mm)},
                                  {"at", point(box.centre_mm)}});
    if (!composed.problems.empty()) entry["problems"] = composed.problems;
    return entry;
}

Json legJson(const plan::SwitchLeg& leg) {
    Json controls = Json::array();
    for (const auto& way : leg.controls)
        controls.push_back({{"plate", way.plate}, {"module", way.module}, {"way", way.way}});
    return {{"id", leg.id},     {"letter", leg.letter},         {"name", leg.name},
            {"ways", controls}, {"luminaires", leg.luminaires}, {"plates", leg.plates}};
}

void printTable(const plan::Plan& plan, const Json& model) {
    fmt::print("{:<8} {:<16} {:<14} {:>8} {:>7}  {:<9} {}\n", "plate", "room", "on", "set-out", "height",
               "state", "modules");
    for (const auto& plate : model["plates"]) {
        std::string modules;
        for (const auto& module : plate.value("modules", Json::array()))
            modules += (modules.empty() ? "" : " + ") + module["type"].get<std::string>();
        const auto tag = plate["tag"].get<std::string>();
        fmt::print("{:<8} {:<16} {:<14} {:>8} {:>7}  {:<9} {}\n",
                   tag.empty() ? plate["id"].get<std::string>() : tag, plate["room"].get<std::string>(),
                   plate["on"].get<std::string>(), plate["setOut"].get<double>(),
                   plate["height"].get<double>(), plate["state"].get<std::string>(), modules);
    }
    fmt::print("\n{:<8} {:<26} {:<36} {}\n", "leg", "name", "worked from (plate/module/way)", "feeds");
    for (const auto& leg : plan.legs) {
        std::string ways;
        for (const auto& way : leg.controls)
            ways += fmt::format("{}{}/{}/{}", ways.empty() ? "" : " ", way.plate, way.module, way.way);
        std::string feeds;
        for (const auto* list : {&leg.luminaires, &leg.plates})
            for (const auto& id : *list)
                feeds += (feeds.empty() ? "" : " ") + id;
        fmt::print("{:<8} {:<26} {:<36} {}\n", leg.letter.empty() ? leg.id : leg.letter, leg.name, ways,
                   feeds);
    }
}

/// Storeys, under each its rooms with their walls: the words that --storey, --room and --wall take.
void printPlaces(const plan::Plan& plan) {
    for (const auto& storey : plan.storeys) {
        fmt::print("storey {:<12} {}\n", storey.id, storey.name);
        for (const auto& room : plan.rooms) {
            if (room.storey != storey.id) continue;
            std::string walls;
            for (const auto& wall : room.walls)
                walls += " " + wall.id;
            fmt::print("  room {:<12} {:<20} walls{}\n", room.id, room.name, walls);
        }
    }
}

int run(const Arguments& arguments) {
    const auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    if (arguments.rooms) {
        for (const auto& room : plan->rooms)
            fmt::print("{}\n", room.id);
        return kDone;
    }
    if (arguments.places) {
        printPlaces(*plan);
        return kDone;
    }
    const auto catalogue = loadCatalogue(*plan);
    if (!catalogue) return kBadInput;
    Json model = {{"gangwayModel", 1},      {"project", plan->project.name}, {"lengths", "mm"},
                  {"rooms", Json::array()}, {"plates", Json::array()},       {"legs", Json::array()}};
    for (const auto& room : plan->rooms) {
        Json walls = Json::array();
        for (std::size_t i = 0; i < room.walls.size(); ++i)
            walls.push_back(
                {{"id", room.walls[i].id}, {"length", tidy(geometry::wallFrame(room, i).length_mm)}});
        model["rooms"].push_back(
            {{"id", room.id}, {"name", room.name}, {"storey", room.storey}, {"walls", walls}});
    }
    for (const auto& plate : plan->plates)
        model["plates"].push_back(plateJson(*plan, *catalogue, plate));
    for (const auto& leg : plan->legs)
        model["legs"].push_back(legJson(leg));
    if (arguments.json)
        fmt::print("{}\n", model.dump(2));
    else
        printTable(*plan, model);
    return kDone;
}
} // namespace

Command addInspect(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand(
        "inspect", "Print where every plate, module and box is, and what each way feeds");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_flag("--json", arguments->json,
                  "As JSON, lengths in mm, world x east, y north, z from the house's datum");
    app->add_flag("--rooms", arguments->rooms, "Only the ids of the rooms, one a line");
    app->add_flag("--places", arguments->places,
                  "Only storeys, rooms and walls, as --storey, --room, --wall take them");
    app->footer(
        "A way is one switched output of a switch: a switch for two circuits has ways 1 and 2. A leg is\n"
        "what one or more ways work: the lamps and plates wired behind them.\n"
        "Exit codes: 0 printed, 2 the plan can't be read.\n"
        "Examples:\n  gangway inspect house.plan.json\n  gangway inspect house.plan.json --json > "
        "model.json");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
