#include "shipped_catalogue.hpp"

#include "catalogue/pack.hpp"

#include "support/run_command.hpp"

#include <fstream>
#include <map>

using namespace gangway;
using catalogue::ModuleKind;
namespace fs = std::filesystem;

namespace {

catalogue::CountryPacks shippedPacks() {
    auto loaded = catalogue::loadPacks(fs::path(GANGWAY_ASSETS_DIR) / "packs");
    if (!loaded) FAIL(loaded.error());
    CHECK(loaded->problems == std::vector<std::string>{});
    return *loaded;
}

} // namespace

TEST_CASE("every pack's plate format is in the catalogue and every height says where it is from") {
    const auto packs = shippedPacks();
    for (const char* id : {"international", "gb", "de", "fr", "us", "it", "au"})
        CHECK(packs.pack(id) != nullptr);
    CHECK(packs.pack("nowhere") == nullptr);
    for (const auto& pack : packs.packs) {
        INFO(pack.id);
        CHECK(shippedCatalogue().format(pack.plate_format) != nullptr);
        CHECK_FALSE(pack.heights.empty());
        for (const auto& height : pack.heights) {
            INFO(height.id);
            CHECK_FALSE(height.source.empty());
            CHECK((height.source.find("no source") != std::string::npos ||
                   height.grade != catalogue::Grade::Practice));
        }
    }
}

TEST_CASE("usual heights are those of the trade facts") {
    const auto packs = shippedPacks();
    struct Usual {
        const char* pack;
        double socket_mm, switch_mm;
    };
    // gb: ends of 450 to 1200, AD M vol. 1; de: DIN 18015-3; us: 12 and 48 in, electrician handbook;
    // au: NATSPEC default. All by secondary pages or handbooks.
    for (const Usual& usual : {Usual{"gb", 450, 1200}, Usual{"de", 300, 1050}, Usual{"us", 304.8, 1219.2},
                               Usual{"au", 300, 1100}}) {
        INFO(usual.pack);
        const auto* pack = packs.pack(usual.pack);
        REQUIRE(pack != nullptr);
        CHECK(pack->usualHeight(ModuleKind::Socket)->height_mm == Approx(usual.socket_mm));
        CHECK(pack->usualHeight(ModuleKind::Data)->height_mm == Approx(usual.socket_mm));
        CHECK(pack->usualHeight(ModuleKind::Switch)->height_mm == Approx(usual.switch_mm));
        CHECK(pack->usualHeight(ModuleKind::Control)->height_mm == Approx(usual.switch_mm));
    }
    CHECK(packs.pack("us")->units == plan::DisplayUnits::FeetInches);
}

TEST_CASE("a height over a worktop is never the one of a new plate on a wall") {
    // Guides, not BS 7671: centre 150 over the worktop.
    catalogue::CountryPack pack;
    pack.heights.resize(2);
    pack.heights[0] = {"worktop", "", 150, catalogue::MountingHeight::From::Worktop, {ModuleKind::Socket},
                       "",        "", {}};
    pack.heights[1] = {"socket", "", 450, catalogue::MountingHeight::From::Floor, {ModuleKind::Socket},
                       "",       "", {}};
    CHECK(pack.usualHeight(ModuleKind::Socket)->id == "socket");
    CHECK(pack.usualHeight(ModuleKind::Sensor) == nullptr);
}

TEST_CASE("a broken pack is left out with file, line, column and key; the rest loads") {
    const std::map<std::string, std::string> expected = {
        {"height-text.json",
         "7:17: /heights/0/height: expected a number from 0 to 3000, found the text 'low'"},
        {"height-far.json", "7:17: /heights/0/height: expected a number from 0 to 3000, found 30000"},
        {"kind-unknown.json", "8:27: /heights/0/kinds/1: expected one of socket, switch"},
        {"unknown-key.json", "4:14: /heigths: unknown key; did you mean 'heights'?"},
    };
    std::size_t seen = 0;
    for (const auto& entry :
         fs::directory_iterator(fs::path(GANGWAY_TESTS_DIR) / "catalogue" / "broken" / "packs")) {
        const std::string name = entry.path().filename().string();
        INFO(name);
        const fs::path folder = testing::freshFolder("packs-broken");
        fs::copy(fs::path(GANGWAY_ASSETS_DIR) / "packs" / "gb.json", folder);
        fs::copy(entry.path(), folder);
        const auto loaded = catalogue::loadPacks(folder);
        REQUIRE(loaded);
        REQUIRE(loaded->packs.size() == 1);
        CHECK(loaded->packs[0].id == "gb");
        REQUIRE(loaded->problems.size() == 1);
        REQUIRE(expected.contains(name));
        CHECK_THAT(loaded->problems[0], Catch::StartsWith(name + ":" + expected.at(name)));
        ++seen;
    }
    CHECK(seen == expected.size());
}

TEST_CASE("a folder without a pack that can be read is an error, and so is one that is not there") {
    const fs::path folder = testing::freshFolder("packs-none");
    CHECK_FALSE(catalogue::loadPacks(folder));
    CHECK_FALSE(catalogue::loadPacks(folder / "nowhere"));
    std::ofstream(folder / "one.json") << "{";
    const auto loaded = catalogue::loadPacks(folder);
    REQUIRE_FALSE(loaded);
    CHECK_THAT(loaded.error(), Catch::Contains("one.json:1:"));
}
