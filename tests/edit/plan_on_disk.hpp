// A small plan as a file, and a state folder of the test's own, so that no test touches the user's.
#pragma once

#include "edit/edit.hpp"
#include "edit/plate_edits.hpp"
#include "plan/io.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <iterator>

inline const std::string kHouse = R"({
  "gangway": 1,
  "storeys": [ { "id": "ground", "name": "Ground floor", "plateFormat": "round-71" } ],
  "rooms": [ { "id": "kitchen", "letter": "K", "name": "Kitchen", "storey": "ground",
               "outline": [[0, 4200], [6200, 4200], [6200, 0], [0, 0]] } ],
  "plates": [ { "id": "k4", "tag": "K-04", "room": "kitchen", "wall": "A", "setOut": 1500, "height": 1150,
                "modules": ["socket-f"] },
              { "id": "k5", "tag": "K-05", "room": "kitchen", "wall": "C", "setOut": 900, "height": 300,
                "modules": ["socket-f"] },
              { "id": "k6", "room": "kitchen", "wall": "C", "setOut": 1900, "height": 300, "modules": ["socket-f"] } ]
}
)";

/// A folder made anew for a test, with the plan in it and $XDG_STATE_HOME pointing into it.
struct Workplace {
    std::filesystem::path folder;
    std::filesystem::path file;

    explicit Workplace(const std::string& name)
        : folder(std::filesystem::path(GANGWAY_OUT_DIR) / "edit" / name), file(folder / "house.plan.json") {
        std::filesystem::remove_all(folder);
        std::filesystem::create_directories(folder);
        std::ofstream(file, std::ios::binary) << kHouse;
        setenv("XDG_STATE_HOME", (folder / "state").c_str(), 1);
    }
};

inline gangway::plan::Plan readPlan(const std::filesystem::path& file) {
    auto result = gangway::plan::readFile(file);
    if (!result) FAIL(gangway::plan::toLine(file.string(), result.error().front()));
    return std::move(result->plan);
}

inline gangway::edit::Document openDocument(const std::filesystem::path& file) {
    return gangway::edit::Document(readPlan(file), file);
}

inline std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}
