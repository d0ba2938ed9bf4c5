// A quick answer to "can this piece be there at all?", before its solids are made; inside geometry/ only.
#pragma once

#include "geometry/frames.hpp"

namespace gangway::geometry {

struct Bounds {
    Vec3 low{1e300, 1e300, 1e300};
    Vec3 high{-1e300, -1e300, -1e300};
    void take(Vec3 p);
    bool empty() const { return low.x > high.x; }
};

/// Bounds, in a frame, that hold every solid of a parametric piece, with room to spare; empty for a glTF
/// piece, whose size only its file knows.
Bounds roughBounds(const plan::Furniture& piece, const Frame& frame);

} // namespace gangway::geometry
