#include "scene/palette.hpp"

#include "scene/colour.hpp"

namespace gangway::scene::detail {
namespace {

enum Pattern { kPlain = 0, kBoards = 1, kTiles = 2, kCarpet = 3, kWoodGrain = 4, kFabric = 5 };

struct RoleLook {
    geometry::FabricPart::Role role;
    const char* colour;
    float roughness;
    float opacity;
};

using Role = geometry::FabricPart::Role;
constexpr RoleLook kRoles[] = {{Role::Wall, "#EFE8DB", 0.92f, 1},     {Role::WallCut, "#A3968A", 0.95f, 1},
                               {Role::Reveal, "#F2ECE1", 0.9f, 1},    {Role::Floor, "#C9B79C", 0.8f, 1},
                               {Role::Ceiling, "#F6F1E7", 0.95f, 1},  {Role::Skirting, "#F3EEE4", 0.5f, 1},
                               {Role::Tiles, "#E6E1D4", 0.22f, 1},    {Role::Panel, "#E9E1D2", 0.6f, 1},
                               {Role::Casing, "#F3EEE4", 0.5f, 1},    {Role::Frame, "#EFEAE0", 0.45f, 1},
                               {Role::Leaf, "#E8DECC", 0.5f, 1},      {Role::Glass, "#DDE9EA", 0.04f, 0.16f},
                               {Role::SillBoard, "#EDE7DB", 0.4f, 1}, {Role::OuterWall, "#D8CDBB", 0.95f, 1}};

struct FinishLook {
    const char* finish;
    const char* colour;
    float roughness;
    int pattern;
    float width_m, length_m;
};

constexpr FinishLook kFloors[] = {{"boards", "#B98F63", 0.5f, kBoards, 0.14f, 1.8f},
                                  {"tiles", "#D5CCBC", 0.3f, kTiles, 0.45f, 0.45f},
                                  {"carpet", "#BFB29F", 1.0f, kCarpet, 0.02f, 0.02f},
                                  {"screed", "#B9B3A8", 0.9f, kPlain, 0.2f, 0.2f}};

Material withPattern(Material material, int pattern, float width_m, float length_m) {
    material.pattern = pattern;
    material.pattern_size_m = {width_m, length_m};
    return material;
}

} // namespace

Material matt(const std::string& srgb_hex, float roughness) {
    Material material;
    material.colour = linearFromHex(srgb_hex);
    material.roughness = roughness;
    return material;
}

Material glowing(glm::vec3 light, float emission) {
    Material material;
    material.colour = light;
    material.roughness = 0.6f;
    material.emission = emission;
    return material;
}

Material fabricMaterial(Role role, const std::string& srgb_hex) {
    for (const RoleLook& look : kRoles) {
        if (look.role != role) continue;
        Material material = matt(look.colour, look.roughness);
        material.colour = linearFromHex(srgb_hex, material.colour);
        material.opacity = look.opacity;
        return material;
    }
    return matt(srgb_hex);
}

Material floorMaterial(const std::string& finish, const std::string& srgb_hex) {
    for (const FinishLook& look : kFloors) {
        if (finish != look.finish) continue;
        Material material =
            withPattern(matt(look.colour, look.roughness), look.pattern, look.width_m, look.length_m);
        material.colour = linearFromHex(srgb_hex, material.colour);
        if (look.pattern == kTiles) material.joint_m = 0.004f;
        return material;
    }
    return fabricMaterial(Role::Floor, srgb_hex);
}

Material furnitureMaterial(geometry::Solid::Surface surface, const std::string& srgb_hex) {
    using Surface = geometry::Solid::Surface;
    Material material = matt(srgb_hex, 0.75f);
    switch (surface) {
    case Surface::Matt:
        break;
    case Surface::Wood:
        material = withPattern(material, kWoodGrain, 0.12f, 1.2f);
        material.roughness = 0.5f;
        break;
    case Surface::Fabric:
        material = withPattern(material, kFabric, 0.004f, 0.004f);
        material.roughness = 0.95f;
        break;
    case Surface::Metal:
        material.metalness = 1;
        material.roughness = 0.35f;
        break;
    case Surface::Glass:
        material.opacity = 0.25f;
        material.roughness = 0.05f;
        break;
    case Surface::Ceramic:
        material.roughness = 0.12f;
        break;
    case Surface::Stone:
        material.roughness = 0.3f;
        break;
    case Surface::Mirror:
        material.metalness = 1;
        material.roughness = 0.03f;
        break;
    case Surface::Screen:
        material.roughness = 0.12f;
        break;
    }
    return material;
}

Material finishMaterial(const catalogue::Catalogue& catalogue, const std::string& finish_id) {
    const catalogue::Finish* finish = catalogue.finish(finish_id);
    if (finish == nullptr) return matt("#F4F2EC", 0.4f);
    Material material = matt(finish->srgb);
    using Gloss = catalogue::Finish::Gloss;
    switch (finish->gloss) {
    case Gloss::Matt:
        material.roughness = 0.8f;
        break;
    case Gloss::Satin:
        material.roughness = 0.45f;
        break;
    case Gloss::Gloss:
        material.roughness = 0.18f;
        break;
    case Gloss::Metal:
        material.metalness = 1;
        material.roughness = 0.32f;
        break;
    case Gloss::Glass:
        material.roughness = 0.05f;
        break;
    }
    return material;
}

Material shaded(Material material, float factor) {
    material.colour *= factor;
    return material;
}

} // namespace gangway::scene::detail
