#include "shipped_catalogue.hpp"

#include "catalogue/limits.hpp"
#include "catalogue/pack.hpp"

#include "support/run_command.hpp"

#include <algorithm>
#include <cstdlib>
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
    for (const char* id : {"international", "gb", "gb-sct", "de", "fr", "us", "us-2020", "it", "au"})
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
        {"beyond-extends-nowhere.json", "2:14: /extends: there is no pack 'gbb' that could be extended"},
        {"beyond-limit-far.json",
         "6:26: /limits/sinkGap/value: expected a number from 0 to 2000, found 99999"},
        {"limit-unknown.json", "6:17: /limits/sinkGapp: unknown key; did you mean 'sinkGap'?"},
        {"limit-without-source.json", "6:16: /limits/sinkGap/source: missing; a text is needed"},
        {"outlet-use.json", "6:13: /outlets/0/use: expected one of unstated, living"},
        {"outlet-unless.json", "6:34: /outlets/0/unless: expected one of unstated, living"},
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

TEST_CASE("every shipped pack states its edition, and every value where it is from") {
    for (const auto& pack : shippedPacks().packs) {
        INFO(pack.id);
        CHECK_FALSE(pack.edition.empty());
        CHECK(pack.limits.size() == catalogue::limitKinds().size());
        const auto sourced = [](const auto& entry) { return !entry.source.empty(); };
        CHECK(std::ranges::all_of(pack.limits, [&](const auto& limit) { return sourced(limit.second); }));
        CHECK(std::ranges::all_of(pack.outlets, sourced));
        CHECK(std::ranges::all_of(pack.zones, sourced));
        CHECK_FALSE(pack.things.empty());
        CHECK_FALSE(pack.bodies.empty());
    }
}

TEST_CASE("limits are those of the trade facts, in inches where the text is") {
    const auto packs = shippedPacks();
    struct Limit {
        const char *pack, *id;
        double value;
    };
    for (const Limit& limit : {
             Limit{"us", "spacingReach", 72 * 25.4}, // 3.1
             Limit{"us", "spacingLeast", 609.6},     // 3.2
             Limit{"us", "spacingHighest", 1676.4},  // 3.3
             Limit{"us", "counterReach", 609.6},     // 3.5
             Limit{"us", "counterHigh", 508},        // 2.26
             Limit{"us", "basinReach", 914.4},       // 3.9
             Limit{"us", "accessHigh", 1219.2},      // 2.20
             Limit{"us", "overFarHigh", 1117.6},     // 2.21
             Limit{"us-2020", "basinReach", 914.4},  // as the pack it extends
             Limit{"us-2020", "islandProvision", 0}, // edition traps
             Limit{"gb", "reachLow", 450},           // 2.1
             Limit{"gb", "accessCorner", 300},       // 2.3
             Limit{"gb", "cornerGap", 0},            // edition traps
             Limit{"gb-sct", "cornerGap", 350},      // 2.7
             Limit{"gb-sct", "wetSocket", 2500},     // as the pack it extends
             Limit{"fr", "controlLow", 900},         // 2.13
             Limit{"fr", "worktopHigh", 250},        // 2.16
             Limit{"it", "socketLowest", 175},       // 2.18
             Limit{"de", "accessCorner", 500},       // 2.11
             Limit{"au", "hobGap", 150},             // 2.34
             Limit{"au", "bedReach", 700},           // as the international one
         }) {
        INFO(limit.pack << " " << limit.id);
        CHECK(packs.pack(limit.pack)->limit(limit.id).value == Approx(limit.value));
    }
}

TEST_CASE("a pack that extends another says only what differs") {
    const auto packs = shippedPacks();
    const auto& base = *packs.pack("us");
    const auto& older = *packs.pack("us-2020");
    CHECK(older.extends == "us");
    CHECK(older.edition != base.edition);
    CHECK(older.plate_format == base.plate_format);
    CHECK(older.heights.size() == base.heights.size());
    CHECK(older.outlets.size() == base.outlets.size());
    CHECK(older.limit("islandFirst").value == Approx(9 * 0.3048 * 0.3048));
    CHECK(base.limit("islandFirst").value == 0);
}

TEST_CASE("a designer's own pack is read beside the shipped ones and takes the place of its id") {
    const fs::path shipped = fs::path(GANGWAY_ASSETS_DIR) / "packs";
    const fs::path own = testing::freshFolder("packs-own");
    CHECK(catalogue::loadPacks(shipped, {own, own / "missing"})->problems.empty());
    std::ofstream(own / "ours.json") << R"({"extends": "gb", "id": "ours", "name": "Ours", "limits": {
               "sinkGap": {"value": 500, "source": "our habit", "grade": "practice"}}})";
    std::ofstream(own / "it.json") << R"({"extends": "it", "id": "it", "name": "Italy, ours"})";
    const auto loaded = catalogue::loadPacks(shipped, {own});
    REQUIRE(loaded);
    CHECK(loaded->problems == std::vector<std::string>{});
    REQUIRE(loaded->pack("ours") != nullptr);
    CHECK(loaded->pack("ours")->limit("sinkGap").value == 500);
    CHECK(loaded->pack("ours")->limit("reachLow").value == 450);
    CHECK(loaded->pack("it")->name == "Italy, ours");
    CHECK(std::ranges::count(loaded->packs, std::string("it"), &catalogue::CountryPack::id) == 1);

    std::ofstream(own / "it.json") << "{";
    const auto broken = catalogue::loadPacks(shipped, {own});
    REQUIRE(broken->problems.size() == 1);
    CHECK_THAT(broken->problems[0], Catch::StartsWith((own / "it.json").string() + ":1:"));
    CHECK(broken->pack("it")->name == "Italy");
}

TEST_CASE("a copied pack reads back as the one it starts from") {
    const auto packs = shippedPacks();
    const fs::path own = testing::freshFolder("packs-copied");
    for (const auto& pack : packs.packs)
        std::ofstream(own / (pack.id + ".json")) << catalogue::packCopy(pack, "our-" + pack.id, "Ours");
    const auto loaded = catalogue::loadPacks(fs::path(GANGWAY_ASSETS_DIR) / "packs", {own});
    REQUIRE(loaded);
    CHECK(loaded->problems == std::vector<std::string>{});
    for (const auto& pack : packs.packs) {
        const auto* copy = loaded->pack("our-" + pack.id);
        INFO(pack.id);
        REQUIRE(copy != nullptr);
        CHECK(copy->extends == pack.id);
        CHECK(copy->edition == pack.edition);
        for (const auto& [id, limit] : pack.limits) {
            INFO(id);
            CHECK(copy->limit(id).value == limit.value);
            CHECK(copy->limit(id).source == limit.source);
            CHECK(copy->limit(id).grade == limit.grade);
        }
    }
}

TEST_CASE("own packs are looked for in the configuration folder and beside the plan") {
    const char* before = std::getenv("XDG_CONFIG_HOME");
    const std::string kept = before == nullptr ? "" : before;
    ::setenv("XDG_CONFIG_HOME", "/somewhere", 1);
    CHECK(catalogue::ownPackFolders("/houses/one.plan.json") ==
          std::vector<fs::path>{"/somewhere/gangway/packs", "/houses/packs"});
    CHECK(catalogue::ownPackFolders() == std::vector<fs::path>{"/somewhere/gangway/packs"});
    ::unsetenv("XDG_CONFIG_HOME");
    CHECK(catalogue::ownPackFolders().at(0) ==
          fs::path(std::getenv("HOME")) / ".config" / "gangway" / "packs");
    if (before != nullptr) ::setenv("XDG_CONFIG_HOME", kept.c_str(), 1);
}
