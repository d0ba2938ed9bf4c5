// Frames of walls, floors, ceilings and furniture faces, and the way between them and the house.
#include "geometry/frames.hpp"

#include "geometry/ceiling.hpp"
#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

struct Bounds {
    Vec2 low;
    Vec2 high;
};

Bounds boundsOf(const std::vector<Vec2>& polygon) {
    if (polygon.empty()) return {};
    Bounds bounds{polygon.front(), polygon.front()};
    for (const Vec2 p : polygon) {
        bounds.low = {std::min(bounds.low.x, p.x), std::min(bounds.low.y, p.y)};
        bounds.high = {std::max(bounds.high.x, p.x), std::max(bounds.high.y, p.y)};
    }
    return bounds;
}

/// A face of a box: the corner its u starts from as signs of the half sizes, and its axes.
struct BoxFace {
    const char* name;
    Vec3 corner;
    Vec3 u, v, w;
};

constexpr BoxFace kBoxFaces[] = {
    {"front", {-1, -1, 0}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}},
    {"back", {1, 1, 0}, {-1, 0, 0}, {0, 0, 1}, {0, 1, 0}},
    {"left", {-1, 1, 0}, {0, -1, 0}, {0, 0, 1}, {-1, 0, 0}},
    {"right", {1, -1, 0}, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}},
    {"top", {-1, -1, 1}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
    {"bottom", {1, -1, 0}, {-1, 0, 0}, {0, 1, 0}, {0, 0, -1}},
};

Vec3 turned(const plan::Furniture& piece, Vec3 direction) {
    return fromLocal(piece, direction) - fromLocal(piece, {0, 0, 0});
}

/// Unit axes of a turned piece without the rounding that its distance from the origin would bring.
Vec3 turnedAxis(const plan::Furniture& piece, Vec3 direction) {
    plan::Furniture at_origin;
    at_origin.turn_deg = piece.turn_deg;
    return turned(at_origin, direction);
}

std::expected<Frame, std::string> wallHostFrame(const plan::Room& room, const plan::Host& host) {
    const auto index = plan::wallIndex(room, host.wall);
    if (!index) return std::unexpected(fmt::format("room '{}' has no wall '{}'", room.id, host.wall));
    return wallFrame(room, *index);
}

std::expected<Frame, std::string> furnitureHostFrame(const plan::Furniture* piece, const plan::Host& host) {
    if (piece == nullptr) return std::unexpected(fmt::format("there is no furniture '{}'", host.furniture));
    const auto frame = furnitureFaceFrame(*piece, host.face);
    if (!frame)
        return std::unexpected(
            fmt::format("furniture '{}' has no face '{}'; give front, back, left, right, top or bottom",
                        host.furniture, host.face));
    return *frame;
}

std::expected<Frame, std::string> roomHostFrame(const plan::Room* room, const std::string& room_id,
                                                const plan::Host& host) {
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    if (host.kind == plan::Host::Kind::Wall) return wallHostFrame(*room, host);
    if (host.kind == plan::Host::Kind::Floor) return floorFrame(*room);
    // Under a slope the frame hangs at the height of the host's own point, so that w = 0 touches there.
    Frame frame = ceilingFrame(*room);
    frame.origin_mm.z =
        ceilingHeightAt(*room, {frame.origin_mm.x + host.u_mm, frame.origin_mm.y + host.v_mm});
    return frame;
}

} // namespace

Vec3 toHouse(const Frame& frame, Vec3 uvw_mm) {
    return frame.origin_mm + frame.u * uvw_mm.x + frame.v * uvw_mm.y + frame.w * uvw_mm.z;
}

Vec3 toFrame(const Frame& frame, Vec3 house_mm) {
    const Vec3 offset = house_mm - frame.origin_mm;
    return {dot(offset, frame.u), dot(offset, frame.v), dot(offset, frame.w)};
}

WallEdge wallEdge(const plan::Room& room, std::size_t wall_index) {
    const auto edgeOf = [](const std::vector<Vec2>& ring, std::size_t i) {
        return WallEdge{ring[i], ring[(i + 1) % ring.size()]};
    };
    if (wall_index < room.outline.size()) return edgeOf(room.outline, wall_index);
    wall_index -= room.outline.size();
    for (const auto& column : room.columns) {
        if (wall_index < column.size()) return edgeOf(column, wall_index);
        wall_index -= column.size();
    }
    return {};
}

Frame wallFrame(const plan::Room& room, std::size_t wall_index) {
    const WallEdge edge = wallEdge(room, wall_index);
    const Vec2 along = edge.to_mm - edge.from_mm;
    Frame frame;
    frame.length_mm = length(along);
    const Vec2 u = frame.length_mm > 0 ? along * (1 / frame.length_mm) : Vec2{1, 0};
    frame.origin_mm = {edge.from_mm.x, edge.from_mm.y, 0};
    frame.u = {u.x, u.y, 0};
    frame.v = {0, 0, 1};
    frame.w = {u.y, -u.x, 0}; // the room lies to the right of a clockwise edge
    for (const Vec2 corner : wallOutline(room, wall_index))
        frame.height_mm = std::max(frame.height_mm, corner.y);
    return frame;
}

Frame floorFrame(const plan::Room& room) {
    const Bounds bounds = boundsOf(room.outline);
    Frame frame;
    frame.origin_mm = {bounds.low.x, bounds.low.y, 0};
    frame.u = {1, 0, 0};
    frame.v = {0, 1, 0};
    frame.w = {0, 0, 1};
    frame.length_mm = bounds.high.x - bounds.low.x;
    frame.height_mm = bounds.high.y - bounds.low.y;
    return frame;
}

Frame ceilingFrame(const plan::Room& room) {
    Frame frame = floorFrame(room);
    for (std::size_t i = 0; i < room.outline.size(); ++i)
        frame.origin_mm.z = std::max(frame.origin_mm.z, cornerHeight(room, i));
    frame.w = {0, 0, -1};
    return frame;
}

std::optional<Frame> furnitureFaceFrame(const plan::Furniture& piece, const std::string& face) {
    const auto found = std::ranges::find(kBoxFaces, face, &BoxFace::name);
    if (found == std::end(kBoxFaces)) return std::nullopt;
    const Vec3 half{piece.size.width_mm / 2, piece.size.depth_mm / 2, 0};
    Frame frame;
    frame.origin_mm = fromLocal(
        piece, {found->corner.x * half.x, found->corner.y * half.y, found->corner.z * piece.size.height_mm});
    frame.u = turnedAxis(piece, found->u);
    frame.v = turnedAxis(piece, found->v);
    frame.w = turnedAxis(piece, found->w);
    const bool along_width = found->u.x != 0;
    frame.length_mm = along_width ? piece.size.width_mm : piece.size.depth_mm;
    frame.height_mm = piece.size.depth_mm;
    if (found->v.z != 0) { // heights on upright faces count from FFL, not from the piece's underside
        frame.origin_mm.z = 0;
        frame.height_mm = piece.bottom_mm + piece.size.height_mm;
    }
    return frame;
}

std::expected<Frame, std::string> hostFrame(const plan::Plan& plan, const std::string& room_id,
                                            const plan::Host& host) {
    if (host.kind == plan::Host::Kind::Furniture)
        return furnitureHostFrame(plan::findFurniture(plan, host.furniture), host);
    return roomHostFrame(plan::findRoom(plan, room_id), room_id, host);
}

std::expected<Frame, std::string> hostFrame(const HouseIndex& house, const std::string& room_id,
                                            const plan::Host& host) {
    if (host.kind == plan::Host::Kind::Furniture)
        return furnitureHostFrame(house.furniture(host.furniture), host);
    return roomHostFrame(house.room(room_id), room_id, host);
}

std::expected<Vec3, std::string> hostPoint(const plan::Plan& plan, const std::string& room_id,
                                           const plan::Host& host) {
    const auto frame = hostFrame(plan, room_id, host);
    if (!frame) return std::unexpected(frame.error());
    return toHouse(*frame, {host.u_mm, host.v_mm, 0});
}

std::expected<Vec3, std::string> hostPoint(const HouseIndex& house, const std::string& room_id,
                                           const plan::Host& host) {
    const auto frame = hostFrame(house, room_id, host);
    if (!frame) return std::unexpected(frame.error());
    return toHouse(*frame, {host.u_mm, host.v_mm, 0});
}

std::vector<Vec2> wallOutline(const plan::Room& room, std::size_t wall_index) {
    const WallEdge edge = wallEdge(room, wall_index);
    const double width = length(edge.to_mm - edge.from_mm);
    std::vector<double> parts = foldCrossings(room, edge.from_mm, edge.to_mm);
    std::ranges::reverse(parts);
    std::vector<Vec2> outline = {{0, 0}, {width, 0}};
    const bool on_outline = wall_index < room.outline.size();
    const auto heightAt = [&](double part) {
        return ceilingHeightAt(room, edge.from_mm + (edge.to_mm - edge.from_mm) * part);
    };
    outline.push_back(
        {width, on_outline ? cornerHeight(room, (wall_index + 1) % room.outline.size()) : heightAt(1)});
    for (const double part : parts)
        outline.push_back({width * part, heightAt(part)});
    outline.push_back({0, on_outline ? cornerHeight(room, wall_index) : heightAt(0)});
    return outline;
}

} // namespace gangway::geometry
