// gangway open: the window.
#include "cli/commands.hpp"

#include "app/app.hpp"
#include "plan/paths.hpp"

#include <memory>

namespace gangway::cli {

namespace {
struct Arguments {
    std::string plan;
    std::string size = "1440x900";
    bool plain = false;
    std::string user;
    std::string plate;
    std::string picture;
    std::string report;
};

int run(const Arguments& arguments) {
    const auto size = parseSize(arguments.size);
    if (!size)
        return fail("--size " + arguments.size +
                    " is no size; give WIDTHxHEIGHT in pixels, such as 1440x900");
    app::Options options;
    options.assets = plan::assetsFolder();
    options.shaders = plan::shadersFolder();
    options.plan = arguments.plan.empty() ? options.assets / "demo" / "terrace.plan.json"
                                          : std::filesystem::path(arguments.plan);
    options.width = size->first;
    options.height = size->second;
    options.plain = arguments.plain;
    options.user = arguments.user;
    options.plate = arguments.plate;
    options.picture = arguments.picture;
    options.report = arguments.report;
    const auto done = app::run(options);
    return done ? kDone : fail(done.error());
}
} // namespace

Command addOpen(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("open", "Open a plan in the window; without PLAN the demo house");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)");
    app->add_option("--size", arguments->size, "Window size in pixels, WIDTHxHEIGHT")->capture_default_str();
    app->add_flag(
        "--plain", arguments->plain,
        "For slow graphics: the picture stays as it is while one moves, and grows no finer at rest");
    app->add_option("--user", arguments->user, "Name put beside answers (default: the system's user name)");
    app->add_option("--plate", arguments->plate, "Go to this plate (id or tag) at once");
    app->add_option("--picture", arguments->picture,
                    "Write a PNG of the window once it is drawn, and close it");
    app->add_option("--report", arguments->report,
                    "Keep a JSON file up to date with what the window shows and where");
    app->footer("Examples:\n  gangway open house.plan.json\n  gangway house.plan.json");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
