// gangway schedule: what is where and what is to be ordered, as CSV, XLSX or JSON.
#include "cli/commands.hpp"

#include "export/tables.hpp"
#include "sheets/schedules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <memory>

namespace gangway::cli {

namespace {
const std::vector<std::string> kEndings = {".csv", ".xlsx", ".json"};

struct Arguments {
    std::string plan;
    std::string file;
    std::string table;
    std::string room;
};

using Written = std::expected<std::vector<std::filesystem::path>, std::string>;

/// The file's ending in small letters; a sentence on standard error when it is none we write.
std::optional<std::string> endingOf(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return std::tolower(c); });
    if (std::ranges::find(kEndings, ending) != kEndings.end()) return ending;
    const std::string nearest = plan::nearestWord(ending, kEndings);
    fail(fmt::format("a schedule's file must end in .csv, .xlsx or .json, not '{}'{}", file.string(),
                     nearest.empty() ? "" : fmt::format("; did you mean '{}'?", nearest)));
    return std::nullopt;
}

bool isTable(const std::string& word) {
    const auto keys = sheets::scheduleKeys();
    if (word.empty() || std::ranges::find(keys, word) != keys.end()) return true;
    const std::string nearest = plan::nearestWord(word, keys);
    fail(fmt::format("--table: no table '{}'{} There are: {}", word,
                     nearest.empty() ? "." : fmt::format("; did you mean '{}'?", nearest),
                     fmt::join(keys, ", ")));
    return false;
}

Written write(const std::vector<sheets::Table>& tables, const exporting::TablesAbout& about,
              const std::filesystem::path& file, const std::string& ending) {
    if (ending == ".csv") return exporting::writeCsvs(tables, file);
    const auto done = ending == ".xlsx" ? exporting::writeXlsx(tables, about, file)
                                        : exporting::writeTablesJson(tables, about, file);
    if (!done) return std::unexpected(done.error());
    return std::vector{file};
}

int run(const Arguments& arguments) {
    const auto ending = endingOf(arguments.file);
    if (!ending || !isTable(arguments.table)) return kBadInput;
    const auto plan = loadPlan(arguments.plan);
    const auto catalogue = plan ? loadCatalogue(*plan) : std::nullopt;
    const auto pack = catalogue ? loadPack(*plan, {}, arguments.plan) : std::nullopt;
    if (!pack) return kBadInput;
    const plan::Room* room = nullptr;
    if (!arguments.room.empty() && (room = roomNamed(*plan, arguments.room)) == nullptr) return kBadInput;
    auto tables = sheets::schedules(*plan, *catalogue, *pack, room != nullptr ? room->id : "");
    if (!arguments.table.empty())
        std::erase_if(tables, [&](const sheets::Table& table) { return table.key != arguments.table; });
    const plan::Project& project = plan->project;
    const exporting::TablesAbout about{project.name,
                                       project.number,
                                       project.designer,
                                       project.date,
                                       room != nullptr ? room->name : "",
                                       sheets::scheduleCaution()};
    const Written files = write(tables, about, arguments.file, *ending);
    if (!files) return fail(files.error());
    for (const auto& file : *files)
        fmt::print("{}\n", file.string());
    return kDone;
}
} // namespace

Command addSchedule(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("schedule", "List what is where and what to order, as tables");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("-o,--output", arguments->file, "File to write: .csv, .xlsx or .json")->required();
    app->add_option("--table", arguments->table,
                    fmt::format("Only this table: {}", fmt::join(sheets::scheduleKeys(), ", ")));
    app->add_option("--room", arguments->room, "Only this room, by id, letter or name");
    app->footer(
        "Lengths are in mm, set-out and height to the centre and from finished faces, power in W, flux in\n"
        "lm, rated current and load in A. What to order is counted from the plates as they are drawn.\n"
        ".xlsx has a worksheet a table, .json all tables in one file. .csv holds one table: without\n"
        "--table, FILE.csv gets the plates and FILE-KEY.csv each of the others.\n"
        "Exit codes: 0 written, 2 the plan or an option can't be used (nothing is written).\n"
        "Examples:\n  gangway schedule house.plan.json -o house.xlsx\n"
        "  gangway schedule house.plan.json -o kitchen-boxes.csv --table boxes --room kitchen");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
