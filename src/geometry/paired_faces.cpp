// Which faces of rooms are the two sides of one wall, and which openings cut a face from either side.
#include "geometry/wall_build.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>
#include <tuple>

namespace gangway::geometry {
namespace {

constexpr double kParallelRad = 0.5 * std::numbers::pi / 180;
constexpr double kThicknessToleranceMm = 60;
constexpr double kLeastOverlapMm = 50;
/// Rooms drawn by hand may overlap by a hair.
constexpr double kOverlapSlackMm = 1;

double buildUp(const plan::Wall& wall) {
    double sum = 0;
    for (const plan::Course& course : wall.build_up)
        sum += course.thickness_mm;
    return sum;
}

const plan::Wall* wallOf(const plan::Room& room, std::size_t index) {
    return index < room.walls.size() ? &room.walls[index] : nullptr;
}

std::size_t edgeCount(const plan::Room& room) {
    std::size_t count = room.outline.size();
    for (const auto& column : room.columns)
        count += column.size();
    return count;
}

double furthest(const plan::Room& room, std::size_t index, const plan::Room& other, std::size_t other_index) {
    const plan::Wall* a = wallOf(room, index);
    const plan::Wall* b = wallOf(other, other_index);
    const plan::Wall usual;
    return std::max(a ? a->thickness_mm : usual.thickness_mm, b ? b->thickness_mm : usual.thickness_mm) +
           (a ? buildUp(*a) : 0) + (b ? buildUp(*b) : 0) + kThicknessToleranceMm;
}

/// A hole of one opening before it is seen from a certain face.
FaceHole holeOf(const plan::Opening& opening) {
    return {&opening, opening.left_mm, opening.left_mm + opening.width_mm, opening.sill_mm,
            opening.sill_mm + opening.height_mm};
}

/// The part of `hole` along u that a paired stretch shares.
double shared(const FaceHole& hole, double from_mm, double to_mm) {
    return std::min(hole.right_mm, to_mm) - std::max(hole.left_mm, from_mm);
}

/// Holes of openings hosted by the other side, turned into this face's u; those less than half on the
/// shared stretch lead elsewhere.
void addHolesFromBeyond(const HouseIndex& house, const plan::Room& room, const FaceRef& face,
                        const PairedFace& pair, std::vector<FaceHole>& holes) {
    const plan::Room* other = house.room(pair.other.room);
    const plan::Wall* wall = other == nullptr ? nullptr : wallOf(*other, pair.other.wall);
    if (wall == nullptr) return;
    const EdgeAxes here = edgeAxes(room, face.wall);
    const EdgeAxes there = edgeAxes(*other, pair.other.wall);
    for (const plan::Opening* opening : house.openingsOf(other->id)) {
        if (opening->wall != wall->id) continue;
        FaceHole hole = holeOf(*opening);
        const double a = here.along(there.at(hole.left_mm));
        const double b = here.along(there.at(hole.right_mm));
        hole.left_mm = std::min(a, b);
        hole.right_mm = std::max(a, b);
        if (shared(hole, pair.from_mm, pair.to_mm) < opening->width_mm / 2) continue;
        hole.hosted_here = false;
        hole.through_mm = pair.thickness_mm;
        holes.push_back(hole);
    }
}

} // namespace

EdgeAxes edgeAxes(const plan::Room& room, std::size_t wall_index) {
    const WallEdge edge = wallEdge(room, wall_index);
    const Vec2 along = edge.to_mm - edge.from_mm;
    const double size = length(along);
    const Vec2 u = size > 0 ? along * (1 / size) : Vec2{1, 0};
    return {edge.from_mm, u, {u.y, -u.x}, size};
}

double fullThickness(const plan::Room& room, std::size_t wall_index) {
    const plan::Wall* wall = wallOf(room, wall_index);
    if (wall == nullptr) return plan::Wall{}.thickness_mm;
    return wall->structure == plan::WallStructure::None ? 0 : wall->thickness_mm + buildUp(*wall);
}

double wallReach(const plan::Wall* wall) {
    return (wall ? wall->thickness_mm + buildUp(*wall) : plan::Wall{}.thickness_mm) + kThicknessToleranceMm;
}

std::vector<PairedFace> pairedFaces(const plan::Plan& plan, const FaceRef& face) {
    return pairedFaces(HouseIndex(plan, face.room), face);
}

std::vector<PairedFace> pairedFaces(const HouseIndex& house, const FaceRef& face) {
    const plan::Room* room = house.room(face.room);
    if (room == nullptr || face.wall >= edgeCount(*room)) return {};
    const EdgeAxes here = edgeAxes(*room, face.wall);
    const Vec2 end = here.at(here.length_mm);
    const double reach = wallReach(wallOf(*room, face.wall)) + kOverlapSlackMm;
    const Vec2 low{std::min(here.from_mm.x, end.x) - reach, std::min(here.from_mm.y, end.y) - reach};
    const Vec2 high{std::max(here.from_mm.x, end.x) + reach, std::max(here.from_mm.y, end.y) + reach};
    std::vector<PairedFace> pairs;
    for (const plan::Room* other : house.roomsNear(room->storey, low, high)) {
        const std::size_t count = edgeCount(*other);
        for (std::size_t i = 0; i < count; ++i) {
            if (other == room && i == face.wall) continue;
            const WallEdge edge = wallEdge(*other, i);
            const double u_from = here.along(edge.to_mm); // the other side runs the other way
            const double u_to = here.along(edge.from_mm);
            const double from = std::max(0.0, u_from);
            const double to = std::min(here.length_mm, u_to);
            if (to - from <= kLeastOverlapMm) continue;
            const double w_from = here.out(edge.to_mm);
            const double w_to = here.out(edge.from_mm);
            if (std::abs(w_to - w_from) > (u_to - u_from) * std::tan(kParallelRad)) continue;
            const double middle = ((from + to) / 2 - u_from) / (u_to - u_from);
            const double behind = -(w_from + (w_to - w_from) * middle);
            if (behind < -kOverlapSlackMm || behind > furthest(*room, face.wall, *other, i)) continue;
            pairs.push_back({{other->id, i}, from, to, std::max(behind, 0.0)});
        }
    }
    std::ranges::sort(pairs, {}, [](const PairedFace& pair) {
        return std::tuple(pair.thickness_mm, pair.from_mm, std::string_view(pair.other.room),
                          pair.other.wall);
    });
    return pairs;
}

std::vector<FaceHole> faceHoles(const plan::Plan& plan, const FaceRef& face) {
    return faceHoles(HouseIndex(plan, face.room), face);
}

std::vector<FaceHole> faceHoles(const HouseIndex& house, const FaceRef& face) {
    return faceHoles(house, face, pairedFaces(house, face));
}

std::vector<FaceHole> faceHoles(const HouseIndex& house, const FaceRef& face,
                                const std::vector<PairedFace>& pairs) {
    const plan::Room* room = house.room(face.room);
    const plan::Wall* wall = room == nullptr ? nullptr : wallOf(*room, face.wall);
    if (wall == nullptr) return {};
    std::vector<FaceHole> holes;
    for (const plan::Opening* opening : house.openingsOf(room->id)) {
        if (opening->wall != wall->id) continue;
        FaceHole hole = holeOf(*opening);
        hole.through_mm = fullThickness(*room, face.wall);
        for (const PairedFace& pair : pairs) {
            if (shared(hole, pair.from_mm, pair.to_mm) < opening->width_mm / 2) continue;
            hole.through_mm = pair.thickness_mm;
            break;
        }
        holes.push_back(hole);
    }
    for (const PairedFace& pair : pairs)
        addHolesFromBeyond(house, *room, face, pair, holes);
    std::ranges::sort(holes, {}, [](const FaceHole& hole) {
        return std::tuple(hole.left_mm, hole.bottom_mm, std::string_view(hole.opening->id));
    });
    return holes;
}

} // namespace gangway::geometry
