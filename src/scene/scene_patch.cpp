#include "scene/scene_patch.hpp"

#include "scene/drawn_objects.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace gangway::scene {

ScenePatch patchFor(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                    const Change& change, const std::filesystem::path& base) {
    ScenePatch patch;
    using Kind = ScenePatch::Kind;
    const auto named = [&patch](Kind kind, const std::vector<std::string>& ids) {
        std::unordered_set<std::string_view> known;
        for (const std::string& id : ids)
            if (known.insert(id).second) patch.objects.push_back({kind, id});
        return known;
    };
    const auto furniture = named(Kind::Furniture, change.furniture);
    const auto plates = named(Kind::Plate, change.plates);
    const auto luminaires = named(Kind::Luminaire, change.luminaires);
    // In the plan's order, as build() draws them.
    for (const plan::Furniture& piece : house.plan().furniture)
        if (furniture.contains(piece.id)) detail::drawFurniture(patch.drawn, house, piece, base);
    for (const plan::Plate& plate : house.plan().plates)
        if (plates.contains(plate.id)) detail::drawPlate(patch.drawn, house, catalogue, plate);
    for (const plan::Luminaire& luminaire : house.plan().luminaires)
        if (luminaires.contains(luminaire.id)) detail::drawLuminaire(patch.drawn, house, luminaire);
    return patch;
}

ScenePatch patchFor(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Change& change,
                    const std::filesystem::path& base) {
    return patchFor(geometry::HouseIndex(plan), catalogue, change, base);
}

} // namespace gangway::scene
