// Tables as JSON for programs.
#include "export/files.hpp"
#include "export/tables.hpp"

#include <cmath>

#include <nlohmann/json.hpp>

namespace gangway::exporting {

namespace {

using Json = nlohmann::ordered_json;

/// Whole numbers without a fraction: 5780, not 5780.0.
Json valueOf(const sheets::Cell& cell) {
    if (const auto* text = std::get_if<std::string>(&cell)) return *text;
    const double* value = std::get_if<double>(&cell);
    if (value == nullptr) return nullptr;
    const double tidy = tidied(*value);
    constexpr double kExact = 9007199254740992.0; // 2^53
    if (tidy == std::trunc(tidy) && std::abs(tidy) < kExact) return static_cast<std::int64_t>(tidy);
    return tidy;
}

Json columnOf(const sheets::Column& column) {
    const bool number = column.kind == sheets::Column::Kind::Number;
    return {{"key", column.key},
            {"title", column.title},
            {"unit", column.unit},
            {"kind", number ? "number" : "text"}};
}

Json tableOf(const sheets::Table& table) {
    Json columns = Json::array();
    for (const sheets::Column& column : table.columns)
        columns.push_back(columnOf(column));
    Json rows = Json::array();
    for (const sheets::Row& row : table.rows) {
        Json entry = Json::object();
        for (std::size_t i = 0; i < row.size(); ++i)
            entry[table.columns[i].key] = valueOf(row[i]);
        rows.push_back(std::move(entry));
    }
    Json totals = Json::object();
    const sheets::Row sums = sheets::totalsOf(table);
    for (std::size_t i = 0; i < sums.size(); ++i)
        if (table.columns[i].total) totals[table.columns[i].key] = valueOf(sums[i]);
    return {{"key", table.key}, {"title", table.title},        {"columns", std::move(columns)},
            {"rows", rows},     {"totals", std::move(totals)}, {"notes", table.notes}};
}

} // namespace

std::string tablesJson(std::span<const sheets::Table> tables, const TablesAbout& about) {
    Json list = Json::array();
    for (const sheets::Table& table : tables)
        list.push_back(tableOf(table));
    const Json report = {{"gangwaySchedule", 1},     {"project", about.project}, {"number", about.number},
                         {"date", about.date},       {"room", about.room},       {"lengths", "mm"},
                         {"caution", about.caution}, {"tables", std::move(list)}};
    return report.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::expected<void, std::string> writeTablesJson(std::span<const sheets::Table> tables,
                                                 const TablesAbout& about,
                                                 const std::filesystem::path& file) {
    return writeFile(file, tablesJson(tables, about));
}

} // namespace gangway::exporting
