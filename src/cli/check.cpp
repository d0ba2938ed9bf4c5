// gangway check: what a plan's checks find, as text for people or JSON for programs.
#include "cli/commands.hpp"

#include "checks/accepted.hpp"
#include "checks/checks.hpp"
#include "checks/scope.hpp"
#include "cli/sarif.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
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

void printText(const plan::Plan& plan, const catalogue::CountryPack& pack,
               const std::vector<Finding>& findings) {
    const RoomsOfObjects rooms(plan);
    std::map<const plan::Room*, std::vector<const Finding*>> by_room;
    for (const Finding& finding : findings)
        if (!finding.accepted) by_room[rooms.of(finding)].push_back(&finding);
    for (const plan::Room& room : plan.rooms)
        printGroup(room.name.empty() ? room.id : room.name, by_room[&room]);
    printGroup("The house", by_room[nullptr]);
    printAccepted(findings);
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

void printJson(const plan::Plan& plan, const catalogue::CountryPack& pack,
               const std::vector<Finding>& findings) {
    const RoomsOfObjects rooms(plan);
    Json list = Json::array();
    for (const Finding& finding : findings)
        list.push_back(toJson(finding, rooms));
    const Json report = {
        {"gangwayFindings", 1}, {"project", plan.project.name},     {"pack", pack.id},
        {"lengths", "mm"},      {"scope", checks::scopeText(pack)}, {"caution", checks::cautionText()},
        {"findings", list}};
    fmt::print("{}\n", report.dump(2));
}

int run(const Arguments& arguments) {
    const auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    const auto catalogue = loadCatalogue(*plan);
    if (!catalogue) return kBadInput;
    const auto pack = loadPack(*plan, arguments.pack, arguments.plan);
    if (!pack) return kBadInput;
    const auto findings = checks::check(geometry::HouseIndex(*plan), *catalogue, *pack,
                                        std::filesystem::path(arguments.plan).parent_path());
    if (arguments.sarif)
        fmt::print("{}\n",
                   sarif(arguments.plan, findings, checks::scopeText(*pack) + " " + checks::cautionText()));
    else if (arguments.json)
        printJson(*plan, *pack, findings);
    else
        printText(*plan, *pack, findings);
    return count(findings, Severity::Fault) > 0 ? kFaults : kDone;
}
} // namespace

Command addCheck(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app = parser.add_subcommand("check", "Look for what is missing or can't work, room by room");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("--pack", arguments->pack, "Country pack whose numbers count (default: the plan's)");
    CLI::Option* json = app->add_flag("--json", arguments->json, "As JSON, lengths and places in mm");
    app->add_flag("--sarif", arguments->sarif, "As SARIF 2.1.0, for tools that review changes of files")
        ->excludes(json);
    app->footer(
        "A fault can't work or is against the rule named; a warn is likely to be regretted; a hint is for\n"
        "the designer to judge. The source of each rule stands in brackets behind it.\n"
        "Exit codes: 0 no fault, 1 some fault, 2 the plan can't be read.\n"
        "Examples:\n  gangway check house.plan.json\n  gangway check house.plan.json --pack gb --json > "
        "findings.json");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
