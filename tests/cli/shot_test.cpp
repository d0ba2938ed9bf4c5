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
