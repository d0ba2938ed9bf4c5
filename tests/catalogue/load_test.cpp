#include "shipped_catalogue.hpp"

#include <fstream>

using namespace gangway;
namespace fs = std::filesystem;

namespace {

const std::string kBox = R"({"shape": "round", "size": [68, 68], "depth": 47, "drill": 68, "fixing": 60})";
const std::string kSources =
    R"({"pitch": "s", "single": "s", "corner": "s", "relief": "s", "aperture": "s", "maxGangs": "s",
                                "boxes": "s", "heightHabit": "s"})";

std::string format(const std::string& pitch, const std::string& sources = kSources) {
    return R"({"formats": [{"id": "f", "name": "n", "pitch": )" + pitch +
           R"(, "single": [81, 81], "corner": 4, "relief": 10, "aperture": [55, 55], "maxGangs": 5, "boxes": [)" +
           kBox + R"(], "heightHabit": "centre", "sources": )" + sources + "}]}";
}

std::string module(const std::string& rest) {
    return R"({"modules": [{"id": "m", "name": "n", "code": "C", "kind": "socket", "symbol": "s", "source": "s")" +
           rest + "}]}";
}

/// A folder with one catalogue file, made anew.
fs::path folderWith(const std::string& text, const std::string& file = "one.json") {
    const fs::path folder = fs::path(GANGWAY_OUT_DIR) / "catalogue";
    fs::remove_all(folder);
    fs::create_directories(folder);
    std::ofstream(folder / file) << text;
    return folder;
}

std::string errorOf(const std::string& text) {
    const auto loaded = catalogue::load(folderWith(text));
    return loaded ? "" : loaded.error();
}

} // namespace

TEST_CASE("a catalogue of several files is one catalogue") {
    const fs::path folder = folderWith(format("71"), "b.json");
    std::ofstream(folder / "a.json") << module(R"(, "depth": 40, "front": [])");
    std::ofstream(folder / "readme.txt") << "not read";
    const auto loaded = catalogue::load(folder);
    REQUIRE(loaded);
    CHECK(loaded->formats.size() == 1);
    CHECK(catalogue::moduleIds(*loaded) == std::vector<std::string>{"m"});
}

TEST_CASE("lengths may be in inches") {
    const auto loaded = catalogue::load(folderWith(format(R"({"inch": 1.8125})")));
    REQUIRE(loaded);
    CHECK(loaded->formats[0].pitch_mm == Approx(46.0375).margin(1e-12)); // 1.8125 x 25.4
}

TEST_CASE("mistakes in a catalogue name file, key and what is wrong") {
    struct Case {
        const char* name;
        std::string text;
        std::string error;
    };
    const Case cases[] = {
        {"not JSON", "{\"formats\": [\n}", "one.json:2:1: not JSON: syntax error while parsing value"},
        {"empty file", "", "one.json:1:1: not JSON"},
        {"a list", "[]", "one.json:1:1: expected an object, found a list"},
        {"a text for a number", format("\"wide\""),
         "one.json:1:48: /formats/0/pitch: expected a number from 1 to 1000, found the text 'wide'"},
        {"a negative number", format("-71"),
         ": /formats/0/pitch: expected a number from 1 to 1000, found -71"},
        {"a number without source", format("71", R"({"single": "s"})"),
         ": /formats/0/sources/pitch: missing; a text is needed"},
        {"formats is no list", R"({"formats": 3})", ": /formats: expected a list, found 3"},
        {"unknown top-level key", R"({"modulles": []})",
         ": /modulles: unknown key; known are finishes, formats, fronts, modules, note"},
        {"unknown key", module(R"(, "front": [], "depht": 4)"),
         ": /modules/0/depht: unknown key; did you mean 'depth'?"},
        {"unknown kind",
         R"({"modules": [{"id": "m", "name": "n", "code": "C", "kind": "plug", "symbol": "s", "source": "s", "front": []}]})",
         ": /modules/0/kind: expected one of socket, switch"},
        {"no front", module(""), ": /modules/0/front: missing; a list is needed, [] for a plain face"},
        {"unknown front", module(R"(, "front": ["rocker-wyde"])"),
         ": /modules/0/front/0: no front is called 'rocker-wyde'"},
        {"bad shape", module(R"(, "front": [{"shape": "circle", "role": "well"}])"),
         ": /modules/0/front/0/diameter: missing; a number from 0.1 to 200 is needed"},
        {"short line", module(R"(, "front": [{"shape": "line", "role": "mark", "points": [[0, 0]]}])"),
         "at least two points"},
        {"variant without format", module(R"(, "front": [], "variants": [{"format": "nowhere"}])"),
         "module 'm' has a variant for the plate format or family 'nowhere', which no file defines"},
        {"bad colour",
         R"({"finishes": [{"id": "a", "name": "a", "colour": "red", "gloss": "matt", "source": "s"}]})",
         ": /finishes/0/colour: expected \"#RRGGBB\", found 'red'"},
    };
    for (const Case& one : cases) {
        INFO(one.name);
        CHECK_THAT(errorOf(one.text), Catch::Contains(one.error));
    }
}

TEST_CASE("all mistakes come in one go") {
    const std::string error = errorOf(R"({"finishes": [{"id": "a"}]})");
    for (const char* key : {"name", "colour", "gloss", "source"})
        CHECK_THAT(error, Catch::Contains(std::string("/finishes/0/") + key));
}

TEST_CASE("an id defined twice is an error") {
    const std::string finish =
        R"({"id": "a", "name": "a", "colour": "#000000", "gloss": "matt", "source": "s"})";
    CHECK_THAT(errorOf(R"({"finishes": [)" + finish + ", " + finish + "]}"),
               Catch::Contains("finish 'a' is defined twice"));
}

TEST_CASE("a folder that is not there, a file for a folder and an empty folder are errors") {
    const fs::path folder = folderWith("{}");
    CHECK_FALSE(catalogue::load(folder / "nowhere"));
    CHECK_FALSE(catalogue::load(folder / "one.json"));
    fs::remove(folder / "one.json");
    const auto empty = catalogue::load(folder);
    REQUIRE_FALSE(empty);
    CHECK_THAT(empty.error(), Catch::Contains("no *.json file in it"));
}

TEST_CASE("a catalogue without a plate format is an error that says what is wrong with its files") {
    const auto loaded = catalogue::load(folderWith(module(R"(, "front": [])")));
    REQUIRE_FALSE(loaded);
    CHECK_THAT(loaded.error(), Catch::Contains("no plate format could be read"));
}

TEST_CASE("a file that is broken is left out and the others load") {
    const fs::path folder = folderWith(format("71"), "b.json");
    std::ofstream(folder / "a.json") << module(R"(, "depht": 40, "front": [])");
    std::ofstream(folder / "c.json") << "{";
    const auto loaded = catalogue::load(folder);
    REQUIRE(loaded);
    CHECK(loaded->formats.size() == 1);
    CHECK(loaded->modules.empty());
    REQUIRE(loaded->problems.size() == 2);
    CHECK_THAT(loaded->problems[0], Catch::Contains("c.json:1:"));
    CHECK_THAT(loaded->problems[1],
               Catch::Contains("a.json:1:") && Catch::Contains("/modules/0/depht: unknown key"));
}

TEST_CASE("a module's variants for a format of a file left out are no mistake of the module's file") {
    const fs::path folder = folderWith(format("71"), "b.json");
    std::ofstream(folder / "a.json") << module(
        R"(, "families": ["round"], "front": [], "variants": [{"format": "round"}])");
    CHECK(catalogue::load(folder)->modules.empty()); // nothing else is wrong: the word is a slip
    std::ofstream(folder / "c.json") << "{";
    CHECK(catalogue::load(folder)->modules.size() == 1);
}

TEST_CASE("where an id is defined twice the first file counts") {
    const std::string finish =
        R"({"finishes": [{"id": "a", "name": "NAME", "colour": "#000000", "gloss": "matt", "source": "s"}]})";
    const fs::path folder = folderWith(format("71"), "a.json");
    for (const char* name : {"b", "c"}) {
        std::string text = finish;
        std::ofstream(folder / (std::string(name) + ".json")) << text.replace(text.find("NAME"), 4, name);
    }
    const auto loaded = catalogue::load(folder);
    REQUIRE(loaded);
    REQUIRE(loaded->finishes.size() == 1);
    CHECK(loaded->finishes[0].name == "b");
    REQUIRE(loaded->problems.size() == 1);
    CHECK_THAT(loaded->problems[0],
               Catch::StartsWith("c.json:1:22: /finishes/0/id: finish 'a' is defined twice"));
}

TEST_CASE("a catalogue cut off anywhere is an error, never a crash") {
    std::ifstream stream(fs::path(GANGWAY_ASSETS_DIR) / "catalogue" / "formats-de.json", std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(stream), {}};
    REQUIRE(text.size() > 1000);
    for (std::size_t length = 0; length + 2 < text.size(); length += 97)
        CHECK_FALSE(catalogue::load(folderWith(text.substr(0, length))));
}
