#include "plan/io.hpp"
#include "plan/number_text.hpp"
#include "plan/sample_plans.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <bit>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>

using namespace gangway::plan;
using namespace gangway::plan::testing;

TEST_CASE("a tidy file read and written unchanged is the same bytes") {
    const std::string text = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    const auto result = read(text);
    REQUIRE(result);
    CHECK(write(result->plan) == text);
}

TEST_CASE("numbers are the shortest text that reads back, without exponent or minus zero") {
    struct Case {
        double value;
        const char* text;
    };
    for (const Case& c :
         {Case{0, "0"}, Case{-0.0, "0"}, Case{1200, "1200"}, Case{-1.5, "-1.5"}, Case{0.1, "0.1"},
          Case{1e6, "1000000"}, Case{1e-7, "0.0000001"}, Case{0.1 + 0.2, "0.30000000000000004"},
          Case{1e21, "1000000000000000000000"}, Case{std::numeric_limits<double>::quiet_NaN(), "null"}})
        CHECK(numberText(c.value) == c.text);
}

TEST_CASE("any number comes back exactly, judged by strtod") {
    std::mt19937_64 dice(7);
    for (int i = 0; i < 2000; ++i) {
        const double value = std::bit_cast<double>(dice());
        if (!std::isfinite(value)) continue;
        const std::string text = numberText(value);
        CHECK(std::strtod(text.c_str(), nullptr) == value);
        CHECK(text.find_first_of("eE") == std::string::npos);
    }
}

TEST_CASE("texts are escaped as JSON asks and broken UTF-8 is mended") {
    Plan plan;
    plan.project.name = "a\"b\\c\n\t\x01 \xC3\xBC \xFF end";
    const std::string text = write(plan);
    CHECK(text.find(R"("name": "a\"b\\c\n\t\u0001 )"
                    "\xC3\xBC \xEF\xBF\xBD end\"") != std::string::npos);
    CHECK(read(text));
}

TEST_CASE("a changed height changes one line") {
    Plan plan = samples::house(2);
    const std::string before = write(plan);
    plan.plates[5].host.v_mm = 1075.5;
    const std::string after = write(plan);
    const auto lines = [](const std::string& text) {
        std::vector<std::string> result;
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = text.find('\n', at);
            result.push_back(text.substr(at, end - at));
            at = end + 1;
        }
        return result;
    };
    const auto old_lines = lines(before);
    const auto new_lines = lines(after);
    REQUIRE(old_lines.size() == new_lines.size());
    int changed = 0;
    for (std::size_t i = 0; i < old_lines.size(); ++i)
        changed += old_lines[i] != new_lines[i];
    CHECK(changed == 1);
}

TEST_CASE("defaults are left out, and an empty plan is short") {
    CHECK(write(Plan{}) == "{\n  \"gangway\": 1\n}\n");
    Plan plan = samples::house(1);
    CHECK(write(plan).find("\"kelvin\"") == std::string::npos);
    plan.luminaires[0].kelvin = 3000;
    CHECK(write(plan).find("\"kelvin\": 3000") != std::string::npos);
}

TEST_CASE("a hinged door states its hand even when it is the usual one") {
    const std::string text = write(samples::house(1));
    for (const char* line : {"\"hinge\": \"left\"", "\"swing\": \"in\"", "\"leaf\": 826", "\"stop\": 90"})
        CHECK(text.find(line) != std::string::npos);
}

TEST_CASE("no line of a usual plan is wider than a page of an editor") {
    const std::string text = write(samples::house(3));
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find('\n', at);
        CHECK(end - at <= 110);
        at = end + 1;
    }
}
