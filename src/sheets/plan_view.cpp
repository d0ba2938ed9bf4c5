#include "sheets/plan_view.hpp"

#include "sheets/plan_clip.hpp"

#include <algorithm>

namespace gangway::sheets {

namespace {

constexpr double kAroundRoom = 3;  ///< paper around a single room, beyond its walls
constexpr double kRoomWalls = 250; ///< how much of the walls around a single room is shown, real mm

/// Furniture stands behind what the sheet is about.
void makeFurnitureLight(std::vector<Item>& items) {
    for (Item& item : items) {
        if (item.layer != "furniture") continue;
        std::vector<Item> one{item};
        makeLight(one, 0);
        item = std::move(one.front());
    }
}

} // namespace

double shownAround(double scale) {
    return kRoomWalls / scale + kAroundRoom;
}

PlanPicture planPicture(const StoreyBase& base, const std::vector<Item>& between,
                        const StoreySymbols& symbols, const plan::Room* room) {
    PlanPicture picture;
    picture.scale = base.mapping.scale;
    picture.items = base.items;
    makeFurnitureLight(picture.items);
    picture.items.insert(picture.items.end(), between.begin(), between.end());
    picture.items.insert(picture.items.end(), symbols.items.begin(), symbols.items.end());
    if (room != nullptr) {
        std::vector<Pt> corners;
        for (Vec2 p : room->outline)
            corners.push_back(base.mapping.paper(p));
        picture.items = clipped(picture.items, extentOfPoints(corners).grown(shownAround(picture.scale)));
    }
    move(picture.items, -base.mapping.origin.x, -base.mapping.origin.y);
    picture.placed = symbols.placed;
    std::erase_if(picture.placed, [&](const drawing::PlacedObject& object) {
        return std::ranges::none_of(picture.items, [&](const Item& item) {
            return item.id == object.id && item.layer == object.layer;
        });
    });
    picture.extent = extentOf(picture.items);
    return picture;
}

void keepOnly(StoreySymbols& symbols, const std::vector<std::string>& ids) {
    const auto isOther = [&](const std::string& id) { return !std::ranges::binary_search(ids, id); };
    std::erase_if(symbols.items, [&](const Item& item) { return isOther(item.id); });
    std::erase_if(symbols.placed, [&](const drawing::PlacedObject& object) { return isOther(object.id); });
    std::erase_if(symbols.hits, [&](const PlanHit& hit) { return isOther(hit.id); });
    std::erase_if(symbols.untagged, isOther);
}

std::vector<std::string> thingsIn(const plan::Plan& plan, const plan::Room& room) {
    std::vector<std::string> ids;
    for (const plan::Plate& plate : plan.plates)
        if (plate.room == room.id) ids.push_back(plate.id);
    for (const plan::Luminaire& luminaire : plan.luminaires)
        if (luminaire.room == room.id) ids.push_back(luminaire.id);
    std::ranges::sort(ids);
    return ids;
}

} // namespace gangway::sheets
