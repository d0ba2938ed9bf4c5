// Room names of a storey's plan: inside their room, clear of lamps, doors and stairs, and of furniture as far
// as there is room.
#include "sheets/storey_plan_parts.hpp"

#include "geometry/furniture.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gangway::sheets {

namespace {

constexpr int kSteps = 24;      ///< places tried along each side of a room
constexpr double kNearWall = 9; ///< paper before a wall that had better be left to plates and their tags
constexpr double kLamp = 2.4;   ///< half the paper a lamp's symbol needs
constexpr double kLetter = 3;   ///< and what its letter needs more, up and to the right
constexpr double kPlate = 4.5;  ///< half the paper a plate's symbol needs, as a rule
constexpr double kName = 3.5;
constexpr double kForbidden = 20; ///< cost of lying on a symbol, a door's swing or a stair
constexpr drawing::Colour kNameColour{0x50, 0x50, 0x50};

struct NamePlace {
    std::vector<Rect> forbidden;
    std::vector<Rect> covered; ///< furniture
};

NamePlace whatStandsIn(const StoreyDrawing& storey, const plan::Room& room) {
    NamePlace place;
    for (const plan::Luminaire& luminaire : storey.plan->luminaires) {
        if (luminaire.room != room.id) continue;
        if (const auto at = geometry::hostPoint(*storey.house, room.id, luminaire.host)) {
            const Pt p = storey.at(Vec2{at->x, at->y});
            place.forbidden.push_back(Rect{p.x, p.y, p.x + kLetter, p.y + kLetter}.grown(kLamp));
        }
    }
    for (const plan::Plate& plate : storey.plan->plates) {
        if (plate.room != room.id) continue;
        if (const auto at = geometry::hostPoint(*storey.house, room.id, plate.host)) {
            const Pt p = storey.at(Vec2{at->x, at->y});
            place.forbidden.push_back(Rect{p.x, p.y, p.x, p.y}.grown(kPlate));
        }
    }
    for (const plan::Opening* opening : storey.house->doorsInto(room.id))
        for (const geometry::Leaf& leaf : geometry::doorLeaves(*storey.house, *opening))
            place.forbidden.push_back(
                extentOfPoints(storey.at({leaf.hinge_mm, leaf.closed_mm, leaf.open_mm})));
    for (const geometry::StairVoid& through : storey.house->floorVoids(room.id))
        place.forbidden.push_back(extentOfPoints(storey.at(through.outline_mm)));
    for (const plan::Furniture* piece : storey.house->furnitureIn(room.id)) {
        if (!storey.options->furniture) break;
        const Rect extent = extentOfPoints(storey.at(geometry::footprint(*piece)));
        if (piece->kind == "stair") place.forbidden.push_back(extent);
        // A name may lie on a rug.
        if (piece->size.height_mm > 50) place.covered.push_back(extent);
    }
    return place;
}

double sharedArea(const Rect& a, const Rect& b) {
    const double width = std::min(a.right, b.right) - std::max(a.left, b.left);
    const double height = std::min(a.top, b.top) - std::max(a.bottom, b.bottom);
    return width > 0 && height > 0 ? width * height : 0;
}

bool insideOnPaper(const StoreyDrawing& storey, const plan::Room& room, const Rect& rect) {
    const auto corners = cornersOf(rect);
    if (!std::ranges::all_of(corners,
                             [&](Pt p) { return geometry::insideRoom(room, storey.base->mapping.house(p)); }))
        return false;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        if (crosses(rect, storey.at(edge.from_mm), storey.at(edge.to_mm))) return false;
    }
    return true;
}

/// The less the better; nullopt where a name cannot stand.
std::optional<double> costOf(const StoreyDrawing& storey, const plan::Room& room, const NamePlace& place,
                             const Rect& rect, Pt middle) {
    if (!insideOnPaper(storey, room, rect.grown(0.8))) return std::nullopt;
    double cost = 0;
    const double area = rect.width() * rect.height();
    for (const Rect& forbidden : place.forbidden)
        if (overlaps(rect.grown(0.6), forbidden)) cost += kForbidden;
    for (const Rect& covered : place.covered)
        cost += 4 * sharedArea(rect.grown(0.6), covered) / area;
    if (!insideOnPaper(storey, room, rect.grown(kNearWall))) cost += 1;
    const Pt centre = rect.centre();
    return cost + 0.02 * std::hypot(centre.x - middle.x, centre.y - middle.y);
}

/// A name set in lines of one height, and the best place for it.
struct NameDraft {
    std::vector<std::string> lines;
    double height_mm = kName;
    Rect place;
    double cost = 1e300; ///< stays so when it fits nowhere
};

NameDraft draft(const StoreyDrawing& storey, const plan::Room& room, const NamePlace& place, double height_mm,
                double most_width_mm) {
    NameDraft made;
    made.lines = wrapped(room.name, height_mm, most_width_mm);
    made.height_mm = height_mm;
    double width = 0;
    for (const std::string& line : made.lines)
        width = std::max(width, drawing::measure(line, height_mm).width_mm);
    const double height = paragraphHeight(made.lines, height_mm);
    const Rect extent = extentOfPoints(storey.at(room.outline));
    for (int ix = 1; ix < kSteps; ++ix)
        for (int iy = 1; iy < kSteps; ++iy) {
            const Pt at{extent.left + extent.width() * ix / kSteps,
                        extent.bottom + extent.height() * iy / kSteps};
            const Rect rect{at.x - width / 2, at.y - height / 2, at.x + width / 2, at.y + height / 2};
            const auto cost = costOf(storey, room, place, rect, extent.centre());
            if (!cost || *cost >= made.cost) continue;
            made.cost = *cost;
            made.place = rect;
        }
    return made;
}

/// In one line, wrapped, or smaller: the first that stands clear, else the clearest.
NameDraft bestDraft(const StoreyDrawing& storey, const plan::Room& room) {
    const NamePlace place = whatStandsIn(storey, room);
    const double width = extentOfPoints(storey.at(room.outline)).width();
    NameDraft best;
    for (const auto& [height_mm, most_width_mm] :
         {std::pair(kName, 1e9), std::pair(kName, width / 2), std::pair(kNoteText, 1e9),
          std::pair(kNoteText, width / 2), std::pair(kNoteText, width - 2)}) {
        NameDraft made = draft(storey, room, place, height_mm, most_width_mm);
        if (made.cost < best.cost) best = std::move(made);
        if (best.cost < kForbidden) break;
    }
    return best;
}

void drawName(StoreyDrawing& storey, const plan::Room& room, const NameDraft& name) {
    Ink ink(storey.base->items, "text", room.id);
    double y = name.place.top - name.height_mm;
    for (std::size_t i = 0; i < name.lines.size(); ++i) {
        if (i > 0) y -= lineDrop(name.lines[i - 1], name.lines[i], name.height_mm);
        drawing::Text text;
        text.at = {name.place.centre().x, y};
        text.text = name.lines[i];
        text.height_mm = name.height_mm;
        text.align = drawing::Align::Centre;
        text.colour = kNameColour;
        text.knock_out = true;
        storey.base->keep_clear.push_back(drawing::textCorners(text, drawing::kKnockOutMargin_mm));
        ink.text(text);
    }
}

} // namespace

void drawRoomNames(StoreyDrawing& storey) {
    for (const plan::Room* room : storey.rooms) {
        if (room->name.empty() || room->outline.size() < 3) continue;
        const NameDraft name = bestDraft(storey, *room);
        // A room without space for its name goes without.
        if (name.cost < 1e300) drawName(storey, *room, name);
    }
}

} // namespace gangway::sheets
