#include "plan/object_reader.hpp"

#include "plan/io.hpp"
#include "plan/number_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace gangway::plan {

using json::Kind;

namespace {

std::string rangeText(const fields::Range& range) {
    const std::string unit = range.unit.empty() ? "" : fmt::format(" {}", range.unit);
    if (range.above_min)
        return fmt::format("more than {}{}, at most {}", numberText(range.min), unit, numberText(range.max));
    return fmt::format("{} to {}{}", numberText(range.min), numberText(range.max), unit);
}

bool within(const fields::Range& range, double value) {
    return value <= range.max && (range.above_min ? value > range.min : value >= range.min);
}

/// A number that is refused, rounded unless that would make it look right.
std::string refusedNumber(double value, const fields::Range& range) {
    const std::string shown = shownNumber(value);
    return within(range, std::strtod(shown.c_str(), nullptr)) ? numberText(value) : shown;
}

/// What was found, shortened so that a message stays on a line.
std::string found(const json::Tape& tape, json::NodeIndex node) {
    const json::Node& n = tape.nodes[node];
    if (n.kind == Kind::Number) return fmt::format("the number {}", shownNumber(n.number));
    if (n.kind != Kind::Text) return std::string(json::kindWord(n.kind));
    constexpr std::size_t kShown = 40;
    const std::string_view text = tape.text(node);
    return text.size() <= kShown ? fmt::format("the text \"{}\"", text) : "a long text";
}

bool isColour(std::string_view text) {
    return text.size() == 7 && text[0] == '#' &&
           text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string_view::npos;
}

} // namespace

ObjectReader::ObjectReader(ReadContext& context, NodeIndex object)
    : context_(context), tape_(context.tape), object_(object), first_(context.members.size()) {
    for (NodeIndex at = object + 1; at < tape_.nodes[object].end; at = tape_.nodes[at + 1].end)
        context_.members.push_back({at, false});
    count_ = context_.members.size() - first_;
}

bool ObjectReader::isObject(ReadContext& context, NodeIndex node) {
    if (context.tape.nodes[node].kind == Kind::Object) return true;
    context.problems.error(
        node, fmt::format("this is {}, but an object {{...}} is wanted here", found(context.tape, node)));
    return false;
}

json::NodeIndex ObjectReader::find(std::string_view key) {
    for (std::size_t i = 0; i < count_; ++i) {
        const std::size_t at = cursor_ + i < count_ ? cursor_ + i : cursor_ + i - count_;
        ReadContext::Member& member = context_.members[first_ + at];
        if (member.used || tape_.text(member.key) != key) continue;
        member.used = true;
        cursor_ = at + 1 < count_ ? at + 1 : 0;
        return member.key + 1;
    }
    return 0;
}

json::NodeIndex ObjectReader::findRequired(const char* key, std::string_view what) {
    const NodeIndex node = find(key);
    if (node == 0) context_.problems.error(object_, fmt::format("'{}' is missing; add it: {}", key, what));
    return node;
}

json::NodeIndex ObjectReader::listOf(const char* key, std::size_t most, bool required) {
    const NodeIndex node = required ? findRequired(key, "a list [...]") : find(key);
    if (node == 0) return 0;
    if (tape_.nodes[node].kind != Kind::Array) {
        context_.problems.error(
            node, fmt::format("'{}' is {}, but a list [...] is wanted", key, found(tape_, node)));
        return 0;
    }
    if (tape_.nodes[node].length > most) {
        context_.problems.error(node,
                                fmt::format("'{}' has {} items; at most {} are read, so divide the plan", key,
                                            tape_.nodes[node].length, most));
        return 0;
    }
    return node;
}

bool ObjectReader::textAt(NodeIndex node, std::string_view key, std::string& value) {
    const std::string_view text =
        tape_.nodes[node].kind == Kind::Text ? tape_.text(node) : std::string_view{};
    std::string problem;
    if (tape_.nodes[node].kind != Kind::Text)
        problem = fmt::format("'{}' is {}, but a text in double quotes is wanted", key, found(tape_, node));
    else if (text.size() > fields::kMaxTextBytes)
        problem = fmt::format("'{}' is {} bytes long; shorten it to {} at most", key, text.size(),
                              fields::kMaxTextBytes);
    else if (text.find('\0') != std::string_view::npos)
        problem = fmt::format("'{}' holds the character \\u0000; remove it", key);
    if (!problem.empty()) {
        context_.problems.error(node, std::move(problem));
        return false;
    }
    value = text;
    return true;
}

void ObjectReader::text(const char* key, std::string& value, std::optional<std::string_view> fallback) {
    const NodeIndex node = fallback ? find(key) : findRequired(key, "a text in double quotes");
    if (node != 0)
        textAt(node, key, value);
    else if (fallback)
        value = *fallback;
}

void ObjectReader::id(const char* key, std::string& value) {
    const NodeIndex node = findRequired(key, "a text in double quotes that is not empty");
    if (node != 0 && textAt(node, key, value) && value.empty())
        context_.problems.error(node, fmt::format("'{}' is empty; give it at least one letter", key));
}

void ObjectReader::wallId(const char* key, std::string& value) {
    if (const NodeIndex node = find(key)) textAt(node, key, value);
}

void ObjectReader::colour(const char* key, std::string& value) {
    const NodeIndex node = find(key);
    if (node == 0 || !textAt(node, key, value) || value.empty() || isColour(value)) return;
    context_.problems.error(node,
                            fmt::format("'{}' is {}; write a colour as \"#RRGGBB\", such as \"#F6F2EA\"", key,
                                        found(tape_, node)));
}

bool ObjectReader::numberAt(NodeIndex node, std::string_view key, const fields::Range& range, double& value) {
    const json::Node& n = tape_.nodes[node];
    if (n.kind != Kind::Number) {
        context_.problems.error(node, fmt::format("'{}' is {}, but a number is wanted; give {}", key,
                                                  found(tape_, node), rangeText(range)));
        return false;
    }
    if (!within(range, n.number)) {
        context_.problems.error(
            node, fmt::format("'{}' is {}; give {}", key, refusedNumber(n.number, range), rangeText(range)));
        return false;
    }
    value = n.number;
    return true;
}

void ObjectReader::number(const char* key, double& value, const fields::Range& range,
                          std::optional<double> fallback) {
    const NodeIndex node = fallback ? find(key) : findRequired(key, "a number, " + rangeText(range));
    if (node != 0)
        numberAt(node, key, range, value);
    else if (fallback)
        value = *fallback;
}

void ObjectReader::maybe(const char* key, std::optional<double>& value, const fields::Range& range,
                         bool required) {
    const NodeIndex node = required ? findRequired(key, "a number, " + rangeText(range)) : find(key);
    double number = 0;
    if (node != 0 && numberAt(node, key, range, number)) value = number;
}

void ObjectReader::integer(const char* key, int& value, const fields::Range& range, int fallback) {
    value = fallback;
    const NodeIndex node = find(key);
    double number = 0;
    if (node == 0 || !numberAt(node, key, range, number)) return;
    if (number != std::floor(number))
        context_.problems.error(node, fmt::format("'{}' is {}; give a whole number, {}", key,
                                                  numberText(number), rangeText(range)));
    else
        value = static_cast<int>(number);
}

void ObjectReader::flag(const char* key, bool& value) {
    const NodeIndex node = find(key);
    if (node == 0) return;
    const Kind kind = tape_.nodes[node].kind;
    if (kind != Kind::True && kind != Kind::False)
        context_.problems.error(node, fmt::format("'{}' is {}, but true or false (without quotes) is wanted",
                                                  key, found(tape_, node)));
    value = kind == Kind::True;
}

std::optional<std::size_t> ObjectReader::wordIndex(const char* key, std::span<const std::string_view> known,
                                                   Absence absence) {
    const auto allowed = [&] { return fmt::format("one of \"{}\"", fmt::join(known, "\", \"")); };
    const NodeIndex node = find(key);
    if (node == 0) {
        if (absence == Absence::Never)
            context_.problems.error(object_, fmt::format("'{}' is missing; add it: {}", key, allowed()));
        return std::nullopt;
    }
    if (tape_.nodes[node].kind == Kind::Text) {
        const std::string_view text = tape_.text(node);
        for (std::size_t i = 0; i < known.size(); ++i)
            if (known[i] == text) return i;
        if (text.empty() && absence == Absence::EmptyText) return std::nullopt;
        const std::string near = nearestWord(text, {known.begin(), known.end()});
        context_.problems.error(
            node, fmt::format("'{}' is {};{} give {}", key, found(tape_, node),
                              near.empty() ? "" : fmt::format(" did you mean \"{}\"?", near), allowed()));
        return std::nullopt;
    }
    context_.problems.error(node, fmt::format("'{}' is {}; give {}", key, found(tape_, node), allowed()));
    return std::nullopt;
}

bool ObjectReader::hasUnused() const {
    for (std::size_t i = 0; i < count_; ++i)
        if (!context_.members[first_ + i].used) return true;
    return false;
}

void ObjectReader::keepUnused(const std::vector<KnownKey>& known) {
    std::vector<std::string> names;
    for (const KnownKey& key : known)
        names.push_back(key.key);
    for (std::size_t i = 0; i < count_; ++i) {
        const ReadContext::Member member = context_.members[first_ + i];
        if (member.used) continue;
        const std::string key(tape_.text(member.key));
        if (std::ranges::find(names, key) != names.end())
            continue; // stands twice, and that is a problem already
        const std::string near = nearestWord(key, names);
        const std::string hint = near.empty() ? "" : fmt::format("; did you mean '{}'?", near);
        context_.problems.warning(member.key,
                                  fmt::format("'{}' is no key this program knows{} It is kept as it stands",
                                              key, hint.empty() ? "." : hint));
        unknown_->emplace_back(key, context_.positions.rawValue(member.key + 1));
    }
}

} // namespace gangway::plan
