#include "scene/scene.hpp"

#include "geometry/frames.hpp"
#include "scene/floor_view.hpp"
#include "scene/object_parts.hpp"

#include <glm/gtc/matrix_transform.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace gangway::scene {
namespace {

using plan::Vec2;
using plan::Vec3;

constexpr double kPi = std::numbers::pi;
constexpr double kMargin = 1.06;     // room around a wall or storey that is to fit
constexpr double kHeadroom_mm = 120; // eye below a low ceiling
constexpr double kBehindEye_mm = 150;

double radians(double degrees) {
    return degrees * kPi / 180;
}

double elevationOf(const plan::Plan& plan, const plan::Room& room) {
    const plan::Storey* storey = plan::findStorey(plan, room.storey);
    return storey != nullptr ? storey->elevation_mm : 0;
}

double yawTowards(Vec2 direction) {
    return std::atan2(direction.x, direction.y);
}

// Points of the room on a grid, about 300 of them, for measuring how much a place sees.
std::vector<Vec2> samplesOf(const plan::Room& room) {
    const detail::Bounds2 bounds = detail::boundsOf(room.outline);
    const Vec2 size = bounds.high - bounds.low;
    const double pitch = std::max(150.0, std::sqrt(size.x * size.y / 300));
    std::vector<Vec2> samples;
    for (double y = bounds.low.y + pitch / 2; y < bounds.high.y; y += pitch) {
        for (double x = bounds.low.x + pitch / 2; x < bounds.high.x; x += pitch) {
            if (geometry::insideRoom(room, {x, y})) samples.push_back({x, y});
        }
    }
    return samples;
}

// Places at the corners, `inset` from both walls, inside the room.
std::vector<Vec2> cornerPlaces(const plan::Room& room, double inset_mm) {
    std::vector<Vec2> places;
    const std::size_t n = room.outline.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vec2 corner = room.outline[i];
        const Vec2 before = corner - room.outline[(i + n - 1) % n];
        const Vec2 after = room.outline[(i + 1) % n] - corner;
        const double lb = plan::length(before);
        const double la = plan::length(after);
        if (lb < 1e-6 || la < 1e-6) continue;
        // Clockwise outline: the room is at the right of each edge.
        const Vec2 into_before{before.y / lb, -before.x / lb};
        const Vec2 into_after{after.y / la, -after.x / la};
        const double spread = 1 + plan::dot(into_before, into_after);
        if (spread < 0.1) continue;
        const Vec2 place = corner + (into_before + into_after) * (inset_mm / spread);
        if (geometry::insideRoom(room, place)) places.push_back(place);
    }
    return places;
}

struct Outlook {
    Vec2 from;
    Vec2 towards; // unit, to the middle of what is seen
    int seen = 0;
};

Outlook outlookFrom(const plan::Room& room, const std::vector<detail::Obstacle>& tall,
                    const std::vector<Vec2>& samples, Vec2 from) {
    std::vector<Vec2> visible;
    Vec2 sum;
    for (const Vec2 p : samples) {
        if (detail::wallBetween(room, from, p)) continue;
        if (std::any_of(tall.begin(), tall.end(), [&](const detail::Obstacle& piece) {
                return detail::edgesCross(piece.footprint_mm, from, p);
            })) {
            continue;
        }
        visible.push_back(p);
        sum = sum + p;
    }
    Outlook outlook{from, {0, 1}, 0};
    if (visible.empty()) return outlook;
    const Vec2 middle = sum * (1.0 / static_cast<double>(visible.size()));
    const double away = plan::length(middle - from);
    if (away > 1) outlook.towards = (middle - from) * (1 / away);
    const double least_cosine = std::cos(radians(42)); // half the width of the picture
    for (const Vec2 p : visible) {
        const Vec2 to = p - from;
        if (plan::dot(to, outlook.towards) >= least_cosine * plan::length(to)) ++outlook.seen;
    }
    return outlook;
}

std::vector<Vec2> standingPlaces(const plan::Room& room, const std::vector<detail::Obstacle>& obstacles,
                                 const std::vector<Vec2>& samples) {
    std::vector<Vec2> places;
    for (const double inset : {400.0, 600.0, 900.0, 1300.0}) {
        for (const Vec2 place : cornerPlaces(room, inset)) {
            if (detail::standable(room, obstacles, place, kBodyRadiusMm)) places.push_back(place);
        }
    }
    if (!places.empty()) return places;
    for (const Vec2 place : samples) {
        if (detail::standable(room, obstacles, place, kBodyRadiusMm)) places.push_back(place);
    }
    if (places.empty()) places = cornerPlaces(room, 400);
    if (places.empty()) places = samples;
    if (places.empty() && !room.outline.empty()) places.push_back(room.outline.front());
    return places;
}

// How far one can step back from a point of the room, up to `wanted_mm`, without leaving it or standing in a
// piece of furniture.
double roomBehind(const plan::Room& room, const std::vector<detail::Obstacle>& obstacles, Vec2 from,
                  Vec2 direction, double eye_mm, double wanted_mm) {
    double open = wanted_mm + kBehindEye_mm;
    while (open > 2 * kBehindEye_mm && detail::wallBetween(room, from + direction, from + direction * open)) {
        open -= 20;
    }
    const double furthest = open - kBehindEye_mm;
    for (double back = furthest; back > 600; back -= 50) {
        const Vec2 eye = from + direction * back;
        const bool inside_piece =
            std::any_of(obstacles.begin(), obstacles.end(), [&](const detail::Obstacle& piece) {
                return eye_mm > piece.bottom_mm - 100 && eye_mm < piece.top_mm + 100 &&
                       (geometry::insidePolygon(piece.footprint_mm, eye) ||
                        detail::distanceToEdges(piece.footprint_mm, eye) < 100);
            });
        if (!inside_piece) return back;
    }
    return furthest;
}

struct Axes {
    glm::vec3 right, up, forward;
};

Axes axesOf(const Camera& camera) {
    const glm::vec3 forward(std::sin(camera.yaw) * std::cos(camera.pitch), std::sin(camera.pitch),
                            -std::cos(camera.yaw) * std::cos(camera.pitch));
    const glm::vec3 right(std::cos(camera.yaw), 0, std::sin(camera.yaw));
    return {right, glm::cross(right, forward), forward};
}

std::vector<glm::vec3> storeyCorners(const plan::Plan& plan, const std::string& storey) {
    std::vector<glm::vec3> corners;
    for (const plan::Room& room : plan.rooms) {
        if (!storey.empty() && room.storey != storey) continue;
        const auto& heights = room.ceiling.heights_mm;
        const double top = heights.empty() ? 2400 : *std::max_element(heights.begin(), heights.end());
        for (const Vec2 p : room.outline) {
            for (const double z : {0.0, top})
                corners.push_back(toScene({p.x, p.y, z}, elevationOf(plan, room)));
        }
    }
    return corners;
}

// Moves the camera along its own axes until the points fill its picture, centred.
void fit(Camera& camera, const std::vector<glm::vec3>& points, float aspect) {
    const Axes axes = axesOf(camera);
    const float tan_v = std::tan(camera.vertical_fov / 2) / static_cast<float>(kMargin);
    const float tan_h = tan_v * aspect;
    // Along each picture axis, the two outermost rays meet where the eye must be; the further back one holds.
    float depth = -1e30f, nearest = 1e30f;
    glm::vec2 sum_high(-1e30f), sum_low(-1e30f);
    for (const glm::vec3& p : points) {
        const float f = glm::dot(p, axes.forward);
        const glm::vec2 s(glm::dot(p, axes.right) / tan_h, glm::dot(p, axes.up) / tan_v);
        sum_high = glm::max(sum_high, s - f);
        sum_low = glm::max(sum_low, -s - f);
        nearest = std::min(nearest, f);
    }
    const glm::vec2 back =
        (sum_high + sum_low) * 0.5f; // eye at forward coordinate -back sees all along that axis
    depth = std::min({-back.x, -back.y, nearest - 0.1f});
    const glm::vec2 middle = (sum_high - sum_low) * 0.5f;
    camera.eye = axes.right * (middle.x * tan_h) + axes.up * (middle.y * tan_v) + axes.forward * depth;
}

} // namespace

Camera roomView(const plan::Plan& plan, const plan::Room& room) {
    const auto obstacles = detail::obstaclesIn(plan, room);
    std::vector<detail::Obstacle> tall;
    for (const detail::Obstacle& piece : obstacles) {
        if (piece.top_mm > kEyeHeightMm - 100 && piece.bottom_mm < 1200) tall.push_back(piece);
    }
    const std::vector<Vec2> samples = samplesOf(room);
    std::optional<Outlook> best;
    for (const Vec2 place : standingPlaces(room, obstacles, samples)) {
        const Outlook outlook = outlookFrom(room, tall, samples, place);
        if (!best || outlook.seen > best->seen) best = outlook;
    }
    Camera camera;
    if (!best) return camera;
    const double ceiling = geometry::ceilingHeightAt(room, best->from);
    const double eye = std::clamp(ceiling - kHeadroom_mm, 400.0, kEyeHeightMm);
    camera.eye = toScene({best->from.x, best->from.y, eye}, elevationOf(plan, room));
    camera.yaw = static_cast<float>(yawTowards(best->towards));
    camera.pitch = static_cast<float>(radians(-9));
    return camera;
}

Camera faceWall(const plan::Plan& plan, const plan::Room& room, std::size_t wall_index, float aspect) {
    const geometry::Frame frame = geometry::wallFrame(room, wall_index);
    const Vec3 foot = geometry::toHouse(frame, {frame.length_mm / 2, 0, 0});
    const Vec2 direction{frame.w.x, frame.w.y};
    const double eye_mm = frame.height_mm / 2;
    const double half =
        kMargin * std::max(frame.height_mm / 2, frame.length_mm / 2 / static_cast<double>(aspect));
    const double wanted = half / std::tan(radians(25)); // a calm angle of view where the room allows it
    const double back =
        roomBehind(room, detail::obstaclesIn(plan, room), {foot.x, foot.y}, direction, eye_mm, wanted);
    const Vec2 eye = Vec2{foot.x, foot.y} + direction * back;
    const double below_ceiling = std::max(200.0, geometry::ceilingHeightAt(room, eye) - kHeadroom_mm);
    const double eye_height = std::min(eye_mm, below_ceiling);
    const double lowered = eye_mm - eye_height;
    Camera camera;
    camera.eye = toScene({eye.x, eye.y, eye_height}, elevationOf(plan, room));
    camera.yaw = static_cast<float>(yawTowards(direction * -1));
    camera.vertical_fov =
        static_cast<float>(std::clamp(2 * std::atan((half + lowered) / back), radians(20), radians(90)));
    return camera;
}

Camera lidOffView(const plan::Plan& plan, const std::string& storey, float aspect) {
    Camera camera;
    camera.pitch = static_cast<float>(radians(-60));
    camera.vertical_fov = static_cast<float>(radians(35));
    const std::vector<glm::vec3> corners = storeyCorners(plan, storey);
    if (!corners.empty()) fit(camera, corners, aspect);
    return camera;
}

glm::mat4 viewMatrix(const Camera& camera) {
    const Axes axes = axesOf(camera);
    glm::mat4 view(1);
    for (int i = 0; i < 3; ++i) {
        view[i][0] = axes.right[i];
        view[i][1] = axes.up[i];
        view[i][2] = -axes.forward[i];
    }
    view[3][0] = -glm::dot(axes.right, camera.eye);
    view[3][1] = -glm::dot(axes.up, camera.eye);
    view[3][2] = glm::dot(axes.forward, camera.eye);
    return view;
}

glm::mat4 projectionMatrix(const Camera& camera, float aspect) {
    constexpr float kNear = 0.02f;
    constexpr float kFar = 200;
    if (camera.orthographic) {
        const float h = camera.ortho_height / 2;
        return glm::orthoRH_NO(-h * aspect, h * aspect, -h, h, kNear, kFar);
    }
    return glm::perspectiveRH_NO(camera.vertical_fov, aspect, kNear, kFar);
}

} // namespace gangway::scene
