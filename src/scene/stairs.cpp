#include "scene/scene.hpp"

#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"
#include "plan/furniture_kinds.hpp"

#include <map>

namespace gangway::scene {
namespace {

constexpr double kBeforeStairMm = 350; // a body's radius and a little more, before the first step

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
        const plan::Storey* upper = geometry::storeyReached(plan, *lower, piece);
        if (upper == nullptr) continue;
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
