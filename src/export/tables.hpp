// Tables out: CSV, XLSX, JSON. Same tables in, same bytes out.
#pragma once

#include "sheets/table.hpp"

#include <expected>
#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace gangway::exporting {

/// What a file of tables says beside them.
struct TablesAbout {
    std::string project;
    std::string number; ///< of the project
    std::string author;
    std::string date;    ///< YYYY-MM-DD; the workbook's creation date, never the clock
    std::string room;    ///< name; empty: the whole house
    std::string caution; ///< a sentence
};

/// A head line and a line a row by RFC 4180: UTF-8, CRLF, quotes where a comma, quote or line break asks for
/// them. Numbers in full; no totals, so that sums over a column are right.
std::string csv(const sheets::Table& table);

/// The first table into the file, the others beside it as "NAME-KEY.csv"; each written atomically. Returns
/// the files; the error is a sentence.
[[nodiscard]] std::expected<std::vector<std::filesystem::path>, std::string>
writeCsvs(std::span<const sheets::Table> tables, const std::filesystem::path& file);

/// A worksheet a table, to be printed on lying A4 one page wide under its head row: numbers as numbers with
/// a format, texts as texts (never formulas), totals as values, notes under them. Written atomically.
[[nodiscard]] std::expected<void, std::string>
writeXlsx(std::span<const sheets::Table> tables, const TablesAbout& about, const std::filesystem::path& file);

/// {"gangwaySchedule": 1, ..., "tables": [{"key", "title", "columns", "rows": [{column key: value}],
/// "totals", "notes"}]}; a cell with nothing in it is null.
std::string tablesJson(std::span<const sheets::Table> tables, const TablesAbout& about);

/// The same as a file, written atomically.
[[nodiscard]] std::expected<void, std::string> writeTablesJson(std::span<const sheets::Table> tables,
                                                               const TablesAbout& about,
                                                               const std::filesystem::path& file);

} // namespace gangway::exporting
