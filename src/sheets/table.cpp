#include "sheets/table.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

/// Sums of watts such as 0.1 + 0.2 are read as they were meant.
constexpr double kTidy = 1e6;

bool isShown(double value, int decimals) {
    const double scaled = value * std::pow(10.0, decimals);
    return std::abs(scaled - std::round(scaled)) < 1e-6;
}

double sumOf(const Table& table, std::size_t column) {
    double sum = 0;
    for (const Row& row : table.rows)
        if (const double* value = std::get_if<double>(&row[column])) sum += *value;
    return std::round(sum * kTidy) / kTidy;
}

} // namespace

Row totalsOf(const Table& table) {
    const bool some = std::ranges::any_of(table.columns, [](const Column& column) { return column.total; });
    if (!some || table.rows.empty()) return {};
    Row row(table.columns.size());
    row.front() = "together";
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].total) row[i] = sumOf(table, i);
    return row;
}

int decimalsOf(double value, int most) {
    int decimals = 0;
    while (decimals < most && !isShown(value, decimals))
        ++decimals;
    // 2.9999 at two decimals is printed 3.00, and says no more than 3.
    const double scale = std::pow(10.0, decimals);
    const double printed = std::round(value * scale) / scale;
    while (decimals > 0 && isShown(printed, decimals - 1))
        --decimals;
    return decimals;
}

int decimalsShown(const Table& table, std::size_t column) {
    int decimals = 0;
    const auto raise = [&](double value) {
        decimals = std::max(decimals, decimalsOf(value, table.columns[column].decimals));
    };
    for (const Row& row : table.rows)
        if (const double* value = std::get_if<double>(&row[column])) raise(*value);
    if (table.columns[column].total) raise(sumOf(table, column));
    return decimals;
}

std::string cellText(const Cell& cell, int decimals) {
    if (const auto* text = std::get_if<std::string>(&cell)) return *text;
    if (const double* value = std::get_if<double>(&cell)) {
        // Halves round away from zero, as dimensions do; no "-0".
        const double scale = std::pow(10.0, decimals);
        const double rounded = std::round(*value * scale) / scale;
        return fmt::format("{:.{}f}", rounded == 0 ? 0.0 : rounded, decimals);
    }
    return {};
}

std::string headText(const Column& column) {
    return column.unit.empty() ? column.title : fmt::format("{}, {}", column.title, column.unit);
}

} // namespace gangway::sheets
