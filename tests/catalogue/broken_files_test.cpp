// One broken file for each kind of mistake (tests/catalogue/broken), each laid beside the shipped files.
#include "shipped_catalogue.hpp"

#include "support/run_command.hpp"

#include <map>

using namespace gangway;
namespace fs = std::filesystem;

TEST_CASE(
    "a broken file beside the shipped ones is left out with file, line, column and key; the rest loads") {
    // Lines and columns counted by hand in an editor.
    const std::map<std::string, std::string> expected = {
        {"beyond-boxes-too-few.json",
         "8:16: /formats/0/boxes: expected 2 (one for each gang count), found 1"},
        {"beyond-id-taken.json", "4:13: /finishes/0/id: finish 'white' is defined twice"},
        {"beyond-unknown-family.json",
         "6:20: /modules/0/families/0: no file defines plate formats of the family 'rund'"},
        {"beyond-unknown-front.json",
         "7:17: /modules/0/front/0: no front is called 'well-q'; the nearest is 'well-e'"},
        {"beyond-variant-nowhere.json", "7:21: /modules/0/variants/0/format: module 'spare' has a variant"},
        {"circle-without-size.json",
         "8:9: /modules/0/front/0/diameter: missing; a number from 0.1 to 200 is needed"},
        {"colour-word.json", "5:17: /finishes/0/colour: expected \"#RRGGBB\", found 'red'"},
        {"cut-off.json", "4:1: not JSON: syntax error"},
        {"depth-negative.json", "6:16: /modules/0/depth: expected a number from 0 to 200, found -1"},
        {"depth-text.json", "6:16: /modules/0/depth: expected a number from 0 to 200, found the text 'deep'"},
        {"grid-without-pitch.json", "3:5: /formats/0/rowPitch: missing; a number from 1 to 1000 is needed"},
        {"not-an-object.json", "1:1: expected an object, found a list"},
        {"pitch-text.json",
         "5:16: /formats/0/pitch: expected a number from 1 to 1000, found the text 'wide'"},
        {"pitch-without-source.json", "9:18: /formats/0/sources/pitch: missing; a text is needed"},
        {"rated-without-source.json", "3:5: /modules/0/ratedSource: missing; a text is needed"},
        {"top-level-key.json",
         "2:15: /modulles: unknown key; known are finishes, formats, fronts, modules, note"},
        {"unknown-key.json", "6:16: /modules/0/depht: unknown key; did you mean 'depth'?"},
    };
    const auto& shipped = shippedCatalogue();
    std::size_t seen = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(GANGWAY_TESTS_DIR) / "catalogue" / "broken")) {
        if (!entry.is_regular_file()) continue;
        const std::string name = entry.path().filename().string();
        INFO(name);
        const fs::path folder = testing::freshFolder("catalogue-broken");
        for (const auto& good : fs::directory_iterator(fs::path(GANGWAY_ASSETS_DIR) / "catalogue"))
            fs::copy(good.path(), folder);
        fs::copy(entry.path(), folder / ("zz-" + name)); // last, so that the shipped ids come first
        const auto loaded = catalogue::load(folder);
        REQUIRE(loaded);
        REQUIRE(loaded->problems.size() == 1);
        REQUIRE(expected.contains(name));
        CHECK_THAT(loaded->problems[0], Catch::StartsWith("zz-" + name + ":" + expected.at(name)));
        CHECK(loaded->formats.size() == shipped.formats.size());
        CHECK(loaded->modules.size() == shipped.modules.size());
        CHECK(loaded->finishes.size() == shipped.finishes.size());
        ++seen;
    }
    CHECK(seen == expected.size());
}

TEST_CASE("each shipped file may be missing or cut in half and the rest still loads") {
    for (const auto& victim : fs::directory_iterator(fs::path(GANGWAY_ASSETS_DIR) / "catalogue")) {
        const fs::path folder = testing::freshFolder("catalogue-missing");
        for (const auto& good : fs::directory_iterator(fs::path(GANGWAY_ASSETS_DIR) / "catalogue"))
            fs::copy(good.path(), folder);
        const fs::path file = folder / victim.path().filename();
        fs::resize_file(file, fs::file_size(file) / 2);
        const auto loaded = catalogue::load(folder);
        INFO(file.filename());
        REQUIRE(loaded);
        REQUIRE(loaded->problems.size() == 1);
        CHECK_THAT(loaded->problems[0], Catch::StartsWith(file.filename().string() + ":"));
        CHECK(loaded->formats.size() + loaded->modules.size() + loaded->finishes.size() > 0);
    }
}
