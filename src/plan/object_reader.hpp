// Visitor of fields.hpp that fills one object of the plan from one object of the tape and notes every
// problem on the way. Private to src/plan.
#pragma once

#include "plan/fields.hpp"
#include "plan/known_keys.hpp"
#include "plan/problems.hpp"

#include <initializer_list>
#include <span>
#include <unordered_map>

namespace gangway::plan {

/// What all readers of one file share.
struct ReadContext {
    const json::Tape& tape;
    json::Positions& positions;
    Problems& problems;
    const Plan* plan = nullptr;                                            ///< being filled
    std::unordered_map<std::string_view, std::string_view> format_of_room; ///< made when first needed
    struct Member {
        json::NodeIndex key = 0;
        bool used = false;
    };
    std::vector<Member> members; ///< of all objects being read, innermost last
};

class ObjectReader {
public:
    static constexpr bool kFills = true;
    using NodeIndex = json::NodeIndex;

    ObjectReader(ReadContext& context, NodeIndex object);
    ~ObjectReader() { context_.members.resize(first_); }
    ObjectReader(const ObjectReader&) = delete;
    ObjectReader& operator=(const ObjectReader&) = delete;

    void text(const char* key, std::string& value, std::optional<std::string_view> fallback);
    void id(const char* key, std::string& value);
    void wallId(const char* key, std::string& value);
    void colour(const char* key, std::string& value);
    void number(const char* key, double& value, const fields::Range& range, std::optional<double> fallback);
    void maybe(const char* key, std::optional<double>& value, const fields::Range& range,
               bool required = false);
    void integer(const char* key, int& value, const fields::Range& range, int fallback);
    void flag(const char* key, bool& value);
    void pair(const char* key, double& first, double& second, const fields::Range& range);
    void point(const char* key, Vec2& value);
    void point3(const char* key, Vec3& value);
    void maybePoint(const char* key, std::optional<Vec2>& value);
    void size(const char* key, Size3& value, const std::optional<Size3>& fallback);
    void values(const char* key, std::vector<std::pair<std::string, double>>& list);
    void numbers(const char* key, std::vector<double>& list, const fields::Range& range, std::size_t most);
    void texts(const char* key, std::vector<std::string>& list);
    void polygon(const char* key, std::vector<Vec2>& outline);
    void polygons(const char* key, std::vector<std::vector<Vec2>>& list);
    void cornerPairs(const char* key, std::vector<std::pair<int, int>>& list);
    void framing(const char* key, std::optional<Framing>& value, fields::FramingUse use);
    void ceiling(const char* key, Ceiling& value);
    void modules(const char* key, std::vector<Module>& list);
    void host(Host& value);
    void format(const char* key, int& value);
    void unknown(UnknownKeys& keys) { unknown_ = &keys; }
    std::string_view storeyFormat(const std::string& room);

    template <class E, std::size_t N>
    void word(const char* key, E& value, const std::array<words::Word<E>, N>& known,
              std::optional<std::type_identity_t<E>> fallback) {
        std::array<std::string_view, N> texts;
        for (std::size_t i = 0; i < N; ++i)
            texts[i] = known[i].text;
        if (const auto index = wordIndex(key, texts, fallback ? Absence::NoKey : Absence::Never))
            value = known[*index].value;
        else if (fallback)
            value = *fallback;
    }
    template <std::size_t N>
    void wordText(const char* key, std::string& value, const std::array<std::string_view, N>& known) {
        if (const auto index = wordIndex(key, known, Absence::EmptyText)) value = known[*index];
    }
    template <class T>
    void objects(const char* key, std::vector<T>& list) {
        const NodeIndex node = listOf(key, fields::kMaxList);
        if (node == 0) return;
        list.reserve(context_.tape.nodes[node].length);
        for (NodeIndex at = node + 1; at < context_.tape.nodes[node].end; at = context_.tape.nodes[at].end)
            readObject(context_, at, list.emplace_back());
    }
    template <class T>
    void group(const char* key, T& value) {
        if (const NodeIndex node = find(key)) readObject(context_, node, value);
    }

    template <class T>
    void maybeObject(const char* key, std::optional<T>& value) {
        if (const NodeIndex node = find(key)) readObject(context_, node, value.emplace());
    }

    /// Reads `value` from a node that should be an object; other nodes are a problem.
    template <class T>
    static void readObject(ReadContext& context, NodeIndex node, T& value) {
        if (!isObject(context, node)) return;
        ObjectReader reader(context, node);
        fields::describe(reader, value);
        if (reader.hasUnused()) reader.keepUnused(knownKeys<T>());
    }

private:
    static bool isObject(ReadContext& context, NodeIndex node);
    /// The value of a key, 0 when it is missing.
    NodeIndex find(std::string_view key);
    /// The same, and a problem when it is missing.
    NodeIndex findRequired(const char* key, std::string_view what);
    /// The list under a key; 0, with a problem noted, when there is none or it is too long.
    NodeIndex listOf(const char* key, std::size_t most, bool required = false);
    /// How a choice may be left open: never, by leaving the key out, or by an empty text too.
    enum class Absence { Never, NoKey, EmptyText };
    std::optional<std::size_t> wordIndex(const char* key, std::span<const std::string_view> known,
                                         Absence absence);
    bool textAt(NodeIndex node, std::string_view key, std::string& value);
    bool numberAt(NodeIndex node, std::string_view key, const fields::Range& range, double& value);
    /// Reads a list of exactly as many numbers as `values` has; `shape` says what is wanted: "[x, y]".
    bool numbersAt(NodeIndex node, std::string_view key, const fields::Range& range,
                   std::initializer_list<double*> values, std::string_view shape);
    void outlineAt(NodeIndex list, std::string_view key, std::vector<Vec2>& outline);
    /// Reads u and v of a host; the two keys that belong to other hosts must not be there.
    struct HostKeys {
        NodeIndex set_out, height, east, north;
    };
    void coordinates(Host& value, const HostKeys& keys, bool upright, std::string_view host_name);
    std::size_t hostKind(Host& value, std::span<const NodeIndex, 4> given);
    bool hasUnused() const;
    void keepUnused(const std::vector<KnownKey>& known);

    ReadContext& context_;
    const json::Tape& tape_;
    NodeIndex object_;
    std::size_t first_; ///< our members in context_.members begin here
    std::size_t count_ = 0;
    std::size_t cursor_ = 0; ///< where the next key is expected: files mostly keep the written order
    UnknownKeys* unknown_ = nullptr;
};

} // namespace gangway::plan
