#include "sheets/paper.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

int textsOf(const std::vector<drawing::Item>& items, const std::string& words) {
    int count = 0;
    for (const auto& item : items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
            count += text->text == words ? 1 : 0;
    return count;
}

} // namespace

TEST_CASE("paper has the sizes of ISO 216") {
    struct Case {
        const char* id;
        double width, height;
    };
    // drawing standards section 6, 1 and 2; A4 stands, the others lie.
    const auto sizes =
        std::to_array<Case>({{"A4", 210, 297}, {"A3", 420, 297}, {"A2", 594, 420}, {"A1", 841, 594}});
    for (const Case& size : sizes) {
        const auto paper = sheets::findPaper(size.id);
        REQUIRE(paper);
        CHECK(paper->width_mm == size.width);
        CHECK(paper->height_mm == size.height);
    }
    CHECK_FALSE(sheets::findPaper("A5"));
    CHECK_FALSE(sheets::findPaper("a3"));
}

TEST_CASE("the frame leaves 20 for filing and 10 elsewhere") {
    // ISO 5457 margins, from memory: section 6, 7 and 8.
    const auto a3 = sheets::frameOf(*sheets::findPaper("A3"));
    CHECK(a3.left == 20);
    CHECK(a3.bottom == 10);
    CHECK(a3.right == 410);
    CHECK(a3.top == 287);
    const auto a4 = sheets::frameOf(*sheets::findPaper("A4"));
    CHECK(a4.width() == 180);
    CHECK(a4.height() == 277);
}

TEST_CASE("an A3 sheet has 8 by 6 grid fields named on both sides, without I and O") {
    const auto items = sheets::sheetFrame(*sheets::findPaper("A3"));
    for (const char* figure : {"1", "2", "3", "4", "5", "6", "7", "8"})
        CHECK(textsOf(items, figure) == 2);
    CHECK(textsOf(items, "9") == 0);
    for (const char* letter : {"A", "B", "C", "D", "E", "F"})
        CHECK(textsOf(items, letter) == 2);
    CHECK(textsOf(items, "G") == 0);
    const auto a1 = sheets::sheetFrame(*sheets::findPaper("A1"));
    CHECK(textsOf(a1, "I") == 0);
    CHECK(textsOf(a1, "M") == 2);
}

TEST_CASE("an A4 sheet has its grid at the top and at the right only") {
    const auto items = sheets::sheetFrame(*sheets::findPaper("A4"));
    CHECK(textsOf(items, "4") == 1);
    CHECK(textsOf(items, "F") == 1);
}

TEST_CASE("centring marks stand on both axes of symmetry") {
    const auto items = sheets::sheetFrame(*sheets::findPaper("A3"));
    int upright = 0;
    int level = 0;
    for (const auto& item : items)
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive)) {
            if (line->pen.width_mm != 0.7) continue;
            if (line->from.x == 210 && line->to.x == 210) ++upright;
            if (line->from.y == 148.5 && line->to.y == 148.5) ++level;
        }
    CHECK(upright == 2);
    CHECK(level == 2);
}
