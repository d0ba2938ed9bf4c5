// gangway: reads the command line and hands over to one subcommand.
#include "cli/commands.hpp"

#include <cstdio>
#include <exception>

namespace gangway::cli {

namespace {
/// Names of the options a parser takes, for finding the nearest to a mistyped one.
std::vector<std::string> optionNames(const CLI::App& app) {
    std::vector<std::string> names;
    for (const auto* option : app.get_options())
        for (const auto& name : option->get_lnames())
            names.push_back("--" + name);
    return names;
}

int sayParseError(const CLI::App& parser, const std::vector<Command>& commands,
                  const CLI::ParseError& error) {
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) return parser.exit(error);
    std::string message = error.what();
    const CLI::App* named = &parser;
    for (const auto& command : commands)
        if (command.app->parsed()) named = command.app;
    for (const auto& word : named->remaining()) {
        const std::string nearest = plan::nearestWord(word, optionNames(*named));
        message = "unknown option " + word + (nearest.empty() ? "" : "; did you mean " + nearest + "?");
        break;
    }
    fail(message + "\nTry: " + (named == &parser ? "gangway" : "gangway " + named->get_name()) + " --help");
    return kBadInput;
}

/// "gangway house.plan.json" opens it; a first word that is neither a command nor a file is a typing slip.
std::optional<std::string> firstWordProblem(const std::vector<Command>& commands,
                                            std::vector<std::string>& words) {
    std::vector<std::string> names;
    for (const auto& command : commands)
        names.push_back(command.app->get_name());
    if (words.empty()) {
        words = {"open"};
        return std::nullopt;
    }
    const std::string& first = words.front();
    const bool command_or_option =
        first.starts_with('-') || std::find(names.begin(), names.end(), first) != names.end();
    if (command_or_option) return std::nullopt;
    std::error_code error;
    if (first.ends_with(".json") || first.find('/') != std::string::npos ||
        std::filesystem::exists(first, error)) {
        words.insert(words.begin(), "open");
        return std::nullopt;
    }
    const std::string nearest = plan::nearestWord(first, names);
    return "'" + first + "' is neither a command nor a plan file" +
           (nearest.empty() ? "" : "; did you mean " + nearest + "?") + "\nTry: gangway --help";
}

int mainWithin(int argc, char** argv) {
    CLI::App parser("Gangway: walk the room, agree every plate, set out every wall.\n"
                    "Reads a plan file of a home's rooms, plates and lamps; opens it in a window, or writes\n"
                    "sheets and pictures. A drawing is a placing proposal, not an electrical design: the\n"
                    "licensed electrician and the local code decide.",
                    "gangway");
    parser.require_subcommand(1);
    parser.set_version_flag("--version", "gangway 0.1.0, plan format " + std::to_string(plan::kFormatNumber));
    const std::vector<Command> commands = {addOpen(parser),     addSheets(parser),  addShot(parser),
                                           addInspect(parser),  addReview(parser),  addCheck(parser),
                                           addSchedule(parser), addDevices(parser), addPack(parser),
                                           addFree(parser),     addWhatIf(parser),  addIssue(parser)};
    std::vector<std::string> words(argv + 1, argv + argc);
    if (const auto problem = firstWordProblem(commands, words)) return fail(*problem);
    std::reverse(words.begin(), words.end()); // CLI11 takes its vector from the back
    try {
        parser.parse(words);
    } catch (const CLI::ParseError& error) {
        return sayParseError(parser, commands, error);
    }
    for (const auto& command : commands)
        if (command.app->parsed()) return command.run();
    return kBadInput;
}
} // namespace

} // namespace gangway::cli

int main(int argc, char** argv) {
    try {
        return gangway::cli::mainWithin(argc, argv);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "gangway: stopped: %s\n", error.what());
        return 70;
    }
}
