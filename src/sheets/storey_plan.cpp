#include "sheets/storey_plan_parts.hpp"

#include "geometry/wall_section.hpp"
#include "sheets/zone_hatch.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace gangway::sheets {

namespace {

/// Paper around the building.
constexpr double kMargin = 8;
constexpr drawing::Colour kLightLine{0xB4, 0xB4, 0xB4};
constexpr drawing::Colour kLightFill{0xE6, 0xE6, 0xE6};

template <typename... Visits>
struct Overloaded : Visits... {
    using Visits::operator()...;
};
template <typename... Visits>
Overloaded(Visits...) -> Overloaded<Visits...>;

void eachPen(drawing::Primitive& primitive, const auto& change) {
    std::visit(Overloaded{[&](drawing::Line& line) { change(line.pen); },
                          [&](drawing::Polyline& polyline) { change(polyline.pen); },
                          [&](drawing::Arc& arc) { change(arc.pen); }, [](auto&) {}},
               primitive);
}

/// Sizes the paper to the rooms of the storey with their walls.
void fitPaper(StoreyDrawing& storey) {
    Vec2 low{1e300, 1e300};
    Vec2 high{-1e300, -1e300};
    const auto take = [&](Vec2 p) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    };
    for (const plan::Room* room : storey.rooms) {
        std::ranges::for_each(room->outline, take);
        for (const auto& polygon : geometry::wallSections(*storey.house, *room))
            std::ranges::for_each(polygon, take);
        for (const plan::Opening* opening : storey.house->openingsOf(room->id))
            for (const geometry::Leaf& leaf : geometry::doorLeaves(*storey.house, *opening))
                take(leaf.open_mm);
    }
    StoreyBase& base = *storey.base;
    if (low.x > high.x) return;
    const double scale = base.mapping.scale;
    base.mapping.origin = {kMargin - low.x / scale, kMargin - low.y / scale};
    base.width_mm = (high.x - low.x) / scale + 2 * kMargin;
    base.height_mm = (high.y - low.y) / scale + 2 * kMargin;
}

} // namespace

std::vector<Pt> StoreyDrawing::at(const std::vector<Vec2>& points_mm) const {
    std::vector<Pt> points;
    points.reserve(points_mm.size());
    for (Vec2 p : points_mm)
        points.push_back(at(p));
    return points;
}

plan::Visibility visibilityOf(const plan::Plan& plan, const std::string& layer_id) {
    const plan::Layer* layer = plan::findLayer(plan, layer_id);
    return layer == nullptr ? plan::Visibility::Shown : layer->visibility;
}

void makeLight(std::vector<Item>& items, std::size_t first) {
    for (std::size_t i = first; i < items.size(); ++i) {
        eachPen(items[i].primitive, [](Pen& pen) { pen.colour = kLightLine; });
        if (auto* text = std::get_if<drawing::Text>(&items[i].primitive)) text->colour = drawing::kGhost;
        auto* fill = std::get_if<drawing::Fill>(&items[i].primitive);
        // Fills that cover with the paper's own colour, which is light already, are left alone.
        if (fill != nullptr && fill->colour.r < kLightFill.r) fill->colour = kLightFill;
    }
}

void paint(std::vector<Item>& items, std::size_t first, drawing::Colour colour, double least_width_mm) {
    for (std::size_t i = first; i < items.size(); ++i) {
        eachPen(items[i].primitive, [&](Pen& pen) {
            pen.colour = colour;
            pen.width_mm = std::max(pen.width_mm, least_width_mm);
        });
        if (auto* text = std::get_if<drawing::Text>(&items[i].primitive)) text->colour = colour;
        if (auto* fill = std::get_if<drawing::Fill>(&items[i].primitive)) fill->colour = colour;
    }
}

Rect extentOfPoints(const std::vector<Pt>& points) {
    if (points.empty()) return {};
    Rect rect{points.front().x, points.front().y, points.front().x, points.front().y};
    for (Pt p : points)
        rect = united(rect, {p.x, p.y, p.x, p.y});
    return rect;
}

const PlanHit* hitAt(std::span<const PlanHit> hits, Vec2 house_mm) {
    for (std::size_t i = hits.size(); i-- > 0;)
        if (geometry::insidePolygon(hits[i].outline_mm, house_mm)) return &hits[i];
    return nullptr;
}

StoreyBase storeyBase(const plan::Plan& plan, const std::string& storey_id,
                      const StoreyPlanOptions& options) {
    StoreyBase base;
    base.storey = storey_id;
    base.mapping.scale = options.scale;
    const geometry::HouseIndex house(plan);
    StoreyDrawing storey{&plan, &house, &options, {}, &base};
    for (const plan::Room& room : plan.rooms)
        if (room.storey == storey_id) storey.rooms.push_back(&room);
    base.rooms = storey.rooms;
    fitPaper(storey);
    const plan::Visibility building = visibilityOf(plan, plan::kLayerBuilding);
    for (const plan::Room* room : storey.rooms)
        base.hits.push_back({PlanThing::Room, room->id, room->id, {}, room->outline});
    const auto drawBuilding = [&](auto draw) {
        if (building == plan::Visibility::Hidden) return;
        const std::size_t first = base.items.size();
        draw(storey);
        if (building == plan::Visibility::Ghosted) makeLight(base.items, first);
    };
    drawBuilding(drawWallMass);
    if (options.furniture) drawPlanFurniture(storey);
    drawPlanZones(storey);
    drawPlanStairs(storey);
    drawBuilding(drawWallFaces);
    drawBuilding(drawPlanOpenings);
    drawRoomNames(storey);
    drawPlanZoneNumbers(storey);
    return base;
}

StoreyPlan storeyPlan(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                      const std::string& storey_id, const StoreyPlanOptions& options) {
    StoreyBase base = storeyBase(plan, storey_id, options);
    StoreySymbols symbols = storeySymbols(plan, catalogue, base, options);
    StoreyPlan drawn;
    const plan::Storey* storey = plan::findStorey(plan, storey_id);
    drawn.sheet.title = storey == nullptr ? storey_id : storey->name;
    drawn.sheet.scale = options.scale;
    drawn.sheet.width_mm = base.width_mm;
    drawn.sheet.height_mm = base.height_mm;
    drawn.mapping = base.mapping;
    drawn.sheet.items = std::move(base.items);
    std::ranges::move(symbols.items, std::back_inserter(drawn.sheet.items));
    drawn.hits = std::move(base.hits);
    std::ranges::move(symbols.hits, std::back_inserter(drawn.hits));
    return drawn;
}

} // namespace gangway::sheets
