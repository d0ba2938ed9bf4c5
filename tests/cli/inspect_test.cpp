#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gangway::testing;
using Json = nlohmann::json;

TEST_CASE("inspect gives a plate's world position by the wall's own corners, worked out by hand") {
    // The fixture's numbers are read as plain JSON, not through our reader, and the position follows from
    // set-out along the wall and height alone.
    const Json file = Json::parse(slurp(kOneRoom));
    const Ran ran = call("inspect '" + kOneRoom + "' --json");
    REQUIRE(ran.code == 0);
    const Json model = Json::parse(ran.out);
    REQUIRE(model["plates"].size() == file["plates"].size());
    int checked = 0;
    for (std::size_t i = 0; i < file["plates"].size(); ++i) {
        const Json& given = file["plates"][i];
        const Json& got = model["plates"][i];
        if (!given.contains("wall")) continue;
        const Json& room = *std::find_if(file["rooms"].begin(), file["rooms"].end(),
                                         [&](const Json& r) { return r["id"] == given["room"]; });
        const auto& walls = room["walls"];
        std::size_t index = 0;
        while (walls[index]["id"] != given["wall"])
            ++index;
        const auto& outline = room["outline"];
        const Json& a = outline[index];
        const Json& b = outline[(index + 1) % outline.size()];
        const double dx = b[0].get<double>() - a[0].get<double>();
        const double dy = b[1].get<double>() - a[1].get<double>();
        const double length = std::hypot(dx, dy);
        const double u = given["setOut"].get<double>();
        INFO(given["id"]);
        CHECK(got["at"][0].get<double>() == Approx(a[0].get<double>() + dx / length * u).margin(1e-6));
        CHECK(got["at"][1].get<double>() == Approx(a[1].get<double>() + dy / length * u).margin(1e-6));
        CHECK(got["height"].get<double>() == Approx(given["height"].get<double>()).margin(1e-6));
        CHECK(got["state"] == "open");
        ++checked;
    }
    CHECK(checked >= 3);
}

TEST_CASE("inspect lists every way with what it feeds") {
    const Json file = Json::parse(slurp(kDemo));
    const Json model = Json::parse(call("inspect '" + kDemo + "' --json").out);
    REQUIRE(model["legs"].size() == file["legs"].size());
    for (std::size_t i = 0; i < file["legs"].size(); ++i)
        CHECK(model["legs"][i]["luminaires"] == file["legs"][i].value("luminaires", Json::array()));
}

TEST_CASE("inspect --places lists the words that --storey, --room and --wall take") {
    const Json file = Json::parse(slurp(kDemo));
    const Ran ran = call("inspect '" + kDemo + "' --places");
    CHECK(ran.code == 0);
    for (const auto& storey : file["storeys"])
        CHECK(has(ran.out, "storey " + storey["id"].get<std::string>()));
    for (const auto& room : file["rooms"])
        CHECK(has(ran.out, "room " + room["id"].get<std::string>()));
    CHECK(has(ran.out, "walls A B C D"));
}
