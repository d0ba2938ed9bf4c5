#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <set>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

TEST_CASE("sheets writes one A3 page for each wall with a plate on it, and says which files") {
    for (const std::string& plan : {kDemo, kBungalow}) {
        INFO(plan);
        const fs::path folder = freshFolder("cli-sheets");
        const Ran ran = call("sheets '" + plan + "' --only elevations -o '" + folder.string() + "'");
        INFO(ran.err);
        REQUIRE(ran.code == 0);
        std::string file = ran.out;
        file.erase(file.find_last_not_of('\n') + 1);
        REQUIRE(fs::exists(file));
        std::set<std::string> walls;
        for (const auto& plate : Json::parse(slurp(plan))["plates"])
            if (plate.contains("wall"))
                walls.insert(plate["room"].get<std::string>() + "/" + plate["wall"].get<std::string>());
        // pdfinfo (poppler) is the outside witness of page count and size; 420 x 297 mm is ISO 216 A3.
        const Ran info = run("pdfinfo '" + file + "'");
        REQUIRE(info.code == 0);
        const auto at = info.out.find("Pages:");
        CHECK(std::stoul(info.out.substr(at + 6)) >= walls.size());
        CHECK(has(info.out, "1190.55 x 841.89 pts (A3)"));
    }
}

TEST_CASE("wall checks and templates are A4 unless another paper is asked for, elevations stay A3") {
    const fs::path folder = freshFolder("cli-check-sheets");
    const auto pages = [&](const std::string& kind) {
        return run("pdfinfo '" + (folder / ("one-room-" + kind + ".pdf")).string() + "'").out;
    };
    const std::string sheets = "sheets '" + kOneRoom + "' -o '" + folder.string() + "' --only ";
    REQUIRE(call(sheets + "wallcheck,templates,elevations").code == 0);
    for (const std::string kind : {"wallcheck", "templates"}) {
        INFO(kind);
        CHECK(has(pages(kind), "595.276 x 841.89 pts (A4)"));
    }
    CHECK(has(pages("elevations"), "1190.55 x 841.89 pts (A3)"));
    REQUIRE(call(sheets + "wallcheck,templates --paper A3").code == 0);
    for (const std::string kind : {"wallcheck", "templates"})
        CHECK(has(pages(kind), "1190.55 x 841.89 pts (A3)"));
    const Ran slip = call(sheets + "wallchek");
    CHECK(slip.code == 2);
    CHECK(has(slip.err, "did you mean 'wallcheck'?"));
}

TEST_CASE("the same plan gives the same bytes in every format") {
    const fs::path first = freshFolder("cli-same-1");
    const fs::path second = freshFolder("cli-same-2");
    for (const auto& folder : {first, second})
        REQUIRE(call("sheets '" + kOneRoom + "' -o '" + folder.string() +
                     "' --only elevations --formats pdf,svg,png --dpi 60")
                    .code == 0);
    int compared = 0;
    for (const auto& entry : fs::directory_iterator(first)) {
        INFO(entry.path());
        CHECK(slurp(entry.path()) == slurp(second / entry.path().filename()));
        ++compared;
    }
    CHECK(compared >= 3);
}
