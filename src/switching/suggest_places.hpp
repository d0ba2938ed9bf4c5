// Where a proposed switch would go. Only for the sources of this folder.
#pragma once

#include "catalogue/pack.hpp"
#include "switching/entrances.hpp"
#include "switching/net.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::switching {

/// A place for a plate on a wall of a room.
struct Place {
    plan::Host host;
    bool is_free = true; ///< clear of openings, casings, plates, furniture and open leaves
};

/// What a new plate measures, mm.
struct PlateSize {
    double width_mm = 0;
    double height_mm = 0;
};

/// Beside an entrance, in the room it leads into: on the latch side (of a leaf that slides, away from where
/// it parks) at the pack's height, 150 to 200 mm from the casing to the plate's centre, further if it must.
/// The first place that is free, else the nearest. nullopt where the wall has no room beside the opening.
std::optional<Place> placeAtEntrance(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                     const Entrance& entrance, PlateSize size);

/// Beside a bed, on the wall behind its head, at the pack's bedside height: left and right as one lies in it.
std::vector<Place> placesAtBed(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                               const plan::Furniture& bed, PlateSize size);

} // namespace gangway::switching
