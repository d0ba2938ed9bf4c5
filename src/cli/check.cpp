// gangway check: what a plan's checks find, as text for people or JSON for programs.
#include "cli/commands.hpp"

#include "checks/accepted.hpp"
#include "checks/checks.hpp"
#include "checks/margins.hpp"
#include "checks/scope.hpp"
#include "cli/sarif.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;
using plan::Finding;
using plan::Severity;

constexpr int kFaults = 1;

struct Arguments {
    std::string plan;
    std::string pack;
    bool json = false;
    bool sarif = false;
    bool margins = false;
};

/// What is printed of a plan.
struct Report {
    const plan::Plan& plan;
    const catalogue::CountryPack& pack;
    std::vector<Finding> findings;
    std::optional<std::vector<checks::PlaceMargin>> margins; ///< the most fragile first; when asked for
};

const char* word(Severity severity) {
    switch (severity) {
    case Severity::Fault:
        return "fault";
    case Severity::Warn:
        return "warn";
    case Severity::Hint:
        break;
    }
    return "hint";
}

/// Rooms of a plan's objects by id, so that findings can stand under the room they are in.
class RoomsOfObjects {
public:
    explicit RoomsOfObjects(const plan::Plan& plan) {
        for (const auto& room : plan.rooms)
            rooms_.emplace(room.id, &room);
        const auto take = [&](const auto& list) {
            for (const auto& element : list)
                if (const auto at = rooms_.find(element.room); at != rooms_.end())
                    within_.emplace(element.id, at->second);
        };
        take(plan.plates);
        take(plan.luminaires);
        take(plan.openings);
        take(plan.furniture);
        take(plan.devices);
    }

    /// nullptr: about the house as a whole.
    const plan::Room* of(const Finding& finding) const {
        for (const std::string& id : finding.objects) {
            if (const auto room = rooms_.find(id); room != rooms_.end()) return room->second;
            if (const auto at = within_.find(id); at != within_.end()) return at->second;
        }
        return nullptr;
    }

private:
    std::map<std::string, const plan::Room*> rooms_;
    std::map<std::string, const plan::Room*> within_;
};

void printGroup(const std::string& title, const std::vector<const Finding*>& findings) {
    if (findings.empty()) return;
    fmt::print("{}\n", title);
    for (const Finding* finding : findings)
        fmt::print("  {:<5} {}: {} {} [{}]\n", word(finding->severity), finding->rule, finding->message,
                   finding->remedy, finding->source);
    fmt::print("\n");
}

/// Without those that the designer takes as they are.
long count(const std::vector<Finding>& findings, Severity severity) {
    return std::ranges::count_if(
        findings, [&](const Finding& finding) { return finding.severity == severity && !finding.accepted; });
}

void printAccepted(const std::vector<Finding>& findings) {
    bool first = true;
    for (const Finding& finding : findings) {
        if (!finding.accepted) continue;
        if (first) fmt::print("Accepted as it is\n");
        first = false;
        fmt::print("  {:<5} {}: {} Accepted: {}\n", word(finding.severity), finding.rule, finding.message,
                   *finding.accepted);
    }
    if (!first) fmt::print("\n");
}

/// To a tenth of a mm, without a minus before nothing.
double tenth(double mm) {
    return std::round(mm * 10) / 10 + 0.0;
}

/// What gives way first when a plate is out: the rule and what it is about.
std::string firstToFail(const checks::PlaceMargin& margin) {
    if (margin.rule.empty()) return "the wall's end";
    return margin.name.empty() ? margin.rule : margin.rule + ": " + margin.name;
}

void printMargins(const plan::Plan& plan, const std::vector<checks::PlaceMargin>& margins) {
    fmt::print("Margins: by how many mm a plate may be out, along the wall and in height at once, before a\n"
               "warning or a fault comes up; 0 or less is wrong as it stands\n");
    fmt::print("  {:<8} {:<18} {:<6} {:>9}  {}\n", "plate", "room", "wall", "mm", "what takes it");
    for (const checks::PlaceMargin& margin : margins) {
        const plan::Plate* plate = plan::findPlate(plan, margin.plate);
        const plan::Room* room = plan::findRoom(plan, plate->room);
        fmt::print("  {:<8} {:<18} {:<6} {:>9.1f}  {}\n", plate->tag.empty() ? plate->id : plate->tag,
                   room == nullptr || room->name.empty() ? plate->room : room->name, plate->host.wall,
                   tenth(margin.mm), firstToFail(margin));
    }
    fmt::print("\n");
}

void printText(const Report& report) {
    const auto& [plan, pack, findings, margins] = report;
    const RoomsOfObjects rooms(plan);
    std::map<const plan::Room*, std::vector<const Finding*>> by_room;
    for (const Finding& finding : findings)
        if (!finding.accepted) by_room[rooms.of(finding)].push_back(&finding);
    for (const plan::Room& room : plan.rooms)
        printGroup(room.name.empty() ? room.id : room.name, by_room[&room]);
    printGroup("The house", by_room[nullptr]);
    printAccepted(findings);
    if (margins) printMargins(plan, *margins);
    fmt::print("{} fault, {} warn, {} hint, by country pack '{}'.\n{}\n{}\n",
               count(findings, Severity::Fault), count(findings, Severity::Warn),
               count(findings, Severity::Hint), pack.id, checks::scopeText(pack), checks::cautionText());
}

Json toJson(const Finding& finding, const RoomsOfObjects& rooms) {
    const plan::Room* room = rooms.of(finding);
    Json entry = {{"id", checks::findingId(finding)},   {"rule", finding.rule},
                  {"severity", word(finding.severity)}, {"room", room == nullptr ? "" : room->id},
                  {"objects", finding.objects},         {"message", finding.message},
                  {"remedy", finding.remedy},           {"source", finding.source}};
    if (finding.value_mm) entry["value"] = *finding.value_mm;
    if (finding.limit_mm) entry["limit"] = *finding.limit_mm;
    if (finding.accepted) entry["accepted"] = *finding.accepted;
    if (finding.move)
        entry["move"] = {
            {"plate", finding.move->plate}, {"setOut", finding.move->u_mm}, {"height", finding.move->v_mm}};
    if (finding.place_mm) entry["at"] = {finding.place_mm->x, finding.place_mm->y, finding.place_mm->z};
    return entry;
}

Json toJson(const checks::PlaceMargin& margin, const plan::Plan& plan) {
    const plan::Plate* plate = plan::findPlate(plan, margin.plate);
    Json entry = {{"plate", margin.plate},
                  {"room", plate->room},
                  {"wall", plate->host.wall},
                  {"margin", tenth(margin.mm)}};
    if (!margin.rule.empty()) entry["rule"] = margin.rule;
    if (!margin.object.empty()) entry["object"] = margin.object;
    return entry;
}

void printJson(const Report& report) {
    const auto& [plan, pack, findings, margins] = report;
    const RoomsOfObjects rooms(plan);
    Json list = Json::array();
    for (const Finding& finding : findings)
        list.push_back(toJson(finding, rooms));
    Json model = {
        {"gangwayFindings", 1}, {"project", plan.project.name},     {"pack", pack.id},
        {"lengths", "mm"},      {"scope", checks::scopeText(pack)}, {"caution", checks::cautionText()},
        {"findings", list}};
    if (margins) {
        model["margins"] = Json::array();
        for (const checks::PlaceMargin& margin : *margins)
            model["margins"].push_back(toJson(margin, plan));
    }
    fmt::print("{}\n", model.dump(2));
}

/// Equal ones in the plan's order.
std::vector<checks::PlaceMargin> mostFragileFirst(const checks::Facts& facts) {
    auto margins = checks::margins(facts);
    std::ranges::stable_sort(margins, {}, &checks::PlaceMargin::mm);
    return margins;
}

int run(const Arguments& arguments) {
    const auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    const auto catalogue = loadCatalogue(*plan);
    if (!catalogue) return kBadInput;
    const auto pack = loadPack(*plan, arguments.pack, arguments.plan);
    if (!pack) return kBadInput;
    const auto base = std::filesystem::path(arguments.plan).parent_path();
    const geometry::HouseIndex house(*plan);
    Report report{*plan, *pack, checks::check(house, *catalogue, *pack, base), std::nullopt};
    if (arguments.margins) report.margins = mostFragileFirst(checks::Facts(house, *catalogue, *pack, base));
    if (arguments.sarif)
        fmt::print("{}\n", sarif(arguments.plan, report.findings,
                                 checks::scopeText(*pack) + " " + checks::cautionText()));
    else if (arguments.json)
        printJson(report);
    else
        printText(report);
    return count(report.findings, Severity::Fault) > 0 ? kFaults : kDone;
}
} // namespace

Command addCheck(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("check", "Look for what is missing or can't work, room by room");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("--pack", arguments->pack, "Country pack whose numbers count (default: the plan's)");
    CLI::Option* json = app->add_flag("--json", arguments->json, "As JSON, lengths and places in mm");
    CLI::Option* margins =
        app->add_flag("--margins", arguments->margins,
                      "Also by how many mm each plate on a wall may be out before a check fails, the most "
                      "fragile first");
    app->add_flag("--sarif", arguments->sarif, "As SARIF 2.1.0, for tools that review changes of files")
        ->excludes(json)
        ->excludes(margins);
    app->footer(
        "A fault can't work or is against the rule named; a warn is likely to be regretted; a hint is for\n"
        "the designer to judge. The source of each rule stands in brackets behind it.\n"
        "A margin holds along the wall and in height at once; 0 or less: wrong as it stands. As JSON:\n"
        "margins, a list of plate, room, wall, margin in mm, and the rule and object that fail first.\n"
        "Exit codes: 0 no fault, 1 some fault, 2 the plan can't be read.\n"
        "Examples:\n  gangway check house.plan.json\n  gangway check house.plan.json --pack gb --json > "
        "findings.json\n  gangway check house.plan.json --margins");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
