// Where a finding is in the house: the bodies it is about, what was measured between them, and from where it
// is looked at. Plain geometry, without the window.
#pragma once

#include "catalogue/catalogue.hpp"
#include "geometry/house_index.hpp"
#include "plan/finding.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::app {

/// Something a finding names, as corner points of a convex body in house mm, z above its storey's FFL.
struct FindingBody {
    enum class Kind { Plate, Furniture, Opening, Leaf, Lamp, Device };
    Kind kind = Kind::Furniture;
    std::string id;
    std::vector<plan::Vec3> corners_mm;
};

struct FindingPlace {
    std::string room;                ///< where one stands to see it; empty: no room
    std::vector<FindingBody> bodies; ///< the plate or lamp it is about first; those of its storey only
    std::optional<plan::Vec3> at_mm;
    std::optional<plan::Gap>
        gap;                ///< the finding's own, or one between the bodies that is as long as its value
    plan::Vec3 away;        ///< unit, out of the surface it is on; zero: it stands free
    std::string mounted_on; ///< furniture that its plate is on, never in its way
    /// It is about control or circuits and not about a place: the plan shows it best.
    bool of_plan = false;
};

FindingPlace placeOf(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                     const plan::Finding& finding);
/// The room a finding is listed under; empty: the house.
std::string roomOf(const plan::Plan& plan, const plan::Finding& finding);
/// A box about a lamp where it hangs, stands or is fixed; empty where its host is missing.
std::vector<plan::Vec3> lampCorners(const geometry::HouseIndex& house, const plan::Luminaire& lamp);
/// Corners of a plate's face on its host, from the lower left one round; empty where the host is missing.
std::vector<plan::Vec3> plateCorners(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                     const plan::Plate& plate);

} // namespace gangway::app
