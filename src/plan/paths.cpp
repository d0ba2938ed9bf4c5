#include "plan/paths.hpp"

#include <cstdlib>

namespace gangway::plan {

namespace {
std::filesystem::path folder(const char* variable, const char* name) {
    if (const char* value = std::getenv(variable); value != nullptr && *value != '\0') return value;
    return std::filesystem::path(GANGWAY_SOURCE_DIR) / name;
}
} // namespace

std::filesystem::path assetsFolder() {
    return folder("GANGWAY_ASSETS", "assets");
}
std::filesystem::path shadersFolder() {
    return folder("GANGWAY_SHADERS", "shaders");
}

} // namespace gangway::plan
