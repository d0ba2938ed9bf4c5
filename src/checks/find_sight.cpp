// Sight: what is to be kept hidden and is seen from where one sits, lies or comes in.
#include "checks/body_points.hpp"
#include "checks/rules.hpp"

#include "geometry/furniture.hpp"
#include "geometry/shapes.hpp"
#include "lighting/ray_world.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;
using plan::Vec3;

namespace {
/// Sample points on a plate, each way.
constexpr int kSamples = 9;
/// One stops this far inside an entrance and looks; common practice, no source.
constexpr double kInsideMm = 100;
/// Before the face, so that a ray does not end in what the plate is mounted on.
constexpr double kBeforeMm = 2;

struct Eye {
    Vec3 at_mm;
    std::string words;  ///< "from the sofa"
    bool rests = false; ///< one sits or lies there, and looks for long
};

/// Where the eyes of those are who stay in a room or come in.
std::vector<Eye> eyesOf(const Facts& facts, const plan::Room& room) {
    std::vector<Eye> eyes;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        for (const BodyPoint& seat : seatsOf(*piece))
            eyes.push_back({{seat.at_mm.x, seat.at_mm.y, bodyOf(facts, "seated").eye_mm},
                            fmt::format("from {}", pieceName(*piece)),
                            true});
        for (const BodyPoint& pillow : pillowsOf(facts, room, *piece))
            eyes.push_back({pillow.at_mm, fmt::format("from {}", pieceName(*piece)), true});
    }
    const double standing = bodyOf(facts, "standing").eye_mm;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        for (const geometry::FaceHole& hole : geometry::faceHoles(facts.house(), {room.id, wall})) {
            using Kind = plan::Opening::Kind;
            const Kind kind = hole.opening->kind;
            if (kind == Kind::Window || kind == Kind::Hatch || hole.bottom_mm > 0) continue;
            const Vec3 at = geometry::toHouse(geometry::wallFrame(room, wall),
                                              {(hole.left_mm + hole.right_mm) / 2, standing, kInsideMm});
            eyes.push_back({at, fmt::format("from {}", openingName(*hole.opening)), false});
        }
    return eyes;
}

/// Leaves that stand open in a room though another one's fabric has them, as it lists their door.
void addLeavesOfOthers(const Facts& facts, const plan::Room& room, std::vector<meshes::Mesh>& solid) {
    for (const plan::Opening* door : facts.house().doorsInto(room.id)) {
        if (door->room == room.id) continue;
        for (const geometry::Leaf& leaf : geometry::doorLeaves(facts.house(), *door))
            if (leaf.swings_into == room.id && !leaf.standing_mm.empty())
                solid.push_back(geometry::extrude(leaf.standing_mm, leaf.bottom_mm, leaf.top_mm));
    }
}

/// What stands in the way of looking in a room. Glass does not, drawn-back curtains do.
lighting::RayWorld worldOf(const Facts& facts, const plan::Room& room) {
    std::vector<meshes::Mesh> solid;
    for (const geometry::FabricPart& part : geometry::roomFabric(facts.house(), room))
        if (part.role != geometry::FabricPart::Role::Glass) solid.push_back(part.mesh);
    addLeavesOfOthers(facts, room, solid);
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id))
        for (const geometry::Solid& part : geometry::furnitureSolids(*piece, facts.base()).solids)
            if (part.surface != geometry::Solid::Surface::Glass) solid.push_back(part.mesh);
    return lighting::RayWorld(solid);
}

/// Which part of a plate's front an eye sees, 0 to 1.
double partSeen(const lighting::RayWorld& world, const geometry::Frame& frame, const Point& point, Vec3 eye) {
    const plan::Vec2 centre = point.centre_mm();
    if (geometry::toFrame(frame, eye).z <= kBeforeMm) return 0; // from behind
    int seen = 0;
    for (int i = 0; i < kSamples; ++i)
        for (int j = 0; j < kSamples; ++j) {
            const double u = centre.x + point.half_mm.x * (2 * (i + 0.5) / kSamples - 1);
            const double v = centre.y + point.half_mm.y * (2 * (j + 0.5) / kSamples - 1);
            if (!world.blocked(geometry::toHouse(frame, {u, v, kBeforeMm}), eye)) ++seen;
        }
    return static_cast<double>(seen) / (kSamples * kSamples);
}

void findSeen(const Facts& facts, const Point& point, const lighting::RayWorld& world,
              const std::vector<Eye>& eyes, Findings& findings) {
    const auto frame = geometry::hostFrame(facts.house(), point.plate->room, point.plate->host);
    if (!frame) return;
    const Eye* best = nullptr;
    double most = 0;
    for (const Eye& eye : eyes) {
        const double part = partSeen(world, *frame, point, eye.at_mm);
        // Of equal parts the one from where one rests counts.
        if (part > most + 1e-9 || (best != nullptr && part > most - 1e-9 && eye.rests && !best->rests)) {
            best = &eye;
            most = part;
        }
    }
    if (best == nullptr || most < facts.limit("sightLeast")) return;
    const bool plain = best->rests && most >= facts.limit("sightPlain");
    auto finding = about(facts, "in-sight", plain ? Severity::Warn : Severity::Hint, point);
    const Vec3 at = geometry::toHouse(*frame, {point.centre_mm().x, point.centre_mm().y, 0});
    finding.value_mm = length(best->at_mm - at);
    finding.gap = plan::Gap{best->at_mm, at};
    finding.message = fmt::format("{} is to be kept hidden, but {:.0f} % of it is seen {}, {:.1f} m away.",
                                  whoIn(facts, point), most * 100, best->words, *finding.value_mm / 1000);
    finding.source = bodyOf(facts, best->rests ? "seated" : "standing").source;
    finding.remedy = "Move it lower or behind something, or take it as one that may be seen.";
    findings.push_back(std::move(finding));
}
} // namespace

void findSight(const Facts& facts, const plan::Room& room, Findings& findings) {
    std::vector<const Point*> hidden;
    for (const Point* point : facts.pointsIn(room.id))
        if (point->plate->sight == plan::Sight::KeepHidden) hidden.push_back(point);
    if (hidden.empty()) return;
    const auto eyes = eyesOf(facts, room);
    if (eyes.empty()) return;
    const lighting::RayWorld world = worldOf(facts, room);
    for (const Point* point : hidden)
        findSeen(facts, *point, world, eyes, findings);
}

} // namespace gangway::checks
