// Plugs, power blocks and the beginnings of their cords as bodies before the plates, with the outlets that
// are left and those that a body hides.
#pragma once

#include "catalogue/pack.hpp"
#include "catalogue/plug_places.hpp"
#include "geometry/house_index.hpp"
#include "scene/scene.hpp"

#include <set>

namespace gangway::scene {

/// Layer of the parts, to be hidden or shown like a plan's own.
inline constexpr const char* kLayerPlugs = "plugs";

/// Length of cord that is drawn below a body.
inline constexpr double kCordStubMm = 60;

/// Adds what is plugged in: bodies stand as far out of what the plate is fixed to as the pack's limits say
/// ("plugStraight" and so on, with the bend of the cord), so that what is seen is what is checked. A free
/// outlet gets a thin frame as large as a straight plug, a blocked one the same crossed out. Parts of a plate
/// have its id as their object, and go with it when a patch draws it anew. `plates`: only those.
void addPlugBodies(Scene& scene, const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                   const catalogue::CountryPack& pack, const catalogue::PlugPlaces& places,
                   const std::set<std::string>* plates = nullptr);

} // namespace gangway::scene
