#include "sample_sheet.hpp"

#include "drawing/dimensions.hpp"
#include "export/export.hpp"

#include <catch2/catch.hpp>

#include <dl_creationadapter.h>
#include <dl_dxf.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

using namespace gangway;
using Catch::Matchers::Contains;
using gangway::testing::freshFolder;
using gangway::testing::sampleDrawing;
using gangway::testing::sampleSheet;

namespace {

/// The sample with all but its frame in a view at 1:20, whose zero point is the left end of the 1 m line.
drawing::Sheet viewedSheet() {
    drawing::Sheet sheet = sampleSheet("E-01");
    sheet.views = {{"Kitchen, wall A", 20, {60, 100}}};
    for (drawing::Item& item : sheet.items)
        item.view = item.layer == "frame" ? 0 : 1;
    sheet.placed = {{"plates", "K-01", "K1", {443, 343}, 343, 443, {{443, 343}}, 1}};
    return sheet;
}

using Pair = std::pair<int, std::string>;
std::vector<Pair> pairsOf(const std::string& dxf) {
    std::istringstream lines(dxf);
    std::vector<Pair> pairs;
    for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);)
        pairs.emplace_back(std::stoi(code), value);
    return pairs;
}

/// What dxflib's reader, which did not write the file, hands over. Blocks are kept apart by name.
class Reading : public DL_CreationAdapter {
public:
    struct Line {
        std::string block, layer, type;
        double x1, y1, x2, y2;
        int width;
    };
    struct Dimension {
        std::string text;
        int type;
        double x, y, from_x, from_y, to_x, to_y;
    };
    struct Word {
        std::string block, text;
        double height;
        int across;
    };
    struct Insert {
        std::string name, layer;
        double x, y;
    };
    std::map<std::string, std::string> strings;
    std::map<std::string, int> integers;
    std::vector<std::string> layers, line_types, blocks;
    std::vector<double> dashes;
    std::vector<Line> lines;
    std::vector<Dimension> dimensions;
    std::vector<Word> words;
    std::vector<Insert> inserts;
    std::vector<std::pair<std::string, std::string>> attributes;
    int hatches = 0;
    int arcs = 0;

    void setVariableString(const std::string& key, const std::string& value, int) override {
        strings[key] = value;
    }
    void setVariableInt(const std::string& key, int value, int) override { integers[key] = value; }
    void addLayer(const DL_LayerData& data) override { layers.push_back(data.name); }
    void addLinetype(const DL_LinetypeData& data) override { line_types.push_back(data.name); }
    void addLinetypeDash(double length) override { dashes.push_back(length); }
    void addBlock(const DL_BlockData& data) override { blocks.push_back(block_ = data.name); }
    void endBlock() override { block_.clear(); }
    void addLine(const DL_LineData& data) override {
        lines.push_back({block_, attributes_().getLayer(), attributes_().getLinetype(), data.x1, data.y1,
                         data.x2, data.y2, attributes_().getWidth()});
    }
    void addArc(const DL_ArcData&) override { ++arcs; }
    void addText(const DL_TextData& data) override {
        words.push_back({block_, data.text, data.height, data.hJustification});
    }
    void addAttribute(const DL_AttributeData& data) override { attributes.emplace_back(data.tag, data.text); }
    void addInsert(const DL_InsertData& data) override {
        inserts.push_back({data.name, attributes_().getLayer(), data.ipx, data.ipy});
    }
    void addDimLinear(const DL_DimensionData& data, const DL_DimLinearData& ends) override {
        dimensions.push_back(
            {data.text, data.type, data.dpx, data.dpy, ends.dpx1, ends.dpy1, ends.dpx2, ends.dpy2});
    }
    void addDimOrdinate(const DL_DimensionData& data, const DL_DimOrdinateData& ends) override {
        dimensions.push_back(
            {data.text, data.type, data.dpx, data.dpy, ends.dpx1, ends.dpy1, ends.dpx2, ends.dpy2});
    }
    void addHatch(const DL_HatchData&) override { ++hatches; }

private:
    DL_Attributes attributes_() { return getAttributes(); }
    std::string block_;
};

Reading readBack(const drawing::Sheet& sheet) {
    std::istringstream file(exporting::dxf(sheet));
    Reading reading;
    REQUIRE(DL_Dxf().in(file, &reading));
    return reading;
}

bool has(const std::vector<std::string>& names, const std::string& name) {
    return std::ranges::find(names, name) != names.end();
}

drawing::Sheet wordSheet(const std::string& words) {
    drawing::Sheet sheet;
    sheet.number = "T-1";
    sheet.items = {{"text", "", drawing::Text{{10, 10}, words, 3.5, drawing::Align::Left, 0, {}, false}, 0}};
    return sheet;
}

std::string writtenAs(const std::string& words) {
    const auto pairs = pairsOf(exporting::dxf(wordSheet(words)));
    const auto text = std::ranges::find(pairs, Pair{0, "TEXT"});
    return std::find_if(text, pairs.end(), [](const Pair& pair) { return pair.first == 1; })->second;
}

} // namespace

TEST_CASE("the same sheet gives the same DXF, one file a sheet") {
    CHECK(exporting::dxf(viewedSheet()) == exporting::dxf(viewedSheet()));
    const auto files = exporting::writeDxfs(sampleDrawing(), freshFolder("dxf-names"));
    REQUIRE(files.has_value());
    REQUIRE(files->size() == 2);
    CHECK(files->front().filename() == "E-01-kitchen-A.dxf");
}

// DXF reference, general structure of release 13 and later: the six sections in this order; R22a of
// drawing-standards.
TEST_CASE("a DXF has its sections in order, unique handles and a seed above them") {
    const auto pairs = pairsOf(exporting::dxf(viewedSheet()));
    std::vector<std::string> sections;
    std::vector<unsigned long> handles;
    unsigned long seed = 0;
    for (std::size_t i = 1; i < pairs.size(); ++i) {
        if (pairs[i - 1] == Pair{0, "SECTION"}) sections.push_back(pairs[i].second);
        const bool of_seed = pairs[i - 1] == Pair{9, "$HANDSEED"};
        if (of_seed) seed = std::stoul(pairs[i].second, nullptr, 16);
        if ((pairs[i].first == 5 || pairs[i].first == 105) && !of_seed)
            handles.push_back(std::stoul(pairs[i].second, nullptr, 16));
    }
    CHECK(sections ==
          std::vector<std::string>{"HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"});
    CHECK(pairs.back() == Pair{0, "EOF"});
    CHECK(std::set(handles.begin(), handles.end()).size() == handles.size());
    CHECK(seed > *std::ranges::max_element(handles));
}

// Check values 44 and 45 of drawing-standards: metric is $INSUNITS 4, release 2000 is AC1015.
TEST_CASE("dxflib reads version, units, layers and line types") {
    Reading reading = readBack(viewedSheet());
    CHECK(reading.strings["$ACADVER"] == "AC1015");
    CHECK(reading.integers["$INSUNITS"] == 4);
    CHECK(reading.integers["$MEASUREMENT"] == 1);
    for (const char* layer :
         {"0", "frame", "building", "plates", "openings", "furniture", "text", "dimensions"}) {
        INFO(layer);
        CHECK(has(reading.layers, layer));
    }
    CHECK(has(reading.line_types, "ISO02-025"));
    // Check value 17: dashed at 0.25 is 3.0 dash, 0.75 gap.
    const auto dash = std::ranges::search(reading.dashes, std::vector<double>{3.0, -0.75});
    CHECK_FALSE(dash.empty());
}

TEST_CASE("model space is in true mm around the view's zero point") {
    Reading reading = readBack(viewedSheet());
    const auto metre = std::ranges::find_if(reading.lines, [](const Reading::Line& line) {
        return line.block.empty() && line.layer == "building";
    });
    REQUIRE(metre != reading.lines.end());
    CHECK(metre->x1 == Approx(0).margin(1e-6));
    CHECK(metre->y1 == Approx(0).margin(1e-6));
    CHECK(metre->x2 == Approx(1000));
    CHECK(metre->width == 50); // 0.5 mm in group 370
    // Check value 26: 3.5 on paper is 70 at 1:20.
    const auto tag = std::ranges::find(reading.words, std::string("K-04"), &Reading::Word::text);
    REQUIRE(tag != reading.words.end());
    CHECK(tag->height == Approx(70));
    CHECK(tag->across == 1);
    CHECK(reading.hatches == 1);
    CHECK(reading.arcs == 1);
}

TEST_CASE("dimensions measure what they print, each in a block of its own") {
    Reading reading = readBack(viewedSheet());
    REQUIRE(reading.dimensions.size() == 4);
    const auto of = [&](const std::string& text) {
        const auto found = std::ranges::find(reading.dimensions, text, &Reading::Dimension::text);
        REQUIRE(found != reading.dimensions.end());
        return *found;
    };
    for (const double value : {0.0, 443.0, 514.0}) {
        const auto ordinate = of(std::to_string(static_cast<int>(value)));
        CHECK((ordinate.type & 7) == 6);   // DXF reference, DIMENSION group 70
        CHECK((ordinate.type & 64) == 64); // along x
        CHECK(ordinate.from_x - ordinate.x == Approx(value).margin(0.5));
    }
    const auto wall = of("1000");
    CHECK((wall.type & 7) == 0);
    CHECK(std::hypot(wall.to_x - wall.from_x, wall.to_y - wall.from_y) == Approx(1000));
    // Its line stands 10 mm on paper above what it measures.
    CHECK(wall.y - wall.to_y == Approx(200));
    for (const char* block : {"*D1", "*D2", "*D3", "*D4"}) {
        INFO(block);
        CHECK(has(reading.blocks, block));
        CHECK(std::ranges::any_of(reading.lines, [&](const auto& line) { return line.block == block; }));
    }
}

TEST_CASE("a plate is a block around its middle with its data, and its box is marked") {
    Reading reading = readBack(viewedSheet());
    const auto plate = std::ranges::find(reading.inserts, std::string("plates K-01"), &Reading::Insert::name);
    REQUIRE(plate != reading.inserts.end());
    CHECK(plate->x == Approx(443));
    CHECK(plate->y == Approx(343));
    const auto box = std::ranges::find(reading.inserts, std::string("box-centres"), &Reading::Insert::layer);
    REQUIRE(box != reading.inserts.end());
    CHECK(box->x == Approx(443));
    for (const auto& [tag, text] : {std::pair{"TAG", "K1"}, {"HEIGHT", "343"}, {"SETOUT", "443"}}) {
        INFO(tag);
        CHECK(std::ranges::count(reading.attributes, std::pair<std::string, std::string>{tag, text}) == 2);
    }
}

TEST_CASE("a second view stands clear of the first in model space") {
    drawing::Sheet sheet = viewedSheet();
    sheet.views.push_back({"Detail", 10, {300, 200}});
    sheet.items.push_back({"building", "", drawing::Line{{300, 200}, {350, 200}, {}}, 2});
    const Reading reading = readBack(sheet);
    double right = 0;
    double left = 1e9;
    for (const auto& line : reading.lines)
        if (line.block.empty() && line.layer == "building") {
            const double length = line.x2 - line.x1;
            if (length == Approx(500)) left = line.x1;
            right = std::max(right, length == Approx(1000) ? line.x2 : 0);
        }
    CHECK(right == Approx(1000));
    // The fill of the first reaches to (340 - 60) x 20 = 5600.
    CHECK(left > 5600 + 1000);
    CHECK(left < 1e9);
}

// DXF reference: before release 2007 texts are in $DWGCODEPAGE, other characters are \U+XXXX; %% begins a
// code, ^ a control character.
TEST_CASE("texts keep to the file's code page and are not read as codes") {
    CHECK(writtenAs("K\xC3\xBC"
                    "che \xE2\x80\x94 \xC2\xB1"
                    "5") == "K\xFC"
                            "che \x97 \xB1"
                            "5");
    CHECK(writtenAs("\xE2\x89\xA5"
                    "5") == "\\U+22655");
    CHECK(writtenAs("a\nb\tc\x01\x7F") == "abc");
    CHECK(writtenAs("100% 50%%d") == "100% 50%%%%%%d");
    CHECK(writtenAs("^J") == "^ J");
    CHECK(writtenAs("\\U+0041") == "\\U+005CU+0041");
    CHECK(writtenAs("\xF0\x9F\x92\xA1") == "\\U+FFFD"); // beyond four digits
    const std::string all = exporting::dxf(viewedSheet());
    CHECK(std::ranges::all_of(
        all, [](char c) { return c == '\n' || (c != 0x7F && static_cast<unsigned char>(c) >= ' '); }));
}

TEST_CASE("ids and layers that are no names for DXF become some, each its own") {
    drawing::Sheet sheet = wordSheet("x");
    sheet.views = {{"v", 20, {}}};
    for (const char* id : {"a|b", "A*b", "\xD1\x8F"}) {
        sheet.items.push_back({"pl<tes", id, drawing::Line{{0, 0}, {1, 1}, {}}, 1});
        sheet.placed.push_back({"pl<tes", id, id, {}, 0, {}, {}, 1});
    }
    const Reading reading = readBack(sheet);
    CHECK(has(reading.layers, "pl-tes"));
    std::set<std::string> names;
    for (const auto& insert : reading.inserts)
        names.insert(insert.name);
    CHECK(names == std::set<std::string>{"pl-tes a-b", "pl-tes A-b 2", "pl-tes --"});
}
