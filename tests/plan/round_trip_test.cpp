#include "plan/io.hpp"
#include "plan/sample_plans.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace gangway::plan;
using namespace gangway::plan::testing;

TEST_CASE("random plans are valid, and reading what was written gives the same bytes") {
    for (std::uint32_t seed = 1; seed <= 300; ++seed) {
        const std::string text = write(samples::random(seed));
        const auto result = read(text);
        INFO("seed " << seed);
        if (!result)
            for (const Diagnostic& d : result.error())
                if (d.level == Level::Error) FAIL(toLine("random", d));
        REQUIRE(write(result->plan) == text);
    }
}

TEST_CASE("what is written is JSON to the library too, with the numbers that were meant") {
    // The library's own document model is the outside check: nothing of our reader takes part.
    for (std::uint32_t seed = 1; seed <= 50; ++seed) {
        const Plan plan = samples::random(seed);
        const auto json = nlohmann::json::parse(write(plan));
        REQUIRE(json["plates"].size() == plan.plates.size());
        for (std::size_t i = 0; i < plan.plates.size(); ++i) {
            const Host& host = plan.plates[i].host;
            const auto& plate = json["plates"][i];
            CHECK(plate.value(plate.contains("setOut") ? "setOut" : "east", 1e9) == host.u_mm);
            CHECK(plate.value(plate.contains("height") ? "height" : "north", 1e9) == host.v_mm);
            CHECK(plate.value("note", "") == plan.plates[i].note);
        }
        for (std::size_t i = 0; i < plan.rooms.size(); ++i)
            for (std::size_t c = 0; c < plan.rooms[i].outline.size(); ++c)
                CHECK(json["rooms"][i]["outline"][c][0] == plan.rooms[i].outline[c].x);
    }
}

TEST_CASE("an unusual but valid text becomes the same bytes as its tidy form") {
    const std::string tidy = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    const auto json = nlohmann::json::parse(tidy); // sorts the keys
    for (const int indent : {-1, 0, 7}) {
        const auto result = read(json.dump(indent, '\t', true));
        REQUIRE(result);
        CHECK(result->warnings.empty());
        CHECK(write(result->plan) == tidy);
    }
}

TEST_CASE("unknown keys survive reading and writing, where they stood and as they stood") {
    std::string text = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    text = replaced(text, R"("tag": "K-01",)",
                    R"("tag": "K-01", "smart": {"hub" : [1.50,  12345678901234567890, "a, b"]},)");
    text = replaced(text, R"("project": {)", R"("project": { "vat": "none",)");
    const auto first = read(text);
    REQUIRE(first);
    REQUIRE(first->warnings.size() == 2);
    CHECK(first->warnings[0].message == "'vat' is no key this program knows. It is kept as it stands");
    CHECK(first->warnings[1].pointer == "/plates/0/smart");
    const std::string written = write(first->plan);
    const auto json = nlohmann::json::parse(written);
    CHECK(json["project"]["vat"] == "none");
    CHECK(written.find(R"("smart": {"hub": [1.50, 12345678901234567890, "a, b"]})") != std::string::npos);
    const auto second = read(written);
    REQUIRE(second);
    CHECK(write(second->plan) == written);
}

TEST_CASE("unknown keys of a site tolerance and of a way are warned of and kept") {
    std::string text = slurp(fixtures() / "broken" / "word-unknown.plan.json");
    text = replaced(text, "hinge-door", "hinged-door");
    text = replaced(text, R"("modules": ["switch-1way"]})",
                    R"("modules": ["switch-1way"], "mayMove": {"hight": 20.50}})");
    text = replaced(text, R"("controls": [{"plate": "kitchen-04"}])",
                    R"("controls": [{"plate": "kitchen-04", "scene": "evening"}])");
    const auto first = read(text);
    REQUIRE(first);
    REQUIRE(first->warnings.size() == 2);
    CHECK(first->warnings[0].pointer == "/plates/0/mayMove/hight");
    CHECK(first->warnings[0].message ==
          "plate 'kitchen-04': 'hight' is no key this program knows; did you mean 'height'? It is kept as it "
          "stands");
    CHECK(first->warnings[1].pointer == "/legs/0/controls/0/scene");
    // A tolerance that is nothing but the unknown key is no default, and is written too.
    const std::string written = write(first->plan);
    CHECK(written.find(R"("mayMove": { "hight": 20.50 })") != std::string::npos);
    CHECK(written.find(R"({ "plate": "kitchen-04", "scene": "evening" })") != std::string::npos);
    const auto second = read(written);
    REQUIRE(second);
    CHECK(write(second->plan) == written);
    CHECK(second->plan.plates[0].tolerance == first->plan.plates[0].tolerance);
    CHECK_FALSE(second->plan.plates[0].tolerance == SiteTolerance{});
}

TEST_CASE("kept distances, own formats and the library come back as they were written") {
    Plan plan = samples::house(2);
    REQUIRE_FALSE(plan.plates.empty());
    Plate& plate = plan.plates.front();
    plate.kept_along = KeptDistance{KeptDistance::From::RightCorner, "", KeptDistance::Edge::Left, -320.5};
    plate.kept_height = KeptDistance{KeptDistance::From::Floor, "", KeptDistance::Edge::Left, 300};
    plate.symbol_offset_mm = Vec2{120, -40};
    plate.barrier = true;
    OwnFormat format;
    format.id = "own";
    format.name = "Own";
    format.module_width_mm = format.module_height_mm = 60;
    format.plate_width_mm = format.plate_height_mm = 82;
    format.pitch_mm = 75;
    format.box_width_mm = 68;
    format.box_depth_mm = 50;
    plan.formats.push_back(format);
    LibraryPlate kept;
    kept.id = "desk";
    kept.name = "Desk, four gangs";
    kept.format = "own";
    kept.modules = {{"socket-f", "", "", {}}, {"data-rj45", "", "", {}}};
    plan.library.push_back(kept);

    const auto text = write(plan);
    const auto again = read(text);
    REQUIRE(again);
    CHECK(write(again->plan) == text);
    CHECK(again->plan.plates.front().kept_along == plate.kept_along);
    CHECK(again->plan.plates.front().kept_height == plate.kept_height);
    CHECK(again->plan.plates.front().symbol_offset_mm->x == 120);
    CHECK(again->plan.formats.front().pitch_mm == 75);
    CHECK(again->plan.library.front().modules.size() == 2);
}

TEST_CASE("an issue comes back as it was frozen, a plate on one line, its unknown keys kept") {
    const std::string text = slurp(fixtures() / "fixtures" / "issued.plan.json");
    const auto first = read(text);
    REQUIRE(first);
    REQUIRE(first->plan.issues.size() == 2);
    const Issue& issue = first->plan.issues[1];
    CHECK(issue.letter == "B");
    CHECK(issue.level == Issue::Level::Slab);
    CHECK(issue.face == Issue::Face::Structural);
    REQUIRE(issue.rooms.size() == 1);
    CHECK(issue.rooms[0].floor_mm == 75);
    CHECK(issue.rooms[0].plate_format == "rect-86");
    REQUIRE(issue.rooms[0].plates.size() == 2);
    const Plate& plate = issue.rooms[0].plates[0].plate;
    CHECK(plate.tag == "K-01");
    CHECK(plate.host.u_mm == 1320);
    CHECK(plate.tolerance == SiteTolerance{100, 0, {}});
    CHECK(plate.format.empty());
    CHECK(issue.rooms[0].plates[1].plate.host.kind == Host::Kind::Floor);
    CHECK(issue.rooms[0].luminaires.at(0).drop_mm == 600);
    CHECK(issue.sheets.at(0).number == "E-01");
    // Keys of a later version stay where they stood.
    CHECK(first->warnings.size() == 3);
    CHECK(write(first->plan) == text);
}

TEST_CASE("two issues of one letter are refused, and an issue without its date too") {
    std::string text = slurp(fixtures() / "fixtures" / "issued.plan.json");
    const auto twice = read(replaced(text, R"("letter": "B")", R"("letter": "A")"));
    REQUIRE_FALSE(twice);
    CHECK(std::ranges::any_of(twice.error(), [](const Diagnostic& said) {
        return said.message == "issue letter 'A' is already used by /issues/0; give this one another";
    }));
    const auto undated = read(replaced(text, R"("date": "2026-05-02",)", ""));
    REQUIRE_FALSE(undated);
    CHECK(std::ranges::any_of(undated.error(), [](const Diagnostic& said) {
        return said.message.starts_with("issue 'A': ") && said.message.find("'date'") != std::string::npos;
    }));
}
