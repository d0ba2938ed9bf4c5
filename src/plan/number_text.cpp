#include "plan/number_text.hpp"

#include <charconv>
#include <cmath>

namespace gangway::plan {

std::string numberText(double value) {
    if (!std::isfinite(value)) return "null";
    if (value == 0) return "0"; // -0 too
    char buffer[1100];          // 1.8e308 has 309 digits, 4.9e-324 has 1076 characters
    const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed);
    return error == std::errc{} ? std::string(buffer, end) : "null";
}

std::string shownNumber(double value) {
    constexpr double kNoTenths = 1e15; // from here on a double holds none, and ten times it may overflow
    return numberText(std::abs(value) < kNoTenths ? std::round(value * 10) / 10 : value);
}

} // namespace gangway::plan
