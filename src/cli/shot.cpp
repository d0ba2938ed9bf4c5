// gangway shot: pictures of the stage, without a display.
#include "cli/commands.hpp"

#include "cli/shot_legs.hpp"
#include "cli/shot_plugs.hpp"
#include "export/export.hpp"
#include "plan/paths.hpp"
#include "render/renderer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <memory>
#include <sstream>

namespace gangway::cli {

namespace {
struct Arguments {
    std::string plan;
    std::string file;
    std::string room;
    std::string wall;
    std::string eye;
    std::string to;
    std::string storey;
    std::string hide;
    std::string ghost;
    std::string legs;
    std::string light = "day";
    std::string size = "1280x720";
    bool plugs = false;
};

std::vector<std::string> words(const std::string& list) {
    std::vector<std::string> found;
    std::istringstream stream(list);
    for (std::string word; std::getline(stream, word, ',');)
        if (!word.empty()) found.push_back(word);
    return found;
}

bool pngEnding(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return std::tolower(c); });
    return ending == ".png";
}

std::optional<plan::Vec3> parsePoint(const std::string& text) {
    const auto parts = words(text);
    if (parts.size() != 3) return std::nullopt;
    double value[3] = {};
    for (std::size_t i = 0; i < 3; ++i) {
        const char* const end = parts[i].data() + parts[i].size();
        const auto [at, error] = std::from_chars(parts[i].data(), end, value[i]);
        if (error != std::errc{} || at != end || !std::isfinite(value[i])) return std::nullopt;
    }
    return plan::Vec3{value[0], value[1], value[2]};
}

/// Camera and storey of what was asked for; false: said what is wrong.
bool aim(const plan::Plan& plan, const Arguments& arguments, float aspect, render::View& view) {
    if (!arguments.eye.empty() || !arguments.to.empty()) {
        const auto eye = parsePoint(arguments.eye);
        const auto to = parsePoint(arguments.to);
        if (!eye || !to || *eye == *to) {
            fail("--eye and --to take two different points x,y,z in mm of the house, such as 1200,800,1600");
            return false;
        }
        const plan::Vec3 way = *to - *eye;
        view.camera.eye = scene::toScene(*eye);
        view.camera.yaw = static_cast<float>(std::atan2(way.x, way.y));
        view.camera.pitch = static_cast<float>(std::atan2(way.z, std::hypot(way.x, way.y)));
        return true;
    }
    if (!arguments.room.empty()) {
        const plan::Room* room = roomNamed(plan, arguments.room);
        if (room == nullptr) return false;
        if (arguments.wall.empty()) {
            view.camera = scene::roomView(plan, *room);
            return true;
        }
        const auto wall = plan::wallIndex(*room, arguments.wall);
        if (!wall) {
            std::vector<std::string> known;
            for (const auto& each : room->walls)
                known.push_back(each.id);
            fail(fmt::format("room '{}' has no wall '{}'. It has: {}", room->id, arguments.wall,
                             fmt::join(known, ", ")));
            return false;
        }
        view.camera = scene::faceWall(plan, *room, *wall, aspect);
        return true;
    }
    if (!arguments.wall.empty()) {
        fail("--wall needs --room beside it, since every room has a wall of that letter");
        return false;
    }
    view.storey =
        arguments.storey.empty() ? (plan.storeys.empty() ? "" : plan.storeys.front().id) : arguments.storey;
    if (plan::findStorey(plan, view.storey) == nullptr) {
        std::vector<std::string> known;
        for (const auto& storey : plan.storeys)
            known.push_back(storey.id);
        fail(noSuch("storey", view.storey, known));
        return false;
    }
    view.camera = scene::lidOffView(plan, view.storey, aspect);
    view.lid_off = true;
    return true;
}

bool chooseLayers(const plan::Plan& plan, const Arguments& arguments, render::View& view) {
    for (const auto& layer : plan.layers) {
        if (layer.visibility == plan::Visibility::Hidden) view.hidden_layers.insert(layer.id);
        if (layer.visibility == plan::Visibility::Ghosted) view.ghosted_layers.insert(layer.id);
    }
    std::vector<std::string> known;
    for (const auto& layer : plan.layers)
        known.push_back(layer.id);
    for (const auto* list : {&arguments.hide, &arguments.ghost}) {
        for (const auto& word : words(*list)) {
            if (plan::findLayer(plan, word) == nullptr) {
                fail(noSuch("layer", word, known));
                return false;
            }
            (list == &arguments.hide ? view.hidden_layers : view.ghosted_layers).insert(word);
        }
    }
    return true;
}

/// The light outside the lamps; the lamps alone light a room in the evening, with a little dusk.
bool chooseLight(const std::string& word, render::View& view) {
    if (word == "evening") {
        render::setEvening(view);
        return true;
    }
    if (word == "day") return true;
    fail(fmt::format("--light {} is no light; give day or evening", word));
    return false;
}

/// The stage with what was asked for on it; nullopt: said what is wrong.
std::optional<scene::Scene> sceneFor(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                     const Arguments& arguments) {
    const auto base = std::filesystem::path(arguments.plan).parent_path();
    scene::Scene scene = scene::build(plan, catalogue, base);
    for (const auto& problem : scene.problems)
        fail(problem);
    if (!scene.problems.empty()) return std::nullopt;
    if (!arguments.plugs) return scene;
    const auto pack = loadPack(plan, "", arguments.plan);
    if (!pack) return std::nullopt;
    addPlugs(scene, plan, catalogue, *pack, base);
    return scene;
}

/// Of several pictures each has its leg's mark in its name.
std::filesystem::path fileFor(const std::filesystem::path& file, const LegShot& shot) {
    if (shot.mark.empty()) return file;
    std::filesystem::path named = file;
    named.replace_filename(fmt::format("{}-{}.png", file.stem().string(), shot.mark));
    return named;
}

int write(render::Renderer& renderer, const render::View& view, const std::filesystem::path& file) {
    render::Picture picture = renderer.read(view);
    if (file.has_parent_path()) {
        std::error_code error;
        std::filesystem::create_directories(file.parent_path(), error);
        if (error)
            return fail("cannot make the folder " + file.parent_path().string() + ": " + error.message());
    }
    const auto written = exporting::writePng({picture.width, picture.height, std::move(picture.rgba)}, file);
    if (!written) return fail(written.error());
    fmt::print("{}\n", file.string());
    return kDone;
}

int run(const Arguments& arguments) {
    const auto size = parseSize(arguments.size);
    if (!size)
        return fail("--size " + arguments.size +
                    " is no size; give WIDTHxHEIGHT in pixels, such as 1280x720");
    if (!pngEnding(arguments.file))
        return fail(
            fmt::format("a picture is written as PNG: let the name end in .png, not '{}'", arguments.file));
    const auto plan = loadPlan(arguments.plan);
    const auto catalogue = plan ? loadCatalogue(*plan) : std::nullopt;
    if (!catalogue) return kBadInput;

    render::View view;
    view.width = size->first;
    view.height = size->second;
    const float aspect = static_cast<float>(view.width) / static_cast<float>(view.height);
    if (!aim(*plan, arguments, aspect, view) || !chooseLayers(*plan, arguments, view) ||
        !chooseLight(arguments.light, view))
        return kBadInput;
    const std::string room = arguments.room.empty() ? "" : roomNamed(*plan, arguments.room)->id;
    const auto shots = legShots(*plan, *catalogue, arguments.legs, {room, view.storey});
    if (!shots) return fail(shots.error());

    auto scene = sceneFor(*plan, *catalogue, arguments);
    if (!scene) return kBadInput;

    auto context = render::OffscreenContext::create();
    if (!context) return fail(context.error());
    auto renderer = render::Renderer::create(plan::shadersFolder());
    if (!renderer) return fail(renderer.error());
    renderer->setScene(std::move(*scene));

    for (const LegShot& shot : *shots) {
        view.light_levels = shot.light_levels;
        view.lines = shot.lines;
        if (const int code = write(*renderer, view, fileFor(arguments.file, shot)); code != kDone)
            return code;
    }
    return kDone;
}
} // namespace

Command addShot(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app =
        parser.add_subcommand("shot", "Take a picture of a room, a wall or a storey, without a display");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("-o,--output", arguments->file, "Picture to write, a name that ends in .png")->required();
    app->add_option("--room", arguments->room, "Stand in this room (id, letter or name)");
    app->add_option("--wall", arguments->wall, "Face this wall of the room squarely");
    app->add_option("--eye", arguments->eye, "Stand here: x,y,z in mm of the house, z above its datum");
    app->add_option("--to", arguments->to, "Look at this point: x,y,z in mm");
    app->add_option("--storey", arguments->storey,
                    "Without room or eye: this storey (id) from above, lid off (default: the first)");
    app->add_option("--hide", arguments->hide, "Layers to hide, separated by commas");
    app->add_option("--ghost", arguments->ghost, "Layers to see through, separated by commas");
    app->add_option("--legs", arguments->legs,
                    "on: every lamp (default); off: none; marks or ids of switch legs, separated by commas: "
                    "their lamps alone, with lines to what works them; each: one such picture a leg that the "
                    "room has, or the storey, as FILE-MARK.png");
    app->add_flag(
        "--plugs", arguments->plugs,
        "With what is plugged in, decided or proposed, as deep as the plan's country pack says; free "
        "outlets framed, blocked ones crossed out");
    app->add_option("--light", arguments->light, "day, or evening: the lamps and a little dusk")
        ->capture_default_str();
    app->add_option("--size", arguments->size, "Picture size in pixels, WIDTHxHEIGHT")->capture_default_str();
    app->footer("Ids of rooms, walls and storeys: gangway inspect PLAN --places\n"
                "Lines to lamps show what works what, not where cables run.\n"
                "Exit codes: 0 written, 2 the plan or an option can't be used.\n"
                "Examples:\n  gangway shot house.plan.json -o kitchen.png --room kitchen\n"
                "  gangway shot house.plan.json -o behind.png --room bedroom --wall C --hide furniture\n"
                "  gangway shot house.plan.json -o plugs.png --room kitchen --wall A --plugs\n"
                "  gangway shot house.plan.json -o upstairs.png --storey upper\n"
                "  gangway shot house.plan.json -o island.png --room kitchen --legs L2,L3 --light evening\n"
                "  gangway shot house.plan.json -o kitchen.png --room kitchen --legs each --light evening");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
