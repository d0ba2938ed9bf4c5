#include "edit/wall_marks.hpp"

#include "edit/wording.hpp"

#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>

namespace gangway::edit::detail {
namespace {

constexpr double kAtWall_mm = 400; ///< a chair in the middle of the room is no reference
constexpr double kLow_mm = 50;     ///< nobody lines a plate up with a rug

WallMark markOf(const geometry::FaceHole& hole) {
    const plan::Opening& opening = *hole.opening;
    const double casing = hole.hosted_here ? opening.casing_mm : opening.casing_beyond_mm;
    return {opening.name.empty() ? std::string(openingWord(opening.kind)) : opening.name,
            hole.left_mm - casing,
            hole.right_mm + casing,
            hole.bottom_mm,
            hole.top_mm + casing,
            &opening,
            nullptr};
}

WallMark markOf(const geometry::Silhouette& seen) {
    const plan::Furniture& piece = *seen.piece;
    WallMark mark{piece.name.empty() ? piece.kind : piece.name, 1e300,   -1e300, piece.bottom_mm,
                  piece.bottom_mm + piece.size.height_mm,       nullptr, &piece};
    for (const auto& hull : seen.hulls_mm)
        for (const plan::Vec2 p : hull) {
            mark.left_mm = std::min(mark.left_mm, p.x);
            mark.right_mm = std::max(mark.right_mm, p.x);
        }
    return mark;
}

} // namespace

std::vector<WallMark> wallMarks(const geometry::HouseIndex& house, const std::string& room_id,
                                const std::string& wall_id) {
    const plan::Room* room = house.room(room_id);
    const auto wall = room != nullptr ? plan::wallIndex(*room, wall_id) : std::nullopt;
    if (!wall) return {};
    std::vector<WallMark> marks;
    for (const auto& hole : geometry::faceHoles(house, {room_id, *wall}))
        marks.push_back(markOf(hole));
    for (const auto& seen : geometry::silhouettes(house, *room, *wall, kAtWall_mm))
        if (seen.piece->bottom_mm + seen.piece->size.height_mm >= kLow_mm && !seen.hulls_mm.empty())
            marks.push_back(markOf(seen));
    return marks;
}

HostExtents extentsOf(const geometry::Frame& frame, const plan::Host& host, const plan::Furniture* piece) {
    HostExtents extents{0, frame.length_mm, frame.height_mm};
    if (host.kind != plan::Host::Kind::Furniture || piece == nullptr || !isUpright(frame)) return extents;
    const double headboard = plan::furnitureValue(*piece, "headboardHeight");
    if (headboard <= 0) return extents;
    extents.top_mm = std::max(extents.top_mm, piece->bottom_mm + headboard);
    if (host.face != "front" && host.face != "back") return extents;
    const double beyond =
        std::max(0.0, (plan::furnitureValue(*piece, "headboardWidth") - frame.length_mm) / 2);
    extents.left_mm -= beyond;
    extents.right_mm += beyond;
    return extents;
}

bool sameHost(const plan::Host& a, const plan::Host& b) {
    return a.kind == b.kind && a.wall == b.wall && a.furniture == b.furniture && a.face == b.face;
}

bool isUpright(const geometry::Frame& frame) {
    return frame.v.z > 0.5;
}

const std::string& nameOf(const plan::Plate& plate) {
    return plate.tag.empty() ? plate.id : plate.tag;
}

} // namespace gangway::edit::detail
