#include "shipped_catalogue.hpp"

#include "drawing/symbols.hpp"

#include <algorithm>

using namespace gangway;

TEST_CASE("the shipped catalogue loads whole") {
    CHECK(shippedCatalogue().problems == std::vector<std::string>{});
}

TEST_CASE(
    "every shipped module is right in at least one shipped format with its ordinary box, or a deep one") {
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id);
        CHECK(std::ranges::any_of(shippedCatalogue().formats, [&](const auto& format) {
            auto plate = plateOf(format.id, {module.id});
            if (!format.depths_mm.empty()) plate.box_depth_mm = std::ranges::max(format.depths_mm);
            return catalogue::compose(shippedCatalogue(), plate).problems.empty();
        }));
    }
}

TEST_CASE("every module's plan symbol is one that can be drawn") {
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id << ": " << module.symbol);
        CHECK(std::ranges::find(drawing::symbolKinds(), module.symbol, &drawing::SymbolKind::id) !=
              drawing::symbolKinds().end());
    }
}

TEST_CASE("socket outlets carry the rated current of their standard") {
    // From memory: CEE 7 (E, F) 16 A, BS 1363 13 A, NEMA 5-15 15 A, CEI 23-50 small plug 10 A, SN 441011 10
    // A, AS/NZS 3112 10 A.
    const std::pair<const char*, double> rated_a[] = {
        {"socket-f", 16},      {"socket-e", 16}, {"socket-g", 13}, {"socket-g-double", 13}, {"socket-b", 15},
        {"socket-b-gfci", 15}, {"socket-l", 10}, {"socket-j", 10}, {"socket-i", 10}};
    for (const auto& [id, current_a] : rated_a) {
        INFO(id);
        CHECK(shippedCatalogue().module(id)->rated_current_a == current_a);
        CHECK_THAT(shippedCatalogue().module(id)->source, Catch::Contains("rated current: "));
    }
    CHECK(shippedCatalogue().module("blank")->rated_current_a == 0);
    const auto& all = shippedCatalogue();
    CHECK(catalogue::moduleFor(*all.module("switch-1way"), *all.format("us-device")).rated_current_a == 15);
}

TEST_CASE("the list of modules has what plates are made of in every country of the packs") {
    for (const char* id : {"socket-b-gfci", "socket-b-usb", "socket-e-usb", "socket-f-switched",
                           "socket-g-plain", "socket-g-double-usb", "socket-i-switched", "socket-i-double",
                           "satellite", "tv-satellite", "key-card", "switch-2circuit-2way", "pull-cord-2way"})
        CHECK(shippedCatalogue().module(id));
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id); // what is said in the name holds in the data, and the other way round
        CHECK(module.usb == (module.name.find("USB") != std::string::npos));
        CHECK(module.switched == (module.kind == catalogue::ModuleKind::Socket &&
                                  module.name.find(", switched") != std::string::npos));
    }
}

TEST_CASE("a switched socket outlet shows a rocker for each outlet") {
    for (const auto& module : shippedCatalogue().modules) {
        if (!module.switched) continue;
        INFO(module.id);
        CHECK(std::ranges::count(module.front, catalogue::FrontShape::Role::Rocker,
                                 &catalogue::FrontShape::role) == module.outlets);
    }
}

TEST_CASE("colours by number say that their values are from memory") {
    int numbered = 0;
    for (const auto& finish : shippedCatalogue().finishes) {
        if (!finish.id.starts_with("ral-")) continue;
        ++numbered;
        CHECK_THAT(finish.source, Catch::Contains("from memory"));
        CHECK_THAT(finish.name, Catch::StartsWith("RAL " + finish.id.substr(4)));
    }
    CHECK(numbered >= 6);
    CHECK(shippedCatalogue().finishes.front().id == "white");
}
