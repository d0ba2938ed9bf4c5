#include "geometry/convex_hull.hpp"

#include <algorithm>

namespace gangway::geometry {

using plan::Vec2;

// Andrew, Another efficient algorithm for convex hulls in two dimensions, Information Processing Letters 9
// (1979).
std::vector<Vec2> convexHull(std::vector<Vec2> points) {
    std::ranges::sort(points, [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    std::vector<Vec2> hull;
    const auto addChain = [&hull](auto first, auto last) {
        const std::size_t start = hull.size();
        for (auto p = first; p != last; ++p) {
            while (hull.size() >= start + 2 &&
                   cross(hull.back() - hull[hull.size() - 2], *p - hull[hull.size() - 2]) <= 0)
                hull.pop_back();
            hull.push_back(*p);
        }
        hull.pop_back();
    };
    addChain(points.begin(), points.end());
    addChain(points.rbegin(), points.rend());
    return hull;
}

} // namespace gangway::geometry
