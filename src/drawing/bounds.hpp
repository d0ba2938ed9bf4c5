// The upright rectangle an item's ink lies in: for picking on screen and for drawing only what shows.
#pragma once

#include "drawing/drawing.hpp"

namespace gangway::drawing {

struct Bounds {
    Pt low;
    Pt high;
    bool overlaps(const Bounds& other) const {
        return low.x <= other.high.x && other.low.x <= high.x && low.y <= other.high.y &&
               other.low.y <= high.y;
    }
    bool contains(Pt p) const { return p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y; }
};

/// In mm on paper, line widths included; an arc counts as its whole circle. An item with nothing to draw has
/// low above high and overlaps nothing.
Bounds bounds(const Primitive& primitive);

} // namespace gangway::drawing
