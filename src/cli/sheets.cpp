// gangway sheets: elevations, rooms, plans, switching, lighting, schedules, findings, wall checks and
// drilling templates as PDF, SVG, DXF or PNG.
#include "cli/commands.hpp"

#include "export/export.hpp"
#include "review/changes.hpp"
#include "review/issues.hpp"
#include "sheets/sheet_set.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <memory>
#include <sstream>

namespace gangway::cli {

namespace {
const std::vector<std::string> kFormats = {"pdf", "svg", "dxf", "png"};
const std::vector<std::string> kZones = {"auto", "none", "wet", "cable"};
const std::vector<std::string> kLamps = {"symbols", "top"};
const std::vector<std::string> kFixes = {"first", "second"};
const std::vector<std::string> kFaces = {"finished", "structural"};
const std::vector<std::string> kLevels = {"ffl", "sfl", "site"};

struct Arguments {
    std::string plan;
    std::string folder;
    std::string formats = "pdf";
    std::string paper; ///< empty: what the kind is meant for
    std::string scale = "auto";
    std::string room;
    std::string wall;
    std::string only; ///< empty: all, of a wall its elevation
    std::string lamps = "symbols";
    std::string zones = "auto";
    std::string fix = "second";
    std::string face;  ///< empty: the last issue's, else finished; at first fix structural
    std::string level; ///< empty: the last issue's, else ffl; at first fix sfl
    std::string since;
    bool checks = true;
    double dpi = 150;
};

std::vector<std::string> kindWords() {
    std::vector<std::string> words;
    for (const sheets::SheetKind& kind : sheets::sheetKinds())
        words.emplace_back(kind.word);
    return words;
}

constexpr const char* kAll = "all"; ///< every kind that the house has something for

/// One of the words an option takes; a sentence on standard error when it is none of them.
bool isOneOf(const std::string& option, const std::string& word, const std::vector<std::string>& known) {
    if (std::find(known.begin(), known.end(), word) != known.end()) return true;
    std::string all;
    for (const auto& name : known)
        all += (all.empty() ? "" : ", ") + name;
    const std::string nearest = plan::nearestWord(word, known);
    fail(fmt::format("{}: '{}' is not known{}; give any of {}", option, word,
                     nearest.empty() ? "" : "; did you mean '" + nearest + "'?", all));
    return false;
}

/// The words of a list with commas, each once.
std::optional<std::vector<std::string>> splitWords(const std::string& option, const std::string& list,
                                                   const std::vector<std::string>& known) {
    std::vector<std::string> words;
    std::istringstream stream(list);
    for (std::string word; std::getline(stream, word, ',');) {
        if (!isOneOf(option, word, known)) return std::nullopt;
        if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
    }
    if (words.empty()) {
        isOneOf(option, "", known);
        return std::nullopt;
    }
    return words;
}

std::expected<std::vector<std::filesystem::path>, std::string> writeFormat(const drawing::Drawing& drawing,
                                                                           const std::string& kind,
                                                                           const std::string& format,
                                                                           const Arguments& arguments) {
    const std::filesystem::path folder = arguments.folder;
    if (format == "svg") return exporting::writeSvgs(drawing, folder);
    if (format == "dxf") return exporting::writeDxfs(drawing, folder);
    if (format == "png") return exporting::writePngs(drawing, folder, arguments.dpi);
    const auto stem = std::filesystem::path(arguments.plan).filename().stem().stem().string();
    const auto file = folder / fmt::format("{}-{}.pdf", stem, kind);
    if (const auto written = exporting::writePdf(drawing, file); !written)
        return std::unexpected(written.error());
    return std::vector{file};
}

/// Which zones are drawn. Left alone: those of baths and showers, on elevations.
struct Zones {
    bool wet_on_elevations = true;
    bool wet_on_plans = false;
    bool cable = false;
    bool any() const { return wet_on_elevations || wet_on_plans || cable; }
};

std::optional<Zones> zonesNamed(const std::string& words) {
    const auto named = splitWords("--zones " + words, words, kZones);
    if (!named) return std::nullopt;
    const auto has = [&](const char* word) { return std::ranges::find(*named, word) != named->end(); };
    return Zones{has("auto") || has("wet"), has("wet"), has("cable")};
}

using Drawings = std::vector<std::pair<const sheets::SheetKind*, drawing::Drawing>>;

int write(const std::vector<sheets::Document>& documents, const std::vector<std::string>& formats,
          const Arguments& arguments) {
    std::error_code error;
    std::filesystem::create_directories(arguments.folder, error);
    if (error) return fail("cannot make the folder " + arguments.folder + ": " + error.message());
    for (const sheets::Document& document : documents)
        for (const auto& format : formats) {
            const auto files = writeFormat(document.drawing, document.word, format, arguments);
            if (!files) return fail(files.error());
            for (const auto& file : *files)
                fmt::print("{}\n", file.string());
        }
    return kDone;
}

/// What is not as it was, in words, beside the files' names.
void tellChanges(const plan::Plan& before, const plan::Plan& after) {
    const auto changes = review::changesInWords(before, after);
    for (const std::string& words : changes)
        fmt::print(stderr, "changed: {}\n", words);
    if (changes.empty()) fmt::print(stderr, "no plate has changed\n");
}

/// The older state that changes are marked against: a letter of the plan's issues, a plan file or, with
/// nothing named, the issue that the plan is to be compared with; `old` stays empty when there is none.
/// False: said so.
bool findOlder(const std::string& named, const plan::Plan& plan, std::optional<plan::Plan>& old) {
    if (named.empty()) {
        if (const plan::Issue* issue = review::comparedWith(plan)) old = review::stateAt(plan, *issue);
        return true;
    }
    if (const plan::Issue* issue = review::findIssue(plan, named)) {
        old = review::stateAt(plan, *issue);
        return true;
    }
    if (named.size() <= 2 && !std::filesystem::exists(named)) {
        std::vector<std::string> letters;
        for (const plan::Issue& issue : plan.issues)
            letters.push_back(issue.letter);
        fail(letters.empty()
                 ? fmt::format("--since {}: the plan was never issued, and there is no such file", named)
                 : "--since: " + noSuch("issue", named, letters));
        return false;
    }
    old = loadPlan(named);
    return old.has_value();
}

/// The kinds asked for, each with its sheets; a cover has the others in its index, one alone has the whole
/// set. Of `all`, kinds that the house has nothing for are left out.
std::expected<Drawings, std::string> drawn(const std::vector<std::string>& kinds, bool all,
                                           sheets::SetInput input) {
    Drawings drawings;
    const bool cover = std::ranges::find(kinds, sheets::kCoverWord) != kinds.end();
    std::vector<const sheets::SheetKind*> wanted;
    for (const std::string& word : kinds)
        if (word != sheets::kCoverWord) wanted.push_back(sheets::findSheetKind(word));
    auto made = sheets::drawKinds(wanted, input);
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        auto& drawing = made[i];
        if (!drawing) return std::unexpected(drawing.error());
        if (drawing->sheets.empty() && all) continue;
        if (drawing->sheets.empty()) return std::unexpected(std::string(wanted[i]->nothing));
        drawings.emplace_back(wanted[i], std::move(*drawing));
    }
    if (!cover) return drawings;
    std::vector<drawing::Drawing> others;
    for (const auto& [kind, drawing] : drawings)
        others.push_back(drawing);
    if (!others.empty()) input.set = &others;
    const sheets::SheetKind* kind = sheets::findSheetKind(sheets::kCoverWord);
    auto drawing = sheets::drawKind(*kind, input);
    if (!drawing) return std::unexpected(drawing.error());
    drawings.emplace(drawings.begin(), kind, std::move(*drawing));
    return drawings;
}

/// What was asked for. What is fixed before plaster is measured from what stands then; else a plan that was
/// issued goes on counting as it was issued.
sheets::Datum datumOf(const Arguments& arguments, const plan::Plan& plan) {
    sheets::Datum datum;
    if (arguments.fix == "first")
        datum = {sheets::Face::Structural, sheets::Level::Slab};
    else if (!plan.issues.empty())
        datum = sheets::datumOf(plan.issues.back());
    if (!arguments.face.empty())
        datum.face = arguments.face == "structural" ? sheets::Face::Structural : sheets::Face::Finished;
    if (!arguments.level.empty())
        datum.level = arguments.level == "sfl"    ? sheets::Level::Slab
                      : arguments.level == "site" ? sheets::Level::Site
                                                  : sheets::Level::Ffl;
    return datum;
}

int run(const Arguments& arguments) {
    sheets::Options options;
    if (arguments.scale != "auto") {
        const std::vector<std::string> scales = {"10", "20", "25", "50"};
        if (std::find(scales.begin(), scales.end(), arguments.scale) == scales.end())
            return fail("--scale " + arguments.scale + " is not drawn; give auto, 10, 20, 25 or 50");
        options.scale = std::stod(arguments.scale);
    }
    // A wall has elevations; nothing else is of one wall alone.
    const std::string only =
        arguments.only.empty() ? (arguments.wall.empty() ? kAll : "elevations") : arguments.only;
    const bool all = only == kAll;
    const auto kinds = all ? kindWords() : splitWords("--only " + only, only, kindWords());
    if (!kinds || !isOneOf("--lamps", arguments.lamps, kLamps) || !isOneOf("--fix", arguments.fix, kFixes) ||
        !(arguments.face.empty() || isOneOf("--face", arguments.face, kFaces)) ||
        !(arguments.level.empty() || isOneOf("--datum", arguments.level, kLevels)))
        return kBadInput;
    if (arguments.fix == "first") options.fix = sheets::Fix::First;
    if (arguments.dpi < 20 || arguments.dpi > 1200) return fail("--dpi takes 20 to 1200");
    const auto formats = splitWords("--formats " + arguments.formats, arguments.formats, kFormats);
    const auto zones = formats ? zonesNamed(arguments.zones) : std::nullopt;
    if (!zones) return kBadInput;

    auto plan = loadPlan(arguments.plan);
    const auto catalogue = plan ? loadCatalogue(*plan) : std::nullopt;
    if (!catalogue) return kBadInput;
    if (!arguments.room.empty()) {
        const plan::Room* room = roomNamed(*plan, arguments.room);
        if (room == nullptr) return kBadInput;
        options.room = room->id;
    }
    options.wall = arguments.wall;
    options.datum = datumOf(arguments, *plan);
    options.base = std::filesystem::path(arguments.plan).parent_path();
    std::optional<catalogue::CountryPack> pack;
    if ((zones->any() ||
         std::ranges::any_of(
             *kinds, [](const std::string& kind) { return sheets::findSheetKind(kind)->needs_pack; })) &&
        !(pack = loadPack(*plan, {}, arguments.plan)))
        return kBadInput;
    if (pack) options.pack = &*pack;
    options.check_dimensions = arguments.checks;
    options.wet_zones = zones->wet_on_elevations;
    options.cable_zones = zones->cable;
    std::optional<plan::Plan> since;
    if (!findOlder(arguments.since, *plan, since)) return kBadInput;
    if (since) {
        options.since = &*since;
        tellChanges(*since, *plan);
    }
    *plan = review::stamped(std::move(*plan));
    const sheets::SetInput input{&*plan,
                                 &*catalogue,
                                 options.pack,
                                 nullptr,
                                 options,
                                 arguments.paper,
                                 arguments.lamps == "top",
                                 zones->wet_on_plans,
                                 nullptr};
    auto drawings = drawn(*kinds, all, input);
    if (!drawings) return fail(drawings.error());
    return write(sheets::documentsOf(std::move(*drawings)), *formats, arguments);
}
} // namespace

Command addSheets(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("sheets", "Draw elevations of walls with something on them, "
                                                    "room sheets, storey plans, switching plans, lighting "
                                                    "set-out and light estimates, schedules, findings, wall "
                                                    "checks, drilling templates");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("-o,--output", arguments->folder, "Folder to write into; made when it is not there")
        ->required();
    app->add_option("--formats", arguments->formats,
                    "pdf, svg, dxf, png, separated by commas; a DXF has walls and plans at true size in "
                    "model space, in mm")
        ->capture_default_str();
    app->add_option("--paper", arguments->paper,
                    "A4, A3, A2 or A1; left out: A4 for wall checks and templates, A3 for the others");
    app->add_option("--scale", arguments->scale, "auto, 10, 20, 25 or 50 (1:N)")->capture_default_str();
    app->add_option("--room", arguments->room, "Only this room, by id, letter or name");
    app->add_option("--wall", arguments->wall, "Only this wall of it, by letter");
    app->add_option(
        "--only", arguments->only,
        "Kinds of sheet: cover (index, key plans, revisions), rooms (a room's plan among its elevations), "
        "elevations, plan (storeys, with the sheet of each wall's elevation), switching, lighting (ceilings "
        "dimensioned from two walls, then the light), schedule, wallcheck (every box to tick, by wall), "
        "findings, templates (boxes at true size for drilling), separated by commas; left out: all, of a "
        "wall its elevation; sheets under a cover are one PDF");
    app->add_option("--lamps", arguments->lamps,
                    "Luminaires on switching plans: symbols, or top (as seen from above)")
        ->capture_default_str();
    app->add_option(
           "--zones", arguments->zones,
           "Zones to draw: auto (of baths and showers, on elevations), wet (those on switching plans "
           "too), cable (on elevations), none; separated by commas")
        ->capture_default_str();
    app->add_option("--fix", arguments->fix,
                    "Elevations of the second fix (plates and furniture), or of the first: boxes and what is "
                    "drilled, on the bare wall")
        ->capture_default_str();
    app->add_option(
        "--face", arguments->face,
        "Where distances along walls start: finished, or structural (the bare face); left out: as in "
        "the plan's last issue, else finished; with --fix first structural");
    app->add_option(
        "--datum", arguments->level,
        "Where heights start: ffl (finished floor), sfl (structural floor, the slab) or site (site "
        "line); left out: as in the plan's last issue, else ffl; with --fix first sfl");
    app->add_flag(
        "!--no-checks", arguments->checks,
        "Elevations without auxiliary dimensions in brackets: from the nearest opening, pitches, equal "
        "spacing");
    app->add_option(
        "--since", arguments->since,
        "Mark on elevations what is not as it was, with clouds and words: in an issue of the plan, by its "
        "letter, or in an older plan file; left out: in the last issue or, when the plan is exactly as "
        "issued, in the one before");
    app->add_option("--dpi", arguments->dpi, "Dots per inch of PNG files, 20 to 1200")->capture_default_str();
    app->footer(
        "Exit codes: 0 written, 2 the plan or an option can't be used (nothing is written).\n"
        "Examples:\n  gangway sheets house.plan.json -o out\n"
        "  gangway sheets house.plan.json -o out --formats pdf,png --room kitchen --wall A --scale 20\n"
        "  gangway sheets house.plan.json -o out --formats dxf --room kitchen\n"
        "  gangway sheets house.plan.json -o out --only switching,lighting --lamps top\n"
        "  gangway sheets house.plan.json -o out --only rooms,plan --room kitchen\n"
        "  gangway sheets house.plan.json -o out --only elevations,findings --zones wet,cable\n"
        "  gangway sheets house.plan.json -o out --only wallcheck,templates --room kitchen\n"
        "  gangway sheets house.plan.json -o out --only cover,elevations --since A");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
