// Tables as CSV by RFC 4180.
#include "export/files.hpp"
#include "export/tables.hpp"

#include <fmt/format.h>

namespace gangway::exporting {

namespace {

constexpr const char* kLineEnd = "\r\n"; // RFC 4180, 2.1

/// RFC 4180, 2.5 to 2.7.
std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + '"';
}

std::string field(const sheets::Cell& cell) {
    if (const double* value = std::get_if<double>(&cell)) return numberInFull(*value);
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? quoted(*text) : "";
}

/// "house.csv" for the first table, "house-boxes.csv" for the boxes.
std::filesystem::path fileOf(const std::filesystem::path& file, const std::string& key, bool first) {
    if (first) return file;
    std::filesystem::path named = file;
    named.replace_filename(fmt::format("{}-{}{}", file.stem().string(), key, file.extension().string()));
    return named;
}

} // namespace

std::string csv(const sheets::Table& table) {
    std::string out;
    const auto line = [&](std::size_t count, const auto& fieldAt) {
        for (std::size_t i = 0; i < count; ++i) {
            if (i > 0) out += ',';
            out += fieldAt(i);
        }
        out += kLineEnd;
    };
    line(table.columns.size(), [&](std::size_t i) { return quoted(sheets::headText(table.columns[i])); });
    for (const sheets::Row& row : table.rows)
        line(row.size(), [&](std::size_t i) { return field(row[i]); });
    return out;
}

std::expected<std::vector<std::filesystem::path>, std::string>
writeCsvs(std::span<const sheets::Table> tables, const std::filesystem::path& file) {
    std::vector<std::filesystem::path> files;
    for (const sheets::Table& table : tables) {
        files.push_back(fileOf(file, table.key, files.empty()));
        if (const auto written = writeFile(files.back(), csv(table)); !written)
            return std::unexpected(written.error());
    }
    return files;
}

} // namespace gangway::exporting
