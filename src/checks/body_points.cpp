#include "checks/body_points.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

namespace {
/// From the headboard's wall to the head: design of the reach rules; common practice, no source.
constexpr double kFromWallMm = 430;
/// A wall further behind a bed than this is not at its head.
constexpr double kWallNearMm = 400;
/// Wider beds are for two, as they are drawn with two pillows.
constexpr double kForTwoMm = 1200;
/// Top of a usual bed, under a lying eye at the pack's height.
constexpr double kUsualBedMm = 550;
/// Where a hand is that reaches out from a seat; common practice, no source.
constexpr double kHandMm = 700;
/// How far the back of a seat takes from its depth.
constexpr double kBackMm = 180;

/// How far behind the back of a piece the room's wall stands; 0 when none is near.
double wallBehind(const plan::Room& room, const plan::Furniture& piece) {
    const plan::Vec3 back = geometry::fromLocal(piece, plan::Vec3{0, piece.size.depth_mm / 2, 0});
    const plan::Vec3 front = geometry::fromLocal(piece, plan::Vec3{0, -piece.size.depth_mm / 2, 0});
    double nearest = kWallNearMm;
    bool found = false;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        const plan::Vec3 at = geometry::toFrame(frame, back);
        const bool faces = dot(front - back, frame.w) > 0.98 * length(front - back);
        if (!faces || at.x < 0 || at.x > frame.length_mm || at.z < -1 || at.z > nearest) continue;
        nearest = at.z;
        found = true;
    }
    return found ? nearest : 0;
}
} // namespace

const catalogue::Body& bodyOf(const Facts& facts, std::string_view id) {
    static const catalogue::Body kUsual{
        "", "an adult", 1600, 1400, 700, 400, 1800, "common practice, no source", catalogue::Grade::Practice};
    const auto& bodies = facts.pack().bodies;
    const auto found = std::ranges::find(bodies, id, &catalogue::Body::id);
    return found == bodies.end() ? kUsual : *found;
}

std::vector<BodyPoint> pillowsOf(const Facts& facts, const plan::Room& room, const plan::Furniture& piece) {
    const bool bunk = piece.kind == "bunk-bed";
    if (!bunk && piece.kind != "bed") return {};
    const double eye = bodyOf(facts, "lying").eye_mm;
    const double y = piece.size.depth_mm / 2 + wallBehind(room, piece) - kFromWallMm;
    const auto at = [&](double x, double z) {
        plan::Vec3 place = geometry::fromLocal(piece, plan::Vec3{x, y, 0});
        place.z = z;
        return place;
    };
    if (bunk) {
        const double over = piece.bottom_mm + eye - kUsualBedMm;
        return {{at(0, plan::furnitureValue(piece, "lowerTop") + over), "lower"},
                {at(0, plan::furnitureValue(piece, "upperTop") + over), "upper"}};
    }
    const double frame = std::min(plan::furnitureValue(piece, "frameWidth"), piece.size.width_mm / 4);
    const double mattress = piece.size.width_mm - 2 * frame;
    if (mattress <= kForTwoMm) return {{at(0, eye), ""}};
    return {{at(-mattress / 4, eye), "left"}, {at(mattress / 4, eye), "right"}};
}

std::vector<BodyPoint> seatsOf(const plan::Furniture& piece) {
    if (piece.kind != "sofa" && piece.kind != "armchair") return {};
    const int seats =
        piece.kind == "sofa" ? std::max(1, static_cast<int>(plan::furnitureValue(piece, "seats"))) : 1;
    const double arm = std::min(plan::furnitureValue(piece, "armWidth"), piece.size.width_mm / 4);
    const double each = (piece.size.width_mm - 2 * arm) / seats;
    std::vector<BodyPoint> points;
    for (int i = 0; i < seats; ++i) {
        const double x = -piece.size.width_mm / 2 + arm + each * (i + 0.5);
        plan::Vec3 place = geometry::fromLocal(piece, plan::Vec3{x, -kBackMm / 2, 0});
        place.z = kHandMm;
        points.push_back({place, ""});
    }
    return points;
}

} // namespace gangway::checks
