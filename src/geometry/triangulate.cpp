// Ear clipping of polygons with holes. Holes are joined to the outline by bridges first.
// Eberly, Triangulation by Ear Clipping (Geometric Tools, 2002, revised 2015).
#include "geometry/walls.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <span>
#include <utility>

namespace gangway::geometry {
namespace {

using Ring = std::vector<std::uint32_t>;

double turn(Vec2 a, Vec2 b, Vec2 c) {
    return cross(b - a, c - b);
}

/// Corners nearer to a line than this part of its length touch it.
constexpr double kTouch = 1e-9;

/// Inside a counter-clockwise triangle or on its border, by `touch` of a side's length.
bool inTriangle(Vec2 p, Vec2 a, Vec2 b, Vec2 c, double touch) {
    const auto leftOf = [&](Vec2 from, Vec2 to) {
        const Vec2 side = to - from;
        const double size = std::max(length(side), 1.0);
        return cross(side, p - from) >= -touch * size * size;
    };
    return leftOf(a, b) && leftOf(b, c) && leftOf(c, a);
}

class Clipper {
public:
    explicit Clipper(std::vector<Vec2> points) : points_(std::move(points)) {}

    Ring ring(std::size_t first, std::size_t count, bool counter_clockwise) const {
        Ring made(count);
        std::iota(made.begin(), made.end(), static_cast<std::uint32_t>(first));
        const std::vector<Vec2> corners(points_.begin() + static_cast<std::ptrdiff_t>(first),
                                        points_.begin() + static_cast<std::ptrdiff_t>(first + count));
        if ((signedArea(corners) > 0) != counter_clockwise) std::ranges::reverse(made);
        return made;
    }

    /// Right end of a hole: of several corners furthest right the highest, so that holes in a column have an
    /// order too.
    std::pair<double, double> rightEnd(const Ring& hole) const {
        return place(std::ranges::max(hole, {}, [&](std::uint32_t i) { return place(i); }));
    }

    /// Joins a hole to the ring by a bridge from its right end to the nearest corner of the ring that it can
    /// see past the ring itself, the hole and the holes still to come. There always is one when holes are
    /// joined from right to left: in any triangulation of what is left some side leads from that end to a
    /// corner further right, and those are all in the ring.
    void bridge(Ring& ring, Ring hole, std::span<const Ring> to_come) const {
        const auto right_most = std::ranges::max_element(hole, {}, [&](std::uint32_t i) { return place(i); });
        std::rotate(hole.begin(), right_most, hole.end());
        const std::size_t at = visibleFrom(ring, hole, to_come);
        Ring joined(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(at) + 1);
        joined.insert(joined.end(), hole.begin(), hole.end());
        joined.push_back(hole.front());
        joined.insert(joined.end(), ring.begin() + static_cast<std::ptrdiff_t>(at), ring.end());
        ring = std::move(joined);
    }

    std::vector<std::array<std::uint32_t, 3>> clip(Ring ring) const {
        std::vector<std::array<std::uint32_t, 3>> triangles;
        std::size_t at = 0;
        while (ring.size() > 3) {
            const std::size_t ear = findEar(ring, at);
            const std::size_t n = ring.size();
            const std::array<std::uint32_t, 3> t{ring[(ear + n - 1) % n], ring[ear], ring[(ear + 1) % n]};
            if (turn(points_[t[0]], points_[t[1]], points_[t[2]]) > 0) triangles.push_back(t);
            ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(ear));
            at = ear; // the next corner, so that ears are taken round the ring and slivers are fewer
        }
        if (ring.size() == 3 && turn(points_[ring[0]], points_[ring[1]], points_[ring[2]]) > 0)
            triangles.push_back({ring[0], ring[1], ring[2]});
        return triangles;
    }

private:
    std::pair<double, double> place(std::uint32_t i) const { return {points_[i].x, points_[i].y}; }

    std::size_t visibleFrom(const Ring& ring, const Ring& hole, std::span<const Ring> to_come) const {
        const Vec2 from = points_[hole.front()];
        std::vector<std::size_t> order(ring.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::sort(order, {},
                          [&](std::size_t i) { return std::pair(length(points_[ring[i]] - from), i); });
        for (const std::size_t i : order) {
            const Vec2 to = points_[ring[i]];
            if (!opensTowards(ring, i, from) || !opensTowards(hole, 0, to) || blocked(ring, from, to) ||
                blocked(hole, from, to))
                continue;
            if (std::ranges::none_of(to_come, [&](const Ring& other) { return blocked(other, from, to); }))
                return i;
        }
        return order.front();
    }

    /// Whether an edge of a ring crosses or touches a line, edges that share an end with it aside.
    bool blocked(const Ring& ring, Vec2 from, Vec2 to) const {
        const double near = kTouch * std::max(length(to - from), 1.0);
        const auto sideOf = [&](Vec2 a, Vec2 b, Vec2 p) {
            const double side = cross(b - a, p - a) / std::max(length(b - a), kTouch);
            return std::abs(side) <= near ? 0 : (side > 0 ? 1 : -1);
        };
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = points_[ring[i]];
            const Vec2 b = points_[ring[(i + 1) % ring.size()]];
            if (a == from || a == to || b == from || b == to) continue;
            if (std::max(a.x, b.x) < std::min(from.x, to.x) - near ||
                std::min(a.x, b.x) > std::max(from.x, to.x) + near ||
                std::max(a.y, b.y) < std::min(from.y, to.y) - near ||
                std::min(a.y, b.y) > std::max(from.y, to.y) + near)
                continue;
            if (sideOf(from, to, a) * sideOf(from, to, b) <= 0 && sideOf(a, b, from) * sideOf(a, b, to) <= 0)
                return true;
        }
        return false;
    }

    /// Whether a point lies within the inner angle at a corner and on neither of its sides. Where bridges
    /// doubled a corner this tells which of the two sees the point; a bridge along a side would run over
    /// another one.
    bool opensTowards(const Ring& ring, std::size_t i, Vec2 to) const {
        const std::size_t n = ring.size();
        const Vec2 here = points_[ring[i]];
        const Vec2 before = here - points_[ring[(i + n - 1) % n]];
        const Vec2 after = points_[ring[(i + 1) % n]] - here;
        const Vec2 out = to - here;
        const auto isLeftOf = [&](Vec2 side) {
            return cross(side, out) > kTouch * length(side) * length(out);
        };
        const double turned = cross(before, after);
        const bool convex = turned > 0 || (turned == 0 && dot(before, after) > 0);
        return convex ? isLeftOf(before) && isLeftOf(after) : isLeftOf(before) || isLeftOf(after);
    }

    struct Corner {
        Vec2 before, here, after;
    };
    Corner corner(const Ring& ring, std::size_t i) const {
        const std::size_t n = ring.size();
        return {points_[ring[(i + n - 1) % n]], points_[ring[i]], points_[ring[(i + 1) % n]]};
    }

    /// Whether a corner has no area to speak of: it lies on the line between its neighbours, or they lie on
    /// one line from it.
    static bool flat(const Corner& c, double touch) {
        const double size = std::max({length(c.here - c.before), length(c.after - c.here), 1.0});
        return std::abs(turn(c.before, c.here, c.after)) <= touch * size * size;
    }

    /// Whether a corner can be cut off: it turns left, and no other corner lies in the triangle or, by
    /// `touch` of the length of a side, on it.
    bool isEar(const Ring& ring, std::size_t i, double touch) const {
        const Corner c = corner(ring, i);
        if (turn(c.before, c.here, c.after) <= 0 || flat(c, touch)) return false;
        return std::ranges::none_of(ring, [&](std::uint32_t other) {
            const Vec2 p = points_[other];
            return p != c.before && p != c.here && p != c.after &&
                   inTriangle(p, c.before, c.here, c.after, touch);
        });
    }

    /// The next ear from `start` on. Corners on one line that rounding moved off it make no ears; where that
    /// leaves none, a flat corner is dropped, then an ear that others touch, then the corner that turns most,
    /// so that clipping always ends.
    std::size_t findEar(const Ring& ring, std::size_t start) const {
        const std::size_t n = ring.size();
        for (std::size_t k = 0; k < n; ++k)
            if (isEar(ring, (start + k) % n, kTouch)) return (start + k) % n;
        for (std::size_t i = 0; i < n; ++i)
            if (flat(corner(ring, i), kTouch)) return i;
        std::size_t best = 0;
        double best_turn = -std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < n; ++i) {
            if (isEar(ring, i, 0)) return i;
            const Corner c = corner(ring, i);
            const double t = turn(c.before, c.here, c.after);
            if (t <= best_turn) continue;
            best_turn = t;
            best = i;
        }
        return best;
    }

    std::vector<Vec2> points_;
};

} // namespace

std::vector<std::array<std::uint32_t, 3>> triangulate(const std::vector<Vec2>& outline,
                                                      const std::vector<std::vector<Vec2>>& holes) {
    if (outline.size() < 3 || signedArea(outline) == 0) return {};
    std::vector<Vec2> points = outline;
    for (const auto& hole : holes)
        points.insert(points.end(), hole.begin(), hole.end());
    const Vec2 shift = outline.front(); // clipping near zero keeps the digits of houses far away
    for (Vec2& p : points)
        p = p - shift;

    const Clipper clipper(points);
    Ring ring = clipper.ring(0, outline.size(), true);
    std::vector<Ring> inner;
    std::size_t first = outline.size();
    for (const auto& hole : holes) {
        if (hole.size() >= 3 && signedArea(hole) != 0)
            inner.push_back(clipper.ring(first, hole.size(), false));
        first += hole.size();
    }
    std::ranges::sort(inner, std::ranges::greater{},
                      [&](const Ring& hole) { return std::pair(clipper.rightEnd(hole), hole.front()); });
    for (std::size_t i = 0; i < inner.size(); ++i)
        clipper.bridge(ring, inner[i], std::span(inner).subspan(i + 1));
    return clipper.clip(ring);
}

} // namespace gangway::geometry
