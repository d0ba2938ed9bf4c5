// Walls of a storey's plan: what the level cut goes through, and the lines of their faces.
#include "sheets/storey_plan_parts.hpp"

#include "geometry/wall_section.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::sheets {

namespace {

/// What is cut is grey and dark-edged, so that a copy in black and white shows it.
constexpr drawing::Colour kCutFill{0xC2, 0xC2, 0xC2};
/// Twice the width of the outer edge: the inner half goes under the fill.
constexpr Pen kEdge{1.0, drawing::LineType::Continuous, drawing::kBlack};
constexpr double kEdgeShown = 0.5;
constexpr Pen kSeam{0.18, drawing::LineType::Continuous, kCutFill};
/// How far an opening's fill reaches over the rooms' fills, so that no hairline stays between them, paper mm.
constexpr double kOverRoom = 0.6;
constexpr Pen kNoWall{0.18, drawing::LineType::Dotted, drawing::kGhost};
/// Of a wall's hit: how far before its face it can be taken hold of, paper mm.
constexpr double kGrip = 0.8;

void fillRooms(StoreyDrawing& storey, Ink& ink) {
    for (const plan::Room* room : storey.rooms)
        ink.fill(storey.at(room->outline), storey.options->paper);
    for (const plan::Room* room : storey.rooms)
        for (const auto& column : room->columns)
            ink.fill(storey.at(column), kCutFill);
}

/// Takes the openings out of the walls, and out of the outer edge's line.
void fillHoles(StoreyDrawing& storey, Ink& ink) {
    for (const plan::Room* room : storey.rooms)
        for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
            const WallLineOnPlan line = wallLineOnPlan(*room, wall);
            for (const PlanHole& hole : planHoles(*storey.house, {room->id, wall})) {
                if (!hole.cut || !hole.hole.hosted_here) continue;
                const double front = storey.real(kOverRoom);
                const double back = -hole.hole.through_mm - storey.real(kOverRoom);
                ink.fill(storey.at({line.at(hole.hole.left_mm, front), line.at(hole.hole.left_mm, back),
                                    line.at(hole.hole.right_mm, back), line.at(hole.hole.right_mm, front)}),
                         storey.options->paper);
            }
        }
}

/// The lines of a ring of walls (a room's outline, or a column), broken at openings, where they turn into the
/// wall and run along the jamb.
class FaceLines {
public:
    FaceLines(const StoreyDrawing& storey, const plan::Room& room, Ink& ink)
        : storey_(storey), room_(room), ink_(ink) {}

    void ring(std::size_t first, std::size_t count) {
        std::vector<std::vector<Pt>> chains(1);
        for (std::size_t wall = first; wall < first + count && wall < room_.walls.size(); ++wall)
            follow(wall, chains);
        const bool whole = chains.size() == 1;
        if (whole && !chains.front().empty()) chains.front().pop_back(); // the first corner again
        if (!whole) {
            // The last chain runs into the first at the ring's first corner.
            for (const Pt p : chains.front())
                add(chains.back(), p);
            chains.front() = std::move(chains.back());
            chains.pop_back();
        }
        for (auto& chain : chains)
            if (chain.size() > 1) ink_.polyline(std::move(chain), whole, kCut);
    }

private:
    /// A corner where two walls meet is one point.
    static void add(std::vector<Pt>& chain, Pt p) {
        if (chain.empty() || std::hypot(chain.back().x - p.x, chain.back().y - p.y) > 1e-6)
            chain.push_back(p);
    }

    void follow(std::size_t wall, std::vector<std::vector<Pt>>& chains) {
        const WallLineOnPlan line = wallLineOnPlan(room_, wall);
        if (room_.walls[wall].structure == plan::WallStructure::None) {
            chains.emplace_back();
            ink_.line(storey_.at(line.at(0)), storey_.at(line.at(line.length_mm)), kNoWall);
            return;
        }
        add(chains.back(), storey_.at(line.at(0)));
        double reached = 0;
        for (const PlanHole& hole : planHoles(*storey_.house, {room_.id, wall})) {
            const double left = std::clamp(hole.hole.left_mm, 0.0, line.length_mm);
            const double right = std::clamp(hole.hole.right_mm, 0.0, line.length_mm);
            if (!hole.cut || right <= reached) continue;
            const double back = -hole.hole.through_mm - (hole.outer ? storey_.real(kEdgeShown) : 0);
            if (left >= reached) {
                add(chains.back(), storey_.at(line.at(left)));
                add(chains.back(), storey_.at(line.at(left, back)));
            }
            chains.push_back({storey_.at(line.at(right, back)), storey_.at(line.at(right))});
            reached = right;
        }
        add(chains.back(), storey_.at(line.at(line.length_mm)));
    }

    const StoreyDrawing& storey_;
    const plan::Room& room_;
    Ink& ink_;
};

void addHits(StoreyDrawing& storey, const plan::Room& room) {
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        if (room.walls[wall].structure == plan::WallStructure::None) continue;
        const WallLineOnPlan line = wallLineOnPlan(room, wall);
        const auto pairs = geometry::pairedFaces(*storey.house, {room.id, wall});
        const double depth = pairs.empty() ? room.walls[wall].thickness_mm : pairs.front().thickness_mm / 2;
        const double grip = storey.real(kGrip);
        storey.base->hits.push_back({PlanThing::Wall,
                                     room.walls[wall].id,
                                     room.id,
                                     room.walls[wall].id,
                                     {line.at(0, grip), line.at(0, -depth), line.at(line.length_mm, -depth),
                                      line.at(line.length_mm, grip)}});
    }
}

} // namespace

WallLineOnPlan wallLineOnPlan(const plan::Room& room, std::size_t wall) {
    const auto edge = geometry::wallEdge(room, wall);
    const double length_mm = plan::length(edge.to_mm - edge.from_mm);
    const Vec2 along = length_mm > 0 ? (edge.to_mm - edge.from_mm) * (1 / length_mm) : Vec2{1, 0};
    return {edge.from_mm, along, {along.y, -along.x}, length_mm};
}

std::vector<PlanHole> planHoles(const geometry::HouseIndex& house, const geometry::FaceRef& face) {
    std::vector<PlanHole> holes;
    const auto found = geometry::faceHoles(house, face);
    if (found.empty()) return holes;
    const auto pairs = geometry::pairedFaces(house, face);
    for (const geometry::FaceHole& hole : found) {
        const double middle = (hole.left_mm + hole.right_mm) / 2;
        const bool outer = std::ranges::none_of(pairs, [&](const geometry::PairedFace& pair) {
            return pair.from_mm <= middle && middle <= pair.to_mm;
        });
        // Windows are drawn as windows however high their sills are.
        const bool cut = hole.opening->kind == plan::Opening::Kind::Window ||
                         (hole.bottom_mm < kCutHeight && hole.top_mm > kCutHeight);
        holes.push_back({hole, outer, cut});
    }
    return holes;
}

void drawWallMass(StoreyDrawing& storey) {
    Ink ink(storey.base->items, "building");
    std::vector<std::vector<Pt>> solids;
    for (const plan::Room* room : storey.rooms)
        for (const auto& polygon : geometry::wallSections(*storey.house, *room))
            solids.push_back(storey.at(polygon));
    // All edges first, then all fills: what is left of the edges is the outline of the whole.
    for (const auto& solid : solids)
        ink.polyline(solid, true, kEdge);
    // The seam line closes the hairlines that smoothing leaves between fills that only touch.
    for (const auto& solid : solids) {
        ink.polyline(solid, true, kSeam);
        ink.fill(solid, kCutFill);
    }
    fillRooms(storey, ink);
    fillHoles(storey, ink);
}

void drawWallFaces(StoreyDrawing& storey) {
    for (const plan::Room* room : storey.rooms) {
        Ink ink(storey.base->items, "building", room->id);
        FaceLines lines(storey, *room, ink);
        lines.ring(0, room->outline.size());
        std::size_t first = room->outline.size();
        for (const auto& column : room->columns) {
            lines.ring(first, column.size());
            first += column.size();
        }
        addHits(storey, *room);
    }
}

} // namespace gangway::sheets
