// The fixture of the sheet tests: two small rooms with what elevations must cope with.
#pragma once

#include "plan/io.hpp"
#include "sheets/sheets.hpp"

#include <string>

namespace gangway::test {

inline const plan::Plan& twoRooms() {
    static const plan::Plan plan = [] {
        auto read = plan::readFile(std::string(GANGWAY_TESTS_DIR) + "/sheets/two-rooms.plan.json");
        std::string problems;
        if (!read)
            for (const auto& problem : read.error())
                problems += plan::toLine("two-rooms.plan.json", problem) + "\n";
        if (!read) throw std::runtime_error(problems);
        return read->plan;
    }();
    return plan;
}

inline const catalogue::Catalogue& shippedCatalogue() {
    static const catalogue::Catalogue catalogue = [] {
        auto loaded = catalogue::load(std::string(GANGWAY_ASSETS_DIR) + "/catalogue");
        if (!loaded) throw std::runtime_error(loaded.error());
        return *loaded;
    }();
    return catalogue;
}

inline drawing::Drawing sheetsOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::elevationSheets(plan, shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

inline sheets::Options oneWall(const std::string& room, const std::string& wall) {
    sheets::Options options;
    options.room = room;
    options.wall = wall;
    return options;
}

/// The first sheet of a room's wall.
inline drawing::Sheet sheetOf(const plan::Plan& plan, const std::string& room, const std::string& wall) {
    return sheetsOf(plan, oneWall(room, wall)).sheets.at(0);
}

} // namespace gangway::test
