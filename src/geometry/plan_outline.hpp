// Furniture as it is seen from above.
#pragma once

#include "geometry/furniture.hpp"

namespace gangway::geometry {

/// The outline of one solid of a piece from above: the convex hull of its projection, house mm.
struct TopOutline {
    const plan::Furniture* piece = nullptr;
    std::vector<Vec2> hull_mm; ///< counter-clockwise
    double top_mm = 0;         ///< its highest point above FFL
};

/// One outline for each solid that has an area on plan, in the order of furnitureSolids().
std::vector<TopOutline> topOutlines(const plan::Furniture& piece, const std::filesystem::path& base = {});

/// Which way a stair goes up, along the middle of its flight on plan.
struct Rise {
    Vec2 foot_mm;
    Vec2 head_mm;
};
Rise stairRise(const plan::Furniture& stair);

} // namespace gangway::geometry
