#include "scene/scene.hpp"

#include "geometry/furniture.hpp"
#include "plan/furniture_kinds.hpp"

#include <cmath>
#include <map>

namespace gangway::scene {
namespace {

constexpr double kSameLevelMm = 500;   // how far a stair's top may be off the floor it leads to
constexpr double kBeforeStairMm = 350; // a body's radius and a little more, before the first step

const plan::Storey* storeyAt(const plan::Plan& plan, double elevation_mm) {
    const plan::Storey* nearest = nullptr;
    double least = kSameLevelMm;
    for (const plan::Storey& storey : plan.storeys) {
        const double off = std::abs(storey.elevation_mm - elevation_mm);
        if (off > least || (nearest != nullptr && off >= least)) continue;
        nearest = &storey;
        least = off;
    }
    return nearest;
}

plan::Vec2 onPlan(plan::Vec3 p) {
    return {p.x, p.y};
}

} // namespace

std::vector<StairLink> stairLinks(const plan::Plan& plan) {
    std::map<std::string, WalkMap> maps;
    const auto mapOf = [&](const std::string& storey) -> const WalkMap& {
        const auto known = maps.find(storey);
        return known != maps.end() ? known->second
                                   : maps.emplace(storey, WalkMap(plan, storey)).first->second;
    };
    std::vector<StairLink> links;
    for (const plan::Furniture& piece : plan.furniture) {
        if (piece.kind != "stair") continue;
        const plan::Room* room = plan::findRoom(plan, piece.room);
        const plan::Storey* lower = room != nullptr ? plan::findStorey(plan, room->storey) : nullptr;
        if (lower == nullptr) continue;
        const plan::Storey* upper =
            storeyAt(plan, lower->elevation_mm + piece.bottom_mm + piece.size.height_mm);
        if (upper == nullptr || upper->id == lower->id) continue;
        const double up = plan::furnitureValue(piece, "direction") > 0.5 ? -1 : 1; // along local y
        const double reach = up * (piece.size.depth_mm / 2 + kBeforeStairMm);
        StairLink link{piece.id, lower->id, onPlan(geometry::fromLocal(piece, {0, -reach, 0})), upper->id,
                       onPlan(geometry::fromLocal(piece, {0, reach, 0}))};
        link.lower_mm = mapOf(lower->id).nearestFree(link.lower_mm);
        link.upper_mm = mapOf(upper->id).nearestFree(link.upper_mm);
        if (mapOf(lower->id).free(link.lower_mm) && mapOf(upper->id).free(link.upper_mm))
            links.push_back(link);
    }
    return links;
}

} // namespace gangway::scene
