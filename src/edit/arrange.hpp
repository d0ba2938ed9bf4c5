// Putting plates in order: aligned, evenly spaced, copied, mirrored, in a row, on the other side of a wall.
//
// The catalogue tells how large the plates are: a command whose plates would not stay within their wall and
// room is refused. Every error is a sentence that names the plate and what stands against it. Whether plates
// then lie over others is left to the checks.
#pragma once

#include "catalogue/catalogue.hpp"
#include "edit/edit.hpp"
#include "edit/kept_distances.hpp"

#include <expected>
#include <map>
#include <string>
#include <vector>

namespace gangway::edit {

using Arranged = std::expected<Command, std::string>;
using PlateIds = std::vector<std::string>;

/// All centres at one height above FFL, or at that of one plate. Plates may be on several walls and in
/// several rooms; those in floors and ceilings have no height. "Align 3 plates at 1050 mm"
Arranged alignHeights(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& plates,
                      double height_mm);
Arranged alignHeightsWith(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const PlateIds& plates, const std::string& reference);
/// One above the other: the u of one plate for all, which share its wall or face. "Line up 3 plates with
/// K-04"
Arranged alignCentresWith(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const PlateIds& plates, const std::string& reference);
/// Three or more plates of one wall or face with equal distances between their centres, along it or in
/// height. The outermost two stay. "Space 4 plates evenly"
Arranged distributeEvenly(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const PlateIds& plates, Along along = Along::U);

/// New plates on a room's walls, floor or ceiling at the same places: as far from the end that is nearer on
/// the plate's own wall, and as high. `walls` gives the new wall for each wall id; one that is not in it
/// keeps its id. Copies have new tags and no links to what is not there. "Copy 3 plates to the kitchen"
Arranged copyToRoom(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& plates,
                    const std::string& room_id, const std::map<std::string, std::string>& walls = {});

struct Mirroring {
    std::string partner; ///< a plate that is moved there; empty: a new plate is made
    /// Modules keep their order from left to right, as people read them, unless turned round.
    enum class Modules { KeepOrder, Reverse } modules = Modules::KeepOrder;
};
/// To the other side of a piece of furniture (a bed), at the same height: about the middle of the piece on
/// the plate's wall or on a face of the piece itself, such as its headboard; a plate on its left side goes to
/// its right side. Refused when the piece stands askew to the plate's wall. New plates keep what mirrors with
/// them: the anchor and distances from the piece, "left" and "right" in their purpose changed over. "Mirror
/// K-04 to the other side of the bed"
Arranged mirrorToOtherSide(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                           const PlateIds& plates, const std::string& furniture_id,
                           const Mirroring& how = {});

enum class RowEnds {
    Included,  ///< the outermost plates on both ends of the stretch
    HalfSpaces ///< half a space before the first and after the last
};
/// `count` plates of one kind from one u to another, centres equally spaced: the plate itself takes the place
/// nearest to it, the others are new. A row of one stands in the middle. "Make a row of 4 like K-04"
Arranged arrayAlong(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const std::string& plate,
                    int count, double from_mm, double to_mm, RowEnds ends = RowEnds::HalfSpaces);
/// The same over the width of a piece of furniture at the plate's wall, such as a worktop.
Arranged arrayOnFurniture(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const std::string& plate, const std::string& furniture_id, int count,
                          RowEnds ends = RowEnds::HalfSpaces);

/// To the same place on the other side of its wall, in the room there. "Move K-04 to the other side, hall"
Arranged flipToOtherFace(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                         const std::string& plate);

} // namespace gangway::edit
