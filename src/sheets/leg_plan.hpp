// Switch legs on a storey's plan: what works which lamp, as lines between symbols or as marks alone. They
// show control, never where cables run.
#pragma once

#include "sheets/storey_plan.hpp"
#include "switching/net.hpp"

#include <map>
#include <string>
#include <vector>

namespace gangway::sheets {

/// A room whose lines number more than this for each cm2 of its paper is crowded: its legs, where the plan
/// leaves the choice open, are told by their marks alone. Ours, no source: one line to 2.5 cm2.
inline constexpr double kCrowdedLines = 0.4;

struct LegOptions {
    enum class Corners { Rounded, Square } corners = Corners::Rounded; ///< of orthogonal lines
    bool coloured = false;   ///< a colour for each leg, besides its dashes and mark
    std::string highlighted; ///< leg id: heavy and in the accent colour, as a line even where marks would do
    drawing::Colour accent{0xB0, 0x50, 0x29};
    std::string room; ///< only legs with an end in this room; empty: all
};

/// How a leg is drawn on this storey.
struct DrawnLeg {
    const plan::SwitchLeg* leg = nullptr;
    plan::SwitchLeg::Line line = plan::SwitchLeg::Line::Arc; ///< never Auto
    drawing::Pen pen;                                        ///< of its lines; no two legs of a room alike
    int joins = 0;
};

/// A line to be clicked.
struct LegHit {
    std::string leg;
    std::vector<plan::Vec2> line_mm; ///< house mm
};

struct StoreyLegs {
    std::vector<drawing::Item> items; ///< layer "legs", id of the leg; to lie under the symbols
    std::vector<LegHit> hits;
    std::vector<DrawnLeg> legs;             ///< those with an end on the storey, in the plan's order
    std::vector<std::string> crowded_rooms; ///< ids, sorted
    int joins = 0;                          ///< lines drawn
    int crossings = 0; ///< of them those that run more than 0.3 mm through a text or another symbol
};

/// Legs between what `symbols` shows on the storey of `base`: lamps are joined each to the nearest that is
/// joined already, beginning with the one nearest to the leg's switch; every switch position to the lamp
/// nearest to it; positions without a lamp here to each other.
StoreyLegs legsOnPlan(const switching::Net& net, const StoreyBase& base, const StoreySymbols& symbols,
                      const LegOptions& options = {});

/// The topmost leg within a distance of a point, nullptr when there is none.
const LegHit* legAt(const std::vector<LegHit>& hits, plan::Vec2 house_mm, double within_mm);

/// The marks at each plate that works or is fed by legs and each luminaire, by its id, in the plan's order of
/// legs: for StoreyPlanOptions::marks.
std::map<std::string, std::string> marksAtSymbols(const plan::Plan& plan);
/// Ids of the plates that have ways or that legs work or feed, sorted: for StoreyPlanOptions::only_plates.
std::vector<std::string> platesOfSwitching(const switching::Net& net);

} // namespace gangway::sheets
