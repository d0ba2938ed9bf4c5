// One broken file an error: NAME.plan.json must give exactly the lines of NAME.expected.
#include "plan/io.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway::plan;
using namespace gangway::plan::testing;

namespace {
std::vector<std::filesystem::path> brokenFiles() {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(fixtures() / "broken"))
        if (entry.path().string().ends_with(".plan.json")) files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}
} // namespace

TEST_CASE("every broken file is refused with the expected lines") {
    const auto files = brokenFiles();
    REQUIRE(files.size() > 100); // an empty corpus proves nothing
    for (const auto& file : files) {
        const std::string name = file.filename().string();
        const auto expected_file = file.parent_path() / (name.substr(0, name.find('.')) + ".expected");
        INFO(expected_file);
        REQUIRE(std::filesystem::exists(expected_file));
        const auto result = readFile(file);
        REQUIRE_FALSE(result);
        std::string lines;
        for (const Diagnostic& diagnostic : result.error())
            lines += toLine(name, diagnostic) + '\n';
        CHECK(lines == slurp(expected_file));
        CHECK(hasErrors(result.error()));
    }
}

TEST_CASE(
    "every error of a broken file that can be placed has a line, a column and a pointer into the file") {
    for (const auto& file : brokenFiles()) {
        const auto result = readFile(file);
        REQUIRE_FALSE(result);
        for (const Diagnostic& diagnostic : result.error()) {
            INFO(toLine(file.filename().string(), diagnostic));
            CHECK((diagnostic.line == 0) == (diagnostic.column == 0));
            if (!diagnostic.pointer.empty()) CHECK(diagnostic.line > 0);
            CHECK(diagnostic.message.size() > 20);
        }
    }
}
