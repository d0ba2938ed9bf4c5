#include "sheets/leg_plan.hpp"

#include "drawing/leg_lines.hpp"
#include "drawing/lines.hpp"
#include "geometry/frames.hpp"
#include "sheets/storey_plan_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>
#include <tuple>
#include <unordered_map>

namespace gangway::sheets {

namespace {

using drawing::LineType;
using drawing::PaperBox;
using plan::SwitchLeg;

/// Lines of legs, the easiest to tell apart first; continuous lines are left to the building, and long dashes
/// to its centre lines: many legs are too short for them.
constexpr std::array<Pen, 10> kLegPens{{{0.25, LineType::Dashed, drawing::kBlack},
                                        {0.25, LineType::DashDot, drawing::kBlack},
                                        {0.35, LineType::Dotted, drawing::kBlack},
                                        {0.25, LineType::DashDoubleDot, drawing::kBlack},
                                        {0.5, LineType::Dashed, drawing::kBlack},
                                        {0.25, LineType::DashedSpaced, drawing::kBlack},
                                        {0.7, LineType::Dotted, drawing::kBlack},
                                        {0.5, LineType::DashDot, drawing::kBlack},
                                        {0.5, LineType::DashDoubleDot, drawing::kBlack},
                                        {0.5, LineType::DashedSpaced, drawing::kBlack}}};
constexpr double kRepeats = 2; ///< so often the dashes come on the shortest line of a leg, or it needs others
constexpr double kSymbols = 4; ///< of a line between two middles, what their symbols cover
/// Dark enough on white for thin lines.
constexpr std::array<drawing::Colour, 6> kLegColours{{{0x1B, 0x4F, 0x9C},
                                                      {0x9C, 0x2A, 0x1B},
                                                      {0x1F, 0x6B, 0x3A},
                                                      {0x6B, 0x2F, 0x8A},
                                                      {0x8A, 0x5A, 0x00},
                                                      {0x00, 0x5F, 0x66}}};
constexpr double kCrossing = 0.3;
constexpr double kHighlight = 0.7;

struct Spot {
    drawing::LegEnd end;
    std::string room;
    Pt middle() const { return end.symbol.middle(); }
};

double distance(const Spot& a, const Spot& b) {
    return std::hypot(a.middle().x - b.middle().x, a.middle().y - b.middle().y);
}

struct Join {
    const Spot* from = nullptr;
    const Spot* to = nullptr;
};

PaperBox boxOf(const Rect& rect) {
    return {rect.left, rect.bottom, rect.right, rect.top};
}

template <typename Spots>
std::size_t nearestTo(const Spot& from, const Spots& spots) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < spots.size(); ++i)
        if (distance(from, *spots[i]) < distance(from, *spots[best])) best = i;
    return best;
}

/// Joins every spot to the nearest of those joined before it, beginning with number `first` (Prim's tree).
void joinAll(const std::vector<const Spot*>& spots, std::size_t first, std::vector<Join>& joins) {
    std::vector<std::size_t> parent(spots.size(), first);
    std::vector<bool> done(spots.size(), false);
    done[first] = true;
    for (std::size_t count = 1; count < spots.size(); ++count) {
        std::size_t best = spots.size();
        double best_mm = std::numeric_limits<double>::max();
        for (std::size_t i = 0; i < spots.size(); ++i) {
            const double mm = done[i] ? best_mm : distance(*spots[i], *spots[parent[i]]);
            if (mm >= best_mm) continue;
            best = i;
            best_mm = mm;
        }
        if (best == spots.size()) return;
        done[best] = true;
        joins.push_back({spots[parent[best]], spots[best]});
        for (std::size_t i = 0; i < spots.size(); ++i)
            if (!done[i] && distance(*spots[i], *spots[best]) < distance(*spots[i], *spots[parent[i]]))
                parent[i] = best;
    }
}

std::vector<Join> joinsOf(const std::vector<const Spot*>& controls, const std::vector<const Spot*>& fed) {
    std::vector<Join> joins;
    if (fed.empty()) {
        if (!controls.empty()) joinAll(controls, 0, joins);
        return joins;
    }
    joinAll(fed, controls.empty() ? 0 : nearestTo(*controls.front(), fed), joins);
    for (const Spot* control : controls)
        joins.push_back({control, fed[nearestTo(*control, fed)]});
    return joins;
}

/// One leg on its way to paper.
struct LegWork {
    DrawnLeg drawn;
    std::vector<Join> joins;
    std::set<std::string> rooms;
};

class LegDrawing {
public:
    LegDrawing(const switching::Net& net, const StoreyBase& base, const StoreySymbols& symbols,
               const LegOptions& options)
        : net_(net), base_(base), options_(options) {
        for (const PlanHit& hit : symbols.hits)
            if (hit.kind == PlanThing::Plate || hit.kind == PlanThing::Luminaire) takeSpot(hit);
        for (const auto& [id, spot] : plates_)
            obstacles_.push_back(spot.end.symbol);
        for (const auto& [id, spot] : lamps_)
            obstacles_.push_back(spot.end.symbol);
        for (const auto* items : {&base.items, &symbols.items})
            for (const Item& item : *items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    obstacles_.push_back(boxOf(extentOf(*text)));
    }

    StoreyLegs draw() {
        std::vector<LegWork> work;
        for (const SwitchLeg& leg : net_.plan().legs)
            take(leg, work);
        findCrowded(work);
        for (LegWork& leg : work)
            choose(leg);
        choosePens(work);
        for (LegWork& leg : work) {
            drawLeg(leg);
            done_.legs.push_back(leg.drawn);
        }
        return std::move(done_);
    }

private:
    /// A thing's symbol is hit after its tag, so that the last hit is the symbol's.
    void takeSpot(const PlanHit& hit) {
        std::vector<Pt> corners;
        for (Vec2 p : hit.outline_mm)
            corners.push_back(base_.mapping.paper(p));
        Spot spot;
        spot.end.symbol = boxOf(extentOfPoints(corners));
        const PaperBox& box = spot.end.symbol;
        spot.end.round = hit.kind == PlanThing::Luminaire &&
                         std::abs((box.right - box.left) - (box.top - box.bottom)) < 0.01;
        spot.room = hit.room;
        (hit.kind == PlanThing::Plate ? plates_ : lamps_).insert_or_assign(hit.id, spot);
    }

    static void addSpot(const std::map<std::string, Spot>& spots, const std::string& id,
                        std::vector<const Spot*>& to) {
        const auto found = spots.find(id);
        if (found == spots.end() || std::ranges::find(to, &found->second) != to.end()) return;
        to.push_back(&found->second);
    }

    void take(const SwitchLeg& leg, std::vector<LegWork>& work) const {
        std::vector<const Spot*> controls;
        std::vector<const Spot*> fed;
        for (const plan::WayRef& ref : leg.controls)
            addSpot(plates_, ref.plate, controls);
        for (const std::string& id : leg.luminaires)
            addSpot(lamps_, id, fed);
        for (const std::string& id : leg.plates)
            addSpot(plates_, id, fed);
        LegWork one;
        for (const auto* list : {&controls, &fed})
            for (const Spot* spot : *list)
                one.rooms.insert(spot->room);
        if (one.rooms.empty() || (!options_.room.empty() && !one.rooms.contains(options_.room))) return;
        one.drawn.leg = &leg;
        one.joins = joinsOf(controls, fed);
        one.drawn.joins = static_cast<int>(one.joins.size());
        work.push_back(std::move(one));
    }

    /// Lines are counted in the rooms of both their ends.
    void findCrowded(const std::vector<LegWork>& work) {
        std::map<std::string, int> lines;
        for (const LegWork& leg : work)
            for (const Join& join : leg.joins) {
                ++lines[join.from->room];
                if (join.to->room != join.from->room) ++lines[join.to->room];
            }
        for (const auto& [id, count] : lines) {
            const plan::Room* room = net_.room(id);
            if (room == nullptr) continue;
            const double mm_a_cm = 10 * base_.mapping.scale;
            const double paper_cm2 = std::abs(geometry::signedArea(room->outline)) / (mm_a_cm * mm_a_cm);
            if (count > kCrowdedLines * paper_cm2 && count > 2) done_.crowded_rooms.push_back(id);
        }
    }

    void choose(LegWork& leg) const {
        leg.drawn.line = leg.drawn.leg->line;
        if (leg.drawn.line == SwitchLeg::Line::Auto) {
            const bool crowded = std::ranges::any_of(leg.rooms, [&](const auto& room) {
                return std::ranges::binary_search(done_.crowded_rooms, room);
            });
            leg.drawn.line = crowded ? SwitchLeg::Line::Letters : SwitchLeg::Line::Arc;
        }
        const bool highlighted = leg.drawn.leg->id == options_.highlighted;
        if (highlighted && leg.drawn.line == SwitchLeg::Line::Letters) leg.drawn.line = SwitchLeg::Line::Arc;
    }

    static bool isTooShortFor(const Pen& pen, const LegWork& leg) {
        return std::ranges::any_of(leg.joins, [&](const Join& join) {
            return distance(*join.from, *join.to) - kSymbols < kRepeats * drawing::repeat(pen);
        });
    }

    /// Of the pens least used by other legs in the same rooms (none at all, while there are pens left) one
    /// whose dashes are seen on the leg's lines, and of these the one least used on the storey.
    void choosePens(std::vector<LegWork>& work) const {
        std::map<std::string, std::array<int, kLegPens.size()>> used;
        std::array<int, kLegPens.size()> used_anywhere{};
        for (std::size_t i = 0; i < work.size(); ++i) {
            DrawnLeg& drawn = work[i].drawn;
            std::size_t best = 0;
            std::tuple best_uses{std::numeric_limits<int>::max(), false, 0};
            for (std::size_t pen = 0; pen < kLegPens.size(); ++pen) {
                std::tuple uses{0, isTooShortFor(kLegPens[pen], work[i]), used_anywhere[pen]};
                for (const std::string& room : work[i].rooms)
                    std::get<0>(uses) += used[room][pen];
                if (uses >= best_uses) continue;
                best = pen;
                best_uses = uses;
            }
            drawn.pen = kLegPens[best];
            if (options_.coloured) drawn.pen.colour = kLegColours[i % kLegColours.size()];
            if (drawn.leg->id == options_.highlighted) {
                drawn.pen.colour = options_.accent;
                drawn.pen.width_mm = kHighlight;
            }
            if (drawn.line == SwitchLeg::Line::Letters) continue;
            for (const std::string& room : work[i].rooms)
                ++used[room][best];
            ++used_anywhere[best];
        }
    }

    drawing::LegShape shapeOf(SwitchLeg::Line line) const {
        if (line == SwitchLeg::Line::Straight) return drawing::LegShape::Straight;
        if (line != SwitchLeg::Line::Orthogonal) return drawing::LegShape::Arc;
        return options_.corners == LegOptions::Corners::Square ? drawing::LegShape::Square
                                                               : drawing::LegShape::Rounded;
    }

    void drawLeg(const LegWork& leg) {
        if (leg.drawn.line == SwitchLeg::Line::Letters) return;
        Ink ink(done_.items, "legs", leg.drawn.leg->id);
        for (const Join& join : leg.joins) {
            const plan::Room* room = join.from->room == join.to->room ? net_.room(join.from->room) : nullptr;
            std::function<bool(Pt)> wanted;
            if (room != nullptr)
                wanted = [&](Pt p) { return geometry::insideRoom(*room, base_.mapping.house(p)); };
            auto& beside = lines_between_[std::minmax(join.from, join.to)];
            const auto line = drawing::legLine(shapeOf(leg.drawn.line), join.from->end, join.to->end,
                                               obstacles_, wanted, beside);
            if (line.points.empty()) continue;
            beside.push_back(line.points);
            ink.polyline(line.points, false, leg.drawn.pen);
            ++done_.joins;
            if (line.covered_mm > kCrossing) ++done_.crossings;
            LegHit hit{leg.drawn.leg->id, {}};
            for (Pt p : line.points)
                hit.line_mm.push_back(base_.mapping.house(p));
            done_.hits.push_back(std::move(hit));
        }
    }

    const switching::Net& net_;
    const StoreyBase& base_;
    const LegOptions& options_;
    std::map<std::string, Spot> plates_, lamps_;
    std::vector<PaperBox> obstacles_;
    /// Lines drawn so far by their two ends; looked up only, never gone through in the order of pointers.
    std::map<std::pair<const Spot*, const Spot*>, std::vector<std::vector<Pt>>> lines_between_;
    StoreyLegs done_;
};

} // namespace

StoreyLegs legsOnPlan(const switching::Net& net, const StoreyBase& base, const StoreySymbols& symbols,
                      const LegOptions& options) {
    return LegDrawing(net, base, symbols, options).draw();
}

const LegHit* legAt(const std::vector<LegHit>& hits, Vec2 house_mm, double within_mm) {
    for (std::size_t i = hits.size(); i-- > 0;) {
        const auto& line = hits[i].line_mm;
        for (std::size_t p = 1; p < line.size(); ++p) {
            const Vec2 way = line[p] - line[p - 1];
            const Vec2 to = house_mm - line[p - 1];
            const double square = way.x * way.x + way.y * way.y;
            const double part = square > 0 ? std::clamp((to.x * way.x + to.y * way.y) / square, 0.0, 1.0) : 0;
            if (plan::length(to - way * part) <= within_mm) return &hits[i];
        }
    }
    return nullptr;
}

std::map<std::string, std::string> marksAtSymbols(const plan::Plan& plan) {
    const auto marks = switching::legMarks(plan);
    std::map<std::string, std::string> at;
    for (const SwitchLeg& leg : plan.legs) {
        std::set<std::string> ids(leg.luminaires.begin(), leg.luminaires.end());
        ids.insert(leg.plates.begin(), leg.plates.end());
        for (const plan::WayRef& ref : leg.controls)
            ids.insert(ref.plate);
        for (const std::string& id : ids)
            at[id] += (at[id].empty() ? "" : " ") + marks.at(leg.id);
    }
    return at;
}

std::vector<std::string> platesOfSwitching(const switching::Net& net) {
    std::set<std::string> ids;
    for (const switching::Way& way : net.ways())
        ids.insert(way.plate->id);
    for (const SwitchLeg& leg : net.plan().legs) {
        ids.insert(leg.plates.begin(), leg.plates.end());
        for (const plan::WayRef& ref : leg.controls)
            ids.insert(ref.plate);
    }
    return {ids.begin(), ids.end()};
}

} // namespace gangway::sheets
