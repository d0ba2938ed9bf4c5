#include "export/canvas.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace gangway;
using namespace gangway::drawing;

namespace {

// Writes down what it is told.
class Notes : public exporting::Canvas {
public:
    void beginLayer(const std::string& layer) override { list.push_back("begin " + layer); }
    void endLayer() override { list.emplace_back("end"); }
    void object(const std::string& id) override { list.push_back("object " + id); }
    void stroke(const std::vector<Pt>& points, bool closed, const Pen&,
                const std::vector<double>& pattern) override {
        list.push_back(std::string(closed ? "closed " : "open ") + std::to_string(points.size()) +
                       (pattern.empty() ? "" : " dashed"));
    }
    void arc(const Arc&, const std::vector<double>& pattern) override {
        list.emplace_back(pattern.empty() ? "arc" : "arc dashed");
    }
    void fill(const Fill& fill) override { list.push_back("fill " + std::to_string(fill.outline.size())); }
    void text(const Text& text) override { list.push_back("text " + text.text); }
    std::vector<std::string> list;
};

std::vector<std::string> walked(const std::vector<Item>& items, std::optional<Bounds> window = std::nullopt) {
    Sheet sheet;
    sheet.items = items;
    Notes notes;
    exporting::walk(sheet, notes, kWhite, window);
    return notes.list;
}

using List = std::vector<std::string>;
const Pen kDashed{0.25, LineType::Dashed, kBlack};

} // namespace

TEST_CASE("the walk keeps the order of the list and opens a layer for each stretch of it") {
    CHECK(walked({{"a", "1", Line{{0, 0}, {9, 0}, {}}},
                  {"a", "2", Arc{{0, 0}, 3, 0, 90, kDashed}},
                  {"b", "", Text{{0, 0}, "x", 3.5, {}, 0, {}, true}},
                  {"a", "3", Fill{{{0, 0}, {1, 0}, {1, 1}}, {}, {}}}}) ==
          List{"begin a", "object 1", "open 2", "object 2", "arc dashed", "end", "begin b", "object ",
               "fill 4", "text x", "end", "begin a", "object 3", "fill 3", "end"});
}

TEST_CASE("a dashed outline is drawn side by side, a continuous one in one stroke") {
    const std::vector<Pt> square{{0, 0}, {20, 0}, {20, 20}, {0, 20}};
    CHECK(walked({{"a", "", Polyline{square, true, kDashed}}}) == List{"begin a", "object ", "open 2 dashed",
                                                                       "open 2 dashed", "open 2 dashed",
                                                                       "open 2 dashed", "end"});
    CHECK(walked({{"a", "", Polyline{square, true, {}}}}) == List{"begin a", "object ", "closed 4", "end"});
}

TEST_CASE("what lies outside the window is not drawn") {
    const Bounds window{{0, 0}, {10, 10}};
    CHECK(walked({{"a", "in", Line{{5, 5}, {50, 50}, {}}}, {"b", "out", Line{{11, 0}, {20, 9}, {}}}},
                 window) == List{"begin a", "object in", "open 2", "end"});
}

TEST_CASE("items with nothing in them draw nothing") {
    CHECK(walked({{"a", "", Polyline{}},
                  {"a", "", Text{}},
                  {"a", "", Fill{}},
                  {"a", "", Arc{}},
                  {"a", "", Dimension{}}}) ==
          List{"begin a", "object ", "object ", "object ", "object ", "object ", "end"});
}
