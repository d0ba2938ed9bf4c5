// Standing, walking, looking: where the eye is and how it gets there.
#include "app/panels.hpp"

#include "app/sight.hpp"
#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::app {

namespace {
constexpr float kFlightSeconds = 0.45F;
constexpr float kLookPerPixel = 0.0042F;

/// Camera that turns about the orbit's target.
scene::Camera orbitCamera(const State& state) {
    scene::Camera camera = state.camera;
    const OrbitEye& orbit = state.orbit;
    const glm::vec3 ahead{std::sin(orbit.yaw) * std::cos(orbit.pitch), std::sin(orbit.pitch),
                          -std::cos(orbit.yaw) * std::cos(orbit.pitch)};
    camera.eye = orbit.target - ahead * orbit.distance;
    camera.yaw = orbit.yaw;
    camera.pitch = orbit.pitch;
    return camera;
}

/// Orbit about the point the camera looks at on its storey's floor.
OrbitEye orbitFrom(const State& state, const scene::Camera& camera) {
    OrbitEye orbit;
    orbit.yaw = camera.yaw;
    orbit.pitch = std::min(camera.pitch, -0.15F);
    const glm::vec3 ahead{std::sin(orbit.yaw) * std::cos(orbit.pitch), std::sin(orbit.pitch),
                          -std::cos(orbit.yaw) * std::cos(orbit.pitch)};
    const float floor = static_cast<float>(elevationOf(state, state.storey) / 1000.0);
    orbit.distance = std::clamp((floor - camera.eye.y) / ahead.y, 1.5F, 40.0F);
    orbit.target = camera.eye + ahead * orbit.distance;
    return orbit;
}

} // namespace

plan::Vec2 standingAt(const State& state) {
    const plan::Vec3 at = scene::toHouse(state.camera.eye);
    return {at.x, at.y};
}

const plan::Room* standingRoom(const State& state) {
    return plan::findRoom(state.plan(), state.room);
}

void flyTo(State& state, const scene::Camera& camera) {
    closeSheets(state); // who moves the eye wants to see with it
    state.flight.from = state.camera;
    state.flight.to = camera;
    state.flight.to.yaw = turnedTo(state.camera.yaw, camera.yaw);
    state.flight.done = 0;
    state.walk_way.clear();
}

bool advance(State& state, float seconds) {
    if (state.flight.done < 1) {
        state.flight.done = std::min(1.0F, state.flight.done + seconds / kFlightSeconds);
        const float t = state.flight.done * state.flight.done * (3 - 2 * state.flight.done);
        const scene::Camera& a = state.flight.from;
        const scene::Camera& b = state.flight.to;
        state.camera = b;
        state.camera.eye = glm::mix(a.eye, b.eye, t);
        state.camera.yaw = glm::mix(a.yaw, b.yaw, t);
        state.camera.pitch = glm::mix(a.pitch, b.pitch, t);
        state.camera.vertical_fov = glm::mix(a.vertical_fov, b.vertical_fov, t);
        return true;
    }
    if (state.stance == Stance::Walk) {
        return walkingKeys(state, seconds) || followWay(state, seconds);
    }
    return false;
}

void enterRoom(State& state, const std::string& room_id) {
    const plan::Room* room = plan::findRoom(state.plan(), room_id);
    if (room == nullptr) return;
    state.room = room_id;
    state.storey = room->storey;
    if (const auto* plate = plan::findPlate(state.plan(), state.selected);
        plate == nullptr || plate->room != room_id)
        state.selected.clear();
    if (state.stance == Stance::Walk) {
        flyTo(state, scene::roomView(state.plan(), *room));
    } else {
        setStance(state, state.stance);
    }
}

void faceWall(State& state, std::size_t wall) {
    const plan::Room* room = standingRoom(state);
    if (room == nullptr || wall >= room->walls.size()) return;
    state.stance = Stance::Walk;
    const float aspect = state.stage.height > 0 ? state.stage.width / state.stage.height : 1.6F;
    flyTo(state, scene::faceWall(state.plan(), *room, wall, aspect));
}

void faceNearestWall(State& state) {
    const plan::Room* room = standingRoom(state);
    if (room == nullptr) return;
    const plan::Vec2 ahead{std::sin(state.camera.yaw), std::cos(state.camera.yaw)};
    std::size_t best = 0;
    double best_score = -2;
    for (std::size_t i = 0; i < room->walls.size(); ++i) {
        const geometry::Frame frame = geometry::wallFrame(*room, i);
        const double facing = -(frame.w.x * ahead.x + frame.w.y * ahead.y);
        const double score = facing + 1e-5 * std::min(frame.length_mm, 5000.0);
        if (score > best_score) {
            best_score = score;
            best = i;
        }
    }
    faceWall(state, best);
}

namespace {
/// Where to stand (z: the eye above FFL) for a plate at `at_mm` of a surface that faces `away`: the first
/// distance from which nothing hides it, else the first one within the room.
plan::Vec3 standBefore(const State& state, const plan::Plate& plate, const plan::Room& room, plan::Vec3 at_mm,
                       plan::Vec2 away) {
    const auto* map = walkMap(state, state.storey);
    const plan::Vec2 at{at_mm.x, at_mm.y};
    Sighted sighted{&plate, 80, 80, state.document.file().parent_path()};
    if (const auto found = state.derived.plates.find(plate.id); found != state.derived.plates.end()) {
        sighted.width_mm = found->second.width_mm;
        sighted.height_mm = found->second.height_mm;
    }
    const Sight sight(state.plan(), sighted, state.faded);
    std::optional<plan::Vec3> within;
    for (const double distance : {1900, 1500, 1200, 900, 2400}) {
        plan::Vec2 stand = at + away * distance;
        if (map != nullptr) stand = map->nearestFree(stand);
        if (!geometry::insideRoom(room, stand)) continue;
        const plan::Vec3 eye{stand.x, stand.y, eyeFor(at_mm.z, geometry::ceilingHeightAt(room, stand))};
        if (sight.free(eye)) return eye;
        if (!within) within = eye;
    }
    if (within) return *within;
    const plan::Vec2 stand = map == nullptr ? at + away * 1900 : map->nearestFree(at + away * 1900);
    return {stand.x, stand.y, scene::kEyeHeightMm};
}
} // namespace

void showPlate(State& state, const std::string& plate_id) {
    const plan::Plate* plate = plan::findPlate(state.plan(), plate_id);
    const plan::Room* room = plate == nullptr ? nullptr : plan::findRoom(state.plan(), plate->room);
    if (room == nullptr) return;
    state.selected = plate_id;
    const auto frame = geometry::hostFrame(state.plan(), plate->room, plate->host);
    if (!frame) return;
    state.stance = Stance::Walk;
    state.storey = room->storey;
    state.room = room->id;
    const plan::Vec3 at = geometry::toHouse(*frame, {plate->host.u_mm, plate->host.v_mm, 0});
    plan::Vec2 away{frame->w.x, frame->w.y};
    if (plan::length(away) < 0.5) away = standingAt(state) - plan::Vec2{at.x, at.y};
    const double size = plan::length(away);
    away = size > 1 ? away * (1 / size) : (size > 0.5 ? away : plan::Vec2{0, -1});
    const plan::Vec3 stand = standBefore(state, *plate, *room, at, away);
    scene::Camera camera = state.camera;
    camera.vertical_fov = 1.05F;
    camera.orthographic = false;
    camera.eye = scene::toScene(stand, elevationOf(state, state.storey));
    const plan::Vec3 look = at - stand;
    camera.yaw = static_cast<float>(std::atan2(look.x, look.y));
    // The card lies over the right of the stage: the plate comes to stand in what is left of it.
    const float px_per_tan = state.stage.height / 2 / std::tan(camera.vertical_fov / 2);
    if (px_per_tan > 1) camera.yaw += std::atan(kCardWidth * state.scale / 2 / px_per_tan);
    // Looking a little above a low plate keeps the room in the picture.
    camera.pitch = 0.8F * static_cast<float>(std::atan2(look.z, std::hypot(look.x, look.y)));
    flyTo(state, camera);
}

void stepInto(State& state, const plan::Room& room, plan::Vec2 at_mm) {
    state.stance = Stance::Walk;
    state.storey = room.storey;
    state.room = room.id;
    const auto* map = walkMap(state, state.storey);
    const plan::Vec2 stand = map == nullptr ? at_mm : map->nearestFree(at_mm);
    // As wide as one sees in a room, not as narrow as from above.
    scene::Camera camera = scene::roomView(state.plan(), room);
    camera.pitch = -0.2F;
    camera.yaw = static_cast<float>(openYaw(state.plan(), room, stand));
    camera.eye = scene::toScene({stand.x, stand.y, scene::kEyeHeightMm}, elevationOf(state, state.storey));
    flyTo(state, camera);
}

namespace {
/// Whether the eye is in a room. Rooms of other storeys lie over or under it, so its height counts.
bool stillIn(const State& state, const std::string& room_id) {
    const auto* room = geometry::roomAt(state.plan(), state.storey, standingAt(state));
    const double above_floor = scene::toHouse(state.camera.eye).z - elevationOf(state, state.storey);
    return room != nullptr && room->id == room_id && above_floor > 0 && above_floor < 2 * scene::kEyeHeightMm;
}
} // namespace

void setStance(State& state, Stance stance) {
    const Stance before = std::exchange(state.stance, stance);
    closeSheets(state);
    if (stance == Stance::Plan) return;
    if (stance == Stance::Walk) {
        if (before == Stance::Walk) return;
        // Back from the plan one stands where one stood, unless another room was chosen there.
        if (before == Stance::Plan && stillIn(state, state.room)) return;
        if (const plan::Room* room = standingRoom(state)) flyTo(state, scene::roomView(state.plan(), *room));
        return;
    }
    if (stance == Stance::LidOff) {
        const float aspect = state.stage.height > 0 ? state.stage.width / state.stage.height : 1.6F;
        const scene::Camera camera = scene::lidOffView(state.plan(), state.storey, aspect);
        state.orbit = orbitFrom(state, camera);
        flyTo(state, camera);
        return;
    }
    state.orbit = orbitFrom(state, state.camera);
    flyTo(state, orbitCamera(state));
}

void lookBy(State& state, float dx_px, float dy_px) {
    state.flight.done = 1;
    if (state.stance == Stance::Walk) {
        state.camera.yaw -= dx_px * kLookPerPixel;
        state.camera.pitch = std::clamp(state.camera.pitch + dy_px * kLookPerPixel, -1.45F, 1.45F);
        return;
    }
    state.orbit.yaw -= dx_px * kLookPerPixel;
    state.orbit.pitch = std::clamp(state.orbit.pitch + dy_px * kLookPerPixel, -1.55F, 0.3F);
    state.camera = orbitCamera(state);
}

void zoomBy(State& state, float notches) {
    if (state.stance == Stance::Walk) {
        state.camera.vertical_fov =
            std::clamp(state.camera.vertical_fov * std::pow(0.92F, notches), 0.35F, 1.4F);
        return;
    }
    state.flight.done = 1;
    state.orbit.distance = std::clamp(state.orbit.distance * std::pow(0.88F, notches), 0.8F, 60.0F);
    state.camera = orbitCamera(state);
}

void panBy(State& state, float dx_px, float dy_px) {
    if (state.stance == Stance::Walk) return;
    state.flight.done = 1;
    const float per_px = state.orbit.distance * 2 * std::tan(state.camera.vertical_fov / 2) /
                         std::max(1.0F, state.stage.height);
    const glm::vec3 right{std::cos(state.orbit.yaw), 0, std::sin(state.orbit.yaw)};
    const glm::vec3 forward{std::sin(state.orbit.yaw), 0, -std::cos(state.orbit.yaw)};
    state.orbit.target += (right * -dx_px + forward * dy_px) * per_px;
    state.camera = orbitCamera(state);
}

} // namespace gangway::app
