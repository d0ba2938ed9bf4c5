// On foot: with the keys, to where one clicked, and up and down stairs.
#include "app/panels.hpp"

#include "geometry/frames.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::app {

namespace {
constexpr double kWalkSpeed_mm = 1700; ///< a second, brisk indoor walk; common practice, no source
constexpr double kHurrySpeed_mm = 3200;
constexpr double kStairSpeed_mm = 900;
constexpr float kTurnSpeed = 2.2F;     ///< rad/s
constexpr double kStairReach_mm = 450; ///< this near to a stair's end, walking on means taking it

bool held(int key) {
    return ImGui::IsKeyDown(key);
}

/// Height of the eye above the house's datum on the way between two storeys.
void standBetween(State& state, plan::Vec2 at_mm, double eye_mm) {
    state.camera.eye = scene::toScene({at_mm.x, at_mm.y, eye_mm});
    if (const auto* room = geometry::roomAt(state.plan(), state.storey, at_mm)) state.room = room->id;
}

/// Walking on at a stair's end takes the stair.
bool takeStairs(State& state, plan::Vec2 heading) {
    for (const auto& stair : state.derived.stairs) {
        for (const bool up : {true, false}) {
            if ((up ? stair.lower_storey : stair.upper_storey) != state.storey) continue;
            const plan::Vec2 here = up ? stair.lower_mm : stair.upper_mm;
            const plan::Vec2 there = up ? stair.upper_mm : stair.lower_mm;
            const plan::Vec2 along = there - here;
            const double length = plan::length(along);
            if (length < 1 || plan::length(standingAt(state) - here) > kStairReach_mm) continue;
            if (plan::dot(along, heading) < 0.75 * length) continue;
            state.walk_way = {{there, up ? stair.upper_storey : stair.lower_storey}};
            return true;
        }
    }
    return false;
}

void turnTowards(State& state, plan::Vec2 way, float seconds) {
    const float aim = turnedTo(state.camera.yaw, static_cast<float>(std::atan2(way.x, way.y)));
    state.camera.yaw += std::clamp(aim - state.camera.yaw, -kTurnSpeed * seconds, kTurnSpeed * seconds);
}
} // namespace

bool asked(const State& state) {
    return state.message || state.ask_unsaved || state.ask_recover || state.search_open ||
           state.browse_open || state.bench.open || state.panel == Panel::Sheets;
}

double elevationOf(const State& state, const std::string& storey_id) {
    const auto* storey = plan::findStorey(state.plan(), storey_id);
    return storey == nullptr ? 0 : storey->elevation_mm;
}

const scene::WalkMap* walkMap(const State& state, const std::string& storey_id) {
    const auto found = state.derived.walk_maps.find(storey_id);
    return found == state.derived.walk_maps.end() ? nullptr : &found->second;
}

float turnedTo(float from, float to) {
    constexpr float kRound = 2 * std::numbers::pi_v<float>;
    return from + std::remainder(to - from, kRound);
}

bool followWay(State& state, float seconds) {
    if (state.walk_way.empty()) return false;
    double left = seconds;
    plan::Vec2 at = standingAt(state);
    double eye_mm = scene::toHouse(state.camera.eye).z;
    while (!state.walk_way.empty() && left > 0) {
        const scene::WayPoint& step = state.walk_way.front();
        const double eye_there = elevationOf(state, step.storey) + scene::kEyeHeightMm;
        const bool stair = step.storey != state.storey;
        const plan::Vec2 way = step.at_mm - at;
        const double distance = plan::length(way);
        const double reach = (stair ? kStairSpeed_mm : kWalkSpeed_mm) * left;
        if (distance > 600) turnTowards(state, way, seconds);
        const double part = distance > reach ? reach / distance : 1;
        at = at + way * part;
        eye_mm += (eye_there - eye_mm) * part;
        left -= distance / (stair ? kStairSpeed_mm : kWalkSpeed_mm);
        if (part < 1) break;
        state.storey = step.storey;
        state.walk_way.erase(state.walk_way.begin());
    }
    standBetween(state, at, eye_mm);
    return true;
}

void walkTo(State& state, plan::Vec2 at_mm, const std::string& storey_id) {
    state.walk_way = scene::wayThroughHouse(state.derived.walk_maps, state.derived.stairs,
                                            {standingAt(state), state.storey}, {at_mm, storey_id});
    if (state.walk_way.empty()) say(state, "No way there on foot");
}

void takeStair(State& state, const std::string& furniture_id) {
    for (const auto& stair : state.derived.stairs) {
        if (stair.furniture != furniture_id) continue;
        const bool up = stair.lower_storey == state.storey;
        walkTo(state, up ? stair.upper_mm : stair.lower_mm, up ? stair.upper_storey : stair.lower_storey);
        return;
    }
}

bool walkingKeys(State& state, float seconds) {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput || io.KeyCtrl || asked(state)) return false;
    // The arrows move a chosen plate; without one they walk and turn.
    const bool arrows = state.seat == Seat::Homeowner || state.selected.empty();
    const auto arrow = [arrows](int key) { return arrows && held(key); };
    const float ahead = static_cast<float>(held(GLFW_KEY_W) || arrow(GLFW_KEY_UP)) -
                        static_cast<float>(held(GLFW_KEY_S) || arrow(GLFW_KEY_DOWN));
    const float aside = static_cast<float>(held(GLFW_KEY_D)) - static_cast<float>(held(GLFW_KEY_A));
    const float turn = static_cast<float>(arrow(GLFW_KEY_RIGHT)) - static_cast<float>(arrow(GLFW_KEY_LEFT));
    if (ahead == 0 && aside == 0 && turn == 0) return false;
    const bool on_stairs = !state.walk_way.empty() && state.walk_way.front().storey != state.storey;
    if (on_stairs) return followWay(state, seconds);
    state.walk_way.clear();
    state.camera.yaw += turn * 1.6F * seconds;
    const double sine = std::sin(state.camera.yaw);
    const double cosine = std::cos(state.camera.yaw);
    const double pace = ahead != 0 && aside != 0 ? std::numbers::sqrt2 / 2 : 1;
    const plan::Vec2 heading{(sine * ahead + cosine * aside) * pace, (cosine * ahead - sine * aside) * pace};
    if (takeStairs(state, heading)) return followWay(state, seconds);
    const auto* map = walkMap(state, state.storey);
    if (map == nullptr) return true;
    const plan::Vec2 from = standingAt(state);
    const plan::Vec2 step = heading * ((io.KeyShift ? kHurrySpeed_mm : kWalkSpeed_mm) * seconds);
    const plan::Vec2 at = map->free(from) ? map->move(from, from + step) : map->nearestFree(from);
    standBetween(state, at, elevationOf(state, state.storey) + scene::kEyeHeightMm);
    return true;
}

} // namespace gangway::app
