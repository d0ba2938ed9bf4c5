#include "plan/io.hpp"

#include "plan/json_syntax.hpp"
#include "plan/number_text.hpp"
#include "plan/object_reader.hpp"
#include "plan/validation.hpp"
#include "plan/wall_names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::plan {

namespace {

Diagnostics wholeFile(std::string message) {
    return {{Level::Error, 0, 0, {}, std::move(message)}};
}

/// What can be said about a text before it is parsed; empty when nothing speaks against it.
std::string lookOver(std::string_view text) {
    if (text.size() > fields::kMaxBytes)
        return fmt::format("the file is {} MiB large; at most 256 MiB are read, so divide the plan",
                           text.size() / (std::size_t{1024} * 1024));
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return "the file is empty; a plan begins with {\"gangway\": 1";
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        return "the file is written in UTF-16; save it with the UTF-8 encoding";
    if (text.find('\0') != std::string_view::npos)
        return "this is not a text file, so it is no plan; choose a file that ends in .plan.json";
    return {};
}

/// The five layers every plan has stand in front of the designer's own.
void addMissingLayers(Plan& plan) {
    constexpr std::array<std::pair<const char*, const char*>, 5> kEvery{{{kLayerBuilding, "Building"},
                                                                         {kLayerFurniture, "Furniture"},
                                                                         {kLayerSoft, "Soft furnishings"},
                                                                         {kLayerLamps, "Lamps"},
                                                                         {kLayerPlates, "Plates"}}};
    std::vector<Layer> missing;
    for (const auto& [id, name] : kEvery)
        if (findLayer(plan, id) == nullptr) missing.push_back({id, name, Visibility::Shown, {}});
    plan.layers.insert(plan.layers.begin(), missing.begin(), missing.end());
}

/// True when the document says it is a plan of a format this program reads.
bool judgeFormat(const json::Tape& tape, Problems& problems) {
    if (tape.nodes.front().kind != json::Kind::Object) {
        problems.error(0, fmt::format("a plan is an object {{...}}, but this file holds {}",
                                      json::kindWord(tape.nodes.front().kind)));
        return false;
    }
    const json::NodeIndex node = tape.member(0, "gangway");
    if (node == 0) {
        problems.error(0, "'gangway' is missing, so this is no plan of this program; a plan begins with "
                          "{\"gangway\": 1");
        return false;
    }
    const json::Node& n = tape.nodes[node];
    if (n.kind != json::Kind::Number || n.number != std::floor(n.number) || n.number < 1) {
        problems.error(node, fmt::format("'gangway' is the format number; give {}", kFormatNumber));
        return false;
    }
    if (n.number > kFormatNumber) {
        problems.error(
            node, fmt::format("format {} is newer than this program reads ({}); open it with a newer Gangway",
                              numberText(n.number), kFormatNumber));
        return false;
    }
    return true;
}

/// Elements of top lists in which reading found an error: what is said about them again would be an echo.
Trust trustOf(const json::Tape& tape, const Problems& problems) {
    Trust trust;
    for (const Problem& problem : problems.list()) {
        if (problem.level != Level::Error) continue;
        const std::string pointer = json::pointerOf(tape, problem.node);
        const std::size_t second = pointer.find('/', 1);
        if (second == std::string::npos) {
            trust.broken.insert(pointer);
            continue;
        }
        trust.broken.insert(pointer.substr(0, pointer.find('/', second + 1)));
    }
    return trust;
}

void addValidation(const Plan& plan, const json::Tape& tape, Problems& problems) {
    for (Diagnostic& diagnostic : validate(plan, trustOf(tape, problems))) {
        const json::NodeIndex node = json::nodeAt(tape, diagnostic.pointer);
        problems.add(
            {diagnostic.level, node, std::move(diagnostic.pointer), std::move(diagnostic.message), 0, 0});
    }
}

/// Puts "plate 'kitchen-04': " in front of what the readers found.
void nameSubjects(const json::Tape& tape, Problems& problems) {
    Problems named;
    for (Problem problem : problems.list()) {
        if (problem.pointer.empty() && named.list().size() < Problems::kMost) {
            const std::string subject = subjectOf(tape, problem.node);
            if (!subject.empty()) problem.message = subject + ": " + problem.message;
        }
        named.add(std::move(problem));
    }
    problems = std::move(named);
}

Plan readPlan(const json::ParseOutcome& parsed, json::Positions& positions, Problems& problems) {
    Plan plan;
    const json::Tape& tape = parsed.tape;
    for (const json::NodeIndex node : parsed.repeated_keys)
        problems.error(node,
                       fmt::format("'{}' stands twice in one object; keep one of them", tape.text(node)));
    for (const json::NodeIndex node : parsed.overflowing)
        problems.error(node, "this number is too large to be held; give -1000000 to 1000000");
    ReadContext context{tape, positions, problems, &plan, {}, {}};
    ObjectReader::readObject(context, 0, plan);
    addMissingLayers(plan);
    for (Room& room : plan.rooms)
        nameWalls(room);
    nameSubjects(tape, problems);
    addValidation(plan, tape, problems);
    return plan;
}

Diagnostics refusal(const json::ParseOutcome& parsed, std::string_view text, json::Positions& positions) {
    using Stop = json::ParseOutcome::Stop;
    json::LineColumn place;
    std::string message;
    if (parsed.stop == Stop::Syntax) {
        json::SyntaxProblem problem =
            json::findSyntaxProblem(text, parsed.offset == 0 ? 0 : parsed.offset - 1);
        place = positions.ofOffset(problem.offset);
        message = std::move(problem.message);
    } else {
        place = positions.ofNode(static_cast<json::NodeIndex>(parsed.tape.nodes.size() - 1));
        message = parsed.stop == Stop::TooDeep
                      ? fmt::format("lists and objects are nested more than {} deep here; no plan needs that",
                                    json::kMaxDepth)
                      : fmt::format("the file holds more than {} values; divide the plan", json::kMaxNodes);
    }
    return {{Level::Error, place.line, place.column, {}, std::move(message)}};
}

} // namespace

std::expected<ReadResult, Diagnostics> read(std::string_view text) {
    constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF"; // some editors put it in front; it means nothing
    if (text.starts_with(kUtf8Mark)) text.remove_prefix(kUtf8Mark.size());
    if (std::string message = lookOver(text); !message.empty())
        return std::unexpected(wholeFile(std::move(message)));

    json::Positions positions(text);
    const json::ParseOutcome parsed = json::parse(text);
    if (parsed.stop != json::ParseOutcome::Stop::None)
        return std::unexpected(refusal(parsed, text, positions));

    Problems problems;
    ReadResult result;
    if (judgeFormat(parsed.tape, problems)) result.plan = readPlan(parsed, positions, problems);
    if (!problems.empty()) result.warnings = problems.located(parsed.tape, positions);
    if (hasErrors(result.warnings)) return std::unexpected(std::move(result.warnings));
    return result;
}

} // namespace gangway::plan
