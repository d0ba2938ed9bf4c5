// gangway sheets: elevation sheets as PDF, SVG or PNG.
#include "cli/commands.hpp"

#include "export/export.hpp"
#include "sheets/sheets.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <memory>
#include <sstream>

namespace gangway::cli {

namespace {
const std::vector<std::string> kFormats = {"pdf", "svg", "png"};

struct Arguments {
    std::string plan;
    std::string folder;
    std::string formats = "pdf";
    std::string paper = "A3";
    std::string scale = "auto";
    std::string room;
    std::string wall;
    std::string only = "elevations";
    double dpi = 150;
};

std::optional<std::vector<std::string>> splitFormats(const std::string& list) {
    std::vector<std::string> words;
    std::istringstream stream(list);
    for (std::string word; std::getline(stream, word, ',');) {
        if (std::find(kFormats.begin(), kFormats.end(), word) == kFormats.end()) {
            const std::string nearest = plan::nearestWord(word, kFormats);
            fail(fmt::format("--formats {}: '{}' is not written{}; give any of pdf, svg, png", list, word,
                             nearest.empty() ? "" : "; did you mean '" + nearest + "'?"));
            return std::nullopt;
        }
        words.push_back(word);
    }
    if (words.empty()) {
        fail("--formats names none; give any of pdf, svg, png");
        return std::nullopt;
    }
    return words;
}

std::expected<std::vector<std::filesystem::path>, std::string>
writeFormat(const drawing::Drawing& drawing, const std::string& format, const Arguments& arguments) {
    const std::filesystem::path folder = arguments.folder;
    if (format == "svg") return exporting::writeSvgs(drawing, folder);
    if (format == "png") return exporting::writePngs(drawing, folder, arguments.dpi);
    const auto stem = std::filesystem::path(arguments.plan).filename().stem().stem().string();
    const auto file = folder / (stem + "-elevations.pdf");
    if (const auto written = exporting::writePdf(drawing, file); !written)
        return std::unexpected(written.error());
    return std::vector{file};
}

int run(const Arguments& arguments) {
    sheets::Options options;
    options.paper = arguments.paper;
    if (arguments.scale != "auto") {
        const std::vector<std::string> scales = {"10", "20", "25", "50"};
        if (std::find(scales.begin(), scales.end(), arguments.scale) == scales.end())
            return fail("--scale " + arguments.scale + " is not drawn; give auto, 10, 20, 25 or 50");
        options.scale = std::stod(arguments.scale);
    }
    if (arguments.only != "elevations")
        return fail("--only " + arguments.only +
                    ": this version draws elevations; give --only elevations or leave it out");
    if (arguments.dpi < 20 || arguments.dpi > 1200) return fail("--dpi takes 20 to 1200");
    const auto formats = splitFormats(arguments.formats);
    if (!formats) return kBadInput;

    const auto plan = loadPlan(arguments.plan);
    const auto catalogue = plan ? loadCatalogue(*plan) : std::nullopt;
    if (!catalogue) return kBadInput;
    if (!arguments.room.empty()) {
        const plan::Room* room = roomNamed(*plan, arguments.room);
        if (room == nullptr) return kBadInput;
        options.room = room->id;
    }
    options.wall = arguments.wall;
    options.base = std::filesystem::path(arguments.plan).parent_path();
    const auto drawing = sheets::elevationSheets(*plan, *catalogue, options);
    if (!drawing) return fail(drawing.error());
    if (drawing->sheets.empty()) return fail("there is nothing on these walls, so no sheet is drawn");

    std::error_code error;
    std::filesystem::create_directories(arguments.folder, error);
    if (error) return fail("cannot make the folder " + arguments.folder + ": " + error.message());
    for (const auto& format : *formats) {
        const auto files = writeFormat(*drawing, format, arguments);
        if (!files) return fail(files.error());
        for (const auto& file : *files)
            fmt::print("{}\n", file.string());
    }
    return kDone;
}
} // namespace

Command addSheets(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand(
        "sheets", "Draw a dimensioned elevation of every wall that has something on it");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("-o,--output", arguments->folder, "Folder to write into; made when it is not there")
        ->required();
    app->add_option("--formats", arguments->formats, "pdf, svg, png, separated by commas")
        ->capture_default_str();
    app->add_option("--paper", arguments->paper, "A4, A3, A2 or A1")->capture_default_str();
    app->add_option("--scale", arguments->scale, "auto, 10, 20, 25 or 50 (1:N)")->capture_default_str();
    app->add_option("--room", arguments->room, "Only this room, by id, letter or name");
    app->add_option("--wall", arguments->wall, "Only this wall of it, by letter");
    app->add_option("--only", arguments->only, "Kinds of sheet: elevations")->capture_default_str();
    app->add_option("--dpi", arguments->dpi, "Dots per inch of PNG files, 20 to 1200")->capture_default_str();
    app->footer(
        "Exit codes: 0 written, 2 the plan or an option can't be used (nothing is written).\n"
        "Examples:\n  gangway sheets house.plan.json -o out\n"
        "  gangway sheets house.plan.json -o out --formats pdf,png --room kitchen --wall A --scale 20");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
