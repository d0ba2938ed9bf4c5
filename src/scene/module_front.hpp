// The front of one module as levels cut into and standing on each other. Inside scene only.
#pragma once

#include "catalogue/catalogue.hpp"
#include "scene/solids.hpp"

#include <span>
#include <vector>

namespace gangway::scene::detail {

/// A shape of a front with its place over the host's surface.
struct FrontLevel {
    enum class Form {
        Base,   ///< the module's own face
        Raised, ///< stands on its parent
        Sunk,   ///< a recess cut into its parent
        Flat    ///< painted on its parent
    };
    catalogue::FrontShape::Role role = catalogue::FrontShape::Role::Cap;
    Form form = Form::Base;
    Loop outline; ///< empty for strokes
    std::vector<Vec2> stroke;
    Level level;
    std::size_t parent = 0; ///< the base is its own parent
    bool round = false;     ///< shade its side as a cylinder
};

/// Room a module has in its plate, mm; z over the host's surface.
struct FrontSpace {
    Vec2 centre;
    double width = 0;
    double height = 0;
    double face_z = 0;  ///< the frame's face
    double floor_z = 0; ///< nothing may be deeper
};

/// The levels of a front, the base first, each after its parent. An empty front gives a plain cap.
std::vector<FrontLevel> frontLevels(std::span<const catalogue::FrontShape> front, const FrontSpace& space);

} // namespace gangway::scene::detail
