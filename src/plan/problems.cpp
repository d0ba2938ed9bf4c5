#include "plan/problems.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>

namespace gangway::plan {

namespace {

/// How one element of a list is called.
constexpr std::array<std::pair<std::string_view, std::string_view>, 22> kSingulars{{
    {"layers", "layer"},     {"storeys", "storey"},       {"rooms", "room"},
    {"openings", "opening"}, {"furniture", "furniture"},  {"plates", "plate"},
    {"devices", "device"},   {"luminaires", "luminaire"}, {"legs", "leg"},
    {"circuits", "circuit"}, {"scenes", "scene"},         {"accepted", "acceptance"},
    {"levels", "level"},     {"agreements", "agreement"}, {"walls", "wall"},
    {"lines", "wall line"},  {"buildUp", "course"},       {"floorBuildUp", "course"},
    {"modules", "module"},   {"controls", "control"},     {"issues", "issue"},
    {"sheets", "sheet"},
}};

std::string elementName(const json::Tape& tape, std::string_view list, json::NodeIndex node,
                        std::size_t number) {
    const auto* found =
        std::ranges::find(kSingulars, list, &std::pair<std::string_view, std::string_view>::first);
    if (found == kSingulars.end() || tape.nodes[node].kind != json::Kind::Object) return {};
    const std::string_view key = list == "agreements" ? "plate"
                                 : list == "issues"   ? "letter"
                                 : list == "sheets"   ? "number"
                                                      : "id";
    const json::NodeIndex id = tape.member(node, key);
    if (id != 0 && tape.nodes[id].kind == json::Kind::Text && tape.nodes[id].length > 0)
        return fmt::format("{} '{}'", found->second, tape.text(id));
    return fmt::format("{} number {}", found->second, number + 1);
}

} // namespace

std::string subjectOf(const json::Tape& tape, json::NodeIndex node) {
    std::string subject;
    std::string list; // key of the list we are in
    json::NodeIndex at = 0;
    while (at != node && at < tape.nodes.size()) {
        const bool object = tape.nodes[at].kind == json::Kind::Object;
        json::NodeIndex child = at + 1;
        std::size_t number = 0;
        json::NodeIndex value = 0;
        for (; child < tape.nodes[at].end; ++number) {
            value = object ? child + 1 : child;
            if (node < tape.nodes[value].end) break;
            child = tape.nodes[value].end;
        }
        if (child >= tape.nodes[at].end) break;
        if (object) {
            list = tape.text(child);
        } else if (const std::string name = elementName(tape, list, value, number); !name.empty()) {
            if (!subject.empty()) subject += ", ";
            subject += name;
        }
        if (node == child && object) break;
        at = value;
    }
    return subject;
}

Diagnostics Problems::located(const json::Tape& tape, json::Positions& positions) const {
    Diagnostics result;
    for (const Problem& problem : list_) {
        if (result.size() == kMost) break;
        Diagnostic d{problem.level, problem.line, problem.column, problem.pointer, problem.message};
        if (d.line == 0) {
            const json::LineColumn place = positions.ofNode(problem.node);
            d.line = place.line;
            d.column = place.column;
        }
        if (d.pointer.empty()) d.pointer = json::pointerOf(tape, problem.node);
        result.push_back(std::move(d));
    }
    std::ranges::sort(result, {},
                      [](const Diagnostic& d) { return std::tie(d.line, d.column, d.pointer, d.message); });
    if (list_.size() > kMost) {
        const bool error =
            std::ranges::any_of(list_, [](const Problem& p) { return p.level == Level::Error; });
        result.push_back({error ? Level::Error : Level::Warning,
                          0,
                          0,
                          {},
                          fmt::format("and {} more problems; mend these first", list_.size() - kMost)});
    }
    return result;
}

} // namespace gangway::plan
