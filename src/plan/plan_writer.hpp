// Visitor of fields.hpp that writes a plan as text. Private to src/plan.
#pragma once

#include "plan/fields.hpp"
#include "plan/json_text.hpp"
#include "plan/number_text.hpp"

#include <fmt/format.h>

#include <map>

namespace gangway::plan {

class PlanWriter {
public:
    static constexpr bool kFills = false;
    using Shape = JsonText::Shape;

    explicit PlanWriter(const Plan& plan);

    void write(const Plan& plan) {
        json_.container('{', Shape::Lines, [&] { fields::describe(*this, plan); });
    }
    std::string take() && { return std::move(json_).take() + '\n'; }
    /// Key of the first number that JSON cannot hold (NaN, infinity) and was written as null; empty for none.
    const std::string& lostNumber() const { return lost_number_; }

    void text(const char* key, const std::string& value, std::optional<std::string_view> fallback) {
        if (!fallback || *fallback != value) pair(key, [&] { json_.text(value); });
    }
    void id(const char* key, const std::string& value) { text(key, value, std::nullopt); }
    void wallId(const char* key, const std::string& value) { text(key, value, std::nullopt); }
    void colour(const char* key, const std::string& value) { text(key, value, ""); }
    template <std::size_t N>
    void wordText(const char* key, const std::string& value, const std::array<std::string_view, N>&) {
        text(key, value, "");
    }
    void number(const char* key, double value, const fields::Range&, std::optional<double> fallback) {
        if (!fallback || *fallback != value) pair(key, [&] { figure(value); });
    }
    void maybe(const char* key, const std::optional<double>& value, const fields::Range&, bool = false) {
        if (value) pair(key, [&] { figure(*value); });
    }
    void integer(const char* key, int value, const fields::Range&, int fallback) {
        if (value != fallback) pair(key, [&] { json_.value(std::to_string(value)); });
    }
    void flag(const char* key, bool value) {
        if (value) pair(key, [&] { json_.value("true"); });
    }
    template <class E, std::size_t N>
    void word(const char* key, E value, const std::array<words::Word<E>, N>& known,
              std::optional<std::type_identity_t<E>> fallback) {
        if (fallback && *fallback == value) return;
        for (const auto& entry : known)
            if (entry.value == value) pair(key, [&] { json_.text(entry.text); });
    }
    void pair(const char* key, double first, double second, const fields::Range&) {
        if (first != 0 || second != 0) pair(key, [&] { list({first, second}); });
    }
    void point(const char* key, Vec2 value) {
        pair(key, [&] { list({value.x, value.y}); });
    }
    void point3(const char* key, Vec3 value) {
        pair(key, [&] { list({value.x, value.y, value.z}); });
    }
    void maybePoint(const char* key, const std::optional<Vec2>& value) {
        if (value) point(key, *value);
    }
    void size(const char* key, const Size3& value, const std::optional<Size3>& fallback);
    void values(const char* key, const std::vector<std::pair<std::string, double>>& list);
    void numbers(const char* key, const std::vector<double>& list, const fields::Range&, std::size_t);
    void texts(const char* key, const std::vector<std::string>& list);
    void polygon(const char* key, const std::vector<Vec2>& outline);
    void polygons(const char* key, const std::vector<std::vector<Vec2>>& list);
    void cornerPairs(const char* key, const std::vector<std::pair<int, int>>& list);
    void framing(const char* key, const std::optional<Framing>& value, fields::FramingUse use);
    void ceiling(const char* key, const Ceiling& value);
    void modules(const char* key, const std::vector<Module>& list);
    void host(const Host& value);
    void format(const char* key, int value) {
        pair(key, [&] { json_.value(std::to_string(value)); });
    }
    void unknown(const UnknownKeys& keys);
    std::string_view storeyFormat(const std::string& room) const;

    template <class T>
    void objects(const char* key, const std::vector<T>& list) {
        if (list.empty()) return;
        pair(key, [&] {
            constexpr bool kShort = std::is_same_v<T, Course> || std::is_same_v<T, WayRef>;
            json_.container('[', kShort ? Shape::SmallIfItFits : Shape::Lines, [&] {
                for (std::size_t i = 0; i < list.size(); ++i) {
                    const bool good_so_far = lost_number_.empty();
                    object(list[i]);
                    if (good_so_far && !lost_number_.empty())
                        lost_number_ = fmt::format("/{}/{}{}", key, i, lost_number_);
                }
            });
        });
    }
    template <class T>
    void group(const char* key, const T& value) {
        if (!isDefault(value)) pair(key, [&] { object(value); });
    }
    template <class T>
    void maybeObject(const char* key, const std::optional<T>& value) {
        if (value) pair(key, [&] { object(*value); });
    }

private:
    /// What a reader looks for in the file has lines of its own, so that a change shows as one line.
    template <class T>
    static constexpr Shape kShape =
        std::is_same_v<T, IssuedPlate> || std::is_same_v<T, IssuedLuminaire> || std::is_same_v<T, IssuedSheet>
            ? Shape::OneLine
        : std::is_same_v<T, Course> || std::is_same_v<T, Layer> || std::is_same_v<T, WallLine> ||
                std::is_same_v<T, Wall> || std::is_same_v<T, Module> || std::is_same_v<T, WayRef> ||
                std::is_same_v<T, SiteTolerance> || std::is_same_v<T, KeptDistance> ||
                std::is_same_v<T, Ceiling> || std::is_same_v<T, Storey>
            ? Shape::SmallIfItFits
            : Shape::Lines;

    template <class T>
    void object(const T& value) {
        json_.container('{', kShape<T>, [&] { fields::describe(*this, value); });
    }
    template <class Write>
    void pair(const char* key, Write write_value) {
        json_.key(key);
        last_key_ = key;
        write_value();
    }
    void list(std::initializer_list<double> numbers);
    void figure(double value);
    static bool isDefault(const SiteTolerance& value) { return value == SiteTolerance{}; }
    static bool isDefault(const Project& value);

    JsonText json_;
    std::string_view last_key_;
    std::string lost_number_;
    std::map<std::string_view, std::string_view> format_of_room_;
};

} // namespace gangway::plan
