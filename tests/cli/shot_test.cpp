#include "cli/program.hpp"

#include <cairo.h>

#include <catch2/catch.hpp>

#include <memory>

using namespace gangway::testing;
namespace fs = std::filesystem;

namespace {
struct Surface {
    cairo_surface_t* raw = nullptr;
    explicit Surface(const fs::path& file) : raw(cairo_image_surface_create_from_png(file.c_str())) {}
    Surface(const Surface&) = delete;
    Surface& operator=(const Surface&) = delete;
    ~Surface() { cairo_surface_destroy(raw); }
};

/// Part of the pixels of two equally large pictures that differ by more than a little.
double difference(const fs::path& a, const fs::path& b) {
    const Surface one(a);
    const Surface two(b);
    const int width = cairo_image_surface_get_width(one.raw);
    const int height = cairo_image_surface_get_height(one.raw);
    REQUIRE(width == cairo_image_surface_get_width(two.raw));
    REQUIRE(height == cairo_image_surface_get_height(two.raw));
    int different = 0;
    for (int y = 0; y < height; ++y) {
        const unsigned char* p =
            cairo_image_surface_get_data(one.raw) + y * cairo_image_surface_get_stride(one.raw);
        const unsigned char* q =
            cairo_image_surface_get_data(two.raw) + y * cairo_image_surface_get_stride(two.raw);
        for (int x = 0; x < width; ++x, p += 4, q += 4)
            if (std::abs(p[0] - q[0]) + std::abs(p[1] - q[1]) + std::abs(p[2] - q[2]) > 24) ++different;
    }
    return static_cast<double>(different) / (width * height);
}
} // namespace

TEST_CASE("GL: hiding the furniture changes the picture of a room, and both have the size asked for") {
    const fs::path folder = freshFolder("cli-shot");
    const std::string arguments = "shot '" + kOneRoom + "' --wall A --size 400x300 --room ";
    const std::string room = call("inspect '" + kOneRoom + "' --rooms").out;
    const std::string id = room.substr(0, room.find('\n'));
    const Ran with = call(arguments + id + " -o '" + (folder / "with.png").string() + "'");
    INFO(with.err);
    REQUIRE(with.code == 0);
    REQUIRE(call(arguments + id + " --hide furniture -o '" + (folder / "without.png").string() + "'").code ==
            0);
    const Surface picture(folder / "with.png");
    CHECK(cairo_image_surface_get_width(picture.raw) == 400);
    CHECK(cairo_image_surface_get_height(picture.raw) == 300);
    CHECK(difference(folder / "with.png", folder / "without.png") > 0.02);
}

TEST_CASE("GL: a picture of each leg of a room has its lamps alone on, and carries its mark in its name") {
    const fs::path folder = freshFolder("cli-shot-legs");
    const std::string evening = "shot '" + kDemo + "' --room kitchen --light evening --size 320x180 -o '";
    const auto shot = [&](const std::string& name, const std::string& legs) {
        const Ran ran = call(evening + (folder / name).string() + "' --legs " + legs);
        INFO(ran.err);
        REQUIRE(ran.code == 0);
        return ran.out;
    };
    shot("off.png", "off");
    shot("on.png", "on");
    shot("two.png", "L3,L1");
    CHECK(difference(folder / "off.png", folder / "on.png") > 0.5);
    // The lamps of two legs light less than all do.
    CHECK(difference(folder / "off.png", folder / "two.png") > 0.2);
    CHECK(difference(folder / "two.png", folder / "on.png") > 0.1);

    const std::string written = shot("leg.png", "each");
    // The kitchen's legs in assets/demo/README.md: four of lamps, the fan's and the hob's have none here.
    for (const char* mark : {"L1", "L2", "L3", "L4"}) {
        const fs::path file = folder / (std::string("leg-") + mark + ".png");
        INFO(file);
        CHECK(has(written, file.string() + "\n"));
        REQUIRE(fs::exists(file));
        CHECK(difference(folder / "off.png", file) > 0.01);
    }
    CHECK(difference(folder / "leg-L2.png", folder / "leg-L3.png") > 0.01);
    CHECK_FALSE(fs::exists(folder / "leg-L5.png")); // the hall's
    CHECK_FALSE(fs::exists(folder / "leg.png"));
}

TEST_CASE("GL: --plugs shows what is plugged into a plate") {
    // The radio's power block at K-21 of the demo, its front of 75 x 90 seen from 420 mm: of the 778 x 486
    // there (1.05 rad from top to bottom) it takes 1.8 %, its sides and its shade more.
    const fs::path folder = freshFolder("cli-shot-plugs");
    const std::string shot =
        "shot '" + kDemo + "' --eye 500,3250,450 --to 0,3250,450 --hide furniture --size 320x200 -o '";
    const Ran with = call(shot + (folder / "with.png").string() + "' --plugs");
    INFO(with.err);
    REQUIRE(with.code == 0);
    REQUIRE(call(shot + (folder / "without.png").string() + "'").code == 0);
    const double changed = difference(folder / "with.png", folder / "without.png");
    CHECK(changed > 0.018);
    CHECK(changed < 0.5);
}

TEST_CASE("shot answers an unknown leg or light with what there is, and writes nothing") {
    const fs::path folder = freshFolder("cli-shot-slips");
    const auto slip = [&](const std::string& words, const std::string& says) {
        const Ran ran =
            call("shot '" + kDemo + "' --room kitchen -o '" + (folder / "s.png").string() + "' " + words);
        INFO(words << ": " << ran.err);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK(has(ran.err, says));
    };
    slip("--legs L33", "no switch leg 'L33'; did you mean 'L3'? The plan has: L1, L2");
    slip("--legs L1,xyzzy", "no switch leg 'xyzzy'. The plan has: L1");
    slip("--legs ,", "--legs names no leg; give on, off, each");
    slip("--light dusk", "--light dusk is no light; give day or evening");
    CHECK(fs::is_empty(folder));
}
