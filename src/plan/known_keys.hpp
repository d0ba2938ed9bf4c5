// The keys each type of a plan file knows, from the descriptions in fields.hpp: for the nearest known
// key in warnings and for the test that holds the JSON schema against the reader. Private to src/plan.
#pragma once

#include "plan/fields.hpp"

#include <string>
#include <vector>

namespace gangway::plan {

struct KnownKey {
    std::string key;
    bool required = false;          ///< whatever else the object holds
    std::vector<std::string> words; ///< allowed words, empty when any value goes
};

/// Visitor that lists keys.
class KeyLister {
public:
    static constexpr bool kFills = true;
    std::vector<KnownKey> keys;

    void text(const char* key, std::string&, std::optional<std::string_view> fallback) {
        add(key, !fallback);
    }
    void id(const char* key, std::string&) { add(key, true); }
    void wallId(const char* key, std::string&) { add(key, false); }
    void colour(const char* key, std::string&) { add(key, false); }
    void number(const char* key, double&, const fields::Range&, std::optional<double> fallback) {
        add(key, !fallback);
    }
    void maybe(const char* key, std::optional<double>&, const fields::Range&, bool required = false) {
        add(key, required);
    }
    void integer(const char* key, int&, const fields::Range&, int) { add(key, false); }
    void flag(const char* key, bool&) { add(key, false); }
    template <class E, std::size_t N>
    void word(const char* key, E&, const std::array<words::Word<E>, N>& known,
              std::optional<std::type_identity_t<E>> fallback) {
        add(key, !fallback);
        for (const auto& word : known)
            keys.back().words.emplace_back(word.text);
    }
    template <std::size_t N>
    void wordText(const char* key, std::string&, const std::array<std::string_view, N>& known) {
        add(key, false);
        keys.back().words.assign(known.begin(), known.end());
    }
    void pair(const char* key, double&, double&, const fields::Range&) { add(key, false); }
    void point(const char* key, Vec2&) { add(key, true); }
    void point3(const char* key, Vec3&) { add(key, true); }
    void size(const char* key, Size3&, const std::optional<Size3>&) { add(key, false); }
    void values(const char* key, std::vector<std::pair<std::string, double>>&) { add(key, false); }
    void numbers(const char* key, std::vector<double>&, const fields::Range&, std::size_t) { add(key, true); }
    void texts(const char* key, std::vector<std::string>&) { add(key, false); }
    void polygon(const char* key, std::vector<Vec2>&) { add(key, true); }
    void polygons(const char* key, std::vector<std::vector<Vec2>>&) { add(key, false); }
    void cornerPairs(const char* key, std::vector<std::pair<int, int>>&) { add(key, false); }
    template <class T>
    void maybeObject(const char* key, std::optional<T>&) {
        add(key, false);
    }
    void maybePoint(const char* key, std::optional<Vec2>&) { add(key, false); }
    void framing(const char* key, std::optional<Framing>&, fields::FramingUse) { add(key, false); }
    void ceiling(const char* key, Ceiling&) { add(key, false); }
    void modules(const char* key, std::vector<Module>&) { add(key, false); }
    void host(Host&);
    void format(const char* key, int&) { add(key, true); }
    template <class T>
    void objects(const char* key, std::vector<T>&) {
        add(key, false);
    }
    template <class T>
    void group(const char* key, T&) {
        add(key, false);
    }
    void unknown(UnknownKeys&) {}
    std::string_view storeyFormat(const std::string&) const { return {}; }

private:
    void add(const char* key, bool required) { keys.push_back({key, required, {}}); }
};

template <class T>
std::vector<KnownKey> knownKeys() {
    KeyLister lister;
    T value;
    fields::describe(lister, value);
    return lister.keys;
}
std::vector<KnownKey> knownFramingKeys(fields::FramingUse use);

/// All types under the names the JSON schema gives them.
std::vector<std::pair<std::string, std::vector<KnownKey>>> allKnownKeys();

} // namespace gangway::plan
