#include "sample_sheet.hpp"

#include "export/export.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <fstream>

using namespace gangway;
using Catch::Matchers::Contains;
using gangway::testing::fileBytes;
using gangway::testing::freshFolder;
using gangway::testing::output;
using gangway::testing::sampleDrawing;
using gangway::testing::sampleSheet;

namespace {

using Pixel = std::array<int, 4>;

// The pixel under a point of the paper, for a picture whose lower left corner is the paper's.
Pixel pixelAt(const exporting::Bitmap& picture, double x_mm, double y_mm, double px_per_mm) {
    const int x = static_cast<int>(std::floor(x_mm * px_per_mm));
    const int y = picture.height - 1 - static_cast<int>(std::floor(y_mm * px_per_mm));
    const std::size_t first = (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                               static_cast<std::size_t>(x)) *
                              4;
    return {picture.rgba[first], picture.rgba[first + 1], picture.rgba[first + 2], picture.rgba[first + 3]};
}

constexpr Pixel kBlue{0x56, 0xB4, 0xE9, 255};
constexpr Pixel kPaper{255, 255, 255, 255};

} // namespace

TEST_CASE("a known point of the paper has its colour in the picture") {
    const auto picture = exporting::rasterise(sampleSheet("E-01"), {0, 0}, 420, 297, 4);
    CHECK(picture.width == 1680);
    CHECK(picture.height == 1188);
    CHECK(pixelAt(picture, 305, 110, 4) == kBlue);  // in the fill
    CHECK(pixelAt(picture, 315, 110, 4) == kPaper); // in its hole
    CHECK(pixelAt(picture, 305, 121, 4) == kPaper); // above it
    CHECK(pixelAt(picture, 20.1, 150, 4)[0] < 40);  // frame, left
}

TEST_CASE("a part of a sheet is the same part of the whole picture") {
    const auto sheet = sampleSheet("E-01");
    const auto whole = exporting::rasterise(sheet, {0, 0}, 420, 297, 4);
    const auto part = exporting::rasterise(sheet, {50, 80}, 100, 60, 4);
    REQUIRE(part.width == 400);
    REQUIRE(part.height == 240);
    int worst = 0;
    for (int y = 0; y < part.height; ++y) {
        for (int x = 0; x < part.width; ++x) {
            const Pixel a = pixelAt(part, (x + 0.5) / 4, (y + 0.5) / 4, 4);
            const Pixel b = pixelAt(whole, 50 + (x + 0.5) / 4, 80 + (y + 0.5) / 4, 4);
            worst = std::max(worst, std::abs(a[0] - b[0]));
        }
    }
    // Rounding of the same edge at another place on the pixel grid of cairo's 1/256 px.
    CHECK(worst <= 16);
}

TEST_CASE("the paper can have another colour, and knock-out boxes take it") {
    drawing::Sheet sheet = sampleSheet("E-01");
    const drawing::Colour warm{0xF6, 0xF2, 0xEA};
    const auto picture = exporting::rasterise(sheet, {0, 0}, 420, 297, 4, warm);
    CHECK(pixelAt(picture, 5, 5, 4) == Pixel{0xF6, 0xF2, 0xEA, 255});
    CHECK(pixelAt(picture, 150 - 5.5, 117 - 0.4, 4) == Pixel{0xF6, 0xF2, 0xEA, 255});
}

TEST_CASE("a picture of no or far too much size is empty") {
    CHECK(exporting::rasterise(sampleSheet("E-01"), {0, 0}, 0, 297, 4).rgba.empty());
    CHECK(exporting::rasterise(sampleSheet("E-01"), {0, 0}, 420, 297, 1000).rgba.empty());
    CHECK(exporting::rasterise(sampleSheet("E-01"), {0, 0}, NAN, 297, 4).rgba.empty());
}

TEST_CASE("an outside program reads the PNG of a sheet at its size") {
    const auto folder = freshFolder("png");
    const auto files = exporting::writePngs(sampleDrawing(), folder, 100);
    REQUIRE(files.has_value());
    REQUIRE(files->size() == 2);
    // 420 mm at 100 dots an inch: 420 / 25.4 x 100 = 1653.5; 297: 1169.3.
    CHECK_THAT(output("identify '" + files->front().string() + "'"), Contains("PNG 1654x1169"));
    // (305, 110) mm is pixel 1200.8 from the left and (297 - 110) mm = 736.2 from the top.
    CHECK_THAT(output("convert '" + files->front().string() + "' -format '%[pixel:p{1200,736}]' info:"),
               Contains("srgb(86,180,233)"));
}

TEST_CASE("see-through pixels survive the PNG") {
    exporting::Bitmap picture{2, 1, {200, 100, 50, 255, 10, 20, 30, 0}};
    const auto file = freshFolder("alpha") / "two.png";
    REQUIRE(exporting::writePng(picture, file).has_value());
    CHECK_THAT(output("convert '" + file.string() + "' txt:-"),
               Contains("200,100,50") || Contains("#C86432FF"));
    picture.rgba.pop_back();
    const auto short_by_one = exporting::writePng(picture, file);
    REQUIRE_FALSE(short_by_one.has_value());
    CHECK_THAT(short_by_one.error(), Contains("a picture of 2 x 1 pixels with 7 bytes"));
}

TEST_CASE("the same picture gives the same bytes") {
    const auto folder = freshFolder("png-same");
    const auto picture = exporting::rasterise(sampleSheet("E-01"), {0, 0}, 420, 297, 2);
    REQUIRE(exporting::writePng(picture, folder / "a.png").has_value());
    REQUIRE(exporting::writePng(picture, folder / "b.png").has_value());
    CHECK(fileBytes(folder / "a.png") == fileBytes(folder / "b.png"));
}

// Two independent paths to pixels: our own picture and poppler's reading of our PDF.
TEST_CASE("the picture of a sheet looks like another program's picture of its PDF") {
    const auto folder = freshFolder("twice");
    drawing::Drawing drawing = sampleDrawing();
    drawing.sheets.resize(1);
    REQUIRE(exporting::writePdf(drawing, folder / "sheet.pdf").has_value());
    const auto ours = exporting::writePngs(drawing, folder, 100);
    REQUIRE(ours.has_value());
    output("pdftocairo -png -r 100 -singlefile '" + (folder / "sheet.pdf").string() + "' '" +
           (folder / "theirs").string() + "'");
    const std::string difference = output("compare -metric MAE '" + ours->front().string() + "' '" +
                                          (folder / "theirs.png").string() + "' null:");
    INFO(difference);
    // Mean error as a share of full white, in brackets: thin lines differ by their antialiasing only.
    const std::size_t bracket = difference.find('(');
    REQUIRE(bracket != std::string::npos);
    CHECK(std::stod(difference.substr(bracket + 1)) < 0.003);
}
