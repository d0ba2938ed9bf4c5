// From where numbers count: the bare face and the slab, as an electrician finds them at first fix, with the
// build-ups of the fixture: plaster 13 in the corners, 75 of floor.
#include "sheet_reading.hpp"
#include "two_rooms.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gangway;

namespace {
std::multiset<double> valuesOf(const drawing::Sheet& sheet, drawing::Dimension::Kind kind) {
    std::multiset<double> values;
    for (const auto& dimension : test::dimensionsOf(sheet, kind))
        for (const auto& text : dimension.texts)
            values.insert(std::stod(text.text));
    return values;
}

drawing::Sheet wallFrom(const sheets::Datum& datum) {
    sheets::Options options = test::oneWall("kitchen", "A");
    options.datum = datum;
    return test::sheetsOf(test::twoRooms(), options).sheets.front();
}

/// All values but the origin's, each with so much added.
std::multiset<double> moved(const std::multiset<double>& values, double by_mm) {
    std::multiset<double> result;
    for (const double value : values)
        result.insert(value == 0 ? 0 : value + by_mm);
    return result;
}

std::string problemOf(const plan::Plan& plan, const sheets::Datum& datum) {
    sheets::Options options;
    options.datum = datum;
    const auto drawn = sheets::elevationSheets(plan, test::shippedCatalogue(), options);
    return drawn ? "" : drawn.error();
}

using Kind = drawing::Dimension::Kind;
} // namespace

TEST_CASE("set-outs from the bare face are 13 more, and their zero is 13 behind the finished corner") {
    const auto finished = wallFrom({});
    const auto bare = wallFrom({sheets::Face::Structural, sheets::Level::Ffl});
    CHECK(valuesOf(bare, Kind::Running) == moved(valuesOf(finished, Kind::Running), 13));
    CHECK(valuesOf(bare, Kind::Height) == valuesOf(finished, Kind::Height));
    CHECK(test::hasWords(bare, "From its finished face take off 13"));
    CHECK(test::hasText(bare, "bare face"));
    CHECK_FALSE(test::hasWords(finished, "BARE face"));
    const double zero_finished = test::dimensionsOf(finished, Kind::Running).front().from.x;
    const double zero_bare = test::dimensionsOf(bare, Kind::Running).front().from.x;
    CHECK(zero_finished - zero_bare == Approx(13 / bare.scale).margin(1e-6));
    CHECK(test::touchingWords(bare, 0) == "");
}

TEST_CASE("heights from the slab are 75 more, those from the site line are less by its height") {
    const auto finished = wallFrom({});
    const auto slab = wallFrom({sheets::Face::Finished, sheets::Level::Slab});
    CHECK(valuesOf(slab, Kind::Height) == moved(valuesOf(finished, Kind::Height), 75));
    CHECK(valuesOf(slab, Kind::Running) == valuesOf(finished, Kind::Running));
    CHECK(test::hasWords(slab, "above the SLAB (structural floor); FFL is 75 above it"));
    const auto* storey = plan::findStorey(test::twoRooms(), test::twoRooms().rooms.front().storey);
    REQUIRE(storey->site_line_mm);
    const auto site = wallFrom({sheets::Face::Finished, sheets::Level::Site});
    CHECK(valuesOf(site, Kind::Height) == moved(valuesOf(finished, Kind::Height), -*storey->site_line_mm));
    CHECK(test::touchingWords(site, 0) == "");
}

TEST_CASE("a datum that the plan does not state is refused, with what to do") {
    plan::Plan plan = test::twoRooms();
    for (plan::Room& room : plan.rooms)
        room.floor_build_up.clear();
    CHECK(problemOf(plan, {}).empty());
    CHECK(problemOf(plan, {sheets::Face::Finished, sheets::Level::Slab}).find("\"floorBuildUp\"") !=
          std::string::npos);
    for (plan::Storey& storey : plan.storeys)
        storey.site_line_mm.reset();
    CHECK(problemOf(plan, {sheets::Face::Finished, sheets::Level::Site}).find("\"siteLine\"") !=
          std::string::npos);
    for (plan::Room& room : plan.rooms)
        for (plan::Wall& wall : room.walls)
            wall.build_up.clear();
    CHECK(problemOf(plan, {sheets::Face::Structural, sheets::Level::Ffl}).find("\"buildUp\"") !=
          std::string::npos);
}
