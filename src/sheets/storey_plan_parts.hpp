// What the files that draw a storey's plan share with each other.
#pragma once

#include "geometry/house_index.hpp"
#include "geometry/walls.hpp"
#include "sheets/canvas.hpp"
#include "sheets/storey_plan.hpp"

#include <optional>

namespace gangway::sheets {

using plan::Vec2;

/// Height of the level cut through the walls above FFL; common practice, no source.
inline constexpr double kCutHeight = 1200;
/// Lines of furniture and other quiet things.
inline constexpr Pen kQuiet{0.18, drawing::LineType::Continuous, {0x8C, 0x8C, 0x8C}};
inline constexpr Pen kQuietDashed{0.18, drawing::LineType::Dashed, {0x8C, 0x8C, 0x8C}};

/// A storey while its base is drawn.
struct StoreyDrawing {
    const plan::Plan* plan = nullptr;
    const geometry::HouseIndex* house = nullptr;
    const StoreyPlanOptions* options = nullptr;
    std::vector<const plan::Room*> rooms; ///< of the storey, in the plan's order
    StoreyBase* base = nullptr;

    Pt at(Vec2 house_mm) const { return base->mapping.paper(house_mm); }
    std::vector<Pt> at(const std::vector<Vec2>& points_mm) const;
    double real(double paper_mm) const { return paper_mm * base->mapping.scale; }
};

/// How a layer is shown; one that the plan does not have is shown.
plan::Visibility visibilityOf(const plan::Plan& plan, const std::string& layer_id);
/// Makes the items from number `first` on light, for a ghosted layer, or paints them in one colour with lines
/// at least `least_width_mm` wide.
void makeLight(std::vector<Item>& items, std::size_t first);
void paint(std::vector<Item>& items, std::size_t first, drawing::Colour colour, double least_width_mm);

/// A hole in a wall as the plan shows it.
struct PlanHole {
    geometry::FaceHole hole;
    bool outer = false; ///< nothing but the open air lies behind
    bool cut = false;   ///< the level cut goes through it
};
std::vector<PlanHole> planHoles(const geometry::HouseIndex& house, const geometry::FaceRef& face);

/// The place of a wall on plan.
struct WallLineOnPlan {
    Vec2 from_mm, along, out; ///< unit directions: along u, and into the room
    double length_mm = 0;
    Vec2 at(double u_mm, double out_mm = 0) const { return from_mm + along * u_mm + out * out_mm; }
};
WallLineOnPlan wallLineOnPlan(const plan::Room& room, std::size_t wall);

/// Parts of the base, in drawing order.
void drawWallMass(StoreyDrawing& storey);
void drawPlanFurniture(StoreyDrawing& storey);
void drawWallFaces(StoreyDrawing& storey);
void drawPlanOpenings(StoreyDrawing& storey);
void drawPlanStairs(StoreyDrawing& storey);
void drawRoomNames(StoreyDrawing& storey);

/// Words to put beside a symbol: lines of kNoteText.
struct PlanTag {
    std::vector<std::string> lines;
    std::string mark; ///< of its legs, in a capsule under the lines; may be empty
    std::string id;
    const plan::Room* room = nullptr; ///< where it should stay inside; may be nullptr
    Pt middle;                        ///< of the symbol
    Pt normal;                        ///< towards where the tag is tried first
    double half_along_mm = 0;         ///< of the symbol, square to the normal
    double half_out_mm = 0;
};
/// Puts tags, in the order given, clear of `taken` boxes, of each other and of walls as far as there is room
/// near the symbol; one that has none lies on what is there, or is left out. One rectangle on paper for each
/// tag, none for one left out.
enum class NoRoom { OnTop, LeftOut };
std::vector<std::optional<Rect>> placePlanTags(std::vector<Item>& items, const PlanMapping& mapping,
                                               const std::vector<Rect>& taken,
                                               const std::vector<PlanTag>& tags, NoRoom no_room);

Rect extentOfPoints(const std::vector<Pt>& points);

} // namespace gangway::sheets
