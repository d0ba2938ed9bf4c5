// The drawn plan of a storey: walls cut, openings, furniture, and the plates and luminaires as plan symbols,
// for the screen and for sheets. North is up, nothing is mirrored.
//
// It comes in two parts: the base (building, furniture, room names) changes seldom and is kept while plates
// are dragged; the symbols (plates, luminaires, tags) are drawn anew.
#pragma once

#include "catalogue/pack.hpp"
#include "drawing/drawing.hpp"
#include "plan/plan.hpp"

#include <filesystem>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace gangway::sheets {

/// Between paper (mm, origin at the lower left corner) and house (mm, x east, y north).
struct PlanMapping {
    double scale = 50;  ///< 1:scale
    drawing::Pt origin; ///< where house (0, 0) lies on paper
    drawing::Pt paper(plan::Vec2 house_mm) const {
        return {origin.x + house_mm.x / scale, origin.y + house_mm.y / scale};
    }
    plan::Vec2 house(drawing::Pt on_paper) const {
        return {(on_paper.x - origin.x) * scale, (on_paper.y - origin.y) * scale};
    }
};

enum class PlanThing { Room, Wall, Furniture, Opening, Luminaire, Plate };

/// Something to select; a wall by the ids of its room and its own.
struct PlanRef {
    PlanThing kind = PlanThing::Plate;
    std::string id;
    std::string room; ///< walls only
    bool operator==(const PlanRef&) const = default;
};

/// What lies where, for clicking and dragging. One thing may have several: a plate's symbol and its tag.
struct PlanHit {
    PlanThing kind = PlanThing::Room;
    std::string id;
    std::string room;
    std::string wall; ///< wall id: the wall itself, or what a plate, luminaire or opening is in; may be empty
    std::vector<plan::Vec2> outline_mm; ///< house mm
};

/// The topmost hit at a point, nullptr when there is none. `hits` are in drawing order.
const PlanHit* hitAt(std::span<const PlanHit> hits, plan::Vec2 house_mm);

struct StoreyPlanOptions {
    double scale = 50;
    std::vector<PlanRef> selected; ///< drawn in the accent colour with a frame around
    bool heights = false;          ///< plates' heights above FFL under their tags
    bool furniture = true;
    bool luminaire_tags = false;
    /// Tags that nothing lies under: those that have no room anywhere near are left out and told of.
    bool tags_only_with_room = false;
    /// Heights in the plan's own units, or in mm as sheets have them.
    enum class Heights { AsPlan, Millimetres } height_units = Heights::AsPlan;
    /// How luminaires look whose own `plan_look` is as the sheet says.
    enum class Lamps { Symbol, TopView } lamps = Lamps::Symbol;
    std::optional<std::vector<std::string>> only_plates; ///< by id, sorted; not set: all
    /// By id of plate or luminaire: marks of its legs, in a capsule under its tag.
    std::map<std::string, std::string> marks;
    drawing::Colour accent{0xB0, 0x50, 0x29};
    drawing::Colour paper = drawing::kWhite; ///< what rooms and furniture are filled with
    std::filesystem::path base;              ///< folder of the plan, for glTF files
    /// Whose zones of baths and showers are drawn, part of the base; nullptr: none. Must outlive the call.
    const catalogue::CountryPack* wet_zones = nullptr;
};

/// Walls, openings, furniture and names. Layers that are hidden are left out, ghosted ones are light.
struct StoreyBase {
    std::string storey;
    PlanMapping mapping;
    double width_mm = 0; ///< paper
    double height_mm = 0;
    std::vector<drawing::Item> items;
    std::vector<PlanHit> hits;
    std::vector<const plan::Room*> rooms; ///< of the storey; live as long as the plan
    std::vector<std::vector<drawing::Pt>> keep_clear; ///< its texts and door leaves: no tag lies on them
};
/// A storey without rooms, or an unknown one, gives an empty base. Of `options`, scale, furniture, paper and
/// base count.
StoreyBase storeyBase(const plan::Plan& plan, const std::string& storey_id,
                      const StoreyPlanOptions& options = {});

/// Plates and luminaires of the base's storey with their tags and leaders, and frames around what is
/// selected.
struct StoreySymbols {
    std::vector<drawing::Item> items;
    std::vector<PlanHit> hits;
    std::vector<drawing::PlacedObject> placed; ///< in house mm, whatever moved the symbols aside
    std::vector<std::string> untagged;         ///< ids of what has its tag left out
};
StoreySymbols storeySymbols(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                            const StoreyBase& base, const StoreyPlanOptions& options = {});

/// Both parts on one sheet.
struct StoreyPlan {
    drawing::Sheet sheet;
    PlanMapping mapping;
    std::vector<PlanHit> hits; ///< in drawing order
};
StoreyPlan storeyPlan(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                      const std::string& storey_id, const StoreyPlanOptions& options = {});

} // namespace gangway::sheets
