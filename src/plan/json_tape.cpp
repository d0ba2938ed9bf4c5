#include "plan/json_tape.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <functional>

namespace gangway::plan::json {

namespace {

/// Receives the library's parse events and appends nodes.
class TapeBuilder {
public:
    explicit TapeBuilder(ParseOutcome& out) : out_(out) {}

    bool null() { return add(Kind::Null); }
    bool boolean(bool value) { return add(value ? Kind::True : Kind::False); }
    bool number_integer(std::int64_t value) { return addNumber(static_cast<double>(value)); }
    bool number_unsigned(std::uint64_t value) { return addNumber(static_cast<double>(value)); }
    bool number_float(double value, const std::string&) { return addNumber(value); }
    bool string(std::string& value) { return addText(value); }
    bool binary(nlohmann::json::binary_t&) { return false; } // never called for text
    bool start_object(std::size_t) { return open(Kind::Object); }
    bool start_array(std::size_t) { return open(Kind::Array); }
    bool key(std::string& value) {
        --open_.back().surplus; // a key is no element of its own
        keys_.push_back({std::hash<std::string>{}(value), static_cast<NodeIndex>(out_.tape.nodes.size())});
        return addText(value);
    }
    bool end_object() {
        findRepeated(open_.back().first_key);
        keys_.resize(open_.back().first_key);
        return close();
    }
    bool end_array() { return close(); }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error) {
        constexpr int kNumberOverflow = 406;
        overflow_ = error.id == kNumberOverflow;
        out_.stop = ParseOutcome::Stop::Syntax;
        out_.offset = position;
        return false;
    }
    bool stoppedByOverflow() const { return overflow_; }

private:
    struct Open {
        NodeIndex node = 0;
        std::int64_t surplus = 0; ///< minus the number of keys
        std::size_t first_key = 0;
        std::uint32_t children = 0;
    };
    struct Key {
        std::size_t hash = 0;
        NodeIndex node = 0;
    };

    bool add(Kind kind) {
        auto& nodes = out_.tape.nodes;
        if (nodes.size() >= kMaxNodes) {
            out_.stop = ParseOutcome::Stop::TooMuch;
            return false;
        }
        if (!open_.empty()) ++open_.back().children;
        Node node;
        node.kind = kind;
        node.end = static_cast<NodeIndex>(nodes.size() + 1);
        nodes.push_back(node);
        return true;
    }
    bool addNumber(double value) {
        if (!add(Kind::Number)) return false;
        out_.tape.nodes.back().number = value;
        return true;
    }
    bool addText(const std::string& value) {
        if (!add(Kind::Text)) return false;
        Node& node = out_.tape.nodes.back();
        node.offset = static_cast<std::uint32_t>(out_.tape.letters.size());
        node.length = static_cast<std::uint32_t>(value.size());
        out_.tape.letters += value;
        return true;
    }
    bool open(Kind kind) {
        if (!add(kind)) return false;
        if (open_.size() >= kMaxDepth) {
            out_.stop = ParseOutcome::Stop::TooDeep;
            return false;
        }
        open_.push_back({static_cast<NodeIndex>(out_.tape.nodes.size() - 1), 0, keys_.size(), 0});
        return true;
    }
    bool close() {
        auto& nodes = out_.tape.nodes;
        const Open& open = open_.back();
        nodes[open.node].end = static_cast<NodeIndex>(nodes.size());
        nodes[open.node].length = static_cast<std::uint32_t>(open.children + open.surplus);
        open_.pop_back();
        return true;
    }

    void findRepeated(std::size_t first) {
        const auto begin = keys_.begin() + static_cast<std::ptrdiff_t>(first);
        constexpr std::ptrdiff_t kFew = 16; // up to here comparing all pairs beats sorting
        if (keys_.end() - begin <= kFew) {
            for (auto a = begin; a != keys_.end(); ++a)
                for (auto b = begin; b != a; ++b)
                    if (same(*a, *b)) {
                        out_.repeated_keys.push_back(a->node);
                        break;
                    }
            return;
        }
        std::sort(begin, keys_.end(), [](const Key& a, const Key& b) {
            return a.hash != b.hash ? a.hash < b.hash : a.node < b.node;
        });
        for (auto a = begin; a != keys_.end(); ++a)
            if (a != begin && same(*a, *(a - 1))) out_.repeated_keys.push_back(a->node);
    }
    bool same(const Key& a, const Key& b) const {
        return a.hash == b.hash && out_.tape.text(a.node) == out_.tape.text(b.node);
    }

    ParseOutcome& out_;
    std::vector<Open> open_;
    std::vector<Key> keys_; ///< keys of all open objects
    bool overflow_ = false;
};

/// Overwrites the number that ends at `end` by a zero and spaces, so that no other byte moves.
bool blankNumber(std::string& text, std::size_t end) {
    const auto part = [](char c) {
        return (c >= '0' && c <= '9') || c == '.' || c == 'e' || c == 'E' || c == '+' || c == '-';
    };
    std::size_t last = std::min(end, text.size());
    while (last > 0 && !part(text[last - 1]))
        --last;
    std::size_t first = last;
    while (first > 0 && part(text[first - 1]))
        --first;
    if (first == last) return false;
    std::fill(text.begin() + static_cast<std::ptrdiff_t>(first),
              text.begin() + static_cast<std::ptrdiff_t>(last), ' ');
    text[first] = '0';
    return true;
}

} // namespace

ParseOutcome parse(std::string_view text) {
    std::vector<NodeIndex> overflowing;
    std::string patched; // a copy is made only when a number overflows
    for (;;) {
        ParseOutcome out;
        out.tape.nodes.reserve(std::min(text.size() / 12, kMaxNodes));
        out.tape.letters.reserve(text.size() / 2);
        TapeBuilder builder(out);
        // The library catches its own exceptions here; only running out of memory could leave.
        nlohmann::json::sax_parse(text.data(), text.data() + text.size(), &builder);
        constexpr std::size_t kPatience = 100; // numbers blanked out before giving up
        if (!builder.stoppedByOverflow() || overflowing.size() >= kPatience) {
            out.overflowing = std::move(overflowing);
            return out;
        }
        overflowing.push_back(static_cast<NodeIndex>(out.tape.nodes.size()));
        if (patched.empty()) patched = text;
        if (!blankNumber(patched, out.offset)) return out;
        text = patched;
    }
}

NodeIndex Tape::member(NodeIndex object, std::string_view key) const {
    if (nodes[object].kind != Kind::Object) return 0;
    for (NodeIndex at = object + 1; at < nodes[object].end; at = nodes[at + 1].end)
        if (text(at) == key) return at + 1;
    return 0;
}

std::string_view kindWord(Kind kind) {
    switch (kind) {
    case Kind::Object:
        return "an object";
    case Kind::Array:
        return "a list";
    case Kind::Text:
        return "a text";
    case Kind::Number:
        return "a number";
    case Kind::True:
        return "true";
    case Kind::False:
        return "false";
    case Kind::Null:
        return "null";
    }
    return "nothing";
}

} // namespace gangway::plan::json
