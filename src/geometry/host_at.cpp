#include "geometry/host_at.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::geometry {
namespace {

constexpr double kFacing = 0.7071; // cosine of 45 degrees
constexpr double kRim_mm = 1;      // play beyond a host's edges, for points that were rounded

/// The best host so far.
struct Nearest {
    std::optional<plan::Host> host;
    double distance_mm = std::numeric_limits<double>::max();

    void offer(plan::Host candidate, double off_mm) {
        if (std::abs(off_mm) > kOnHostMm || std::abs(off_mm) >= distance_mm) return;
        distance_mm = std::abs(off_mm);
        host = std::move(candidate);
    }
};

bool looksAlong(Vec3 face, Vec3 normal) {
    return dot(face, normal) > kFacing * length(normal);
}

bool between(double value, double low, double high) {
    return value >= low - kRim_mm && value <= high + kRim_mm;
}

plan::Host hostOf(plan::Host::Kind kind, Vec3 uvw) {
    plan::Host host;
    host.kind = kind;
    host.u_mm = uvw.x;
    host.v_mm = uvw.y;
    return host;
}

void offerWalls(Nearest& nearest, const plan::Room& room, Vec3 point_mm, Vec3 normal) {
    for (std::size_t i = 0; i < room.walls.size(); ++i) {
        const Frame frame = wallFrame(room, i);
        if (!looksAlong(frame.w, normal)) continue;
        const Vec3 uvw = toFrame(frame, point_mm);
        if (!between(uvw.x, 0, frame.length_mm) || !between(uvw.y, 0, frame.height_mm)) continue;
        plan::Host host = hostOf(plan::Host::Kind::Wall, uvw);
        host.wall = room.walls[i].id;
        nearest.offer(std::move(host), uvw.z);
    }
}

} // namespace

std::optional<plan::Host> hostAt(const HouseIndex& house, const std::string& room_id, Vec3 point_mm,
                                 Vec3 normal) {
    const plan::Room* room = house.room(room_id);
    if (room == nullptr) return std::nullopt;
    Nearest nearest;
    offerWalls(nearest, *room, point_mm, normal);
    const Vec2 on_plan{point_mm.x, point_mm.y};
    if (!insideRoom(*room, on_plan)) return nearest.host;
    const Vec3 uvw = toFrame(floorFrame(*room), point_mm);
    if (looksAlong({0, 0, 1}, normal)) nearest.offer(hostOf(plan::Host::Kind::Floor, uvw), point_mm.z);
    // A slope may be steep: its underside counts when it looks down at all.
    if (normal.z < 0 && !nearest.host)
        nearest.offer(hostOf(plan::Host::Kind::Ceiling, uvw), point_mm.z - ceilingHeightAt(*room, on_plan));
    return nearest.host;
}

std::optional<plan::Host> furnitureHostAt(const plan::Furniture& piece, Vec3 point_mm, Vec3 normal) {
    Nearest nearest;
    for (const char* face : {"front", "back", "left", "right", "top", "bottom"}) {
        const auto frame = furnitureFaceFrame(piece, face);
        if (!frame || !looksAlong(frame->w, normal)) continue;
        const Vec3 uvw = toFrame(*frame, point_mm);
        const double low = frame->v.z != 0 ? piece.bottom_mm : 0; // upright faces count v from FFL
        if (!between(uvw.x, 0, frame->length_mm) || !between(uvw.y, low, frame->height_mm)) continue;
        plan::Host host = hostOf(plan::Host::Kind::Furniture, uvw);
        host.furniture = piece.id;
        host.face = face;
        nearest.offer(std::move(host), uvw.z);
    }
    return nearest.host;
}

} // namespace gangway::geometry
