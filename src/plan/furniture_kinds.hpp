// The table of furniture kinds a plan may name: what each is, its usual size and the values it takes.
#pragma once

#include "plan/plan.hpp"

#include <span>
#include <string_view>

namespace gangway::plan {

struct FurnitureValue {
    std::string_view key;     ///< "headboardHeight"
    double default_value = 0; ///< in mm unless the meaning says otherwise
    double min = 0;
    double max = 0;
    std::string_view meaning; ///< one sentence, shown as help
};

struct FurnitureKind {
    std::string_view key;   ///< "wardrobe"
    std::string_view name;  ///< "wardrobe" as printed on a sheet
    std::string_view layer; ///< default layer
    Size3 size;             ///< usual size, common practice, no source
    std::span<const FurnitureValue> values;
};

std::span<const FurnitureKind> furnitureKinds();
/// nullptr when no kind has this key.
const FurnitureKind* findFurnitureKind(std::string_view key);
/// The value given in the plan, else the kind's default; 0 for a key the kind does not have.
double furnitureValue(const Furniture& piece, std::string_view key);

} // namespace gangway::plan
