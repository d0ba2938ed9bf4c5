#include "sample_sheet.hpp"

#include "drawing/face.hpp"
#include "export/export.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace gangway;
using Catch::Matchers::Contains;
using gangway::testing::fileBytes;
using gangway::testing::freshFolder;
using gangway::testing::output;
using gangway::testing::sampleDrawing;
using gangway::testing::sampleSheet;

namespace {

// What Python's own XML parser finds: one line a fact.
std::string parsed(const std::filesystem::path& file, const std::string& expression) {
    const std::filesystem::path script = file.parent_path() / "look.py";
    std::ofstream(script) << "import sys, xml.etree.ElementTree as E\n"
                             "ns = '{http://www.w3.org/2000/svg}'\n"
                             "root = E.parse(sys.argv[1]).getroot()\n"
                          << expression << "\n";
    return output("python3 '" + script.string() + "' '" + file.string() + "'");
}

std::filesystem::path written(const std::string& name) {
    const auto files = exporting::writeSvgs(sampleDrawing(), freshFolder(name));
    REQUIRE(files.has_value());
    REQUIRE(files->size() == 2);
    return files->front();
}

} // namespace

// Check value 54: A3 is width 420mm, height 297mm, viewBox 0 0 420 297.
TEST_CASE("an outside parser reads an A3 sheet in real millimetres") {
    const auto file = written("svg-size");
    CHECK(file.filename() == "E-01-kitchen-A.svg");
    CHECK(
        parsed(file,
               "print(root.tag == ns + 'svg', root.get('width'), root.get('height'), root.get('viewBox'))") ==
        "True 420mm 297mm 0 0 420 297\n");
}

TEST_CASE("layers, ids and words can be picked out of the SVG") {
    const auto file = written("svg-layers");
    CHECK(parsed(file, "print(*[g.get('data-layer') for g in root if g.tag == ns + 'g'])") ==
          "frame building plates openings furniture text dimensions text\n");
    CHECK(parsed(file, "print(*sorted({e.get('data-id') for e in root.iter() if e.get('data-id')}))") ==
          "K-01 K-02 bed door wall\n");
    const std::string words =
        parsed(file, "for e in root.iter():\n    if e.get('data-text'): print(e.get('data-text'))");
    CHECK(words == "K\xC3\xBC"
                   "che \xE2\x80\x94 wall <A> & \xC2\xB1"
                   "5\nK-04\n0\n443\n514\n1000\nafter\n");
}

TEST_CASE("a metre at 1:20 is 50 user units long, and y is turned over once") {
    CHECK_THAT(fileBytes(written("svg-scale")),
               Contains(R"(<path d="M60 197L110 197" fill="none" stroke="#000000" stroke-width="0.5"/>)"));
}

TEST_CASE("arcs turn the right way") {
    // From (200, 140) counter-clockwise on paper to (160, 100): in SVG's y-down sweep 0.
    CHECK_THAT(fileBytes(written("svg-arc")), Contains("M200 157A40 40 0 0 0 160 197"));
}

TEST_CASE("every glyph that is used is defined once") {
    const auto file = written("svg-glyphs");
    CHECK(parsed(file, "href = '{http://www.w3.org/1999/xlink}href'\n"
                       "used = {u.get(href)[1:] for u in root.iter(ns + 'use')}\n"
                       "made = [p.get('id') for p in root.find(ns + 'defs')]\n"
                       "print(used == set(made), len(made) == len(set(made)), len(made) > 10)") ==
          "True True True\n");
}

TEST_CASE("the same sheet gives the same SVG") {
    CHECK(exporting::svg(sampleSheet("E-01")) == exporting::svg(sampleSheet("E-01")));
}

TEST_CASE("ids and texts that look like markup stay text") {
    const auto folder = freshFolder("svg-escape");
    drawing::Drawing drawing = sampleDrawing();
    drawing.sheets.resize(1);
    drawing.sheets[0].title = "<b>&\"\x02";
    drawing.sheets[0].items = {
        {"a\"><script>", "\"'&\xFF", drawing::Text{{1, 1}, "]]></g>\"", 3.5, {}, 30, {}, true}}};
    const auto files = exporting::writeSvgs(drawing, folder);
    REQUIRE(files.has_value());
    CHECK(parsed(files->front(),
                 "print(root.find(ns + 'g').get('data-layer'), len(list(root.iter('script'))))") ==
          "a\"><script> 0\n");
}

TEST_CASE("a file name keeps out of other folders") {
    drawing::Drawing drawing = sampleDrawing();
    drawing.sheets.resize(1);
    drawing.sheets[0].file_stem = "../up/E 01";
    const auto folder = freshFolder("svg-names");
    const auto files = exporting::writeSvgs(drawing, folder);
    REQUIRE(files.has_value());
    CHECK(files->front() == folder / "-.-up-E-01.svg");
}
