// The built program and the plans its tests run on.
#pragma once

#include "support/run_command.hpp"

namespace gangway::testing {

inline const std::string kProgram = GANGWAY_BINARY;
inline const std::string kDemo = std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json";
inline const std::string kBungalow = std::string(GANGWAY_TESTS_DIR) + "/fixtures/bungalow/bungalow.plan.json";
inline const std::string kOneRoom = std::string(GANGWAY_TESTS_DIR) + "/fixtures/one-room.plan.json";

inline Ran call(const std::string& arguments) {
    return run("'" + kProgram + "' " + arguments);
}

inline bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace gangway::testing
