// gangway free: where along a wall a plate may sit at a height, and what closes each gap.
#include "cli/commands.hpp"

#include "checks/margins.hpp"
#include "checks/stretches.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;
constexpr int kNoPlace = 1;

struct Arguments {
    std::string plan;
    std::string pack;
    std::string room;
    std::string wall;
    std::string like;
    std::optional<double> height_mm;
    std::vector<std::string> modules;
    bool json = false;
};

/// What is asked about: a plate of the plan, or one made of modules in the storey's format, on a wall.
struct Question {
    plan::Plate plate;
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
};

std::string formatOf(const plan::Plan& plan, const plan::Room& room) {
    const plan::Storey* storey = plan::findStorey(plan, room.storey);
    return storey == nullptr ? std::string() : storey->plate_format;
}

std::optional<Question> questionOf(const plan::Plan& plan, const Arguments& arguments) {
    Question question;
    if (!arguments.like.empty()) {
        const plan::Plate* like = plan::findPlateByName(plan, arguments.like);
        if (like == nullptr) {
            fail(fmt::format("--like: the plan has no plate '{}'; name it by tag or id", arguments.like));
            return std::nullopt;
        }
        question.plate = *like;
    }
    const std::string room = arguments.room.empty() ? question.plate.room : arguments.room;
    if (room.empty()) {
        fail("say which wall: --room and --wall, or --like and a plate of the plan");
        return std::nullopt;
    }
    question.room = roomNamed(plan, room);
    if (question.room == nullptr) return std::nullopt;
    const std::string wall = arguments.wall.empty() ? question.plate.host.wall : arguments.wall;
    const auto index = plan::wallIndex(*question.room, wall);
    if (!index) {
        fail(fmt::format("{} has no wall '{}'", question.room->name, wall));
        return std::nullopt;
    }
    question.wall = *index;
    plan::Plate& plate = question.plate;
    plate.room = question.room->id;
    plate.host.kind = plan::Host::Kind::Wall;
    plate.host.wall = question.room->walls[*index].id;
    if (arguments.height_mm) plate.host.v_mm = *arguments.height_mm;
    if (!arguments.like.empty()) return question;
    plate.format = formatOf(plan, *question.room);
    for (const std::string& type : arguments.modules)
        plate.modules.emplace_back().type = type;
    return question;
}

std::string closedBy(const checks::Bar* bar, const char* otherwise) {
    return bar == nullptr ? otherwise : fmt::format("{} ({})", bar->name, bar->rule);
}

Json toJson(const checks::Stretch& stretch) {
    const auto close = [](const checks::Bar* bar) -> Json {
        if (bar == nullptr) return {{"rule", ""}, {"object", ""}};
        return {{"rule", bar->rule}, {"object", bar->object}, {"source", bar->source}};
    };
    return {{"from", stretch.u.from_mm},
            {"to", stretch.u.to_mm},
            {"closedLeft", close(stretch.left)},
            {"closedRight", close(stretch.right)}};
}

/// Places by how free they are: no finding at all, none worse than a hint, none worse than a warning.
struct Places {
    std::vector<checks::Stretch> free;
    std::vector<checks::Stretch> with_hints;
    std::vector<checks::Stretch> with_warnings;
};

void printStretches(const char* how, const std::vector<checks::Stretch>& stretches) {
    for (const checks::Stretch& stretch : stretches)
        fmt::print("  {} {:.1f} to {:.1f} from the left corner, between {} and {}\n", how, stretch.u.from_mm,
                   stretch.u.to_mm, closedBy(stretch.left, "the left corner"),
                   closedBy(stretch.right, "the right corner"));
}

void printText(const Question& question, const catalogue::CountryPack& pack, const checks::Point& point,
               const Places& places) {
    fmt::print("Wall {} of {}, a plate {:.1f} x {:.1f} with its centre {:.1f} above the floor, by country "
               "pack '{}'.\n",
               question.plate.host.wall, question.room->name, 2 * point.half_mm.x, 2 * point.half_mm.y,
               question.plate.host.v_mm, pack.id);
    if (places.with_hints.empty()) fmt::print("  There is no place.\n");
    printStretches("free", places.free);
    if (places.free.empty()) printStretches("with a hint", places.with_hints);
    if (places.with_hints.empty()) printStretches("with a warning", places.with_warnings);
}

Json toJson(const Question& question, const catalogue::CountryPack& pack, const checks::Point& point,
            const Places& places) {
    Json report = {{"gangwayFree", 1},
                   {"room", question.room->id},
                   {"wall", question.plate.host.wall},
                   {"height", question.plate.host.v_mm},
                   {"width", 2 * point.half_mm.x},
                   {"pack", pack.id},
                   {"lengths", "mm"}};
    const auto add = [&](const char* key, const std::vector<checks::Stretch>& stretches) {
        report[key] = Json::array();
        for (const auto& stretch : stretches)
            report[key].push_back(toJson(stretch));
    };
    add("free", places.free);
    add("withHints", places.with_hints);
    add("withWarnings", places.with_warnings);
    return report;
}

int run(const Arguments& arguments) {
    const auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    const auto catalogue = loadCatalogue(*plan);
    if (!catalogue) return kBadInput;
    const auto pack = loadPack(*plan, arguments.pack, arguments.plan);
    if (!pack) return kBadInput;
    const auto question = questionOf(*plan, arguments);
    if (!question) return kBadInput;

    const geometry::HouseIndex house(*plan);
    const checks::Facts facts(house, *catalogue, *pack, std::filesystem::path(arguments.plan).parent_path());
    const checks::WallScene scene = checks::sceneOf(facts, *question->room, question->wall);
    const checks::Point point = checks::pointOf(*catalogue, *pack, question->plate);
    const auto bars = checks::barsFor(facts, scene, point);
    const auto stretches = [&](plan::Severity severity) {
        return checks::freeStretches(bars, point.half_mm, question->plate.host.v_mm,
                                     checks::wholeWall(scene, point), severity);
    };
    const Places places{stretches(plan::Severity::Hint), stretches(plan::Severity::Warn),
                        stretches(plan::Severity::Fault)};
    if (arguments.json)
        fmt::print("{}\n", toJson(*question, *pack, point, places).dump(2));
    else
        printText(*question, *pack, point, places);
    return places.with_hints.empty() ? kNoPlace : kDone;
}
} // namespace

Command addFree(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("free", "Say where along a wall a plate may sit");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("--like", arguments->like,
                    "A plate of the plan, by tag or id: its make-up, wall and height");
    app->add_option("--room", arguments->room, "Room, by id, letter or name");
    app->add_option("--wall", arguments->wall, "Wall of the room");
    app->add_option("--height", arguments->height_mm, "Height of its centre above the floor, mm");
    app->add_option("--modules", arguments->modules, "Modules of a new plate, with commas: socket-f,socket-f")
        ->delimiter(',');
    app->add_option("--pack", arguments->pack, "Country pack whose numbers count (default: the plan's)");
    app->add_flag("--json", arguments->json, "As JSON, lengths in mm");
    app->footer(
        "Places are of the plate's centre, from the wall's left corner seen from inside, without a "
        "warning or a fault.\n"
        "Exit codes: 0 there is a place without a warning, 1 there is none, 2 the plan can't be read.\n"
        "Examples:\n  gangway free house.plan.json --like K-05\n  gangway free house.plan.json --room K "
        "--wall A --height 1073 --modules socket-g2");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
