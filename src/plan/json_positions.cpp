#include "plan/json_positions.hpp"

#include <algorithm>
#include <charconv>

namespace gangway::plan::json {

namespace {

bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}
bool isMark(char c) {
    return c == '{' || c == '}' || c == '[' || c == ']' || c == ',' || c == ':';
}

/// End of the string, number or word that begins at `at`.
std::size_t scalarEnd(std::string_view text, std::size_t at) {
    if (text[at] == '"') {
        for (++at; at < text.size() && text[at] != '"'; ++at)
            if (text[at] == '\\') ++at;
        return std::min(at + 1, text.size());
    }
    while (at < text.size() && !isSpace(text[at]) && !isMark(text[at]) && text[at] != '"')
        ++at;
    return at;
}

std::string unescaped(std::string_view part) {
    std::string result;
    for (std::size_t i = 0; i < part.size(); ++i) {
        const bool escape = part[i] == '~' && i + 1 < part.size();
        result += escape ? (part[i + 1] == '1' ? '/' : '~') : part[i];
        if (escape) ++i;
    }
    return result;
}

/// The element of a list by its number as text; 0 when there is none.
NodeIndex element(const Tape& tape, NodeIndex list, std::string_view number) {
    std::uint32_t wanted = 0;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), wanted);
    if (error != std::errc{} || end != number.data() + number.size()) return 0;
    if (tape.nodes[list].kind != Kind::Array || wanted >= tape.nodes[list].length) return 0;
    NodeIndex at = list + 1;
    for (; wanted > 0; --wanted)
        at = tape.nodes[at].end;
    return at;
}

} // namespace

std::string pointerPart(std::string_view key) {
    std::string result;
    for (const char c : key) {
        if (c == '~')
            result += "~0";
        else if (c == '/')
            result += "~1";
        else
            result += c;
    }
    return result;
}

void Positions::scan() {
    for (std::size_t at = 0; at < text_.size();) {
        const char c = text_[at];
        if (isSpace(c) || c == ',' || c == ':' || c == '}' || c == ']') {
            ++at;
            continue;
        }
        offsets_.push_back(static_cast<std::uint32_t>(at));
        at = c == '{' || c == '[' ? at + 1 : scalarEnd(text_, at);
    }
    offsets_.push_back(static_cast<std::uint32_t>(text_.size()));
}

LineColumn Positions::ofNode(NodeIndex node) {
    if (offsets_.empty()) scan();
    return ofOffset(offsets_[std::min<std::size_t>(node, offsets_.size() - 1)]);
}

LineColumn Positions::ofOffset(std::size_t offset) {
    if (line_starts_.empty()) {
        line_starts_.push_back(0);
        for (std::size_t at = text_.find('\n'); at != std::string_view::npos; at = text_.find('\n', at + 1))
            line_starts_.push_back(static_cast<std::uint32_t>(at + 1));
    }
    const auto after = std::ranges::upper_bound(line_starts_, offset);
    const auto line = static_cast<std::size_t>(after - line_starts_.begin());
    return {line, offset - line_starts_[line - 1] + 1};
}

std::string Positions::rawValue(NodeIndex node) {
    if (offsets_.empty()) scan();
    std::string raw;
    int depth = 0;
    for (std::size_t at = offsets_[node]; at < text_.size();) {
        const char c = text_[at];
        if (isSpace(c)) {
            ++at;
            continue;
        }
        if (!isMark(c)) {
            const std::size_t end = scalarEnd(text_, at);
            raw += text_.substr(at, end - at);
            at = end;
        } else {
            raw += c;
            if (c == ',' || c == ':') raw += ' ';
            if (c == '{' || c == '[') ++depth;
            if (c == '}' || c == ']') --depth;
            ++at;
        }
        if (depth == 0) break;
    }
    return raw;
}

std::string pointerOf(const Tape& tape, NodeIndex node) {
    std::string pointer;
    NodeIndex at = 0;
    while (at != node) {
        const bool object = tape.nodes[at].kind == Kind::Object;
        const NodeIndex end = tape.nodes[at].end;
        std::size_t number = 0;
        NodeIndex child = at + 1;
        for (; child < end; ++number) {
            const NodeIndex value = object ? child + 1 : child;
            if (node < tape.nodes[value].end) break;
            child = tape.nodes[value].end;
        }
        if (child >= end) return pointer; // beyond what was read
        pointer += '/' + (object ? pointerPart(tape.text(child)) : std::to_string(number));
        if (node == child) return pointer;
        at = object ? child + 1 : child;
    }
    return pointer;
}

NodeIndex nodeAt(const Tape& tape, std::string_view pointer) {
    NodeIndex at = 0;
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const std::size_t slash = std::min(pointer.find('/'), pointer.size());
        const std::string part = unescaped(pointer.substr(0, slash));
        pointer.remove_prefix(slash);
        const bool object = tape.nodes[at].kind == Kind::Object;
        const NodeIndex next = object ? tape.member(at, part) : element(tape, at, part);
        if (next == 0) return at;
        at = next;
    }
    return at;
}

} // namespace gangway::plan::json
