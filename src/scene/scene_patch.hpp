// Changes of a plan that touch single objects only: what changed, and the small piece of scene that replaces
// what was drawn of them, so that dragging one plate costs what that plate costs.
#pragma once

#include "geometry/house_index.hpp"
#include "scene/scene.hpp"

#include <optional>

namespace gangway::scene {

/// Objects to be drawn anew, by id: changed ones, new ones, and ones that are gone.
struct Change {
    std::vector<std::string> plates;
    std::vector<std::string> luminaires;
    std::vector<std::string> furniture;
    bool empty() const { return plates.empty() && luminaires.empty() && furniture.empty(); }
    bool operator==(const Change&) const = default;
};

/// What has to be drawn anew to get from one plan to the other; what hangs on moved furniture is in it. Only
/// what is seen counts: a plate's purpose does not. nullopt when rooms, openings, storeys or stairs differ:
/// then only a whole build() will do. A glTF file that changed on disk under the same name is not noticed.
std::optional<Change> changeBetween(const plan::Plan& before, const plan::Plan& after);

struct ScenePatch {
    enum class Kind { Plate, Luminaire, Furniture };
    struct Object {
        Kind kind = Kind::Plate;
        std::string id;
        auto operator<=>(const Object&) const = default;
    };
    std::vector<Object> objects; ///< all that was drawn of these goes, lights too
    Scene drawn;                 ///< what is drawn of them now; indices count from this scene's own vertices
};

/// The patch that brings the scene of an earlier plan to `house`. What build() would draw of the named
/// objects is in it, the same to the last bit; objects that the plan does not hold any more just go.
[[nodiscard]] ScenePatch patchFor(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                  const Change& change, const std::filesystem::path& base = {});
/// The same, for a plan of which no index is at hand.
[[nodiscard]] ScenePatch patchFor(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                  const Change& change, const std::filesystem::path& base = {});

} // namespace gangway::scene
