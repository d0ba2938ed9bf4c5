// Tables as CSV, XLSX and JSON: quoting, numbers, and the same bytes twice. schedule_check.py reads the
// workbook with a library that did not write it.
#include "export/tables.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <limits>

using namespace gangway;
using gangway::testing::slurp;

namespace {

sheets::Column number(const std::string& key, const std::string& unit, int decimals) {
    sheets::Column column;
    column.key = key;
    column.title = key;
    column.unit = unit;
    column.kind = sheets::Column::Kind::Number;
    column.decimals = decimals;
    return column;
}

sheets::Column text(const std::string& key) {
    sheets::Column column;
    column.key = key;
    column.title = key;
    return column;
}

sheets::Table sample() {
    sheets::Table table{"sample", "Sample", {text("name"), number("setOut", "mm", 1), number("count", "", 0)},
                        {},       {},       {"A note."}};
    table.columns[2].total = true;
    table.rows = {{std::string("plain"), 5780.0, 2.0},
                  {std::string("a \"b\", c\r\nd"), 1234.25, 0.1 + 0.2},
                  {std::string("=1+1"), std::monostate{}, 1e-9}};
    return table;
}

const exporting::TablesAbout kAbout{"House & sons", "GW-1", "N. N.", "2026-01-31", "", "A caution. Mind it."};

std::vector<std::string> filesIn(const std::filesystem::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

} // namespace

TEST_CASE("CSV follows RFC 4180") {
    // RFC 4180 section 2: CRLF after each line (1), a header line (3), no spaces added (4), quotes round
    // fields with commas, quotes or line breaks (6), quotes doubled (7).
    CHECK(exporting::csv(sample()) == "name,\"setOut, mm\",count\r\n"
                                      "plain,5780,2\r\n"
                                      "\"a \"\"b\"\", c\r\nd\",1234.25,0.3\r\n"
                                      "=1+1,,0\r\n");
}

TEST_CASE("the first table gets the CSV file's name, the others their keys") {
    const auto folder = testing::freshFolder("tables-csv");
    auto other = sample();
    other.key = "other";
    const auto files = exporting::writeCsvs(std::vector{sample(), other}, folder / "house.csv");
    REQUIRE(files);
    CHECK(filesIn(folder) == std::vector<std::string>{"house-other.csv", "house.csv"});
    CHECK(files->front() == folder / "house.csv");
    CHECK(slurp(files->back()) == exporting::csv(other));
}

TEST_CASE("JSON has numbers as numbers, nothing as null, and sums") {
    const auto json = nlohmann::json::parse(exporting::tablesJson(std::vector{sample()}, kAbout));
    const auto& table = json["tables"][0];
    CHECK(table["rows"][0]["setOut"].is_number());
    CHECK(table["rows"][0]["setOut"] == 5780);
    CHECK(table["rows"][1]["count"] == 0.3);
    CHECK(table["rows"][2]["setOut"].is_null());
    CHECK(table["rows"][2]["name"] == "=1+1");
    CHECK(table["totals"] == nlohmann::json{{"count", 2.3}});
    CHECK(table["columns"][1]["unit"] == "mm");
    CHECK(json["caution"] == kAbout.caution);
}

TEST_CASE("the same tables give the same workbook, whatever the clock says") {
    const auto folder = testing::freshFolder("tables-xlsx");
    REQUIRE(exporting::writeXlsx(std::vector{sample()}, kAbout, folder / "a.xlsx"));
    testing::run("sleep 2.1"); // ZIP times have steps of two seconds
    REQUIRE(exporting::writeXlsx(std::vector{sample()}, kAbout, folder / "b.xlsx"));
    CHECK(slurp(folder / "a.xlsx") == slurp(folder / "b.xlsx"));
    CHECK(filesIn(folder) == std::vector<std::string>{"a.xlsx", "b.xlsx"});
    auto dateless = kAbout;
    dateless.date = "next week";
    CHECK(exporting::writeXlsx(std::vector{sample()}, dateless, folder / "c.xlsx"));
    // Written over what was there.
    REQUIRE(exporting::writeXlsx(std::vector{sample()}, kAbout, folder / "c.xlsx"));
    CHECK(slurp(folder / "a.xlsx") == slurp(folder / "c.xlsx"));
}

TEST_CASE("a folder that is not there is said, and nothing is left behind") {
    const auto folder = testing::freshFolder("tables-nowhere");
    const auto nowhere = folder / "none" / "t.xlsx";
    for (const auto& done : {exporting::writeXlsx(std::vector{sample()}, kAbout, nowhere),
                             exporting::writeTablesJson(std::vector{sample()}, kAbout, nowhere)}) {
        REQUIRE_FALSE(done);
        CHECK(done.error() == "cannot write '" + nowhere.string() + "': No such file or directory");
    }
    // The name of a folder: nothing is renamed over it.
    std::filesystem::create_directories(folder / "t.xlsx" / "full");
    CHECK_FALSE(exporting::writeXlsx(std::vector{sample()}, kAbout, folder / "t.xlsx"));
    CHECK(filesIn(folder) == std::vector<std::string>{"t.xlsx"});
}

TEST_CASE("a text longer than a cell may be is cut and marked, between characters") {
    auto table = sample();
    std::string long_text;
    for (int i = 0; i < 20000; ++i)
        long_text += "\xC3\xA9";
    table.rows[0][0] = long_text;
    const auto folder = testing::freshFolder("tables-long");
    REQUIRE(exporting::writeXlsx(std::vector{table}, kAbout, folder / "t.xlsx"));
    const auto read = testing::run("/usr/bin/python3 -c \"import openpyxl; "
                                   "v = openpyxl.load_workbook('" +
                                   (folder / "t.xlsx").string() +
                                   "').active['A2'].value; print(len(v), v[0] == chr(233), v[-3:])\"");
    CHECK(read.out == "16385 True ...\n"); // (32767 - 3) / 2 characters of two bytes, and three dots
}
