#include "checks/standing.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace gangway::checks {

namespace {
struct Kind {
    std::string_view kind;
    Standing standing;
};

/// Common practice, no source. What is not listed is heavy.
constexpr auto kKinds = std::to_array<Kind>({
    {"wardrobe", Standing::Cupboard},
    {"base-unit", Standing::Cupboard},
    {"wall-unit", Standing::Cupboard},
    {"tall-unit", Standing::Cupboard},
    {"mirror-cabinet", Standing::Cupboard},
    {"sink", Standing::Cupboard},
    {"drawer-unit", Standing::Fixed},
    {"worktop", Standing::Fixed},
    {"island", Standing::Fixed},
    {"mirror", Standing::Fixed},
    {"picture", Standing::Light},
    {"shower-screen", Standing::Fixed},
    {"bath", Standing::Fixed},
    {"shower", Standing::Fixed},
    {"basin", Standing::Fixed},
    {"vanity", Standing::Fixed},
    {"wc", Standing::Fixed},
    {"hob", Standing::Fixed},
    {"hood", Standing::Fixed},
    {"boiler", Standing::Fixed},
    {"shelf", Standing::Fixed},
    {"stair", Standing::Fixed},
    {"fan", Standing::Fixed},
    {"oven", Standing::Appliance},
    {"dishwasher", Standing::Appliance},
    {"tv-wall", Standing::Screen},
    {"radiator", Standing::Hot},
    {"curtain", Standing::Moving},
    {"blind", Standing::Moving},
    {"armchair", Standing::Light},
    {"chair", Standing::Light},
    {"table", Standing::Light},
    {"bench", Standing::Light},
    {"plant", Standing::Light},
    {"bedside-table", Standing::Light},
    {"gltf", Standing::Light},
});

bool startsWithAny(const std::string& word, std::initializer_list<std::string_view> beginnings) {
    return std::ranges::any_of(beginnings, [&](std::string_view each) { return word.starts_with(each); });
}
} // namespace

Standing standingOf(const plan::Furniture& piece) {
    if (piece.layer == plan::kLayerBuilding) return Standing::Fixed;
    if (piece.kind == "tall-unit" && plan::furnitureValue(piece, "ovenBottom") > 0)
        return Standing::Appliance;
    if (piece.kind == "sink" && plan::furnitureValue(piece, "unit") == 0) return Standing::Fixed;
    const auto found = std::ranges::find(kKinds, piece.kind, &Kind::kind);
    return found == kKinds.end() ? Standing::Heavy : found->standing;
}

bool isPutAway(const plan::Plate& plate) {
    return plate.use == plan::UseRate::LeftPlugged || plate.use == plan::UseRate::Once ||
           plate.sight == plan::Sight::KeepHidden;
}

bool isInTheWayInside(const std::string& solid) {
    return !isSmallPart(solid) && !startsWithAny(solid, {"door", "front", "back", "mirror", "flap"});
}

bool isSmallPart(const std::string& solid) {
    return startsWithAny(solid, {"handle", "hinge", "knob", "rail", "pillow", "tap", "clothes rail", "valve",
                                 "waste", "display", "loose cushion", "cushion", "book"});
}

} // namespace gangway::checks
