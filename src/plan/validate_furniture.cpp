// Furniture: a kind that is known, values that the kind takes, a size, a file for glTF pieces.
#include "plan/furniture_kinds.hpp"
#include "plan/json_positions.hpp"
#include "plan/number_text.hpp"
#include "plan/validation.hpp"

#include <algorithm>
#include <array>

namespace gangway::plan {

namespace {

constexpr std::string_view kGltf = "gltf";
/// Layers that every plan has, even before they are listed.
constexpr std::array<std::string_view, 5> kEveryPlan{kLayerBuilding, kLayerFurniture, kLayerSoft, kLayerLamps,
                                                     kLayerPlates};

void validateValues(Validation& v, const Furniture& piece, const FurnitureKind& kind,
                    const std::string& pointer, const std::string& subject) {
    for (const auto& [key, value] : piece.with) {
        const std::string place = fmt::format("{}/with/{}", pointer, json::pointerPart(key));
        const auto known = std::ranges::find(kind.values, std::string_view(key), &FurnitureValue::key);
        if (known == kind.values.end()) {
            std::vector<std::string> keys;
            for (const FurnitureValue& other : kind.values)
                keys.emplace_back(other.key);
            const std::string near = nearestWord(key, keys);
            std::string list;
            for (const std::string& name : keys)
                list += (list.empty() ? "'" : ", '") + name + "'";
            v.error(place, fmt::format("{}: a {} has no value '{}'; {}", subject, kind.name, key,
                                       !near.empty()  ? fmt::format("did you mean '{}'?", near)
                                       : list.empty() ? std::string("it takes none, so remove it")
                                                      : "it takes " + list));
        } else if (!(value >= known->min && value <= known->max)) {
            v.error(place, fmt::format("{}: '{}' is {}; give {} to {}: {}", subject, key, shownNumber(value),
                                       shownNumber(known->min), shownNumber(known->max), known->meaning));
        }
    }
}

void validateKind(Validation& v, const Furniture& piece, const std::string& pointer,
                  const std::string& subject) {
    if (piece.kind == kGltf) {
        if (piece.file.empty())
            v.error(
                pointer,
                fmt::format("{}: a glTF piece needs its file; add 'file', a path beside the plan", subject));
        return;
    }
    if (const FurnitureKind* kind = findFurnitureKind(piece.kind))
        return validateValues(v, piece, *kind, pointer, subject);
    std::vector<std::string> kinds{std::string(kGltf)};
    for (const FurnitureKind& kind : furnitureKinds())
        kinds.emplace_back(kind.key);
    const std::string near = nearestWord(piece.kind, kinds);
    v.error(pointer + "/kind",
            fmt::format("{}: '{}' is no kind of furniture this program knows; {}", subject, piece.kind,
                        near.empty() ? "take the nearest kind, or \"box\" for a plain box"
                                     : fmt::format("did you mean '{}'?", near)));
}

} // namespace

void validateFurniture(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.furniture.size(); ++i) {
        const Furniture& piece = plan.furniture[i];
        if (!v.sound("furniture", i)) continue;
        const std::string pointer = fmt::format("/furniture/{}", i);
        const std::string subject = fmt::format("furniture '{}'", piece.id);
        v.refers(plan.rooms, "rooms", piece.room, pointer + "/room", subject, "room");
        if (std::ranges::find(kEveryPlan, piece.layer) == kEveryPlan.end())
            v.refers(plan.layers, "layers", piece.layer, pointer + "/layer", subject, "layer");
        validateKind(v, piece, pointer, subject);
        const bool known = piece.kind == kGltf || findFurnitureKind(piece.kind) != nullptr;
        const Size3& size = piece.size;
        if (known && !(size.width_mm > 0 && size.depth_mm > 0 && size.height_mm > 0))
            v.error(pointer + "/size",
                    fmt::format("{}: its size is {} x {} x {}; give [width, depth, height], all more than 0",
                                subject, shownNumber(size.width_mm), shownNumber(size.depth_mm),
                                shownNumber(size.height_mm)));
    }
}

} // namespace gangway::plan
