// From a pixel of the stage to a place that a plate can be on, and back.
#include "app/panels.hpp"
#include "geometry/host_at.hpp"

#include <cmath>

namespace gangway::app {

namespace {
/// Where the ray through a pixel meets a host's surface, in its (u, v); nullopt when it runs away from it.
std::optional<plan::Vec2> onSurface(const State& state, const render::View& view, int x, int y,
                                    const std::string& room_id, const plan::Host& host) {
    const auto frame = geometry::hostFrame(state.plan(), room_id, host);
    const auto* room = plan::findRoom(state.plan(), room_id);
    if (!frame || room == nullptr) return std::nullopt;
    const double elevation = elevationOf(state, room->storey);
    const render::Ray ray = render::pixelRay(view, x, y);
    plan::Vec3 from = scene::toHouse(ray.from);
    plan::Vec3 to = scene::toHouse(ray.from + ray.direction);
    from.z -= elevation;
    to.z -= elevation;
    const plan::Vec3 a = geometry::toFrame(*frame, from);
    const plan::Vec3 b = geometry::toFrame(*frame, to);
    if (std::abs(b.z - a.z) < 1e-9) return std::nullopt;
    const double t = a.z / (a.z - b.z);
    if (t <= 0) return std::nullopt;
    return plan::Vec2{a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

std::optional<Spot> hitSpot(const State& state, const render::Pick& hit) {
    const auto* room = plan::findRoom(state.plan(), hit.room);
    if (room == nullptr || !state.derived.house) return std::nullopt;
    plan::Vec3 at = scene::toHouse(hit.point);
    at.z -= elevationOf(state, room->storey);
    const plan::Vec3 normal = scene::toHouse(hit.normal);
    if (const auto* piece = plan::findFurniture(state.plan(), hit.object)) {
        auto host = geometry::furnitureHostAt(*piece, at, normal);
        return host ? std::optional(Spot{room->id, *host}) : std::nullopt;
    }
    auto host = geometry::hostAt(*state.derived.house, room->id, at, normal);
    return host ? std::optional(Spot{room->id, *host}) : std::nullopt;
}
} // namespace

std::optional<Spot> spotUnder(const State& state, const render::View& view, const render::Pick& hit,
                              ImVec2 at_px, const Spot* stay_on) {
    const auto x = static_cast<int>(at_px.x - state.stage.x);
    const auto y = static_cast<int>(at_px.y - state.stage.y);
    const auto found = hitSpot(state, hit);
    // A plate that is dragged behind a wardrobe stays on its wall: only another wall, or a face of the piece
    // it is on, takes it over.
    const bool takes_over = found && (stay_on == nullptr || found->host.kind == stay_on->host.kind) &&
                            (stay_on == nullptr || stay_on->host.kind != plan::Host::Kind::Furniture ||
                             found->host.furniture == stay_on->host.furniture);
    if (takes_over || stay_on == nullptr) return found;
    const auto uv = onSurface(state, view, x, y, stay_on->room, stay_on->host);
    if (!uv) return std::nullopt;
    Spot spot = *stay_on;
    spot.host.u_mm = uv->x;
    spot.host.v_mm = uv->y;
    return spot;
}

Projector stageProjector(const State& state, const render::View& view, const std::string& room_id,
                         const plan::Host& host) {
    const auto frame = geometry::hostFrame(state.plan(), room_id, host);
    const auto* room = plan::findRoom(state.plan(), room_id);
    if (!frame || room == nullptr) return [](double, double) { return std::optional<ImVec2>(); };
    return [view, frame = *frame, elevation = elevationOf(state, room->storey), x = state.stage.x,
            y = state.stage.y](double u_mm, double v_mm) -> std::optional<ImVec2> {
        const auto pixel =
            render::project(view, scene::toScene(geometry::toHouse(frame, {u_mm, v_mm, 0}), elevation));
        if (!pixel) return std::nullopt;
        return ImVec2{x + pixel->x, y + pixel->y};
    };
}

} // namespace gangway::app
