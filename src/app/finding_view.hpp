// The view that shows a finding: an eye inside its room, as square to the place as the room allows, with the
// bodies and what lies between them in the picture. Plain geometry, without the window.
#pragma once

#include "app/finding_place.hpp"
#include "scene/scene.hpp"

#include <filesystem>
#include <set>
#include <string>

namespace gangway::app {

struct FindingView {
    scene::Camera camera;
    /// Furniture and doors between the eye and the place, to be made see-through.
    std::set<std::string> before;
    bool found = false; ///< false: there is no place inside the room to see it from
};

struct FindingViewOptions {
    float aspect = 1.6F;             ///< of the picture, width by height
    std::vector<plan::Vec3> also_mm; ///< to be in the picture too: where a remedy would put the plate
    std::filesystem::path base;      ///< the plan's folder, for its glTF files
};

FindingView findingView(const geometry::HouseIndex& house, const FindingPlace& place,
                        const FindingViewOptions& options = {});

} // namespace gangway::app
