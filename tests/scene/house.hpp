// The small house that the stage's tests look at, read from its file.
#pragma once

#include "catalogue/catalogue.hpp"
#include "plan/io.hpp"
#include "scene/scene.hpp"

#include <catch2/catch.hpp>

#include <optional>
#include <string>

namespace house {

inline gangway::plan::Plan read(const std::string& name = "two-storeys.plan.json") {
    const auto result = gangway::plan::readFile(std::string(GANGWAY_TESTS_DIR) + "/scene/" + name);
    if (!result) {
        for (const gangway::plan::Diagnostic& problem : result.error()) {
            UNSCOPED_INFO(problem.line << ": " << problem.pointer << ": " << problem.message);
        }
        FAIL("the fixture " << name << " can't be read");
    }
    return result->plan;
}

inline const gangway::catalogue::Catalogue& catalogue() {
    static const auto loaded = gangway::catalogue::load(std::string(GANGWAY_ASSETS_DIR) + "/catalogue");
    if (!loaded) FAIL(loaded.error());
    return *loaded;
}

inline gangway::scene::Scene scene() {
    return gangway::scene::build(read(), catalogue());
}

/// Bounds of everything of one object.
struct Bounds {
    glm::vec3 low{1e30f};
    glm::vec3 high{-1e30f};
    glm::vec3 middle() const { return (low + high) * 0.5f; }
};
inline Bounds boundsOf(const gangway::scene::Scene& scene, const std::string& object) {
    Bounds bounds;
    for (const auto& part : scene.parts) {
        if (part.object != object) continue;
        bounds.low = glm::min(bounds.low, part.low);
        bounds.high = glm::max(bounds.high, part.high);
    }
    return bounds;
}

inline const gangway::plan::Room& room(const gangway::plan::Plan& plan, const std::string& id) {
    const auto* found = gangway::plan::findRoom(plan, id);
    REQUIRE(found != nullptr);
    return *found;
}

} // namespace house
