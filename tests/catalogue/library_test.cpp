// The designer's library, in real files.
#include "shipped_catalogue.hpp"

#include "catalogue/library.hpp"

#include "plan/io.hpp"
#include "support/run_command.hpp"

#include <cstdlib>
#include <fstream>

using namespace gangway;
using catalogue::Library;
namespace fs = std::filesystem;

namespace {

plan::OwnFormat ownFormat(const std::string& id, double pitch_mm = 75) {
    plan::OwnFormat own;
    own.id = id;
    own.name = "frames for the hall";
    own.module_width_mm = own.module_height_mm = 60;
    own.plate_width_mm = own.plate_height_mm = 82;
    own.pitch_mm = pitch_mm;
    own.box_width_mm = 65;
    own.box_depth_mm = 50;
    return own;
}

plan::LibraryPlate stored(const std::string& name, const std::string& category,
                          const std::vector<std::string>& modules, const std::string& format = "round-71") {
    return catalogue::libraryPlate(plateOf(format, modules), name, category);
}

Library sample() {
    Library library;
    library = withPlate(library, stored("Desk, left", "work", {"socket-f", "socket-f", "data-rj45"}), {});
    library = withPlate(library, stored("Bedside", "bedrooms", {"socket-f", "switch-2way"}), {});
    library =
        withPlate(library, stored("Wide desk", "work", {"socket-f"}, "hall-60"), {ownFormat("hall-60")});
    return library;
}

std::vector<std::string> namesOf(const std::vector<const plan::LibraryPlate*>& plates) {
    std::vector<std::string> names;
    for (const auto* plate : plates)
        names.push_back(plate->name);
    return names;
}

} // namespace

TEST_CASE("a library comes out of its file as it went in") {
    const fs::path file = testing::freshFolder("library") / "deep" / "folder" / "library.json";
    CHECK(catalogue::readLibrary(file)->plates.empty()); // not there yet
    REQUIRE(catalogue::writeLibrary(sample(), file));
    const auto read = catalogue::readLibrary(file);
    REQUIRE(read);
    REQUIRE(read->plates.size() == 3);
    CHECK(read->plates[0].id == "desk-left");
    CHECK(read->plates[0].modules[2].type == "data-rj45");
    REQUIRE(read->formats.size() == 1);
    CHECK(read->formats[0].pitch_mm == 75);
    const std::string bytes = testing::slurp(file);
    REQUIRE(catalogue::writeLibrary(*read, file));
    CHECK(testing::slurp(file) == bytes);
}

TEST_CASE("a broken library is said with its line and never written over") {
    const fs::path file = testing::freshFolder("library") / "library.json";
    const std::string broken = "{\n  \"gangway\": 1,\n  \"library\": [ { \"id\": 7 } ]\n}\n";
    std::ofstream(file) << broken;
    const auto read = catalogue::readLibrary(file);
    REQUIRE_FALSE(read);
    CHECK_THAT(read.error(), Catch::Contains("library.json:3:") && Catch::Contains("/library/0"));
    const auto written = catalogue::writeLibrary(sample(), file);
    REQUIRE_FALSE(written);
    CHECK_THAT(written.error(), Catch::Contains("is not written") && Catch::Contains("library.json:3:"));
    CHECK(testing::slurp(file) == broken);
}

TEST_CASE("a plan with rooms can be imported from but is never written over") {
    const fs::path house = testing::freshFolder("library") / "house.plan.json";
    auto demo = plan::readFile(fs::path(GANGWAY_ASSETS_DIR) / "demo" / "terrace.plan.json");
    REQUIRE(demo);
    plan::Plan& plan = demo->plan;
    plan.library = sample().plates;
    plan.formats = sample().formats;
    REQUIRE(plan::writeFile(plan, house));
    const std::string bytes = testing::slurp(house);
    CHECK(catalogue::readLibrary(house)->plates.size() == 3);
    CHECK_FALSE(catalogue::writeLibrary(sample(), house));
    CHECK(testing::slurp(house) == bytes);
}

TEST_CASE("keys that this version does not know survive in the library's file") {
    const fs::path file = testing::freshFolder("library") / "library.json";
    std::ofstream(file) << R"({"gangway": 1, "shelf": {"a": 1}, "library": [{"id": "x", "name": "X",
        "format": "round-71", "modules": ["socket-f"], "price": 3}]})";
    const auto read = catalogue::readLibrary(file);
    REQUIRE(read);
    REQUIRE(catalogue::writeLibrary(withPlate(*read, stored("Y", "", {"tv"}), {}), file));
    CHECK_THAT(testing::slurp(file), Catch::Contains("\"shelf\"") && Catch::Contains("\"price\": 3"));
}

TEST_CASE("a plate goes into the library without its place and comes out whole") {
    plan::Plate plate = plateOf("rect-86", {"socket-g", "data-rj45"}, 2);
    plate.id = "p1";
    plate.tag = "K-04";
    plate.room = "kitchen";
    plate.host.wall = "A";
    plate.host.u_mm = 1200;
    plate.finish = "brass";
    plate.modules[0].label = "kettle";
    plate.box_depth_mm = 47;
    plate.barrier = true;
    plate.direction = plan::Direction::Vertical;
    const auto out = catalogue::fromLibrary(catalogue::libraryPlate(plate, "Kettle", "kitchens"));
    CHECK(out.id.empty());
    CHECK(out.room.empty());
    CHECK(out.host == plan::Host{});
    CHECK(out.format == "rect-86");
    CHECK(out.gangs == 2);
    CHECK(out.finish == "brass");
    CHECK(out.modules[0].label == "kettle");
    CHECK(out.box_depth_mm == 47);
    CHECK(out.barrier);
    CHECK(out.direction == plan::Direction::Vertical);
}

TEST_CASE("plates are added under a free id, replaced by id and removed with formats nobody uses") {
    Library library = sample();
    library = withPlate(library, stored("Desk, left", "work", {"tv"}), {});
    CHECK(library.plates.back().id == "desk-left-2");
    plan::LibraryPlate edited = *findPlate(library, "desk-left");
    edited.name = "Desk, near the window";
    library = withPlate(library, edited, {});
    CHECK(library.plates.size() == 4);
    CHECK(library.plates[0].name == "Desk, near the window");
    library = withoutPlate(library, "wide-desk");
    CHECK(library.plates.size() == 3);
    CHECK(library.formats.empty());
    CHECK(findPlate(library, "wide-desk") == nullptr);
}

TEST_CASE("search wants every word, names first") {
    const Library library = sample();
    CHECK(catalogue::categories(library) == std::vector<std::string>{"bedrooms", "work"});
    CHECK(namesOf(search(library, "", "")) == std::vector<std::string>{"Bedside", "Desk, left", "Wide desk"});
    CHECK(namesOf(search(library, "", "work")) == std::vector<std::string>{"Desk, left", "Wide desk"});
    CHECK(namesOf(search(library, "DESK", "")) == std::vector<std::string>{"Desk, left", "Wide desk"});
    CHECK(namesOf(search(library, "desk wide", "")) == std::vector<std::string>{"Wide desk"});
    CHECK(namesOf(search(library, "rj45", "")) == std::vector<std::string>{"Desk, left"});
    CHECK(namesOf(search(library, "bed", "")) == std::vector<std::string>{"Bedside"});
    CHECK(search(library, "desk bathroom", "").empty());
    CHECK(search(library, "desk", "bedrooms").empty());
    // "side" is in the middle of a name; a plate whose category starts with it comes behind that.
    const Library more = withPlate(library, stored("Lamp", "side tables", {"socket-f"}), {});
    CHECK(namesOf(search(more, "side", "")) == std::vector<std::string>{"Bedside", "Lamp"});
}

TEST_CASE("an export holds the chosen plates with their formats, an import adds them once") {
    const fs::path file = testing::freshFolder("library") / "for-a-colleague.json";
    REQUIRE(catalogue::writeLibrary(selection(sample(), {"wide-desk"}), file));
    const Library other = *catalogue::readLibrary(file);
    CHECK(other.plates.size() == 1);
    CHECK(other.formats.size() == 1);
    const Library mine = merged(Library{}, other);
    CHECK(mine.plates[0].id == "wide-desk");
    CHECK(mine.formats[0].id == "hall-60");
    CHECK(merged(mine, other).plates.size() == 1);
    CHECK(merged(mine, other).formats.size() == 1);
}

TEST_CASE("an import never changes what is there: other plates and formats by the same id get free ones") {
    const Library mine =
        catalogue::withPlate({}, stored("Wide desk", "work", {"tv"}, "hall-60"), {ownFormat("hall-60", 80)});
    const Library both = merged(mine, sample());
    REQUIRE(both.plates.size() == 4);
    CHECK(both.plates[0].modules[0].type == "tv");
    CHECK(both.plates[0].format == "hall-60");
    CHECK(both.plates[3].id == "wide-desk-2");
    CHECK(both.plates[3].format == "hall-60-2");
    REQUIRE(both.formats.size() == 2);
    CHECK(both.formats[0].pitch_mm == 80);
    CHECK(both.formats[1].pitch_mm == 75);
}

TEST_CASE("a plan that a plate was embedded in composes it without the library") {
    const Library library = sample();
    plan::Plan plan;
    const auto add = [&](const std::string& id) {
        const auto embedding = catalogue::embed(plan, *findPlate(library, id), library.formats);
        plan.library.insert(plan.library.end(), embedding.library.begin(), embedding.library.end());
        plan.formats.insert(plan.formats.end(), embedding.formats.begin(), embedding.formats.end());
        return embedding.plate;
    };
    const plan::Plate plate = add("wide-desk");
    CHECK(plan.library.size() == 1);
    CHECK(plan.formats.size() == 1);
    add("wide-desk");
    CHECK(plan.library.size() == 1); // once is enough
    CHECK(plan.formats.size() == 1);
    const auto elsewhere = plan::read(plan::write(plan));
    REQUIRE(elsewhere);
    const auto composed = catalogue::compose(catalogue::withOwn(shippedCatalogue(), elsewhere->plan), plate);
    CHECK(composed.width_mm == 82);
    CHECK(composed.problems.empty());
}

TEST_CASE("embedding gives way to a format and a plate that the plan has under the same id") {
    const Library library = sample();
    plan::Plan plan;
    plan.formats = {ownFormat("hall-60", 80)};
    plan.library = {stored("Another", "", {"tv"})};
    plan.library[0].id = "wide-desk";
    const auto embedding = catalogue::embed(plan, *findPlate(library, "wide-desk"), library.formats);
    REQUIRE(embedding.formats.size() == 1);
    CHECK(embedding.formats[0].id == "hall-60-2");
    CHECK(embedding.plate.format == "hall-60-2");
    REQUIRE(embedding.library.size() == 1);
    CHECK(embedding.library[0].id == "wide-desk-2");
    CHECK(embedding.library[0].format == "hall-60-2");
}

TEST_CASE("the user's library is where the XDG Base Directory Specification puts data") {
    const auto with = [](const char* data, const char* home) {
        setenv("XDG_DATA_HOME", data, 1);
        setenv("HOME", home, 1);
        return catalogue::userLibraryFile();
    };
    const std::string home_before = std::getenv("HOME") ? std::getenv("HOME") : "";
    CHECK(with("/data", "/home/d") == "/data/gangway/library.json");
    CHECK(with("", "/home/d") == "/home/d/.local/share/gangway/library.json");
    CHECK(with("relative", "/home/d") ==
          "/home/d/.local/share/gangway/library.json"); // to be ignored: the spec
    CHECK(with("", "").empty());
    unsetenv("XDG_DATA_HOME");
    setenv("HOME", home_before.c_str(), 1);
}
