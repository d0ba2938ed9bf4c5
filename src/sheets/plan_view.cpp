#include "sheets/plan_view.hpp"

#include "sheets/plan_clip.hpp"
#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>

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

/// Texts of the building that symbols' own letters stand on.
std::vector<std::string> coveredNames(const StoreyBase& base, const StoreySymbols& symbols) {
    std::vector<Rect> letters;
    for (const Item& item : symbols.items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
            letters.push_back(extentOf(*text).grown(0.4));
    std::vector<std::string> ids;
    for (const Item& item : base.items) {
        const auto* text = std::get_if<drawing::Text>(&item.primitive);
        if (text == nullptr) continue;
        const Rect rect = extentOf(*text);
        if (std::ranges::any_of(letters, [&](const Rect& letter) { return overlaps(letter, rect); }))
            ids.push_back(item.id);
    }
    return ids;
}

/// A luminaire's letter gives way where it would stand on a plate's number: its tag and the legend of the
/// larger sheet tell the kind too.
void leaveOutLetters(std::vector<Item>& items) {
    std::vector<std::pair<Rect, const Item*>> texts;
    for (const Item& item : items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
            texts.emplace_back(extentOf(*text), &item);
    std::erase_if(items, [&](const Item& item) {
        const auto* text = std::get_if<drawing::Text>(&item.primitive);
        if (text == nullptr || item.layer != "symbols" || item.id.starts_with("sheet:")) return false;
        const Rect rect = extentOf(*text);
        return std::ranges::any_of(texts, [&](const auto& other) {
            return other.second->id != item.id && overlaps(other.first, rect);
        });
    });
}

/// The name in small letters at the free place that is nearest to the room's middle; left out where there is
/// none.
void nameAnew(std::vector<Item>& items, const PlanMapping& mapping, const plan::Room& room) {
    constexpr int kSteps = 20;
    std::vector<Pt> corners;
    for (Vec2 p : room.outline)
        corners.push_back(mapping.paper(p));
    const Rect extent = extentOfPoints(corners);
    Occupancy occupancy;
    occupancy.takeTexts(items);
    for (const Item& item : items)
        if (item.layer == "plates" || item.layer == "symbols") occupancy.take(extentOf(item.primitive));
    drawing::Text text;
    text.text = room.name;
    text.height_mm = kNoteText;
    text.align = drawing::Align::Centre;
    text.knock_out = true;
    double nearest = 1e300;
    std::optional<Pt> best;
    for (int ix = 1; ix < kSteps; ++ix)
        for (int iy = 1; iy < kSteps; ++iy) {
            text.at = {extent.left + extent.width() * ix / kSteps,
                       extent.bottom + extent.height() * iy / kSteps};
            const double away = std::hypot(text.at.x - extent.centre().x, text.at.y - extent.centre().y);
            const Rect rect = extentOf(text).grown(0.8);
            const auto points = cornersOf(rect);
            if (away >= nearest || !occupancy.isFree(rect) || !std::ranges::all_of(points, [&](Pt p) {
                    return geometry::insideRoom(room, mapping.house(p));
                }))
                continue;
            nearest = away;
            best = text.at;
        }
    if (!best) return;
    text.at = *best;
    Ink(items, "text", room.id).text(std::move(text));
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
    const auto covered = coveredNames(base, symbols);
    std::erase_if(picture.items, [&](const Item& item) {
        return std::holds_alternative<drawing::Text>(item.primitive) &&
               std::ranges::find(covered, item.id) != covered.end();
    });
    std::vector<Item> marks = symbols.items;
    leaveOutLetters(marks);
    picture.items.insert(picture.items.end(), marks.begin(), marks.end());
    for (const plan::Room* one : base.rooms)
        if (std::ranges::find(covered, one->id) != covered.end()) nameAnew(picture.items, base.mapping, *one);
    if (room != nullptr) {
        std::vector<Pt> corners;
        for (Vec2 p : room->outline)
            corners.push_back(base.mapping.paper(p));
        picture.items = clipped(picture.items, extentOfPoints(corners).grown(shownAround(picture.scale)));
    }
    move(picture.items, -base.mapping.origin.x, -base.mapping.origin.y);
    putTextsOver(picture.items);
    picture.placed = symbols.placed;
    std::erase_if(picture.placed, [&](const drawing::PlacedObject& object) {
        return std::ranges::none_of(picture.items, [&](const Item& item) {
            return item.id == object.id && item.layer == object.layer;
        });
    });
    picture.extent = extentOf(picture.items);
    return picture;
}

void putTextsOver(std::vector<Item>& items) {
    struct Segment {
        Pt from, to;
        const std::string* id;
    };
    std::vector<Segment> lines;
    for (const Item& item : items) {
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive))
            lines.push_back({line->from, line->to, &item.id});
        if (const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive))
            for (std::size_t i = 1; i < polyline->points.size(); ++i)
                lines.push_back({polyline->points[i - 1], polyline->points[i], &item.id});
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const drawing::Line& line : dimension->lines)
                lines.push_back({line.from, line.to, &item.id});
    }
    const auto isCrossed = [&](const Item& item, const Rect& rect) {
        return std::ranges::any_of(lines, [&](const Segment& line) {
            return *line.id != item.id && crosses(rect, line.from, line.to);
        });
    };
    const auto staysUnder = [&](Item& item) {
        auto* text = std::get_if<drawing::Text>(&item.primitive);
        if (item.layer == "text") return std::holds_alternative<drawing::Line>(item.primitive);
        if (text == nullptr || !isCrossed(item, extentOf(*text))) return true;
        text->knock_out = true;
        return false;
    };
    std::vector<Item> under;
    std::vector<Item> over;
    for (Item& item : items)
        (staysUnder(item) ? under : over).push_back(std::move(item));
    items = std::move(under);
    std::ranges::move(over, std::back_inserter(items));
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
