// A room's boxes by the surface they sit in: its walls, faces of furniture, floor and ceiling, so that each
// box is on one of them.
#pragma once

#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// A surface of a room with what is mounted on it, in the frame of that host (plan::Host): u from the left
/// edge and v above FFL on walls and upright faces; u east and v north of the room's south-west corner on
/// floors and ceilings; v towards the back on tops and undersides of furniture.
struct Surface {
    enum class Kind { Wall, Furniture, Floor, Ceiling };
    Kind kind = Kind::Wall;
    std::size_t wall = 0;                   ///< index in the room, of walls
    const plan::Furniture* piece = nullptr; ///< of furniture
    std::string face;                       ///< of furniture: "front"
    std::string name;                       ///< "wall A", "kitchen island (right)", "floor", "ceiling"
    std::vector<Mounted> mounted;           ///< by u, then v

    /// v is a height above FFL.
    bool upright() const {
        return kind == Kind::Wall || (kind == Kind::Furniture && face != "top" && face != "bottom");
    }
    std::size_t boxes() const;
    std::size_t points() const; ///< of luminaires
};

/// Those with a box or a luminaire's point: walls in the room's order, furniture in the plan's, floor,
/// ceiling. Floor and table luminaires are plugged in and have no point.
std::vector<Surface> surfacesOf(const House& house, const plan::Room& room);

/// "u from the left corner, v above FFL": how u and v are measured on a surface.
std::string measuredInWords(const Surface& surface);

/// What stands in one gang by its module's code: "SO-F 'hob'"; "blank" without a module.
std::string gangCode(const catalogue::Gang& gang);
/// What is behind each box: the codes of the gangs before it, "SO-F" or "SW-1, SW-1", one entry a box centre
/// of `item.box_centres_mm`.
std::vector<std::string> codesByBox(const Mounted& item);

/// A length in mm, with feet and inches in brackets where the plan is in them: {"1050"} or
/// {"1050", "(3'-5 5/16\")"}.
std::vector<std::string> lengthLines(double value_mm, plan::DisplayUnits units);

} // namespace gangway::sheets
