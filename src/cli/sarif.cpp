#include "cli/sarif.hpp"

#include "checks/accepted.hpp"
#include "checks/checks.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;

const char* levelOf(plan::Severity severity) {
    switch (severity) {
    case plan::Severity::Fault:
        return "error";
    case plan::Severity::Warn:
        return "warning";
    case plan::Severity::Hint:
        break;
    }
    return "note";
}

std::string textOf(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// Line of `"id": "..."` in a plan file, 1 when it is not written so.
long lineOf(const std::string& text, const std::string& id) {
    const std::string quoted = Json(id).dump();
    for (std::size_t at = text.find(quoted); at != std::string::npos; at = text.find(quoted, at + 1)) {
        std::size_t before = at;
        while (before > 0 && std::string_view(" \t\r\n:").contains(text[before - 1]))
            --before;
        if (before >= 4 && text.compare(before - 4, 4, "\"id\"") == 0)
            return 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
    }
    return 1;
}

Json ruleList(const std::vector<switching::Rule>& rules) {
    Json list = Json::array();
    for (const switching::Rule& rule : rules)
        list.push_back({{"id", rule.id}, {"shortDescription", {{"text", rule.what}}}});
    return list;
}

Json resultOf(const plan::Finding& finding, const std::vector<switching::Rule>& rules,
              const std::filesystem::path& file, const std::string& text) {
    const auto rule = std::ranges::find(rules, finding.rule, &switching::Rule::id);
    Json objects = Json::array();
    for (const std::string& id : finding.objects)
        objects.push_back({{"name", id}});
    const Json region = {{"startLine", finding.objects.empty() ? 1 : lineOf(text, finding.objects.front())}};
    const Json place = {
        {"physicalLocation",
         {{"artifactLocation", {{"uri", file.filename().generic_string()}}}, {"region", region}}},
        {"logicalLocations", objects}};
    Json result = {{"ruleId", finding.rule},
                   {"ruleIndex", rule - rules.begin()},
                   {"level", levelOf(finding.severity)},
                   {"message", {{"text", finding.message + " " + finding.remedy}}},
                   {"locations", Json::array({place})},
                   {"properties", {{"source", finding.source}}}};
    result["partialFingerprints"] = {{"finding/v1", checks::findingId(finding)}};
    if (finding.accepted)
        result["suppressions"] = Json::array({{{"kind", "external"}, {"justification", *finding.accepted}}});
    if (finding.value_mm) result["properties"]["value"] = *finding.value_mm;
    if (finding.limit_mm) result["properties"]["limit"] = *finding.limit_mm;
    return result;
}
} // namespace

std::string sarif(const std::filesystem::path& plan_file, const std::vector<plan::Finding>& findings,
                  const std::string& scope) {
    const auto rules = checks::rules();
    const std::string text = textOf(plan_file);
    Json results = Json::array();
    for (const plan::Finding& finding : findings)
        results.push_back(resultOf(finding, rules, plan_file, text));
    const Json notice = {{"level", "note"}, {"message", {{"text", scope}}}};
    const Json run = {{"tool", {{"driver", {{"name", "Gangway"}, {"rules", ruleList(rules)}}}}},
                      {"columnKind", "utf16CodeUnits"},
                      {"invocations", Json::array({{{"executionSuccessful", true},
                                                    {"toolExecutionNotifications", Json::array({notice})}}})},
                      {"results", results}};
    const Json report = {
        {"$schema",
         "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"},
        {"version", "2.1.0"},
        {"runs", Json::array({run})}};
    return report.dump(2);
}

} // namespace gangway::cli
