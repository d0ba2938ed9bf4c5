#include "checks/taut_string.hpp"

#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace gangway::checks {

using plan::Vec2;

namespace {
/// The string passes corners at this distance when it is asked what sees what, so that nothing touches.
constexpr double kHair = 1e-3;
/// Drawn as near as this, two things are meant to touch.
constexpr double kJoinMm = 20;
constexpr double kFar = std::numeric_limits<double>::infinity();

Vec2 nearestOn(Vec2 from, Vec2 to, Vec2 at) {
    const Vec2 along = to - from;
    const double squared = dot(along, along);
    if (squared == 0) return from;
    return from + along * std::clamp(dot(at - from, along) / squared, 0.0, 1.0);
}

bool touch(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    const double c_side = cross(b - a, c - a);
    const double d_side = cross(b - a, d - a);
    const double a_side = cross(d - c, a - c);
    const double b_side = cross(d - c, b - c);
    if (c_side == 0 && d_side == 0) return false; // along each other: neither is in the other's way
    return c_side * d_side <= 0 && a_side * b_side <= 0;
}

/// Into the room: at the right of a wall's way from corner to corner.
Vec2 inwards(const geometry::WallEdge& edge) {
    const Vec2 along = edge.to_mm - edge.from_mm;
    const double size = length(along);
    return size == 0 ? Vec2{} : Vec2{along.y / size, -along.x / size};
}

std::size_t edgeCount(const plan::Room& room) {
    std::size_t count = room.outline.size();
    for (const auto& column : room.columns)
        count += column.size();
    return count;
}

/// Corners that a string inside the room can lie round: those that look into it, and those of columns.
std::vector<Vec2> innerCorners(const plan::Room& room) {
    std::vector<Vec2> corners;
    const std::size_t count = room.outline.size();
    for (std::size_t i = 0; i < count; ++i) {
        const Vec2 before = room.outline[i] - room.outline[(i + count - 1) % count];
        const Vec2 after = room.outline[(i + 1) % count] - room.outline[i];
        if (cross(before, after) > 0) corners.push_back(room.outline[i]); // outlines are clockwise
    }
    for (const auto& column : room.columns)
        corners.insert(corners.end(), column.begin(), column.end());
    return corners;
}

void join(const plan::Room& room, std::vector<Partition>& partitions) {
    for (std::size_t i = 0; i < partitions.size(); ++i)
        for (Vec2* end : {&partitions[i].from_mm, &partitions[i].to_mm}) {
            Vec2 best = *end;
            double least = kJoinMm;
            const auto offer = [&](Vec2 from, Vec2 to) {
                const Vec2 near = nearestOn(from, to, *end);
                if (length(near - *end) > least) return;
                least = length(near - *end);
                best = near;
            };
            for (std::size_t wall = 0; wall < edgeCount(room); ++wall) {
                const auto edge = geometry::wallEdge(room, wall);
                offer(edge.from_mm, edge.to_mm);
            }
            for (std::size_t other = 0; other < partitions.size(); ++other)
                if (other != i) offer(partitions[other].from_mm, partitions[other].to_mm);
            *end = best;
        }
}
} // namespace

TautString::TautString(const plan::Room& room, std::vector<Vec2> from_mm, std::vector<Partition> partitions)
    : room_(&room), from_(std::move(from_mm)) {
    for (const Vec2 corner : from_)
        middle_ = middle_ + corner * (1.0 / static_cast<double>(from_.size()));
    auto corners = innerCorners(room);
    if (corners.empty() && partitions.empty()) return;
    join(room, partitions);
    for (const Partition& partition : partitions) {
        corners.push_back(partition.from_mm);
        corners.push_back(partition.to_mm);
    }
    for (std::size_t wall = 0; wall < edgeCount(room); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        partitions.push_back({edge.from_mm, edge.to_mm});
    }
    for (const Partition& partition : partitions) {
        const Vec2 along = partition.to_mm - partition.from_mm;
        if (length(along) == 0) continue;
        const Vec2 hair = along * (kHair / 2 / length(along));
        edges_.push_back({partition.from_mm - hair, partition.to_mm + hair});
    }
    for (const Vec2 corner : corners)
        addNodes(corner);
    measureNodes();
}

void TautString::addNodes(Vec2 corner_mm) {
    constexpr int kAround = 8;
    for (int i = 0; i < kAround; ++i) {
        const double angle_rad = 2 * std::numbers::pi * (i + 0.25) / kAround;
        const Vec2 at = corner_mm + Vec2{std::cos(angle_rad), std::sin(angle_rad)} * kHair;
        const bool free =
            geometry::insideRoom(*room_, at) && std::ranges::none_of(edges_, [&](const auto& edge) {
                return length(nearestOn(edge.from_mm, edge.to_mm, at) - at) < kHair / 8;
            });
        if (free) nodes_.push_back({at, corner_mm, kFar});
    }
}

/// Shortest ways from node to node (Dijkstra), begun with those that see the outline.
void TautString::measureNodes() {
    for (Node& node : nodes_)
        node.string_mm = straight(node.at_mm, node.corner_mm);
    std::vector<bool> done(nodes_.size(), false);
    for (std::size_t round = 0; round < nodes_.size(); ++round) {
        std::size_t next = nodes_.size();
        for (std::size_t i = 0; i < nodes_.size(); ++i)
            if (!done[i] && (next == nodes_.size() || nodes_[i].string_mm < nodes_[next].string_mm)) next = i;
        if (nodes_[next].string_mm == kFar) return;
        done[next] = true;
        for (std::size_t i = 0; i < nodes_.size(); ++i) {
            const double way = nodes_[next].string_mm + length(nodes_[i].corner_mm - nodes_[next].corner_mm);
            if (!done[i] && way < nodes_[i].string_mm && sees(nodes_[next].at_mm, nodes_[i].at_mm))
                nodes_[i].string_mm = way;
        }
    }
}

bool TautString::sees(Vec2 from_mm, Vec2 to_mm) const {
    return std::ranges::none_of(
        edges_, [&](const Partition& edge) { return touch(from_mm, to_mm, edge.from_mm, edge.to_mm); });
}

/// To the outline in one line of sight; infinite when something stands before every part of it.
double TautString::straight(Vec2 seen_from_mm, Vec2 corner_mm) const {
    double least = kFar;
    for (std::size_t i = 0; i < from_.size(); ++i) {
        const Vec2 near = nearestOn(from_[i], from_[(i + 1) % from_.size()], corner_mm);
        const double size = length(middle_ - near);
        const Vec2 seen = size == 0 ? near : near + (middle_ - near) * std::min(1.0, 4 * kHair / size);
        if (length(near - corner_mm) < least && (edges_.empty() || sees(seen_from_mm, seen)))
            least = length(near - corner_mm);
    }
    return least;
}

/// A place on a wall, a hair into the room.
Vec2 TautString::offWalls(Vec2 at_mm) const {
    Vec2 off = at_mm;
    for (std::size_t wall = 0; wall < edgeCount(*room_); ++wall) {
        const auto edge = geometry::wallEdge(*room_, wall);
        if (length(nearestOn(edge.from_mm, edge.to_mm, at_mm) - at_mm) < kHair)
            off = off + inwards(edge) * (2 * kHair);
    }
    return off;
}

double TautString::to(Vec2 at_mm) const {
    if (from_.size() > 2 && geometry::insidePolygon(from_, at_mm)) return 0;
    if (edges_.empty()) return straight(at_mm, at_mm);
    const Vec2 eye = offWalls(at_mm);
    double least = straight(eye, at_mm);
    for (const Node& node : nodes_) {
        const double way = node.string_mm + length(node.corner_mm - at_mm);
        if (way < least && sees(eye, node.at_mm)) least = way;
    }
    return least;
}

} // namespace gangway::checks
