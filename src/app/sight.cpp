#include "app/sight.hpp"

#include "geometry/coverage.hpp"
#include "geometry/house_index.hpp"
#include "geometry/shapes.hpp"
#include "scene/scene.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace gangway::app {

namespace {
constexpr int kDirections = 72;
constexpr int kHalfCone = 6;           ///< of those directions, to each side: 30 degrees
constexpr double kFurthest_mm = 50000; ///< further than any room
constexpr double kHighFrom_mm = 1700;  ///< from here up a standing person looks up at what is on the wall
constexpr double kUnderCeiling_mm = 200;

struct Edge {
    plan::Vec2 from;
    plan::Vec2 to;
};

/// What ends a look at eye height: walls, columns, and furniture as tall as the eye.
std::vector<Edge> endsOf(const plan::Plan& plan, const plan::Room& room) {
    std::vector<Edge> ends;
    for (std::size_t i = 0; i < room.walls.size(); ++i) {
        const auto edge = geometry::wallEdge(room, i);
        ends.push_back({edge.from_mm, edge.to_mm});
    }
    for (const auto& piece : plan.furniture) {
        if (piece.room != room.id || piece.bottom_mm > scene::kEyeHeightMm ||
            piece.bottom_mm + piece.size.height_mm < scene::kEyeHeightMm)
            continue;
        const auto outline = geometry::footprint(piece);
        for (std::size_t i = 0; i < outline.size(); ++i)
            ends.push_back({outline[i], outline[(i + 1) % outline.size()]});
    }
    return ends;
}

double openDistance(const std::vector<Edge>& ends, plan::Vec2 from, plan::Vec2 direction) {
    double nearest = kFurthest_mm;
    for (const Edge& edge : ends) {
        const plan::Vec2 side = edge.to - edge.from;
        const double whole = plan::cross(direction, side);
        if (whole == 0) continue;
        const double away = plan::cross(edge.from - from, side) / whole;
        const double part = plan::cross(edge.from - from, direction) / whole;
        if (away > 0 && part >= 0 && part <= 1) nearest = std::min(nearest, away);
    }
    return nearest;
}

bool shown(const plan::Plan& plan, const std::string& layer_id) {
    const auto* layer = plan::findLayer(plan, layer_id);
    return layer == nullptr || layer->visibility == plan::Visibility::Shown;
}
} // namespace

double openYaw(const plan::Plan& plan, const plan::Room& room, plan::Vec2 from_mm) {
    const auto ends = endsOf(plan, room);
    const auto angle = [](int direction) { return 2 * std::numbers::pi * direction / kDirections; };
    std::array<double, kDirections> open{};
    for (int i = 0; i < kDirections; ++i)
        open[static_cast<std::size_t>(i)] =
            openDistance(ends, from_mm, {std::sin(angle(i)), std::cos(angle(i))});
    int best = 0;
    double most = -1;
    for (int i = 0; i < kDirections; ++i) {
        double sum = 0;
        for (int j = -kHalfCone; j <= kHalfCone; ++j)
            sum += open[static_cast<std::size_t>((i + j + kDirections) % kDirections)];
        if (sum > most) {
            most = sum;
            best = i;
        }
    }
    return angle(best);
}

struct Sight::Scene {
    std::vector<meshes::Mesh> solids;
    std::array<plan::Vec3, 5> points; ///< of the plate
};

Sight::Sight(const plan::Plan& plan, const Sighted& sighted, const std::set<std::string>& see_through) {
    auto scene = std::make_unique<Scene>();
    const plan::Plate& plate = *sighted.plate;
    const geometry::HouseIndex house(plan, plate.room);
    if (const auto frame = geometry::hostFrame(house, plate.room, plate.host)) {
        constexpr double kBefore_mm = 10; // what is flush with the host hides nothing
        constexpr double kInset = 0.45;
        std::size_t i = 0;
        for (const auto& [x, y] : {std::pair{0, 0}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}})
            scene->points[i++] =
                geometry::toHouse(*frame, {plate.host.u_mm + x * kInset * sighted.width_mm,
                                           plate.host.v_mm + y * kInset * sighted.height_mm, kBefore_mm});
    }
    for (const plan::Furniture* piece : house.furnitureIn(plate.room)) {
        if (piece->id == plate.host.furniture || see_through.contains(piece->id) ||
            !shown(plan, piece->layer))
            continue;
        for (auto& solid : geometry::furnitureSolids(*piece, sighted.base).solids)
            scene->solids.push_back(std::move(solid.mesh));
    }
    for (const plan::Opening* door : house.doorsInto(plate.room)) {
        if (see_through.contains(door->id)) continue;
        for (const auto& leaf : geometry::doorLeaves(house, *door))
            if (leaf.swings_into == plate.room && !leaf.standing_mm.empty())
                scene->solids.push_back(geometry::extrude(leaf.standing_mm, leaf.bottom_mm, leaf.top_mm));
    }
    scene_ = std::move(scene);
}

Sight::~Sight() = default;

bool Sight::free(plan::Vec3 eye_mm) const {
    return std::ranges::all_of(scene_->points, [&](plan::Vec3 point) {
        const plan::Vec3 way = point - eye_mm;
        const double distance = std::sqrt(way.x * way.x + way.y * way.y + way.z * way.z);
        if (distance < 1) return true;
        const plan::Vec3 direction{way.x / distance, way.y / distance, way.z / distance};
        return std::ranges::none_of(scene_->solids, [&](const meshes::Mesh& solid) {
            const auto hit = geometry::rayHit(solid, eye_mm, direction);
            return hit && *hit < distance;
        });
    });
}

double eyeFor(double height_mm, double ceiling_mm) {
    if (height_mm <= kHighFrom_mm) return scene::kEyeHeightMm;
    return std::max(scene::kEyeHeightMm, std::min(height_mm, ceiling_mm - kUnderCeiling_mm));
}

} // namespace gangway::app
