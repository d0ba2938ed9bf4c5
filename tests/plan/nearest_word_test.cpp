#include "plan/io.hpp"

#include <catch2/catch.hpp>

using namespace gangway::plan;

TEST_CASE("the nearest word is found through slips, and no word through noise") {
    struct Case {
        const char* word;
        const char* expected;
    };
    const std::vector<std::string> known{"setOut", "height", "hinge", "swing", "daily", "modules"};
    for (const Case& c : {Case{"setout", "setOut"}, Case{"set-out", "setOut"}, Case{"hieght", "height"},
                          Case{"hing", "hinge"}, Case{"module", "modules"}, Case{"dayly", "daily"},
                          Case{"x", ""}, Case{"", ""}, Case{"temperature", ""}}) {
        INFO(c.word);
        CHECK(nearestWord(c.word, known) == c.expected);
    }
    CHECK(nearestWord(std::string(100'000, 'a'), known).empty());
    CHECK(nearestWord("a", {}).empty());
}
