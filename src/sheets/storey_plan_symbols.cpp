// Plates and luminaires of a storey's plan: symbols at their places, pulled apart where they collide, with
// leaders and tags.
#include "sheets/luminaire_top_view.hpp"
#include "sheets/storey_plan_glyphs.hpp"
#include "sheets/storey_plan_parts.hpp"
#include "sheets/storey_plan_words.hpp"

#include "drawing/dimensions.hpp"
#include "drawing/symbol_separation.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kDot = 0.4;         ///< radius of the dot at a symbol's true place (drawing-standards 3.1)
constexpr double kFrameAround = 0.7; ///< paper between a selected symbol and its frame
constexpr double kGrip = 0.6;        ///< around a symbol that can be clicked
constexpr double kSmallModule = 1.8; ///< the least the symbols' module may be (drawing-standards 2.2)
constexpr double kModule = 2.5;

/// A plate or luminaire on its way to paper.
struct Point {
    PlanThing kind = PlanThing::Plate;
    std::string id;
    std::string tag;
    std::string room_id;
    std::string wall;
    const plan::Room* room = nullptr;
    Pt place; ///< its true place on paper
    GlyphGroup group;
    drawing::SymbolBox box;
    double height_mm = 0; ///< above FFL
    bool selected = false;
    bool separate = true; ///< false: others may lie across it, as a lamp's line along a whole worktop
};

/// Where a host's point is, and which way is away from what it is on.
struct Standing {
    Pt at;
    Pt normal{0, 1};
    bool upright = false; ///< on a wall or a furniture's vertical face
    double height_mm = 0;
    Pt along{1, 0};
};

const char* layerOf(PlanThing kind) {
    return kind == PlanThing::Plate ? "plates" : "symbols";
}

class SymbolDrawing {
public:
    SymbolDrawing(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const StoreyBase& base,
                  const StoreyPlanOptions& options)
        : plan_(plan), catalogue_(catalogue), base_(base), options_(options), house_(plan),
          glyphs_(options.scale <= 25 ? kModule : kSmallModule) {}

    StoreySymbols draw() {
        takeLuminaires();
        takePlates();
        separate();
        // On plans for reading alone; elsewhere lines of legs are laid round words where they are.
        if (options_.tags_only_with_room) turnWordsAside();
        drawTags();
        for (std::size_t i = 0; i < points_.size(); ++i)
            drawPoint(i);
        drawSelectedBase();
        return std::move(drawn_);
    }

private:
    void separate() {
        std::vector<drawing::SymbolBox> boxes;
        for (const Point& point : points_)
            if (point.separate) boxes.push_back(point.box);
        const auto found = drawing::separateSymbols(boxes);
        auto next = found.begin();
        for (const Point& point : points_)
            spots_.push_back(point.separate ? *next++ : drawing::SymbolSpot{});
    }

    const plan::Room* roomHere(const std::string& room_id) const {
        const plan::Room* room = house_.room(room_id);
        return room != nullptr && room->storey == base_.storey ? room : nullptr;
    }
    bool isSelected(PlanThing kind, const std::string& id) const {
        return std::ranges::any_of(options_.selected,
                                   [&](const PlanRef& ref) { return ref.kind == kind && ref.id == id; });
    }

    std::optional<Standing> standingOf(const std::string& room_id, const plan::Host& host) const {
        const auto frame = geometry::hostFrame(house_, room_id, host);
        if (!frame) return std::nullopt;
        const plan::Vec3 at = geometry::toHouse(*frame, {host.u_mm, host.v_mm, 0});
        Standing standing;
        standing.at = base_.mapping.paper({at.x, at.y});
        standing.height_mm = at.z;
        standing.upright = std::abs(frame->w.z) < 0.5;
        const double size = std::hypot(frame->w.x, frame->w.y);
        if (standing.upright) standing.normal = {frame->w.x / size, frame->w.y / size};
        standing.along = {frame->u.x, frame->u.y};
        return standing;
    }

    Point pointAt(const Standing& standing, GlyphGroup group) const {
        Point point;
        point.place = standing.at;
        point.height_mm = standing.height_mm;
        point.box.anchor = standing.at;
        point.box.normal = standing.normal;
        point.box.from_mm = group.from_mm;
        point.box.to_mm = group.to_mm;
        point.box.depth_mm = group.depth_mm;
        point.box.rank = standing.height_mm;
        point.group = std::move(group);
        return point;
    }
    /// The group around its own middle instead of its foot, and not to be moved.
    Point centred(const Standing& standing, GlyphGroup group, double middle_mm) const {
        Point point = pointAt(standing, std::move(group));
        point.box.anchor = {standing.at.x - standing.normal.x * middle_mm,
                            standing.at.y - standing.normal.y * middle_mm};
        point.box.drag = Pt{0, 0};
        return point;
    }

    void take(Point point, const plan::Room* room, PlanThing kind, const std::string& id,
              const std::string& wall) {
        point.kind = kind;
        point.id = id;
        point.room_id = room->id;
        point.wall = wall;
        point.room = room;
        point.selected = isSelected(kind, id);
        point.box.id = fmt::format("{}:{}", kind == PlanThing::Plate ? "plate" : "luminaire", id);
        points_.push_back(std::move(point));
    }

    /// Where a thing truly is, for writers that make objects of symbols.
    void note(PlanThing kind, const std::string& id, const std::string& tag, const std::string& room_id,
              const plan::Host& host) {
        const auto frame = geometry::hostFrame(house_, room_id, host);
        if (!frame) return;
        const plan::Vec3 at = geometry::toHouse(*frame, {host.u_mm, host.v_mm, 0});
        drawing::PlacedObject object{layerOf(kind), id, tag, {at.x, at.y}, at.z, {}, {}, 0};
        if (host.kind == plan::Host::Kind::Wall) object.set_out_mm = host.u_mm;
        drawn_.placed.push_back(std::move(object));
    }

    // --- plates
    // ---------------------------------------------------------------------------------------------

    /// A plate in the floor: its symbol in a square around its place (drawing-standards 2.3).
    Point floorPlate(const Standing& standing, const plan::Plate& plate) {
        GlyphGroup group = glyphs_.plate(catalogue_, plate, standing.normal);
        const double edge = 0.3 * glyphs_.module_mm();
        const Rect square{group.from_mm - edge, -edge, group.to_mm + edge, group.depth_mm + edge};
        Ink(group.items, "").rect(square, kNarrow);
        const double middle = group.depth_mm / 2;
        group.from_mm = square.left;
        group.to_mm = square.right;
        group.depth_mm = square.top;
        return centred(standing, std::move(group), middle);
    }

    bool isAskedFor(const plan::Plate& plate) const {
        return !options_.only_plates || std::ranges::binary_search(*options_.only_plates, plate.id);
    }

    void takePlates() {
        visibility_ = visibilityOf(plan_, plan::kLayerPlates);
        if (visibility_ == plan::Visibility::Hidden) return;
        for (const plan::Plate& plate : plan_.plates) {
            const plan::Room* room = roomHere(plate.room);
            if (room == nullptr || !isAskedFor(plate)) continue;
            const auto standing = standingOf(plate.room, plate.host);
            if (!standing) continue;
            Point point = plate.host.kind == plan::Host::Kind::Floor
                              ? floorPlate(*standing, plate)
                              : pointAt(*standing, glyphs_.plate(catalogue_, plate, standing->normal));
            if (!standing->upright) point.box.drag = Pt{0, 0}; // no wall whose normal it could follow
            point.tag = plate.tag.empty() ? plate.id : plate.tag;
            if (plate.symbol_offset_mm)
                point.box.drag = Pt{plate.symbol_offset_mm->x / options_.scale,
                                    plate.symbol_offset_mm->y / options_.scale};
            note(PlanThing::Plate, plate.id, point.tag, plate.room, plate.host);
            take(std::move(point), room, PlanThing::Plate, plate.id, plate.host.wall);
        }
    }

    // --- luminaires
    // -----------------------------------------------------------------------------------------

    /// A line with bars at its ends, as long as the luminaire.
    GlyphGroup lineOf(const plan::Luminaire& luminaire, Pt along) const {
        const double module = glyphs_.module_mm();
        const double half = std::max(luminaire.size_mm / options_.scale / 2, module);
        const double bar = module / 2;
        GlyphGroup group;
        Ink ink(group.items, "");
        ink.line({-along.x * half, -along.y * half}, {along.x * half, along.y * half}, kOutline);
        for (const double end : {-half, half})
            ink.line({along.x * end - along.y * bar, along.y * end + along.x * bar},
                     {along.x * end + along.y * bar, along.y * end - along.x * bar}, kNarrow);
        const double wide = std::abs(along.x) * half + std::abs(along.y) * bar;
        group.from_mm = -wide;
        group.to_mm = wide;
        group.depth_mm = 2 * (std::abs(along.y) * half + std::abs(along.x) * bar);
        return group;
    }

    bool fromAbove(const plan::Luminaire& luminaire) const {
        using Look = plan::Luminaire::PlanLook;
        if (luminaire.size_mm <= 0) return false;
        if (luminaire.plan_look != Look::AsSheet) return luminaire.plan_look == Look::TopView;
        return options_.lamps == StoreyPlanOptions::Lamps::TopView;
    }

    /// At its true size and place, which nothing pushes away.
    Point topView(const plan::Luminaire& luminaire, Standing standing) const {
        using Kind = plan::Luminaire::Kind;
        const double turn = luminaire.turn_deg * std::numbers::pi / 180;
        const bool own_turn = luminaire.kind == Kind::Linear && !standing.upright;
        const Pt along = own_turn ? Pt{std::cos(turn), std::sin(turn)} : standing.along;
        GlyphGroup group =
            luminaireTopView(luminaire, options_.scale, along, standing.normal, standing.upright);
        const bool line = luminaire.kind == Kind::Linear || luminaire.kind == Kind::UnderUnit;
        if (standing.upright && !line) {
            Point point = pointAt(standing, std::move(group));
            point.box.drag = Pt{0, 0};
            point.separate = false;
            return point;
        }
        if (standing.upright) {
            const double out = std::abs(standing.normal.y) * group.depth_mm / 2 +
                               std::abs(standing.normal.x) * (group.to_mm - group.from_mm) / 2;
            standing.at = {standing.at.x + standing.normal.x * out, standing.at.y + standing.normal.y * out};
        }
        standing.normal = {0, 1};
        const double middle = group.depth_mm / 2;
        Point point = centred(standing, std::move(group), middle);
        move(point.group.items, 0, middle);
        point.separate = false;
        return point;
    }

    Point luminairePoint(const plan::Luminaire& luminaire, Standing standing) {
        if (fromAbove(luminaire)) return topView(luminaire, standing);
        using Kind = plan::Luminaire::Kind;
        const bool line = luminaire.kind == Kind::Linear || luminaire.kind == Kind::UnderUnit;
        if (line) {
            const double turn = luminaire.turn_deg * std::numbers::pi / 180;
            const bool own_turn = luminaire.kind == Kind::Linear && !standing.upright;
            const double before = standing.upright ? glyphs_.module_mm() : 0; // clear of the wall's own line
            standing.at.x += standing.normal.x * before;
            standing.at.y += standing.normal.y * before;
            const Pt along = own_turn ? Pt{std::cos(turn), std::sin(turn)} : standing.along;
            standing.normal = {0, 1};
            GlyphGroup group = lineOf(luminaire, along);
            const double middle = group.depth_mm / 2;
            Point point = centred(standing, std::move(group), middle);
            move(point.group.items, 0, middle);
            point.separate = false;
            return point;
        }
        if (standing.upright) return pointAt(standing, glyphs_.single("luminaire-wall", standing.normal));
        const std::string symbol = luminaire.kind == Kind::Recessed  ? "luminaire-recessed"
                                   : luminaire.kind == Kind::Pendant ? "luminaire-pendant"
                                                                     : "luminaire";
        return centred(standing, glyphs_.round(symbol), glyphs_.module_mm());
    }

    void takeLuminaires() {
        const plan::Visibility lamps = visibilityOf(plan_, plan::kLayerLamps);
        lamps_ = lamps;
        if (lamps == plan::Visibility::Hidden) return;
        for (const plan::Luminaire& luminaire : plan_.luminaires) {
            const plan::Room* room = roomHere(luminaire.room);
            if (room == nullptr) continue;
            const auto standing = standingOf(luminaire.room, luminaire.host);
            if (!standing) continue;
            Point point = luminairePoint(luminaire, *standing);
            const std::string tag = luminaire.tag.empty() ? luminaire.id : luminaire.tag;
            if (options_.luminaire_tags) point.tag = tag;
            note(PlanThing::Luminaire, luminaire.id, tag, luminaire.room, luminaire.host);
            take(std::move(point), room, PlanThing::Luminaire, luminaire.id, luminaire.host.wall);
        }
    }

    // --- onto paper
    // -----------------------------------------------------------------------------------------

    Pt footOf(std::size_t i) const {
        const Point& point = points_[i];
        return {point.box.anchor.x + spots_[i].shift.x, point.box.anchor.y + spots_[i].shift.y};
    }

    /// Letters and figures of symbols, out of the way of what is drawn around them.
    void turnWordsAside() {
        std::vector<Rect> symbols;
        std::vector<SymbolWord> words;
        std::vector<drawing::Text*> texts;
        for (std::size_t i = 0; i < points_.size(); ++i) {
            symbols.push_back(extentOfPoints(drawing::cornersOf(points_[i].box, spots_[i])));
            for (Item& item : points_[i].group.items)
                if (auto* text = std::get_if<drawing::Text>(&item.primitive)) {
                    texts.push_back(text);
                    words.push_back({i, extentOf(*text).moved(footOf(i).x, footOf(i).y)});
                }
        }
        const auto moves = movesAside(symbols, std::move(words), base_.items);
        for (std::size_t i = 0; i < texts.size(); ++i)
            texts[i]->at = {texts[i]->at.x + moves[i].x, texts[i]->at.y + moves[i].y};
    }

    void style(std::size_t first, const Point& point) {
        const plan::Visibility shown = point.kind == PlanThing::Plate ? visibility_ : lamps_;
        if (shown == plan::Visibility::Ghosted) makeLight(drawn_.items, first);
        if (point.selected) paint(drawn_.items, first, options_.accent, kOutline.width_mm);
    }

    void drawPoint(std::size_t i) {
        Point& point = points_[i];
        const std::size_t first = drawn_.items.size();
        const std::string layer = layerOf(point.kind);
        const Pt foot = footOf(i);
        Ink ink(drawn_.items, layer, point.id);
        if (spots_[i].leader) {
            ink.line(point.place, foot, kThin);
            ink.fill(disc(point.place, kDot), drawing::kBlack);
        }
        move(point.group.items, foot.x, foot.y);
        for (Item& item : point.group.items) {
            item.layer = layer;
            item.id = point.id;
            drawn_.items.push_back(std::move(item));
        }
        if (point.selected)
            ink.polyline(drawing::cornersOf(point.box, spots_[i], kFrameAround), true, kNarrow);
        style(first, point);
        addHit(point, drawing::cornersOf(point.box, spots_[i], kGrip));
    }

    void addHit(const Point& point, const std::vector<Pt>& outline) {
        PlanHit hit{point.kind, point.id, point.room_id, point.wall, {}};
        for (Pt p : outline)
            hit.outline_mm.push_back(base_.mapping.house(p));
        drawn_.hits.push_back(std::move(hit));
    }

    PlanTag tagOf(std::size_t i) const {
        const Point& point = points_[i];
        PlanTag tag;
        tag.id = point.id;
        if (!point.tag.empty()) tag.lines = {point.tag};
        const auto mark = options_.marks.find(point.id);
        if (mark != options_.marks.end()) tag.mark = mark->second;
        const bool wall_lamp =
            options_.luminaire_tags && point.kind == PlanThing::Luminaire && !point.wall.empty();
        if (options_.heights && (point.kind == PlanThing::Plate || wall_lamp))
            tag.lines.push_back(drawing::number(point.height_mm, units()));
        tag.room = point.room;
        tag.normal = point.box.normal;
        tag.half_along_mm = (point.box.to_mm - point.box.from_mm) / 2;
        tag.half_out_mm = point.box.depth_mm / 2;
        const auto corners = drawing::cornersOf(point.box, spots_[i]);
        tag.middle = {(corners[0].x + corners[2].x) / 2, (corners[0].y + corners[2].y) / 2};
        return tag;
    }

    drawing::Units units() const {
        if (options_.height_units == StoreyPlanOptions::Heights::Millimetres)
            return drawing::Units::Millimetres;
        switch (plan_.units) {
        case plan::DisplayUnits::Centimetres:
            return drawing::Units::Centimetres;
        case plan::DisplayUnits::Metres:
            return drawing::Units::Metres;
        case plan::DisplayUnits::FeetInches:
            return drawing::Units::FeetInches;
        case plan::DisplayUnits::Millimetres:
            break;
        }
        return drawing::Units::Millimetres;
    }

    void drawTags() {
        std::vector<Rect> taken;
        for (const auto& outline : base_.keep_clear)
            if (!outline.empty()) taken.push_back(extentOfPoints(outline));
        for (std::size_t i = 0; i < points_.size(); ++i) {
            taken.push_back(extentOfPoints(drawing::cornersOf(points_[i].box, spots_[i])));
            for (const Item& item : points_[i].group.items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    taken.push_back(extentOf(*text).moved(footOf(i).x, footOf(i).y));
            if (!spots_[i].leader) continue;
            taken.push_back(extentOfPoints({points_[i].place, footOf(i)}));
        }
        std::vector<std::size_t> owners;
        std::vector<PlanTag> tags;
        for (std::size_t i = 0; i < points_.size(); ++i) {
            if (points_[i].tag.empty() && !options_.marks.contains(points_[i].id)) continue;
            owners.push_back(i);
            tags.push_back(tagOf(i));
        }
        std::vector<Item> items;
        const auto rects = placePlanTags(items, base_.mapping, taken, tags,
                                         options_.tags_only_with_room ? NoRoom::LeftOut : NoRoom::OnTop);
        // Items of one tag follow each other, in the tags' order.
        std::size_t next = 0;
        for (std::size_t t = 0; t < tags.size(); ++t) {
            if (!rects[t]) {
                drawn_.untagged.push_back(tags[t].id);
                continue;
            }
            const std::size_t first = drawn_.items.size();
            while (next < items.size() && items[next].id == tags[t].id)
                drawn_.items.push_back(std::move(items[next++]));
            style(first, points_[owners[t]]);
            addHit(points_[owners[t]], cornersOf(*rects[t]));
        }
    }

    /// A frame around what is selected of the base, so that the base need not be drawn anew.
    void drawSelectedBase() {
        Ink ink(drawn_.items, "symbols");
        const Pen pen{0.7, drawing::LineType::Continuous, options_.accent};
        for (const PlanHit& hit : base_.hits) {
            const bool chosen = std::ranges::any_of(options_.selected, [&](const PlanRef& ref) {
                return ref.kind == hit.kind && ref.id == hit.id && (ref.room.empty() || ref.room == hit.room);
            });
            if (!chosen) continue;
            std::vector<Pt> outline;
            for (Vec2 p : hit.outline_mm)
                outline.push_back(base_.mapping.paper(p));
            ink.polyline(std::move(outline), true, pen);
        }
    }

    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const StoreyBase& base_;
    const StoreyPlanOptions& options_;
    geometry::HouseIndex house_;
    Glyphs glyphs_;
    plan::Visibility visibility_ = plan::Visibility::Shown;
    plan::Visibility lamps_ = plan::Visibility::Shown;
    std::vector<Point> points_;
    std::vector<drawing::SymbolSpot> spots_;
    StoreySymbols drawn_;
};

} // namespace

StoreySymbols storeySymbols(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                            const StoreyBase& base, const StoreyPlanOptions& options) {
    return SymbolDrawing(plan, catalogue, base, options).draw();
}

} // namespace gangway::sheets
