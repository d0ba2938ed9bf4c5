// Lines in the room as flat strips of pixels. Inside render only.
#pragma once

#include "render/lens.hpp"

#include <vector>

namespace gangway::render {

/// A corner of the two triangles round one straight piece of a line.
struct LineCorner {
    glm::vec3 place{0}; ///< normalised device coordinates
    glm::vec4 ends{0};  ///< of the piece, pixels, y up: x, y, x, y
    glm::vec4 look{0};  ///< colour as shown; half the width in pixels
};

/// All lines, dashes cut, what lies behind the eye left out; six corners a piece.
std::vector<LineCorner> lineCorners(const std::vector<Line>& lines, const Lens& lens, int width, int height);

} // namespace gangway::render
