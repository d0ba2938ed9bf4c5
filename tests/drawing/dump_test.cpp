#include "drawing/drawing.hpp"

#include <catch2/catch.hpp>

using namespace gangway::drawing;

TEST_CASE("a sheet dumps one line an item, with every number that is drawn") {
    Sheet sheet;
    sheet.number = "E-01";
    sheet.title = "Kitchen, wall \"A\"";
    sheet.file_stem = "E-01-kitchen-A";
    const Pen dashed{0.25, LineType::Dashed, kGhost};
    Dimension dimension;
    dimension.measured_mm = 1073;
    dimension.id = "K-01";
    dimension.to = {53.65, -0.0001};
    dimension.lines = {{{0, 0}, {1.23456, 2}, dashed}};
    dimension.texts = {{{1, 2}, "1073", 3.5, Align::Right, 90, kBlack, true}};
    sheet.items = {
        {"building", "", Line{{20, 10}, {410, 10}, {0.7, LineType::Continuous, kBlack}}},
        {"plates", "K-01", Polyline{{{0, 0}, {1, 0}, {1, 1}}, true, dashed}},
        {"plates", "K-01", Arc{{5, 6}, 1.5, 0, 360, dashed}},
        {"furniture", "bed",
         Fill{{{0, 0}, {2, 0}, {2, 2}}, {{{0.5, 0.2}, {1, 0.2}, {1, 0.4}}}, {255, 0, 16}}},
        {"text", "", Text{{3, 4}, "a \"b\"\nc", 2.5, Align::Centre, 0, kGhost, false}},
        {"dimensions", "K-01", dimension},
    };
    CHECK(dump(sheet) ==
          R"(sheet "E-01" "Kitchen, wall \"A\"" "E-01-kitchen-A" 420x297 1:20
building "" line 20,10 410,10 pen 0.7 01 #000000
plates "K-01" polyline closed 0,0 1,0 1,1 pen 0.25 02 #767676
plates "K-01" arc 5,6 r 1.5 from 0 to 360 pen 0.25 02 #767676
furniture "bed" fill #ff0010 0,0 2,0 2,2 hole 0.5,0.2 1,0.2 1,0.4
text "" text "a \"b\"\nc" 3,4 h 2.5 centre turn 0 #767676
dimensions "K-01" dimension linear 1073 "K-01" 0,0 53.65,0 | line 0,0 1.235,2 pen 0.25 02 #767676 | text "1073" 1,2 h 3.5 right turn 90 #000000 knock-out
)");
}
