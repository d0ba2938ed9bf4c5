// What each plate of a plan stands in relation to, looked up once for all plates. Private to src/review.
#pragma once

#include "geometry/house_index.hpp"
#include "plan/plan.hpp"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace gangway::review::detail {

/// Indices of a plan by id; the plan must outlive it and stay unchanged.
class Relations {
public:
    explicit Relations(const plan::Plan& plan);

    const plan::Room* room(const std::string& id) const;
    const plan::Furniture* furniture(const std::string& id) const;
    const plan::Device* device(const std::string& id) const;
    /// Legs the plate works or is fed by, in the order of their ids.
    std::vector<const plan::SwitchLeg*> legs(const std::string& plate_id) const;
    /// Doors in the wall a plate is on, from either side of it, in the order of their ids.
    std::vector<const plan::Opening*> doors(const plan::Plate& plate) const;

private:
    template <typename Entry>
    using Index = std::unordered_map<std::string_view, const Entry*>;

    geometry::HouseIndex house_;
    Index<plan::Device> devices_;
    std::unordered_map<std::string_view, std::vector<const plan::SwitchLeg*>> legs_;
    /// By "room/wall"; filled as faces are asked for.
    mutable std::unordered_map<std::string, std::vector<const plan::Opening*>> doors_;
};

/// See review::fingerprintText and review::fingerprint.
std::string canonicalText(const Relations& relations, const plan::Plate& plate);
std::string digest(const std::string& canonical_text);

} // namespace gangway::review::detail
