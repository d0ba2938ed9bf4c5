// What `gangway shot --plugs` draws before the plates.
#pragma once

#include "catalogue/pack.hpp"
#include "scene/scene.hpp"

#include <filesystem>

namespace gangway::cli {

/// Adds the plugs of the plan's devices, in the outlets that are decided, else proposed.
void addPlugs(scene::Scene& scene, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
              const catalogue::CountryPack& pack, const std::filesystem::path& base);

} // namespace gangway::cli
