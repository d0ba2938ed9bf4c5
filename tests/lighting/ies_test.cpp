// LM-63 files: written here by the published layout (trade-facts, IES LM-63) for emitters known in closed
// form, read and integrated back; and broken ones, each refused with its line and reason.
#include "ies_text.hpp"
#include "lighting/photometry.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using namespace gangway;
using lighting::IesFile;
using test::written;

namespace {

IesFile read(const std::string& text) {
    auto file = lighting::parseIes(text, "lamp.ies");
    if (!file) throw std::runtime_error(file.error());
    return *file;
}

/// Lopsided on purpose, but mirrored where the symmetry says so.
double mirrored(double v, double h) {
    const double c = std::cos(h * std::numbers::pi / 180);
    return 100 + v + 40 * c * c;
}

} // namespace

TEST_CASE("a uniform and a cosine emitter written as LM-63 give their lumens back") {
    // 8.5: I = flux / 4 pi, I0 = flux / pi.
    for (double lumens : {1.0, 800.0, 12000.0}) {
        CHECK(lighting::luminousFlux(read(written(test::uniformFile(lumens)))) ==
              Approx(lumens).epsilon(1e-5));
        CHECK(lighting::luminousFlux(read(written(test::cosineFile(lumens)))) ==
              Approx(lumens).epsilon(1e-4));
    }
    // At 5 degrees the straight lines between the angles cut a little off: 0.06 %.
    CHECK(lighting::luminousFlux(read(written(test::cosineFile(800, 5)))) == Approx(800).epsilon(1e-3));
}

TEST_CASE("the four symmetries of one and the same emitter give the same intensities and lumens") {
    std::vector<IesFile> files;
    for (double last : {90.0, 180.0, 360.0}) {
        auto file = test::uniformFile(1);
        file.horizontal = test::degrees(0, last, 15);
        file.candela = mirrored;
        files.push_back(read(written(file)));
    }
    auto across = test::uniformFile(1);
    across.horizontal = test::degrees(90, 270, 15);
    across.candela = mirrored;
    files.push_back(read(written(across)));
    CHECK(files[0].symmetry == IesFile::Symmetry::Quadrant);
    CHECK(files[1].symmetry == IesFile::Symmetry::Bilateral);
    CHECK(files[2].symmetry == IesFile::Symmetry::None);
    for (const IesFile& file : files) {
        CHECK(lighting::luminousFlux(file) == Approx(lighting::luminousFlux(files[2])).epsilon(1e-6));
        for (double h = -400; h < 800; h += 7.5)
            for (double v = 0; v <= 180; v += 12.5)
                CHECK(lighting::intensityAt(file, v, h) ==
                      Approx(lighting::intensityAt(files[2], v, h)).epsilon(1e-6));
    }
    // Axial: the same emitter without its dependence on the horizontal angle, once by one angle, once by all.
    auto one = test::cosineFile(500);
    auto all = one;
    all.horizontal = test::degrees(0, 360, 30);
    const IesFile axial = read(written(one));
    CHECK(axial.symmetry == IesFile::Symmetry::Axial);
    CHECK(lighting::luminousFlux(axial) == Approx(lighting::luminousFlux(read(written(all)))));
    CHECK(lighting::intensityAt(axial, 33.3, 211) ==
          Approx(lighting::intensityAt(read(written(all)), 33.3, 211)));
}

TEST_CASE("intensity is bilinear between the angles and nothing outside them") {
    IesFile file = read("TILT=NONE\n1 -1 1 2 2 1 2 0 0 0 1 1 10\n0 90\n0 90\n100 200 300 600\n");
    // By hand: a quarter up, half round: ((100 + 25) + (300 + 75)) / 2 = 250.
    CHECK(lighting::intensityAt(file, 22.5, 45) == Approx(250));
    CHECK(lighting::intensityAt(file, 0, 0) == Approx(100));
    CHECK(lighting::intensityAt(file, 90, 90) == Approx(600));
    CHECK(lighting::intensityAt(file, 90, 270) == Approx(600)); // quadrant: 270 is the mirror of 90
    CHECK(lighting::intensityAt(file, 91, 0) == 0);
}

TEST_CASE("angles evenly spaced or not, a luminaire shines as its table says in every direction") {
    for (const auto& vertical : {test::degrees(0, 180, 10), std::vector<double>{0, 10, 15, 40, 90, 95, 180}})
        for (double last : {0.0, 90.0, 180.0, 360.0}) {
            auto text = test::uniformFile(1);
            text.vertical = vertical;
            text.horizontal = last > 0 ? test::degrees(0, last, 15) : std::vector<double>{0};
            text.candela = mirrored;
            const IesFile file = read(written(text));
            const auto shape = lighting::Distribution::fromIes(file, 0);
            for (double v = 0.5; v < 180; v += 7)
                for (double h = -179; h < 180; h += 11) {
                    const double t = v * std::numbers::pi / 180;
                    const double a = h * std::numbers::pi / 180;
                    CHECK(
                        shape.intensity(std::cos(t), std::sin(t) * std::cos(a), std::sin(t) * std::sin(a)) ==
                        Approx(lighting::intensityAt(file, v, h)).epsilon(1e-9));
                }
        }
}

TEST_CASE("headers of 1986, 1991, 1995 and 2002 are read, with keywords, multiplier and ballast factors") {
    for (const std::string& head :
         {std::string("an old label\nand another\n"), std::string("IESNA91\n[TEST] 7\n"),
          std::string("IESNA:LM-63-1995\r\n[TEST] 7\r\n"), std::string("IESNA:LM-63-2002\n[TEST] 7\n")}) {
        auto file = test::uniformFile(1000);
        file.head = head;
        file.multiplier = 2;
        file.ballast = 0.9;
        const IesFile got = read(written(file));
        INFO(head);
        CHECK(got.standard ==
              (head.starts_with("IES") ? head.substr(0, head.find_first_of("\r\n")) : "LM-63-1986"));
        CHECK(lighting::luminousFlux(got) == Approx(1800).epsilon(1e-5));
        CHECK(got.keywords.size() == (head.starts_with("IES") ? 1u : 0u));
        if (!got.keywords.empty()) CHECK(got.keywords[0] == std::pair<std::string, std::string>("TEST", "7"));
    }
    auto tilted = test::cosineFile(700);
    tilted.tilt = "TILT=INCLUDE\n1\n3\n0 45 90\n1 0.97 0.9\n";
    CHECK(lighting::luminousFlux(read(written(tilted))) == Approx(700).epsilon(1e-3));
}

TEST_CASE("a broken IES file is refused with its line and the reason") {
    struct Broken {
        std::string text;
        std::string message;
    };
    const std::string good = "1 -1 1 3 1 1 2 0 0 0\n1 1 10\n0 45 90\n0\n";
    const std::vector<Broken> table{
        {"", "lamp.ies:1: the file ends without a line TILT="},
        {"IESNA91\n[TEST] 1\n", "lamp.ies:3: the file ends without a line TILT="},
        {std::string("IESNA91\n\0\0\n", 11), "lamp.ies:2: this is not text, so it is no LM-63 file"},
        {"IESNA91\nTILT=lamp7.til\n" + good + "1 1 1\n",
         "lamp.ies:2: TILT=lamp7.til names a file of its own, which is not read; put the factors here "
         "(TILT=INCLUDE) or write TILT=NONE"},
        {"TILT=NONE\n1 -1 1 3 1\n", "lamp.ies:3: the file ends where the photometric type should stand"},
        {"TILT=NONE\n1 -1 1 3 1 2 2 0 0 0\n",
         "lamp.ies:2: this is type B photometry; only type C (1), as for indoor luminaires, is read"},
        {"TILT=NONE\n1 -1 1 3 1 3 2 0 0 0\n",
         "lamp.ies:2: this is type A photometry; only type C (1), as for indoor luminaires, is read"},
        {"TILT=NONE\n1 -1 1 -3 1 1 2 0 0 0\n",
         "lamp.ies:2: the number of vertical angles is -3; give a whole number from 1 to 1000"},
        {"TILT=NONE\n1 -1 1 3 2000000000 1 2 0 0 0\n",
         "lamp.ies:2: the number of horizontal angles is 2e+09; give a whole number from 1 to 1000"},
        {"TILT=NONE\n1 -1 1 2.5 1 1 2 0 0 0\n",
         "lamp.ies:2: the number of vertical angles is 2.5; give a whole number from 1 to 1000"},
        {"TILT=NONE\n1 -5 1 3 1 1 2 0 0 0\n",
         "lamp.ies:2: lumens per lamp is -5; give 0 or more, or -1 for absolute photometry"},
        {"TILT=NONE\n1 -1 nan 3 1 1 2 0 0 0\n",
         "lamp.ies:2: 'nan' is not a number; the candela multiplier should stand here"},
        {"TILT=NONE\n" + good + "1 2 x3\n",
         "lamp.ies:6: 'x3' is not a number; candela value 3 of 3 should stand here"},
        {"TILT=NONE\n" + good + "1 inf 3\n",
         "lamp.ies:6: 'inf' is not a number; candela value 2 of 3 should stand here"},
        {"TILT=NONE\n" + good + "1 2\n", "lamp.ies:7: the file ends where candela value 3 of 3 should stand"},
        {"TILT=NONE\n" + good + "1 -2 3\n", "lamp.ies:6: candela value 2 of 3 is -2; give 0 to 1e+09"},
        {"TILT=NONE\n" + good + "1 2 3 4\n",
         "lamp.ies:6: more follows the 3 candela values that were announced"},
        {"TILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 10\n0 90 45\n",
         "lamp.ies:4: vertical angle 45 follows 90; angles must ascend"},
        {"TILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 10\n0 10 80\n0\n1 1 1\n",
         "lamp.ies:4: vertical angles run from 0 to 80; type C has 0 to 90, 90 to 180 or 0 to 180"},
        {"TILT=NONE\n1 -1 1 2 2 1 2 0 0 0\n1 1 10\n0 90\n0 120\n1 1 1 1\n",
         "lamp.ies:5: horizontal angles run from 0 to 120; they must be 0 alone, or end at 90, 180 or 360 "
         "from 0"},
        {"TILT=INCLUDE\n1\n2\n0 90\n1\n", "lamp.ies:6: the file ends where tilt factor 2 of 2 should stand"},
    };
    for (const Broken& broken : table) {
        const auto file = lighting::parseIes(broken.text, "lamp.ies");
        INFO(broken.text);
        REQUIRE_FALSE(file.has_value());
        CHECK(file.error() == broken.message);
    }
}

TEST_CASE("a file cut anywhere is refused or whole, never half read") {
    const std::string text = written(test::cosineFile(700, 5));
    // Within the last number ("0.000000 \n") a cut can't be told.
    for (std::size_t size = 0; size + 10 <= text.size(); ++size)
        CHECK_FALSE(lighting::parseIes(text.substr(0, size), "cut.ies").has_value());
}

TEST_CASE("a luminaire with a broken IES file falls back to a usual distribution and says so") {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "ies";
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "cut.ies") << "IESNA91\nTILT=NONE\n1 -1 1";
    std::ofstream(folder / "good.ies") << written(test::cosineFile(700));
    plan::Luminaire lamp;
    lamp.tag = "K-L1";
    lamp.lumens = 900;
    lamp.ies = "cut.ies";
    auto light = lighting::distributionOf(lamp, folder);
    CHECK(light.problem ==
          "K-L1: cut.ies:3: the file ends where the number of vertical angles should stand. A "
          "usual distribution for its kind is taken instead.");
    CHECK(light.distribution.lumens() == 900);
    CHECK_FALSE(light.from_file);
    lamp.ies = "none.ies";
    CHECK(lighting::distributionOf(lamp, folder).problem ==
          "K-L1: none.ies: there is no such file. A usual distribution for its kind is taken instead.");
    // The file's shape, the plan's lumens; the file's own where the plan has none. I0 = flux / pi (8.5).
    lamp.ies = "good.ies";
    light = lighting::distributionOf(lamp, folder);
    CHECK(light.problem.empty());
    CHECK(light.distribution.intensity(1) == Approx(900 / std::numbers::pi).epsilon(1e-3));
    lamp.lumens = 0;
    light = lighting::distributionOf(lamp, folder);
    CHECK(light.distribution.intensity(1) == Approx(700 / std::numbers::pi).epsilon(1e-3));
}
