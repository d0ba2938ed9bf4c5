#include "catalogue/plug_shapes.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace gangway::catalogue {

namespace {
using Cord = PlugShape::Cord;
using Kind = plan::Device::Plug;

struct Typed {
    std::string_view type;
    PlugShape shape;
};

constexpr auto kPlugs = std::to_array<Typed>({
    {"A", {26, 20, 5, 1, 6, Cord::Behind, "NEMA 1-15, size from memory (M)"}},
    {"B", {27, 29, 9, 1, 7, Cord::Behind, "NEMA 5-15, size from memory (M)"}},
    {"C", {35.3, 13.7, 6, 1, 6, Cord::Behind, "EN 50075, from memory (M)"}},
    {"E", {39, 39, 19.5, 1, 7, Cord::Behind, "CEE 7/7, fills the recess, from memory (M)"}},
    {"F", {39, 39, 19.5, 1, 7, Cord::Behind, "CEE 7/4 and 7/7, fills the recess, from memory (M)"}},
    {"G", {48, 46, 9, 0.7, 7, Cord::Below, "BS 1363-1, size from memory (M)"}},
    {"I", {36, 38, 10, 1, 7, Cord::Behind, "AS/NZS 3112, size from memory (M)"}},
    {"J", {36, 24, 8, 1, 7, Cord::Behind, "SN 441011 type 12, size from memory (M)"}},
    {"L", {17, 42, 7, 1, 7, Cord::Behind, "CEI 23-50, size from memory (M)"}},
});
constexpr PlugShape kOther{40, 40, 10, 1, 7, Cord::Behind, "common practice, no source"};
/// So wide that it hides the outlet beside it on a double plate of pitch 60.3, and none in a frame of 71.
constexpr PlugShape kBlock{75, 90, 6, 1, 4.5, Cord::Below, "common practice, no source"};
} // namespace

PlugShape plugShape(Kind kind, const std::string& type) {
    if (kind == Kind::PowerBlock) return kBlock;
    const auto found = std::ranges::find(kPlugs, type, &Typed::type);
    PlugShape shape = found == kPlugs.end() ? kOther : found->shape;
    // Flat and angled ones have the outline of straight ones; their cord lies along the wall.
    if (kind == Kind::Flat) shape.cord = Cord::Below;
    return shape;
}

const char* plugLimit(Kind kind) {
    switch (kind) {
    case Kind::Flat:
        return "plugFlat";
    case Kind::PowerBlock:
        return "plugBlock";
    case Kind::Straight:
        break;
    }
    return "plugStraight";
}

} // namespace gangway::catalogue
