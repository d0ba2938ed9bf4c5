#include "app/finding_view.hpp"

#include "geometry/coverage.hpp"
#include "geometry/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

namespace gangway::app {

namespace {
using plan::Vec2;
using plan::Vec3;

constexpr double kPi = std::numbers::pi;
constexpr double kContext_mm = 600; ///< of a large body, what lies this near to the place is in the picture
constexpr double kApart_mm = 3500;  ///< a body further from the place than this is left out of the picture
constexpr double kFromWall_mm = 140;
constexpr double kUnderCeiling_mm = 160;
constexpr double kOnSurface_mm = 60; ///< a look ends this far before what it looks at
constexpr double kRoomAround = 1.35; ///< the picture against what must be in it
constexpr double kLeastFov = 0.55;   ///< radians; narrower, nothing tells where in the room one is
constexpr double kMostFov = 1.35;

struct Box {
    Vec3 low{1e12, 1e12, 1e12};
    Vec3 high{-1e12, -1e12, -1e12};
    void take(Vec3 p) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
    }
    bool empty() const { return low.x > high.x; }
    Vec3 middle() const { return (low + high) * 0.5; }
    Box grown(double by_mm) const {
        return {low - Vec3{by_mm, by_mm, by_mm}, high + Vec3{by_mm, by_mm, by_mm}};
    }
    bool holds(Vec3 p) const {
        return p.x > low.x && p.x < high.x && p.y > low.y && p.y < high.y && p.z > low.z && p.z < high.z;
    }
    Vec3 nearest(Vec3 p) const {
        return {std::clamp(p.x, low.x, high.x), std::clamp(p.y, low.y, high.y),
                std::clamp(p.z, low.z, high.z)};
    }
    /// The segment goes through it.
    bool crossed(Vec3 a, Vec3 b) const {
        double enter = 0;
        double leave = 1;
        const std::array<std::array<double, 4>, 3> axes{
            {{a.x, b.x, low.x, high.x}, {a.y, b.y, low.y, high.y}, {a.z, b.z, low.z, high.z}}};
        for (const auto& [from, to, least, most] : axes) {
            const double way = to - from;
            if (std::abs(way) < 1e-9) {
                if (from < least || from > most) return false;
                continue;
            }
            const double t1 = (least - from) / way;
            const double t2 = (most - from) / way;
            enter = std::max(enter, std::min(t1, t2));
            leave = std::min(leave, std::max(t1, t2));
        }
        return enter <= leave;
    }
};

/// A piece of furniture, a lamp or an open leaf as it may stand in the way.
struct Solid {
    std::string id;
    Box box;
    std::vector<meshes::Mesh> meshes;
};

std::vector<Solid> solidsIn(const geometry::HouseIndex& house, const std::string& room,
                            const std::filesystem::path& base) {
    std::vector<Solid> solids;
    const auto shown = [&](const std::string& id) {
        const auto* layer = plan::findLayer(house.plan(), id);
        return layer == nullptr || layer->visibility == plan::Visibility::Shown;
    };
    const auto add = [&](const std::string& id, std::vector<meshes::Mesh> meshes) {
        Solid solid{id, {}, std::move(meshes)};
        for (const auto& mesh : solid.meshes)
            for (const Vec3 p : mesh.positions_mm)
                solid.box.take(p);
        if (!solid.box.empty()) solids.push_back(std::move(solid));
    };
    for (const plan::Furniture* piece : house.furnitureIn(room)) {
        if (!shown(piece->layer)) continue;
        std::vector<meshes::Mesh> meshes;
        for (auto& solid : geometry::furnitureSolids(*piece, base).solids)
            meshes.push_back(std::move(solid.mesh));
        add(piece->id, std::move(meshes));
    }
    for (const plan::Luminaire& lamp : house.plan().luminaires) {
        if (lamp.room != room || !shown(plan::kLayerLamps)) continue;
        Box box;
        for (const Vec3 p : lampCorners(house, lamp))
            box.take(p);
        if (!box.empty()) add(lamp.id, {geometry::box(box.low, box.high)});
    }
    for (const plan::Opening* door : house.doorsInto(room))
        for (const auto& leaf : geometry::doorLeaves(house, *door))
            if (leaf.swings_into == room && !leaf.standing_mm.empty())
                add(door->id, {geometry::extrude(leaf.standing_mm, leaf.bottom_mm, leaf.top_mm)});
    return solids;
}

bool crosses(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    const auto side = [](Vec2 p, Vec2 q, Vec2 r) { return plan::cross(q - p, r - p); };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/// What must be seen, and the place one looks from.
class Search {
public:
    Search(const geometry::HouseIndex& house, const plan::Room& room, const FindingPlace& place,
           const FindingViewOptions& options)
        : room_(room), place_(place), aspect_(options.aspect),
          solids_(solidsIn(house, room.id, options.base)) {
        for (std::size_t i = 0; i < room.walls.size(); ++i)
            edges_.push_back(geometry::wallEdge(room, i));
        collect(options.also_mm);
    }

    bool empty() const { return core_.empty(); }

    struct Found {
        Vec3 eye;
        Vec3 look; ///< unit
        double fov = 1;
        double score = -1e9;
        std::set<std::string> before;
    };

    Found best() const {
        Found best;
        for (const Vec3 eye : eyes())
            if (auto found = looked(eye); found && found->score > best.score) best = std::move(*found);
        return best;
    }

private:
    void take(const FindingBody& body, std::vector<Vec3>& core) {
        itself_ = body.id;
        core = body.corners_mm;
    }

    void collect(const std::vector<Vec3>& also) {
        std::vector<Vec3> core;
        if (!place_.bodies.empty() && place_.bodies.front().kind != FindingBody::Kind::Furniture)
            take(place_.bodies.front(), core);
        if (place_.gap) core.insert(core.end(), {place_.gap->from_mm, place_.gap->to_mm});
        if (core.empty() && place_.at_mm) core = {*place_.at_mm};
        if (core.empty() && !place_.bodies.empty()) take(place_.bodies.front(), core);
        core.insert(core.end(), also.begin(), also.end());
        for (const Vec3 p : core)
            core_.take(p);
        points_ = core;
        for (const auto& body : place_.bodies) {
            Box box;
            for (const Vec3 p : body.corners_mm)
                box.take(p);
            if (plan::length(box.nearest(core_.middle()) - core_.middle()) > kApart_mm) continue;
            const bool small = plan::length(box.high - box.low) < 2 * kContext_mm;
            const Box reach = core_.grown(kContext_mm);
            for (const Vec3 p : body.corners_mm)
                points_.push_back(small ? p : reach.nearest(box.nearest(p)));
        }
        // A point in the wall itself is looked at from before it.
        for (Vec3& p : points_)
            frame_.take(p);
        seen_ = core;
        seen_.push_back(core_.middle());
    }

    double ceilingAt(Vec2 at) const { return geometry::ceilingHeightAt(room_, at); }

    bool stands(Vec3 eye) const {
        for (const Vec2 d :
             {Vec2{kFromWall_mm, 0}, {-kFromWall_mm, 0}, {0, kFromWall_mm}, {0, -kFromWall_mm}})
            if (!geometry::insideRoom(room_, Vec2{eye.x, eye.y} + d)) return false;
        if (eye.z > ceilingAt({eye.x, eye.y}) - kUnderCeiling_mm + 1) return false;
        return std::ranges::none_of(solids_,
                                    [&](const Solid& solid) { return solid.box.grown(90).holds(eye); });
    }

    bool behindWall(Vec3 eye, Vec3 to) const {
        const Vec2 a{eye.x, eye.y};
        Vec2 b{to.x, to.y};
        const double way = plan::length(b - a);
        if (way <= kOnSurface_mm) return false;
        b = a + (b - a) * ((way - kOnSurface_mm) / way);
        return std::ranges::any_of(
            edges_, [&](const geometry::WallEdge& edge) { return crosses(a, b, edge.from_mm, edge.to_mm); });
    }

    /// Directions on plan from which one looks, the squarest first.
    std::vector<double> bearings() const {
        std::vector<double> list;
        const Vec2 away{place_.away.x, place_.away.y};
        if (plan::length(away) > 0.5) {
            const double square = std::atan2(away.y, away.x);
            for (const double turn : {0.0, 10.0, -10.0, 22.0, -22.0, 35.0, -35.0, 50.0, -50.0, 65.0, -65.0})
                list.push_back(square + turn * kPi / 180);
        } else {
            for (int i = 0; i < 16; ++i)
                list.push_back(2 * kPi * i / 16);
        }
        return list;
    }

    std::vector<Vec3> eyes() const {
        const Vec3 middle = frame_.middle();
        const bool level = std::abs(place_.away.z) < 0.5;
        std::vector<Vec3> list;
        for (const double bearing : bearings())
            for (const double distance : {500.0, 800.0, 1150.0, 1500.0, 1900.0, 2400.0, 3000.0, 3800.0}) {
                const Vec2 at =
                    Vec2{middle.x, middle.y} + Vec2{std::cos(bearing), std::sin(bearing)} * distance;
                const double top = ceilingAt(at) - kUnderCeiling_mm;
                std::vector<double> heights;
                if (level)
                    heights = {1600, 1350, 1100, std::max(1600.0, middle.z)};
                else if (place_.away.z > 0)
                    heights = {1600, 2100, top};
                else
                    heights = {1100, 1600};
                for (const double z : heights)
                    list.push_back({at.x, at.y, std::min(z, top)});
            }
        return list;
    }

    /// The narrowest picture from there that holds everything; nullopt when something is beside or behind.
    std::optional<Found> framed(Vec3 eye) const {
        Found found;
        found.eye = eye;
        Vec3 aim = frame_.middle() - eye;
        for (int round = 0; round < 3; ++round) {
            const double yaw = std::atan2(aim.x, aim.y);
            const double pitch = std::atan2(aim.z, std::hypot(aim.x, aim.y));
            const Vec3 ahead{std::sin(yaw) * std::cos(pitch), std::cos(yaw) * std::cos(pitch),
                             std::sin(pitch)};
            const Vec3 right{std::cos(yaw), -std::sin(yaw), 0};
            const Vec3 up = plan::cross(right, ahead);
            double x0 = 1e9, x1 = -1e9, y0 = 1e9, y1 = -1e9;
            for (const Vec3 p : points_) {
                const Vec3 to = p - eye;
                const double depth = plan::dot(to, ahead);
                if (depth < 60) return std::nullopt;
                x0 = std::min(x0, plan::dot(to, right) / depth);
                x1 = std::max(x1, plan::dot(to, right) / depth);
                y0 = std::min(y0, plan::dot(to, up) / depth);
                y1 = std::max(y1, plan::dot(to, up) / depth);
            }
            found.look = ahead;
            const double half = std::max({y1, -y0, x1 / aspect(), -x0 / aspect()}) * kRoomAround;
            found.fov = std::max(kLeastFov, 2 * std::atan(half));
            aim = ahead + right * ((x0 + x1) / 2) + up * ((y0 + y1) / 2);
        }
        return found;
    }

    double aspect() const { return static_cast<double>(aspect_); }

    /// Ids of what hides part of the place from an eye.
    std::set<std::string> between(Vec3 eye) const {
        std::set<std::string> ids;
        for (const Solid& solid : solids_) {
            if (solid.id == place_.mounted_on || solid.id == itself_) continue;
            for (const Vec3 point : seen_) {
                const Vec3 way = point - eye;
                const double far = plan::length(way) - 12; // what is flush with the surface hides nothing
                if (far < 1) continue;
                const Vec3 direction = way * (1 / plan::length(way));
                if (!solid.box.crossed(eye, eye + direction * far)) continue;
                const bool hit = std::ranges::any_of(solid.meshes, [&](const meshes::Mesh& mesh) {
                    const auto at = geometry::rayHit(mesh, eye, direction);
                    return at && *at < far;
                });
                if (hit) {
                    ids.insert(solid.id);
                    break;
                }
            }
        }
        return ids;
    }

    std::optional<Found> looked(Vec3 eye) const {
        if (!stands(eye)) return std::nullopt;
        auto found = framed(eye);
        if (!found) return std::nullopt;
        found->before = between(eye);
        double score = 0;
        if (plan::length(place_.away) > 0.5) score += 1.6 * -plan::dot(found->look, place_.away);
        if (place_.gap) {
            const Vec3 gap = place_.gap->to_mm - place_.gap->from_mm;
            if (const double long_mm = plan::length(gap); long_mm > 1)
                score -= 2 * std::max(0.0, std::abs(plan::dot(gap, found->look)) / long_mm - 0.7);
        }
        for (const std::string& id : found->before)
            score -= std::ranges::any_of(place_.bodies, [&](const auto& body) { return body.id == id; })
                         ? 0.15
                         : 0.3;
        score -= 4 * std::max(0.0, found->fov - kMostFov) + 0.6 * std::max(0.0, found->fov - 1.05);
        // Nearer than 1 m one loses the room, further than 3 m the plate.
        const double distance = plan::length(core_.middle() - eye);
        score -= 0.5 * std::max(0.0, 1 - distance / 1000) + 0.3 * std::max(0.0, distance / 1000 - 2.6);
        score -= 0.25 * std::max(0.0, (1600 - eye.z) / 1000);
        score -= 3 * outOfSight(eye);
        if (std::ranges::any_of(solids_, [&](const Solid& solid) { return solid.box.grown(450).holds(eye); }))
            score -= 0.3; // what one stands against fills the picture's side
        found->score = score;
        return found;
    }

    /// Part of what is to be in the picture that lies behind a corner of the room.
    double outOfSight(Vec3 eye) const {
        const auto hidden =
            std::ranges::count_if(points_, [&](Vec3 point) { return behindWall(eye, point); });
        return static_cast<double>(hidden) / static_cast<double>(std::max<std::size_t>(1, points_.size()));
    }

    const plan::Room& room_;
    const FindingPlace& place_;
    float aspect_;
    std::string itself_; ///< the body that is looked at hides nothing of itself
    std::vector<Solid> solids_;
    std::vector<geometry::WallEdge> edges_;
    Box core_;                 ///< the plate and what was measured
    Box frame_;                ///< with the part of the other bodies that is near
    std::vector<Vec3> points_; ///< to be in the picture
    std::vector<Vec3> seen_;   ///< to be hidden by nothing
};
} // namespace

FindingView findingView(const geometry::HouseIndex& house, const FindingPlace& place,
                        const FindingViewOptions& options) {
    FindingView view;
    const plan::Room* room = house.room(place.room);
    if (room == nullptr) return view;
    const Search search(house, *room, place, options);
    if (search.empty()) return view;
    const auto best = search.best();
    if (best.score <= -1e8) return view;
    const auto* storey = plan::findStorey(house.plan(), room->storey);
    view.camera.eye = scene::toScene(best.eye, storey == nullptr ? 0 : storey->elevation_mm);
    view.camera.yaw = static_cast<float>(std::atan2(best.look.x, best.look.y));
    view.camera.pitch = static_cast<float>(std::asin(std::clamp(best.look.z, -1.0, 1.0)));
    view.camera.vertical_fov = static_cast<float>(std::min(best.fov, kMostFov));
    view.before = best.before;
    view.found = true;
    return view;
}

} // namespace gangway::app
