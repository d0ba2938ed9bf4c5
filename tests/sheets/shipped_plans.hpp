// The plans that people see first: the demo house and the bungalow.
#pragma once

#include "two_rooms.hpp"

#include <map>
#include <vector>

namespace gangway::test {

inline const plan::Plan& readPlan(const std::string& file) {
    static std::map<std::string, plan::Plan> plans;
    const auto known = plans.find(file);
    if (known != plans.end()) return known->second;
    auto read = plan::readFile(file);
    if (!read) throw std::runtime_error("cannot read " + file);
    return plans.emplace(file, std::move(read->plan)).first->second;
}

inline std::vector<const plan::Plan*> shippedPlans() {
    return {&readPlan(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json"),
            &readPlan(std::string(GANGWAY_TESTS_DIR) + "/fixtures/bungalow/bungalow.plan.json")};
}

/// These and the two rooms.
inline std::vector<const plan::Plan*> allPlans() {
    auto all = shippedPlans();
    all.push_back(&twoRooms());
    return all;
}

/// The sheets of each, drawn once.
inline const drawing::Drawing& sheetsOfShipped(const plan::Plan& plan) {
    static std::map<const plan::Plan*, drawing::Drawing> drawings;
    const auto known = drawings.find(&plan);
    if (known != drawings.end()) return known->second;
    return drawings.emplace(&plan, sheetsOf(plan)).first->second;
}

} // namespace gangway::test
