#include "sheets/zone_hatch.hpp"

#include "checks/wet_zones.hpp"
#include "drawing/dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr drawing::Colour kZoneInk = drawing::kGhost;
constexpr Pen kStroke{0.13, drawing::LineType::Continuous, kZoneInk};
/// "Framing of particular fields or areas": ISO 128-2 line 05.1, from memory.
constexpr Pen kWetFrame{0.18, drawing::LineType::LongDashDoubleDot, kZoneInk};
constexpr Pen kCableFrame{0.25, drawing::LineType::Dotted, kZoneInk};
constexpr Pen kPreferred{0.13, drawing::LineType::LongDashDot, kZoneInk};
constexpr double kTouch = 0.1;   ///< on paper: nearer to an edge is on it
constexpr double kTryStep = 1.5; ///< between places tried for a number
constexpr double kSymbol = 4.5;  ///< half the paper a plate's symbol needs, as a rule

/// The wetter the zone, the closer its strokes.
ZoneLook lookOf(int number) {
    constexpr double kPitch[] = {1.8, 1.8, 3.6, 7.2};
    return {kWetFrame, kPitch[std::clamp(number, 0, 3)], 2.4};
}

double toSegment(Pt at, Pt from, Pt to) {
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    const double squared = dx * dx + dy * dy;
    const double part =
        squared == 0 ? 0 : std::clamp(((at.x - from.x) * dx + (at.y - from.y) * dy) / squared, 0.0, 1.0);
    return std::hypot(at.x - from.x - part * dx, at.y - from.y - part * dy);
}

bool isOnOutline(Pt at, const std::vector<Pt>& outline) {
    for (std::size_t i = 0; i < outline.size(); ++i)
        if (toSegment(at, outline[i], outline[(i + 1) % outline.size()]) < kTouch) return true;
    return false;
}

Pt middleOf(Pt a, Pt b) {
    return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

/// Runs of neighbouring free edges as lines.
void drawFrame(Ink& ink, const std::vector<Pt>& outline, const std::vector<bool>& free, const Pen& pen) {
    const std::size_t count = outline.size();
    const auto bound = std::ranges::find(free, false);
    if (bound == free.end()) return ink.polyline(outline, true, pen);
    const auto first = static_cast<std::size_t>(bound - free.begin());
    std::vector<Pt> run;
    for (std::size_t step = 1; step <= count; ++step) {
        const std::size_t i = (first + step) % count;
        if (free[i]) {
            if (run.empty()) run.push_back(outline[i]);
            run.push_back(outline[(i + 1) % count]);
        } else if (!run.empty()) {
            ink.polyline(run, false, pen);
            run.clear();
        }
    }
}

/// Where the line x - y = c meets the outline.
struct Meeting {
    double x = 0;
    bool free = false;
};

std::vector<Meeting> meetings(const std::vector<Pt>& outline, const std::vector<bool>& free, double c) {
    std::vector<Meeting> found;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Pt a = outline[i];
        const Pt b = outline[(i + 1) % outline.size()];
        const double a_side = a.x - a.y - c;
        const double b_side = b.x - b.y - c;
        if ((a_side > 0) == (b_side > 0)) continue;
        found.push_back({a.x + (b.x - a.x) * a_side / (a_side - b_side), free[i]});
    }
    std::ranges::sort(found, {}, &Meeting::x);
    return found;
}

void drawStrokes(Ink& ink, const std::vector<Pt>& outline, const std::vector<bool>& free,
                 const ZoneLook& look) {
    double low = 1e300;
    double high = -1e300;
    for (const Pt p : outline) {
        low = std::min(low, p.x - p.y);
        high = std::max(high, p.x - p.y);
    }
    const double step = look.pitch_mm * std::sqrt(2.0);
    for (double c = std::ceil(low / step) * step + step / 7; c < high; c += step) {
        const auto ends = meetings(outline, free, c);
        for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
            const double from = ends[i].x;
            const double to = ends[i + 1].x;
            const auto stroke = [&](double left, double right) {
                if (right - left > 0.1) ink.line({left, left - c}, {right, right - c}, kStroke);
            };
            const bool both = ends[i].free && ends[i + 1].free;
            if (both && to - from <= 2 * look.stroke_mm) {
                stroke(from, to);
                continue;
            }
            if (ends[i].free) stroke(from, std::min(to, from + look.stroke_mm));
            if (ends[i + 1].free) stroke(std::max(from, to - look.stroke_mm), to);
        }
    }
}

} // namespace

void drawZone(Ink& ink, const std::vector<Pt>& outline, const ZoneLook& look,
              const std::function<bool(Pt)>& is_free) {
    std::vector<bool> free;
    for (std::size_t i = 0; i < outline.size(); ++i)
        free.push_back(is_free(middleOf(outline[i], outline[(i + 1) % outline.size()])));
    if (look.stroke_mm > 0) drawStrokes(ink, outline, free, look);
    drawFrame(ink, outline, free, look.frame);
}

namespace {

/// Zones that are drawn: zone 0 is the basin, which is drawn already.
std::vector<checks::WetVolume> zonesOf(const StoreyDrawing& storey, const plan::Room& room) {
    auto volumes = checks::wetVolumes(*storey.house, *storey.options->wet_zones, room.id);
    std::erase_if(volumes, [](const checks::WetVolume& volume) { return volume.number == 0; });
    return volumes;
}

/// Edges that lie on the room's walls bound a zone without a frame.
bool isOnWall(const StoreyDrawing& storey, const plan::Room& room, Pt at) {
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        if (toSegment(at, storey.at(edge.from_mm), storey.at(edge.to_mm)) < 2 * kTouch) return true;
    }
    return false;
}

/// Paper in a room that a number had better leave to others.
std::vector<Rect> takenIn(const StoreyDrawing& storey, const plan::Room& room) {
    std::vector<Rect> taken;
    const auto take = [&](const plan::Host& host) {
        if (const auto at = geometry::hostPoint(*storey.house, room.id, host)) {
            const Pt p = storey.at(Vec2{at->x, at->y});
            taken.push_back(Rect{p.x, p.y, p.x, p.y}.grown(kSymbol));
        }
    };
    for (const plan::Plate& plate : storey.plan->plates)
        if (plate.room == room.id) take(plate.host);
    for (const plan::Luminaire& lamp : storey.plan->luminaires)
        if (lamp.room == room.id) take(lamp.host);
    for (const auto& corners : storey.base->keep_clear)
        taken.push_back(extentOfPoints(corners));
    return taken;
}

bool isInside(const std::vector<Pt>& outline, const Rect& rect) {
    std::vector<Vec2> polygon;
    for (const Pt p : outline)
        polygon.push_back({p.x, p.y});
    return std::ranges::all_of(cornersOf(rect),
                               [&](Pt p) { return geometry::insidePolygon(polygon, {p.x, p.y}); });
}

/// A place for a text in an area, outside the inner ones and what is taken, nearest to the area's middle.
std::optional<Rect> placeIn(const std::vector<Pt>& outline, const std::vector<Rect>& taken, double width,
                            double height) {
    const Rect extent = extentOfPoints(outline);
    std::optional<Rect> best;
    double least = 1e300;
    for (double y = extent.bottom; y + height <= extent.top; y += kTryStep)
        for (double x = extent.left; x + width <= extent.right; x += kTryStep) {
            const Rect rect{x, y, x + width, y + height};
            const Pt off{rect.centre().x - extent.centre().x, rect.centre().y - extent.centre().y};
            const double away = std::hypot(off.x, off.y);
            if (away >= least || !isInside(outline, rect.grown(0.6))) continue;
            if (std::ranges::any_of(taken, [&](const Rect& other) { return overlaps(rect, other); }))
                continue;
            best = rect;
            least = away;
        }
    return best;
}

} // namespace

void drawPlanZones(StoreyDrawing& storey) {
    if (storey.options->wet_zones == nullptr) return;
    for (const plan::Room* room : storey.rooms)
        for (const checks::WetVolume& volume : zonesOf(storey, *room)) {
            Ink ink(storey.base->items, "notes", volume.piece->id);
            drawZone(ink, storey.at(volume.outline_mm), lookOf(volume.number),
                     [&](Pt at) { return !isOnWall(storey, *room, at); });
        }
}

void drawPlanZoneNumbers(StoreyDrawing& storey) {
    if (storey.options->wet_zones == nullptr) return;
    for (const plan::Room* room : storey.rooms) {
        const auto zones = zonesOf(storey, *room);
        auto taken = zones.empty() ? std::vector<Rect>{} : takenIn(storey, *room);
        for (const checks::WetVolume& volume : zones) {
            const std::string text = fmt::format("zone {}", volume.number);
            const drawing::TextBox box = drawing::measure(text, kNoteText);
            const auto outline = storey.at(volume.outline_mm);
            const auto place = placeIn(outline, taken, box.width_mm, kNoteText);
            // The next zone's number stands outside this one.
            taken.push_back(extentOfPoints(outline));
            if (!place) continue;
            drawing::Text number{{place->left, place->bottom}, text, kNoteText};
            number.colour = kZoneInk;
            number.knock_out = true;
            storey.base->keep_clear.push_back(drawing::textCorners(number, 0.6));
            Ink(storey.base->items, "notes", volume.piece->id).text(number);
        }
    }
}

namespace {

void drawWetOnWall(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                   OnPaper paper) {
    const auto onPaper = [&](const std::vector<Vec2>& outline) {
        std::vector<Pt> points;
        for (const Vec2 p : outline)
            points.push_back(paper.at(p));
        return points;
    };
    std::vector<std::vector<Pt>> inner{onPaper(view.outline_mm)};
    for (const checks::WetWallArea& area : view.wet_zones) {
        const auto outline = onPaper(area.outline_mm);
        Ink ink(items, "notes", area.piece->id);
        drawZone(ink, outline, lookOf(area.number), [&](Pt at) {
            return std::ranges::none_of(inner, [&](const auto& other) { return isOnOutline(at, other); });
        });
        inner.push_back(outline);
        Label label;
        label.lines = {fmt::format("zone {}", area.number)};
        label.within = extentOfPoints(outline).grown(-lookOf(area.number).stroke_mm);
        label.layer = "notes";
        label.id = area.piece->id;
        label.colour = kZoneInk;
        labels.push_back(std::move(label));
    }
}

void drawCablesOnWall(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                      OnPaper paper) {
    std::set<std::string> named;
    for (const checks::ZoneArea& area : view.cable_zones) {
        std::vector<Pt> outline;
        for (const Vec2 p : area.area_mm)
            outline.push_back(paper.at(p));
        Ink ink(items, "notes", area.point);
        drawZone(ink, outline, {kCableFrame, 3, 0}, [](Pt) { return true; });
        if (area.preferred_mm)
            ink.line(paper.at((*area.preferred_mm)[0]), paper.at((*area.preferred_mm)[1]), kPreferred);
        if (!area.point.empty() || !named.insert(area.zone).second) continue;
        Label label;
        label.lines = {area.name};
        label.within = extentOfPoints(outline);
        label.turn_deg = area.across ? 0 : 90;
        label.layer = "notes";
        label.colour = kZoneInk;
        labels.push_back(std::move(label));
    }
}

} // namespace

void drawWallZones(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                   OnPaper paper) {
    drawWetOnWall(items, labels, view, paper);
    drawCablesOnWall(items, labels, view, paper);
}

void placeZoneLabels(std::vector<Item>& items, Occupancy& occupancy, const std::vector<Label>& labels) {
    constexpr double kNearTop = 12; ///< where fewer things are mounted
    for (const Label& label : labels) {
        Label high = label;
        high.within.bottom = std::max(high.within.bottom, high.within.top - kNearTop);
        const std::size_t before = items.size();
        placeLabels(items, occupancy, {high});
        if (items.size() == before) placeLabels(items, occupancy, {label});
    }
}

namespace {

/// "zone 1 from 0 to 900, up to 2250; zone 2 from 900 to 1500, up to 2250".
std::string wetReach(const WallView& view) {
    std::string words;
    for (const checks::WetWallArea& area : view.wet_zones) {
        double left = area.outline_mm.front().x;
        double right = left;
        double top = 0;
        for (const Vec2 corner : area.outline_mm) {
            left = std::min(left, corner.x);
            right = std::max(right, corner.x);
            top = std::max(top, corner.y);
        }
        words += fmt::format("{}zone {} from {} to {}, up to {}", words.empty() ? "" : "; ", area.number,
                             drawing::number(left), drawing::number(right), drawing::number(top));
    }
    return words;
}

} // namespace

ZoneNotes zoneNotes(const WallView& view, Wording wording) {
    const bool full = wording == Wording::Full;
    ZoneNotes notes;
    if (!view.wet_zones.empty()) {
        const std::string reach = wetReach(view);
        const std::string& source = view.zones_pack->limit("wetZone1Top").source;
        notes.wet = full
                        ? fmt::format("Hatched: zones of baths and showers, u: {}. {}. Measure again on site "
                                      "before anything is fixed near them.",
                                      reach, source)
                        : fmt::format("Hatched: zones of baths and showers, u: {} ({}). Measure again.",
                                      reach, source);
    }
    if (!view.cable_zones.empty())
        notes.cable = full ? fmt::format("Dotted: zones for cables, {}. Cables may lie elsewhere: detect "
                                         "before drilling.",
                                         view.cable_zones.front().source)
                           : fmt::format("Dotted: zones for cables, pack '{}'.", view.zones_pack->id);
    return notes;
}

std::vector<Block> zoneBlocks(const ZoneNotes& notes, double width_mm, Wording wording) {
    std::vector<std::string> lines;
    for (const std::string& note : {notes.wet, notes.cable})
        if (!note.empty()) lines.push_back(note);
    if (lines.empty()) return {};
    if (wording == Wording::Short) return {notesBlock(lines, width_mm)};
    return {headingBlock("Zones", width_mm), notesBlock(lines, width_mm)};
}

} // namespace gangway::sheets
