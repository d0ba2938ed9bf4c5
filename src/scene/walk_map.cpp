#include "scene/scene.hpp"

#include "geometry/frames.hpp"
#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"
#include "geometry/walls.hpp"
#include "scene/floor_view.hpp"
#include "scene/grid_distance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::scene {
namespace {

using plan::Vec2;

constexpr double kCellMm = 50;
constexpr std::size_t kMostCells = 6'000'000; // a larger house gets larger cells
constexpr double kDoorSillMm = 20;            // a higher sill is a window's, common practice, no source
constexpr double kLeastDoorMm = 500;
constexpr double kStrideMm = 15; // a move is tried in pieces of this length

// Sets the cells whose centre lies in a polygon (any winding), row by row.
class Raster {
public:
    Raster(Vec2 origin, double cell, int columns, int rows, std::vector<std::uint8_t>& cells)
        : origin_(origin), cell_(cell), columns_(columns), rows_(rows), cells_(cells) {}

    void fill(const std::vector<Vec2>& polygon, std::uint8_t value) {
        if (polygon.size() < 3) return;
        const detail::Bounds2 bounds = detail::boundsOf(polygon);
        const int first = std::max(0, static_cast<int>(std::floor((bounds.low.y - origin_.y) / cell_)));
        const int last =
            std::min(rows_ - 1, static_cast<int>(std::ceil((bounds.high.y - origin_.y) / cell_)));
        for (int row = first; row <= last; ++row)
            fillRow(polygon, row, value);
    }

private:
    void fillRow(const std::vector<Vec2>& polygon, int row, std::uint8_t value) {
        const double y = origin_.y + (row + 0.5) * cell_;
        crossings_.clear();
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const Vec2 a = polygon[i];
            const Vec2 b = polygon[(i + 1) % polygon.size()];
            if ((a.y <= y) == (b.y <= y)) continue;
            crossings_.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
        }
        std::sort(crossings_.begin(), crossings_.end());
        for (std::size_t i = 0; i + 1 < crossings_.size(); i += 2) {
            const int from =
                std::max(0, static_cast<int>(std::ceil((crossings_[i] - origin_.x) / cell_ - 0.5)));
            const int to = std::min(
                columns_ - 1, static_cast<int>(std::floor((crossings_[i + 1] - origin_.x) / cell_ - 0.5)));
            const auto start = static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_);
            for (int column = from; column <= to; ++column)
                cells_[start + static_cast<std::size_t>(column)] = value;
        }
    }

    Vec2 origin_;
    double cell_;
    int columns_;
    int rows_;
    std::vector<std::uint8_t>& cells_;
    std::vector<double> crossings_;
};

bool walkable(const geometry::FaceHole& hole) {
    using Kind = plan::Opening::Kind;
    return hole.opening != nullptr && hole.opening->kind != Kind::Window &&
           hole.opening->kind != Kind::Hatch && hole.bottom_mm <= kDoorSillMm &&
           hole.right_mm - hole.left_mm >= kLeastDoorMm;
}

// The floor of an opening through the wall, a little into the rooms on both sides; empty where no room is
// behind.
std::vector<Vec2> doorway(const geometry::HouseIndex& house, const plan::Room& room, std::size_t wall,
                          const geometry::FaceHole& hole) {
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    const auto at = [&](double u, double w) {
        const plan::Vec3 p = geometry::toHouse(frame, {u, 0, w});
        return Vec2{p.x, p.y};
    };
    constexpr double kOverlapMm = 60;
    const double behind = -(hole.through_mm + kOverlapMm);
    const plan::Room* other =
        geometry::roomAt(house, room.storey, at((hole.left_mm + hole.right_mm) / 2, behind));
    if (other == nullptr || other == &room) return {};
    return {at(hole.left_mm, kOverlapMm), at(hole.right_mm, kOverlapMm), at(hole.right_mm, behind),
            at(hole.left_mm, behind)};
}

} // namespace

WalkMap::WalkMap(const plan::Plan& plan, const std::string& storey, const std::filesystem::path& base) {
    (void)base; // a glTF piece is as large as the plan says
    std::vector<const plan::Room*> rooms;
    std::vector<Vec2> corners;
    for (const plan::Room& room : plan.rooms) {
        if (room.storey != storey || room.outline.size() < 3) continue;
        rooms.push_back(&room);
        corners.insert(corners.end(), room.outline.begin(), room.outline.end());
    }
    if (rooms.empty()) return;
    const detail::Bounds2 bounds = detail::boundsOf(corners);
    const Vec2 size = bounds.high - bounds.low;
    cell_mm_ = std::max(kCellMm, std::sqrt(size.x * size.y / static_cast<double>(kMostCells)));
    origin_mm_ = bounds.low - Vec2{2 * cell_mm_, 2 * cell_mm_};
    columns_ = static_cast<int>(std::ceil(size.x / cell_mm_)) + 4;
    rows_ = static_cast<int>(std::ceil(size.y / cell_mm_)) + 4;
    blocked_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 1);
    Raster raster(origin_mm_, cell_mm_, columns_, rows_, blocked_);
    for (const plan::Room* room : rooms)
        raster.fill(room->outline, 0);
    const geometry::HouseIndex house(plan);
    for (const plan::Room* room : rooms) {
        for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
            for (const geometry::FaceHole& hole : geometry::faceHoles(house, {room->id, wall})) {
                if (walkable(hole)) raster.fill(doorway(house, *room, wall, hole), 0);
            }
        }
    }
    for (const plan::Room* room : rooms) {
        for (const auto& column : room->columns)
            raster.fill(column, 1);
    }
    for (const plan::Furniture& piece : plan.furniture) {
        const plan::Room* room = house.room(piece.room);
        if (room == nullptr || room->storey != storey || !detail::blocksWalking(piece)) continue;
        raster.fill(geometry::footprint(piece), 1);
    }
    detail::inflate(blocked_, columns_, rows_, kBodyRadiusMm / cell_mm_);
}

WalkMap::Cell WalkMap::cellAt(plan::Vec2 at_mm) const {
    // Far away points are held just outside the grid, where nothing is free.
    const auto index_of = [](double cells, int count) {
        return static_cast<int>(std::floor(std::clamp(cells, -1.0, static_cast<double>(count) + 1)));
    };
    return {index_of((at_mm.x - origin_mm_.x) / cell_mm_, columns_),
            index_of((at_mm.y - origin_mm_.y) / cell_mm_, rows_)};
}

plan::Vec2 WalkMap::centreOf(Cell cell) const {
    return origin_mm_ + Vec2{(cell.column + 0.5) * cell_mm_, (cell.row + 0.5) * cell_mm_};
}

std::size_t WalkMap::index(Cell cell) const {
    return static_cast<std::size_t>(cell.row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(cell.column);
}

bool WalkMap::freeCell(Cell cell) const {
    return cell.column >= 0 && cell.row >= 0 && cell.column < columns_ && cell.row < rows_ &&
           blocked_[index(cell)] == 0;
}

bool WalkMap::free(plan::Vec2 at_mm) const {
    return freeCell(cellAt(at_mm));
}

plan::Vec2 WalkMap::nearestFree(plan::Vec2 at_mm) const {
    if (free(at_mm) || blocked_.empty()) return at_mm;
    const Cell middle = cellAt(at_mm);
    Vec2 nearest = at_mm;
    double least = 1e300;
    const int furthest = columns_ + rows_ + 2;
    // Rings of cells outwards; a cell of ring r is at least (r - 1) cells away (from a point inside the
    // grid).
    for (int ring = 1; ring <= furthest && (ring - 1) * cell_mm_ <= least; ++ring) {
        for (int along = -ring; along <= ring; ++along) {
            const Cell sides[] = {{middle.column + along, middle.row - ring},
                                  {middle.column + along, middle.row + ring},
                                  {middle.column - ring, middle.row + along},
                                  {middle.column + ring, middle.row + along}};
            for (const Cell cell : sides) {
                if (!freeCell(cell)) continue;
                const double away = plan::length(centreOf(cell) - at_mm);
                if (away < least) {
                    least = away;
                    nearest = centreOf(cell);
                }
            }
        }
    }
    return nearest;
}

plan::Vec2 WalkMap::move(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    Vec2 at = nearestFree(from_mm);
    if (!free(at)) return from_mm;
    const Vec2 whole = to_mm - from_mm;
    const double distance = plan::length(whole);
    const int steps = static_cast<int>(std::clamp(std::ceil(distance / kStrideMm), 1.0, 4000.0));
    const Vec2 step = whole * (1.0 / steps);
    for (int i = 0; i < steps; ++i) {
        bool moved = false;
        // Straight on, else turned aside by as little as possible and shortened as a slide along a wall would
        // be.
        for (const double turn_deg :
             {0.0, 15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 60.0, -60.0, 75.0, -75.0, 85.0, -85.0}) {
            const double a = turn_deg * std::numbers::pi / 180;
            const double c = std::cos(a);
            const double s = std::sin(a);
            const Vec2 next = at + Vec2{step.x * c - step.y * s, step.x * s + step.y * c} * c;
            if (!free(next)) continue;
            at = next;
            moved = true;
            break;
        }
        if (!moved) break;
    }
    return at;
}

} // namespace gangway::scene
