#include "catalogue/read_object.hpp"

#include "plan/io.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gangway::catalogue::detail {
namespace {

constexpr double kMmPerInch = 25.4; // exact by definition (international yard and pound agreement, 1959)

std::string rangeText(Range range) {
    return fmt::format("a number from {} to {}", range.low, range.high);
}

bool within(double value, Range range) {
    return value >= range.low && value <= range.high;
}

} // namespace

std::string kindOf(const Json& value) {
    switch (value.type()) {
    case Json::value_t::null:
        return "null";
    case Json::value_t::object:
        return "an object";
    case Json::value_t::array:
        return "a list";
    case Json::value_t::string:
        return fmt::format("the text '{}'", value.get<std::string>());
    case Json::value_t::boolean:
        return value.get<bool>() ? "true" : "false";
    default:
        return value.dump();
    }
}

ObjectReader::ObjectReader(const Json& object, std::string pointer, Mistakes& mistakes)
    : object_(object), pointer_(std::move(pointer)), mistakes_(mistakes) {
    if (!object_.is_object())
        mistakes_.push_back({pointer_, fmt::format("expected an object, found {}", kindOf(object_))});
}

std::string ObjectReader::at(const std::string& key) const {
    return fmt::format("{}/{}", pointer_, key);
}

void ObjectReader::note(const std::string& key, const std::string& message) {
    mistakes_.push_back({at(key), message});
}

const Json& ObjectReader::object(const std::string& key) {
    static const Json kNone = Json::object();
    const Json* value = find(key);
    if (value != nullptr && value->is_object()) return *value;
    note(key, value == nullptr ? "missing; an object is needed"
                               : fmt::format("expected an object, found {}", kindOf(*value)));
    return kNone;
}

bool ObjectReader::has(const std::string& key) const {
    return object_.is_object() && object_.contains(key);
}

bool ObjectReader::hasOptional(const std::string& key) {
    asked_.push_back(key);
    return has(key);
}

const Json* ObjectReader::find(const std::string& key) {
    asked_.push_back(key);
    return has(key) ? &object_.at(key) : nullptr;
}

std::string ObjectReader::text(const std::string& key) {
    const Json* value = find(key);
    if (value && value->is_string() && !value->get_ref<const std::string&>().empty())
        return value->get<std::string>();
    note(key, value ? fmt::format("expected a text, found {}", kindOf(*value)) : "missing; a text is needed");
    return {};
}

std::string ObjectReader::text(const std::string& key, const std::string& fallback) {
    if (has(key)) return text(key);
    asked_.push_back(key);
    return fallback;
}

std::optional<double> ObjectReader::lengthOf(const Json& value) const {
    if (value.is_number()) return value.get<double>();
    if (value.is_object() && value.size() == 1 && value.contains("inch") && value.at("inch").is_number())
        return value.at("inch").get<double>() * kMmPerInch;
    return std::nullopt;
}

double ObjectReader::length(const std::string& key, Range range) {
    const Json* value = find(key);
    if (!value) {
        note(key, "missing; " + rangeText(range) + " is needed");
        return range.low;
    }
    const auto length = lengthOf(*value);
    if (length && within(*length, range)) return *length;
    note(key, fmt::format("expected {}, found {}", rangeText(range), kindOf(*value)));
    return range.low;
}

double ObjectReader::length(const std::string& key, Range range, double fallback) {
    if (has(key)) return length(key, range);
    asked_.push_back(key);
    return fallback;
}

std::optional<plan::Vec2> ObjectReader::pairOf(const Json& value, Range range) const {
    if (!value.is_array() || value.size() != 2) return std::nullopt;
    const auto x = lengthOf(value[0]);
    const auto y = lengthOf(value[1]);
    if (!x || !y || !within(*x, range) || !within(*y, range)) return std::nullopt;
    return plan::Vec2{*x, *y};
}

plan::Vec2 ObjectReader::lengths2(const std::string& key, Range range) {
    const Json* value = find(key);
    const auto pair = value ? pairOf(*value, range) : std::nullopt;
    if (pair) return *pair;
    note(key, fmt::format("expected two numbers from {} to {}, found {}", range.low, range.high,
                          value ? kindOf(*value) : "nothing"));
    return {range.low, range.low};
}

plan::Vec2 ObjectReader::lengths2(const std::string& key, Range range, plan::Vec2 fallback) {
    if (has(key)) return lengths2(key, range);
    asked_.push_back(key);
    return fallback;
}

std::vector<double> ObjectReader::lengthList(const std::string& key, Range range) {
    std::vector<double> lengths;
    const Json* list = array(key, Presence::Optional);
    for (std::size_t i = 0; list && i < list->size(); ++i) {
        const auto length = lengthOf((*list)[i]);
        if (length && within(*length, range))
            lengths.push_back(*length);
        else
            note(fmt::format("{}/{}", key, i),
                 fmt::format("expected {}, found {}", rangeText(range), kindOf((*list)[i])));
    }
    return lengths;
}

std::vector<plan::Vec2> ObjectReader::points(const std::string& key, Range range) {
    std::vector<plan::Vec2> points;
    const Json* list = array(key, Presence::Required);
    for (std::size_t i = 0; list && i < list->size(); ++i) {
        if (const auto point = pairOf((*list)[i], range))
            points.push_back(*point);
        else
            note(fmt::format("{}/{}", key, i),
                 "expected a point as two numbers, found " + kindOf((*list)[i]));
    }
    if (list && points.size() < 2) note(key, "a line needs at least two points");
    return points;
}

std::vector<std::string> ObjectReader::textList(const std::string& key) {
    std::vector<std::string> texts;
    const Json* list = array(key, Presence::Optional);
    for (std::size_t i = 0; list && i < list->size(); ++i) {
        const Json& item = (*list)[i];
        if (item.is_string() && !item.get_ref<const std::string&>().empty())
            texts.push_back(item.get<std::string>());
        else
            note(fmt::format("{}/{}", key, i), "expected a text, found " + kindOf(item));
    }
    return texts;
}

int ObjectReader::whole(const std::string& key, Range range, int fallback) {
    const Json* value = find(key);
    if (!value) return fallback;
    if (value->is_number_integer() && within(value->get<double>(), range)) return value->get<int>();
    note(key, fmt::format("expected a whole number from {} to {}, found {}", range.low, range.high,
                          kindOf(*value)));
    return fallback;
}

bool ObjectReader::flag(const std::string& key, bool fallback) {
    const Json* value = find(key);
    if (!value) return fallback;
    if (value->is_boolean()) return value->get<bool>();
    note(key, "expected true or false, found " + kindOf(*value));
    return fallback;
}

std::size_t ObjectReader::word(const std::string& key, const std::vector<std::string>& words) {
    const Json* value = find(key);
    if (value && value->is_string()) {
        const auto found = std::ranges::find(words, value->get_ref<const std::string&>());
        if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
    }
    note(key, fmt::format("expected one of {}, found {}", fmt::join(words, ", "),
                          value ? kindOf(*value) : "nothing"));
    return 0;
}

std::size_t ObjectReader::word(const std::string& key, const std::vector<std::string>& words,
                               std::size_t fallback) {
    if (has(key)) return word(key, words);
    asked_.push_back(key);
    return fallback;
}

const Json* ObjectReader::array(const std::string& key, Presence presence) {
    const Json* value = find(key);
    if (value && value->is_array()) return value;
    if (value)
        note(key, "expected a list, found " + kindOf(*value));
    else if (presence == Presence::Required)
        note(key, "missing; a list is needed");
    return nullptr;
}

std::string ObjectReader::sources(const std::vector<std::string>& keys) {
    const Json* sources = find("sources");
    if (!sources || !sources->is_object()) {
        note("sources", "missing; an object is needed that says for each number where it is from");
        return {};
    }
    ObjectReader reader(*sources, at("sources"), mistakes_);
    std::string joined;
    for (const std::string& key : keys) {
        if (!has(key) && !sources->contains(key)) continue;
        joined += fmt::format("{}{}: {}", joined.empty() ? "" : "; ", key, reader.text(key));
    }
    reader.finish();
    return joined;
}

void ObjectReader::finish() {
    if (!object_.is_object()) return;
    for (const auto& item : object_.items()) {
        if (std::ranges::find(asked_, item.key()) != asked_.end()) continue;
        const std::string nearest = plan::nearestWord(item.key(), asked_);
        note(item.key(), nearest.empty() ? "unknown key; remove it"
                                         : fmt::format("unknown key; did you mean '{}'?", nearest));
    }
}

} // namespace gangway::catalogue::detail
