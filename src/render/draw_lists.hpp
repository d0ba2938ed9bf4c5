// What of the scene is drawn for a view, in which pass.
#pragma once

#include "render/lens.hpp"
#include "render/scene_buffers.hpp"
#include "render/visibility.hpp"

namespace gangway::render {

inline constexpr int kPatterns = 6;

struct DrawLists {
    std::array<DrawList, kPatterns> solid; ///< by procedural pattern, near ones first
    DrawList floor_lines;
    DrawList ghosts; ///< far ones first
    DrawList glass;
    DrawList selected;
    DrawList hovered;
    glm::vec3 selected_low{0}, selected_high{0};
    glm::vec3 hovered_low{0}, hovered_high{0};
};

/// Leaves out what lies outside the picture or is smaller than `least_pixels` in it.
DrawLists makeDrawLists(const PartIndex& index, const std::vector<Shown>& shown, const View& view,
                        const Lens& lens, float least_pixels);

} // namespace gangway::render
