// Numbers to text and back: millimetres and their kin, feet and inches.
#include "drawing/dimensions.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

namespace gangway::drawing {

namespace {

constexpr double kInch_mm = 25.4; // the international inch, exact
constexpr double kSixteenth_mm = kInch_mm / 16;
constexpr double kStep_mm = 0.5;
constexpr long long kSixteenthsPerInch = 16;
constexpr long long kSixteenthsPerFoot = 12 * kSixteenthsPerInch;

// Half a step rounds away from zero; the small share lets 0.79375 mm, which is a half in decimal, be one in
// binary too.
long long steps(double size, double step) {
    return static_cast<long long>(std::floor(size / step + 0.5 + 1e-9));
}

std::string metric(double value_mm, double unit_mm, int kept_decimals, int most_decimals) {
    const long long halves = steps(std::abs(value_mm), kStep_mm);
    std::string text =
        fmt::format("{:.{}f}", static_cast<double>(halves) * kStep_mm / unit_mm, most_decimals);
    const std::size_t point = text.find('.');
    if (point != std::string::npos) {
        const std::size_t least =
            kept_decimals == 0 ? point : point + 1 + static_cast<std::size_t>(kept_decimals);
        while (text.size() > least && (text.back() == '0' || text.back() == '.'))
            text.pop_back();
    }
    return value_mm < 0 && halves > 0 ? fmt::format("-{}", text) : text;
}

std::string fraction(long long sixteenths) {
    long long top = sixteenths;
    long long bottom = kSixteenthsPerInch;
    while (top % 2 == 0) {
        top /= 2;
        bottom /= 2;
    }
    return fmt::format("{}/{}", top, bottom);
}

std::string feetInches(double value_mm) {
    const long long sixteenths = steps(std::abs(value_mm), kSixteenth_mm);
    const long long feet = sixteenths / kSixteenthsPerFoot;
    const long long inches = sixteenths % kSixteenthsPerFoot / kSixteenthsPerInch;
    const long long rest = sixteenths % kSixteenthsPerInch;
    std::string text = value_mm < 0 && sixteenths > 0 ? "-" : "";
    if (feet > 0) text += fmt::format("{}'-", feet);
    // Inches of zero are written after feet and in a bare zero, not before a fraction under one inch.
    const bool whole_inches = feet > 0 || inches > 0 || rest == 0;
    if (whole_inches) text += fmt::format("{}", inches);
    if (rest > 0) text += fmt::format("{}{}", whole_inches ? " " : "", fraction(rest));
    text += '"';
    return text;
}

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::optional<double> decimalNumber(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool plain = !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos;
    if (!plain || error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return value;
}

// "6", "6.5", "7/16" or "6 7/16".
std::optional<double> mixedNumber(std::string_view text) {
    text = trimmed(text);
    const std::size_t slash = text.find('/');
    if (slash == std::string_view::npos) return decimalNumber(text);
    const std::size_t space = text.substr(0, slash).find_last_of(' ');
    double whole = 0;
    std::size_t top_from = 0;
    if (space != std::string_view::npos && !trimmed(text.substr(0, space)).empty()) {
        const auto read = decimalNumber(trimmed(text.substr(0, space)));
        if (!read) return std::nullopt;
        whole = *read;
        top_from = space + 1;
    }
    const auto top = decimalNumber(trimmed(text.substr(top_from, slash - top_from)));
    const auto bottom = decimalNumber(trimmed(text.substr(slash + 1)));
    if (!top || !bottom || *bottom == 0) return std::nullopt;
    return whole + *top / *bottom;
}

// Feet and inches with at least one of the marks ' and ".
std::optional<double> feetInches_mm(std::string_view text) {
    double inches = 0;
    const std::size_t foot_mark = text.find('\'');
    std::string_view rest = text;
    if (foot_mark != std::string_view::npos) {
        const auto feet = decimalNumber(trimmed(text.substr(0, foot_mark)));
        if (!feet) return std::nullopt;
        inches = *feet * 12;
        rest = trimmed(text.substr(foot_mark + 1));
        if (rest.starts_with('-')) rest = trimmed(rest.substr(1));
        if (rest.empty()) return inches * kInch_mm;
    }
    if (rest.ends_with('"')) rest.remove_suffix(1);
    const auto more = mixedNumber(rest);
    if (!more) return std::nullopt;
    return (inches + *more) * kInch_mm;
}

double unit_mm(Units units) {
    switch (units) {
    case Units::Millimetres:
        return 1;
    case Units::Centimetres:
        return 10;
    case Units::Metres:
        return 1000;
    case Units::FeetInches:
        return kInch_mm;
    }
    return 1;
}

} // namespace

std::string number(double value_mm, Units units) {
    switch (units) {
    case Units::Millimetres:
        return metric(value_mm, 1, 0, 1);
    case Units::Centimetres:
        return metric(value_mm, 10, 0, 2);
    case Units::Metres:
        return metric(value_mm, 1000, 3, 4);
    case Units::FeetInches:
        return feetInches(value_mm);
    }
    return {};
}

std::expected<double, std::string> parseNumber(std::string_view text, Units bare) {
    std::string_view body = trimmed(text);
    const bool negative = body.starts_with('-');
    if (negative) body = trimmed(body.substr(1));
    const bool marked = body.find_first_of("'\"") != std::string_view::npos;
    std::optional<double> value = marked ? feetInches_mm(body) : std::nullopt;
    if (!marked) {
        const auto plain = bare == Units::FeetInches ? mixedNumber(body) : decimalNumber(body);
        if (plain) value = *plain * unit_mm(bare);
    }
    if (!value)
        return std::unexpected(
            fmt::format("'{}' is not a length; write for example 1073, 801.5 or 5'-6 7/16\"", text));
    return negative ? -*value : *value;
}

} // namespace gangway::drawing
