// Proof of the switching: what is missing, contradicts itself or can't work, as findings.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "plan/finding.hpp"
#include "switching/doorways.hpp"
#include "switching/net.hpp"

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

namespace gangway::switching {

/// A rule as it is listed: every finding's `rule` is one of these ids.
struct Rule {
    std::string_view id;
    std::string_view what; ///< a sentence: what it looks at
};
std::span<const Rule> rules();

/// All findings of the switching, in the order of rules() and then of the plan. Linear in ways, legs and
/// luminaires. Numbers and their sources come from the pack.
[[nodiscard]] std::vector<plan::Finding> prove(const geometry::HouseIndex& house,
                                               const catalogue::Catalogue& catalogue,
                                               const catalogue::CountryPack& pack);

/// What a rule speaks of. A finding about a room's plates, lamps or entrances rests on what is in that room,
/// on the legs that have members there, and on those legs' members; the others rest on the whole house.
enum class Speaks { OfRoom, OfStairs, OfCircuits };
/// Of the rule at a place in rules().
Speaks speaksOf(std::size_t rule);

struct Proven {
    std::size_t rule = 0; ///< its place in rules()
    std::string room;     ///< id of the room whose plate, lamp or entrance it is about; empty: the house's
    plan::Finding finding;
};
/// The findings of some rules over a part of a house: a plan of which only rooms, plates, luminaires, legs
/// and, for stairs, storeys and furniture are read. In the order of prove().
[[nodiscard]] std::vector<Proven> provePart(const geometry::HouseIndex& house, const plan::Plan& part,
                                            const Doorways& doorways, const catalogue::Catalogue& catalogue,
                                            const catalogue::CountryPack& pack,
                                            std::initializer_list<Speaks> speaks);

} // namespace gangway::switching
