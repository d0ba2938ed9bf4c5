// The picture of a wall as seen from inside the room, in paper mm around its own origin: the wall's left
// corner at FFL is (0, 0), u runs right, v up, nothing is mirrored. Printed sheets and the wall strip share
// it.
#pragma once

#include "sheets/canvas.hpp"
#include "sheets/tag_placement.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// 1:scale, from the wall's (u, v) in real mm to paper mm.
struct OnPaper {
    double scale = 20;
    /// For the wall strip on screen, where height is dear: set-outs and heights of boxes are the only
    /// numbers, names stand only where they fit, and what one clicks to learn is not written.
    bool compact = false;
    double mm(double real_mm) const { return real_mm / scale; }
    Pt at(Vec2 uv_mm) const { return {uv_mm.x / scale, uv_mm.y / scale}; }
    Rect rect(double left_mm, double bottom_mm, double right_mm, double top_mm) const {
        return {mm(left_mm), mm(bottom_mm), mm(right_mm), mm(top_mm)};
    }
};

/// How far of each adjacent wall is shown in cut, real mm (drawing-standards 4.2).
inline constexpr double kReturnMin = 100;
inline constexpr double kReturnMax = 200;
/// Width of a neighbour's return on paper; a wall that turns away has none.
double returnWidth(const WallView& view, OnPaper paper, End end);

/// Wall lines and tile joints; behind everything else.
void drawWallLines(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper);
/// Openings with casing, leaf, swing and parked leaves.
void drawOpenings(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper);
/// Furniture before the wall as a ghost, near over far.
void drawFurniture(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper);
/// Leaves of doors in other walls where they stand open before this one.
void drawOpenLeaves(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                    OnPaper paper);
/// Outline of the wall, FFL, slab, and the adjacent walls in cut with their letters.
void drawFabric(std::vector<Item>& items, const WallView& view, OnPaper paper);
/// Plates with their modules, and wall luminaires; dashed when something stands before them.
void drawMounted(std::vector<Item>& items, const WallView& view, OnPaper paper);

/// The outline of a plate or luminaire on paper.
Rect outlineOf(const Mounted& item, OnPaper paper);

/// Shapes of a module's front around its gang's centre at 1:scale. What would be smaller than `smallest_mm`
/// on paper is left out.
void drawFront(Ink& ink, const catalogue::ModuleType& module, Pt centre, double scale, const Pen& pen,
               double smallest_mm);

/// The whole picture of a wall, or of the portion of it that is to be shown, with its numbers, tags and
/// names. `crowded` gets the ids of what its numbers or its tag found no good room for.
std::vector<Item> drawElevation(const WallView& view, OnPaper paper,
                                std::vector<std::string>* crowded = nullptr);

} // namespace gangway::sheets
