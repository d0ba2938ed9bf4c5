// The catalogue that ships with the program, read once for all tests of this folder.
#pragma once

#include "catalogue/catalogue.hpp"

#include <catch2/catch.hpp>

inline const gangway::catalogue::Catalogue& shippedCatalogue() {
    static const auto catalogue =
        gangway::catalogue::load(std::filesystem::path(GANGWAY_ASSETS_DIR) / "catalogue");
    if (!catalogue) FAIL(catalogue.error());
    return *catalogue;
}

inline gangway::plan::Plate plateOf(const std::string& format, const std::vector<std::string>& modules,
                                    int gangs = 0) {
    gangway::plan::Plate plate;
    plate.format = format;
    plate.gangs = gangs;
    for (const std::string& type : modules)
        plate.modules.push_back({type, "", "", {}});
    return plate;
}
