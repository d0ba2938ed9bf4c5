// Reading one JSON object of a data file key by key, noting every mistake with its place in the document.
#pragma once

#include "plan/vec.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

namespace gangway::catalogue::detail {

using Json = nlohmann::json;

struct Mistake {
    std::string pointer; ///< JSON pointer (RFC 6901) of the value, or of the one that is missing
    std::string message;
};
/// Mistakes of one file found so far.
using Mistakes = std::vector<Mistake>;

struct Range {
    double low = 0;
    double high = 1000;
};

/// Takes keys out of one object. A missing or wrong value is noted and replaced by the fallback, so that
/// all mistakes of a file are found in one go; finish() notes keys that nobody asked for.
class ObjectReader {
public:
    ObjectReader(const Json& object, std::string pointer, Mistakes& mistakes);

    bool has(const std::string& key) const;
    /// The same of a key that may be left out, which a mistyped one is then compared with.
    bool hasOptional(const std::string& key);
    /// The object under a key, for a reader of its own; an empty one, noted, when it is missing or no object.
    const Json& object(const std::string& key);
    std::string text(const std::string& key);
    std::string text(const std::string& key, const std::string& fallback);
    /// A number of mm, or { "inch": n } for sources that are in inches (x 25.4 exactly).
    double length(const std::string& key, Range range);
    double length(const std::string& key, Range range, double fallback);
    plan::Vec2 lengths2(const std::string& key, Range range);
    plan::Vec2 lengths2(const std::string& key, Range range, plan::Vec2 fallback);
    std::vector<double> lengthList(const std::string& key, Range range);
    std::vector<plan::Vec2> points(const std::string& key, Range range);
    int whole(const std::string& key, Range range, int fallback);
    bool flag(const std::string& key, bool fallback);
    /// Index of the word in `words`; the first one's after a mistake.
    std::size_t word(const std::string& key, const std::vector<std::string>& words);
    std::size_t word(const std::string& key, const std::vector<std::string>& words, std::size_t fallback);
    /// Array under a key; nullptr when it is missing (a mistake only if `required`) or no array.
    enum class Presence { Required, Optional };
    const Json* array(const std::string& key, Presence presence);
    /// A list of texts that are not empty; none when the key is missing.
    std::vector<std::string> textList(const std::string& key);
    /// Wants `sources` to be an object with a text for each of `keys` that is present, and returns them
    /// joined as "key: text; key: text".
    std::string sources(const std::vector<std::string>& keys);

    void note(const std::string& key, const std::string& message);
    /// JSON pointer of a key's value.
    std::string at(const std::string& key) const;
    void finish();

private:
    const Json* find(const std::string& key);
    std::optional<double> lengthOf(const Json& value) const;
    std::optional<plan::Vec2> pairOf(const Json& value, Range range) const;

    const Json& object_;
    std::string pointer_;
    Mistakes& mistakes_;
    std::vector<std::string> asked_;
};

/// "a number", "a list" ...: what a JSON value is, for messages.
std::string kindOf(const Json& value);

} // namespace gangway::catalogue::detail
