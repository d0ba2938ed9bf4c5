#include "checks/lead_floor.hpp"

#include "checks/floor_grid.hpp"
#include "checks/standing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace gangway::checks {

namespace {
constexpr double kTouchMm = 1e-6;
/// Neighbouring pieces touch: grown by this, no lead slips between them.
constexpr double kGrownMm = 1;
/// A hole that begins lower has a threshold, not a parapet; common practice, no source.
constexpr double kThresholdMm = 20;
/// Pieces whose underside is higher let a lead pass below; common practice, no source.
constexpr double kUnderMm = 150;

bool cuts(plan::Vec2 a, plan::Vec2 b, plan::Vec2 c, plan::Vec2 d) {
    return cross(b - a, c - a) * cross(b - a, d - a) < 0 && cross(d - c, a - c) * cross(d - c, b - c) < 0;
}

bool isOn(plan::Vec2 at, plan::Vec2 a, plan::Vec2 b) {
    return squaredToSegment(at, a, b) < kTouchMm * kTouchMm;
}

/// Whether two segments come nearer to each other than this.
bool isNearer(plan::Vec2 a, plan::Vec2 b, plan::Vec2 c, plan::Vec2 d, double than_mm) {
    const double square = than_mm * than_mm;
    return cuts(a, b, c, d) || squaredToSegment(a, c, d) < square || squaredToSegment(b, c, d) < square ||
           squaredToSegment(c, a, b) < square || squaredToSegment(d, a, b) < square;
}

bool isFixed(const plan::Furniture& piece) {
    const Standing standing = standingOf(piece);
    return (standing == Standing::Fixed || standing == Standing::Cupboard ||
            standing == Standing::Appliance) &&
           piece.bottom_mm < kUnderMm && piece.kind != "stair";
}

void sortOnce(std::vector<double>& values) {
    std::ranges::sort(values);
    const auto same = [](double a, double b) { return b - a < kTouchMm; };
    values.erase(std::unique(values.begin(), values.end(), same), values.end());
}

std::size_t indexOf(const std::vector<double>& values, double value) {
    const auto at = std::ranges::lower_bound(values, value - kTouchMm);
    return static_cast<std::size_t>(at - values.begin());
}
} // namespace

void addOnce(std::vector<Crossing>& crossings, const Crossing& crossing) {
    const auto same = [&](const Crossing& one) {
        return one.what == crossing.what && one.id == crossing.id && one.name == crossing.name;
    };
    if (std::ranges::none_of(crossings, same)) crossings.push_back(crossing);
}

bool isToFloor(const geometry::FaceHole& hole) {
    return hole.bottom_mm <= kThresholdMm;
}

plan::Vec2 LeadFloor::own(plan::Vec2 house_mm) const {
    return {dot(house_mm, right_), cross(right_, house_mm)};
}

plan::Vec2 LeadFloor::house(plan::Vec2 own_mm) const {
    return right_ * own_mm.x + plan::Vec2{-right_.y, right_.x} * own_mm.y;
}

LeadFloor::LeadFloor(const Facts& facts, const plan::Room& room) : facts_(facts), room_(room) {
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        if (wall == 0) right_ = {frame.u.x, frame.u.y};
        const geometry::WallEdge edge = geometry::wallEdge(room, wall);
        edges_.emplace_back(own(edge.from_mm), own(edge.to_mm));
        for (const geometry::FaceHole& hole : geometry::faceHoles(facts.house(), {room.id, wall})) {
            if (!isToFloor(hole)) continue;
            const auto at = [&](double u_mm, double out_mm = 0) {
                const plan::Vec3 p = geometry::toHouse(frame, {u_mm, 0, out_mm});
                return own({p.x, p.y});
            };
            const double middle = (hole.left_mm + hole.right_mm) / 2;
            doorways_.push_back({at(hole.left_mm),
                                 at(hole.right_mm),
                                 at(middle),
                                 at(middle, facts.limit("laneWidth")),
                                 {Crossing::What::Door, hole.opening->id, openingName(*hole.opening)}});
        }
    }
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (!isFixed(*piece)) continue;
        Box box{{1e300, 1e300}, {-1e300, -1e300}};
        for (const plan::Vec2 corner : geometry::footprint(*piece)) {
            const plan::Vec2 at = own(corner);
            box.low = {std::min(box.low.x, at.x - kGrownMm), std::min(box.low.y, at.y - kGrownMm)};
            box.high = {std::max(box.high.x, at.x + kGrownMm), std::max(box.high.y, at.y + kGrownMm)};
        }
        fixed_.push_back(box);
    }
}

const std::vector<LeadFloor::Lane>& LeadFloor::lanes() const {
    if (lanes_) return *lanes_;
    lanes_.emplace();
    if (doorways_.size() < 2) return *lanes_;
    const FloorGrid grid(facts_.house(), room_);
    for (std::size_t i = 0; i < doorways_.size(); ++i)
        for (std::size_t j = i + 1; j < doorways_.size(); ++j) {
            const plan::Vec2 from = house(doorways_[i].middle);
            const plan::Vec2 to = house(doorways_[j].middle);
            Lane lane;
            for (const plan::Vec2 at : grid.way(from, to))
                lane.points.push_back(own(at));
            lane.crossing = {Crossing::What::Lane, doorways_[i].crossing.id,
                             doorways_[i].crossing.name + " and " + doorways_[j].crossing.name};
            lanes_->push_back(std::move(lane));
        }
    return *lanes_;
}

bool LeadFloor::onWall(plan::Vec2 a, plan::Vec2 b) const {
    return std::ranges::any_of(edges_, [&](const auto& edge) {
        return isOn(a, edge.first, edge.second) && isOn(b, edge.first, edge.second);
    });
}

/// Whether a lead may lie from one point of the grid to the next.
bool LeadFloor::passes(plan::Vec2 a, plan::Vec2 b, const std::vector<Box>& boxes) const {
    if (onWall(a, b)) return true;
    const plan::Vec2 middle = (a + b) * 0.5;
    if (!geometry::insideRoom(room_, house(middle))) return false;
    return std::ranges::none_of(boxes, [&](const Box& box) {
        return middle.x > box.low.x + kTouchMm && middle.x < box.high.x - kTouchMm &&
               middle.y > box.low.y + kTouchMm && middle.y < box.high.y - kTouchMm;
    });
}

void LeadFloor::addCrossings(plan::Vec2 a, plan::Vec2 b, std::vector<Crossing>& crossings) const {
    if (onWall(a, b)) {
        const plan::Vec2 middle = (a + b) * 0.5;
        for (const Doorway& door : doorways_)
            if (isOn(middle, door.a, door.b)) addOnce(crossings, door.crossing);
        return;
    }
    for (const Doorway& door : doorways_)
        if (isNearer(a, b, door.middle, door.before, kTouchMm)) addOnce(crossings, door.crossing);
    const double half = facts_.limit("laneWidth") / 2;
    for (const Lane& lane : lanes())
        for (std::size_t i = 1; i < lane.points.size(); ++i)
            if (isNearer(a, b, lane.points[i - 1], lane.points[i], half - kTouchMm))
                addOnce(crossings, lane.crossing);
}

double LeadFloor::atLeast(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    const plan::Vec2 way = own(to_mm) - own(from_mm);
    return std::abs(way.x) + std::abs(way.y);
}

/// Dijkstra over the lines through the ends, the corners of the room and of what is fixed in it: among the
/// shortest square ways one lies on these lines.
struct LeadFloor::Search {
    std::vector<double> xs, ys;
    std::vector<double> way;
    std::vector<std::size_t> before;

    plan::Vec2 at(std::size_t node) const { return {xs[node % xs.size()], ys[node / xs.size()]}; }
    std::size_t node(plan::Vec2 own_mm) const {
        return indexOf(ys, own_mm.y) * xs.size() + indexOf(xs, own_mm.x);
    }
    void add(plan::Vec2 own_mm) {
        xs.push_back(own_mm.x);
        ys.push_back(own_mm.y);
    }
    /// The up to four nodes beside one.
    std::vector<std::size_t> beside(std::size_t node) const {
        std::vector<std::size_t> nodes;
        const std::size_t column = node % xs.size();
        const std::size_t row = node / xs.size();
        if (column > 0) nodes.push_back(node - 1);
        if (column + 1 < xs.size()) nodes.push_back(node + 1);
        if (row > 0) nodes.push_back(node - xs.size());
        if (row + 1 < ys.size()) nodes.push_back(node + xs.size());
        return nodes;
    }
    template <class MayPass>
    void run(std::size_t from, std::size_t to, const MayPass& mayPass) {
        using Entry = std::pair<double, std::size_t>;
        way.assign(xs.size() * ys.size(), std::numeric_limits<double>::infinity());
        before.assign(way.size(), way.size());
        std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
        way[to] = 0; // from the end, so that `before` leads from the beginning to it
        open.push({0, to});
        while (!open.empty()) {
            const auto [so_far, here] = open.top();
            open.pop();
            if (so_far > way[here]) continue;
            if (here == from) return;
            for (const std::size_t next : beside(here)) {
                const double there = so_far + length(at(next) - at(here));
                if (there >= way[next] - kTouchMm || !mayPass(at(here), at(next))) continue;
                way[next] = there;
                before[next] = here;
                open.push({there, next});
            }
        }
    }
};

/// What is fixed, without the pieces that hold an end of the way within them.
std::vector<LeadFloor::Box> LeadFloor::boxesFor(plan::Vec2 from, plan::Vec2 to) const {
    std::vector<Box> boxes;
    std::ranges::copy_if(fixed_, std::back_inserter(boxes), [&](const Box& box) {
        const auto holds = [&](plan::Vec2 end) {
            return end.x > box.low.x && end.x < box.high.x && end.y > box.low.y && end.y < box.high.y &&
                   !onWall(end, end);
        };
        return !holds(from) && !holds(to);
    });
    return boxes;
}

std::optional<LeadWay> LeadFloor::way(plan::Vec2 from_mm, plan::Vec2 to_mm, bool clean) const {
    const std::vector<Box> boxes = boxesFor(own(from_mm), own(to_mm));
    Search search;
    search.add(own(from_mm));
    search.add(own(to_mm));
    for (const auto& edge : edges_)
        search.add(edge.first);
    for (const Doorway& door : doorways_) {
        search.add(door.a);
        search.add(door.b);
    }
    for (const Box& box : boxes) {
        search.add(box.low);
        search.add(box.high);
    }
    sortOnce(search.xs);
    sortOnce(search.ys);
    const std::size_t from = search.node(own(from_mm));
    search.run(from, search.node(own(to_mm)), [&](plan::Vec2 a, plan::Vec2 b) {
        if (!passes(a, b, boxes)) return false;
        if (!clean) return true;
        std::vector<Crossing> crossings;
        addCrossings(a, b, crossings);
        return crossings.empty();
    });
    if (!std::isfinite(search.way[from])) return std::nullopt;
    LeadWay way;
    way.length_mm = search.way[from];
    for (std::size_t node = from; node < search.before.size(); node = search.before[node]) {
        const plan::Vec2 at = house(search.at(node));
        if (search.before[node] < search.before.size())
            addCrossings(search.at(node), search.at(search.before[node]), way.crossings);
        way.points_mm.push_back({at.x, at.y, 0});
    }
    return way;
}

} // namespace gangway::checks
