// gangway pack: the country packs there are, and one of one's own that starts from another.
#include "cli/commands.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <array>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;
using catalogue::CountryPack;
using catalogue::Grade;

struct Arguments {
    std::string plan;
    bool json = false;
    std::string base;
    std::string id;
    std::string name;
    std::string file;
};

constexpr std::array kGrades = {Grade::Official, Grade::Trade, Grade::Secondary, Grade::Memory,
                                Grade::Practice};
constexpr std::array<const char*, 5> kGradeWords = {"official", "trade", "secondary", "memory", "practice"};
/// How many of a pack's values have each grade, in the order of kGrades.
using Graded = std::array<int, kGrades.size()>;

/// What counts where the pack does, with what it takes from the pack it extends and the international one.
Graded gradesOf(const CountryPack& pack) {
    Graded graded{};
    const auto take = [&](Grade grade) { ++graded[static_cast<std::size_t>(grade)]; };
    const auto takeAll = [&](const auto& list) {
        for (const auto& entry : list)
            take(entry.grade);
    };
    takeAll(pack.heights);
    takeAll(pack.light);
    takeAll(pack.zones);
    takeAll(pack.outlets);
    takeAll(pack.things);
    takeAll(pack.bodies);
    for (const auto& [id, limit] : pack.limits)
        take(limit.grade);
    take(pack.wiring.grade);
    for (const auto* number :
         {&pack.volts, &pack.lighting_rated_a, &pack.circuit_part, &pack.dimmer_led_part,
          &pack.entrance_reach_mm, &pack.maintenance, &pack.utilisation, &pack.work_plane_mm})
        take(number->grade);
    return graded;
}

int listAsJson(const catalogue::CountryPacks& packs) {
    Json list = Json::array();
    for (const CountryPack& pack : packs.packs) {
        Json entry = {
            {"id", pack.id}, {"name", pack.name}, {"extends", pack.extends}, {"edition", pack.edition}};
        const Graded graded = gradesOf(pack);
        for (std::size_t i = 0; i < graded.size(); ++i)
            entry["values"][kGradeWords[i]] = graded[i];
        list.push_back(std::move(entry));
    }
    fmt::print("{}\n", Json({{"gangwayPacks", 1}, {"packs", list}}).dump(2));
    return kDone;
}

int list(const Arguments& arguments) {
    const auto packs = loadPacks(arguments.plan);
    if (!packs) return kBadInput;
    if (arguments.json) return listAsJson(*packs);
    std::size_t widest = 0;
    for (const CountryPack& pack : packs->packs)
        widest = std::max(widest, pack.id.size());
    for (const CountryPack& pack : packs->packs) {
        fmt::print("{:<{}}  {}{}\n", pack.id, widest, pack.name,
                   pack.extends.empty() ? "" : fmt::format(" (starts from '{}')", pack.extends));
        fmt::print("{:<{}}  {}\n", "", widest,
                   pack.edition.empty() ? std::string("no edition stated") : pack.edition);
        std::string values;
        const Graded graded = gradesOf(pack);
        for (std::size_t i = 0; i < graded.size(); ++i)
            values += fmt::format("{}{} {}", values.empty() ? "" : ", ", graded[i], kGradeWords[i]);
        fmt::print("{:<{}}  values: {}\n", "", widest, values);
    }
    fmt::print(
        "\nofficial: the official text was read; trade: a trade body's or textbook's; secondary: a page "
        "about it;\nmemory: from memory; practice: common practice, no source.\n");
    return kDone;
}

bool isId(const std::string& word) {
    constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyz0123456789-";
    return !word.empty() && word.front() != '-' && word.find_first_not_of(kLetters) == std::string::npos;
}

std::filesystem::path fileFor(const Arguments& arguments) {
    if (!arguments.file.empty()) return arguments.file;
    const auto folders = catalogue::ownPackFolders();
    return folders.empty() ? std::filesystem::path() : folders.front() / (arguments.id + ".json");
}

int copy(const Arguments& arguments) {
    if (!isId(arguments.id))
        return fail("'" + arguments.id +
                    "' can't be a pack's id: small letters, digits and - only, as in 'gb-ours'");
    const auto packs = loadPacks({});
    if (!packs) return kBadInput;
    const CountryPack* base = packNamed(*packs, arguments.base, {});
    if (base == nullptr) return kBadInput;
    if (packs->pack(arguments.id) != nullptr)
        return fail("there is a country pack '" + arguments.id + "' already; give the new one another id");
    const std::filesystem::path file = fileFor(arguments);
    if (file.empty()) return fail("neither XDG_CONFIG_HOME nor HOME is set; say where with -o FILE");
    std::error_code error;
    if (std::filesystem::exists(file, error))
        return fail(file.string() + " is there already; move it away or give another file with -o FILE");
    if (file.has_parent_path()) std::filesystem::create_directories(file.parent_path(), error);
    if (error) return fail("cannot make the folder " + file.parent_path().string() + ": " + error.message());
    const std::string name = arguments.name.empty() ? base->name + ", our own" : arguments.name;
    if (const auto written = plan::writeBytesAtomically(catalogue::packCopy(*base, arguments.id, name), file);
        !written)
        return fail(written.error());
    fmt::print("{}\n", file.string());
    return kDone;
}
} // namespace

Command addPack(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("pack", "List the country packs, or start one of your own");
    app->require_subcommand(1);
    CLI::App* lister =
        app->add_subcommand("list", "Every pack: id, name, edition, values by how well they are sourced");
    lister->add_option("PLAN", arguments->plan, "With those beside this plan file, in its folder 'packs'");
    lister->add_flag("--json", arguments->json, "As JSON");
    CLI::App* copier =
        app->add_subcommand("copy", "A pack that starts from another, with every limit in it to change");
    copier->add_option("ID", arguments->base, "Pack to start from")->required();
    copier->add_option("NEW-ID", arguments->id, "Id of the new one")->required();
    copier->add_option("--name", arguments->name, "Its name in lists");
    copier->add_option("-o,--output", arguments->file,
                       "File to write; by default in your own folder, where every plan finds it");
    app->footer(
        "Packs of your own lie in gangway/packs of the configuration folder ($XDG_CONFIG_HOME, else\n"
        "~/.config), or in a folder 'packs' beside the plan. One with the id of a shipped pack takes its\n"
        "place. Change a value with its source beside it; what you take out is as in the pack it starts "
        "from.\n"
        "Exit codes: 0 done, 2 no such pack, or the file can't be written (nothing is changed).\n"
        "Examples:\n  gangway pack list\n  gangway pack copy gb gb-ours\n"
        "  gangway pack copy us town -o packs/town.json");
    return {app, [arguments, lister] { return lister->parsed() ? list(*arguments) : copy(*arguments); }};
}

} // namespace gangway::cli
