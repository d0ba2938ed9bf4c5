#include "edit/number_shown.hpp"

#include "edit/length_input.hpp"

#include <cmath>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

using plan::DisplayUnits;

constexpr double kInch_mm = 25.4; ///< the international inch, exact
constexpr double kStep_mm = 0.5;
constexpr long long kSixteenths = 16;

/// The small share lets 0.79375 mm, half of 1/16 in, be a half in binary too.
long long steps(double length_mm, double step_mm) {
    return static_cast<long long>(std::floor(std::abs(length_mm) / step_mm + 0.5 + 1e-9));
}

std::string metric(double length_mm, double unit_mm, std::size_t kept_decimals, int most_decimals) {
    const long long halves = steps(length_mm, kStep_mm);
    std::string text =
        fmt::format("{:.{}f}", static_cast<double>(halves) * kStep_mm / unit_mm, most_decimals);
    const std::size_t point = text.find('.');
    const std::size_t least = kept_decimals == 0 ? point : point + 1 + kept_decimals;
    while (text.size() > least && (text.back() == '0' || text.back() == '.'))
        text.pop_back();
    return length_mm < 0 && halves > 0 ? fmt::format("-{}", text) : text;
}

std::string fraction(long long sixteenths) {
    long long bottom = kSixteenths;
    for (; sixteenths % 2 == 0; sixteenths /= 2)
        bottom /= 2;
    return fmt::format("{}/{}", sixteenths, bottom);
}

std::string feetInches(double length_mm) {
    const long long all = steps(length_mm, kInch_mm / kSixteenths);
    const long long feet = all / (12 * kSixteenths);
    const long long inches = all / kSixteenths % 12;
    const long long rest = all % kSixteenths;
    std::string text = length_mm < 0 && all > 0 ? "-" : "";
    if (feet > 0) text += fmt::format("{}'-", feet);
    // Inches of zero are written after feet and in a bare zero, not before a fraction under one inch.
    if (feet > 0 || inches > 0 || rest == 0) text += fmt::format("{}{}", inches, rest > 0 ? " " : "");
    if (rest > 0) text += fraction(rest);
    text += '"';
    return text;
}

} // namespace

std::string shownLength(double length_mm, DisplayUnits units) {
    switch (units) {
    case DisplayUnits::Millimetres:
        return metric(length_mm, 1, 0, 1);
    case DisplayUnits::Centimetres:
        return metric(length_mm, 10, 0, 2);
    case DisplayUnits::Metres:
        return metric(length_mm, 1000, 3, 4);
    case DisplayUnits::FeetInches:
        return feetInches(length_mm);
    }
    return {};
}

std::string lengthInWords(double length_mm, DisplayUnits units) {
    const std::string number = shownLength(length_mm, units);
    switch (units) {
    case DisplayUnits::Millimetres:
        return fmt::format("{} mm", number);
    case DisplayUnits::Centimetres:
        return fmt::format("{} cm", number);
    case DisplayUnits::Metres:
        return fmt::format("{} m", number);
    case DisplayUnits::FeetInches:
        return number;
    }
    return number;
}

std::expected<double, std::string> parseLengthIn(std::string_view text, DisplayUnits units) {
    switch (units) {
    case DisplayUnits::Millimetres:
        return parseLength(text);
    case DisplayUnits::Centimetres:
        return parseLength(text, {10, false});
    case DisplayUnits::Metres:
        return parseLength(text, {1000, false});
    case DisplayUnits::FeetInches:
        return parseLength(text, {kInch_mm, true});
    }
    return parseLength(text);
}

} // namespace gangway::edit
