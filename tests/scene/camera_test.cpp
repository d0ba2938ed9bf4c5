#include "house.hpp"

#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>

using namespace gangway;

namespace {

constexpr float kAspect = 1.6f;

bool inPicture(const scene::Camera& camera, float aspect, glm::vec3 point) {
    const glm::vec4 clip =
        scene::projectionMatrix(camera, aspect) * scene::viewMatrix(camera) * glm::vec4(point, 1);
    return clip.w > 0 && std::abs(clip.x) <= clip.w && std::abs(clip.y) <= clip.w &&
           std::abs(clip.z) <= clip.w;
}

plan::Plan rectangle(double width, double depth, double height) {
    const std::string id = "only";
    plan::Plan plan;
    plan.storeys.emplace_back().id = id;
    plan::Room room;
    room.id = id;
    room.storey = id;
    room.outline = {{0, 0}, {0, depth}, {width, depth}, {width, 0}};
    for (const std::string& wall : std::vector<std::string>{"west", "north", "east", "south"}) {
        room.walls.emplace_back().id = wall;
    }
    room.ceiling.heights_mm = {height};
    plan.rooms.push_back(room);
    return plan;
}

} // namespace

TEST_CASE("yaw turns from north to the right and pitch upwards") {
    scene::Camera camera;
    const auto ahead = [&] {
        const glm::mat4 view = scene::viewMatrix(camera);
        return -glm::vec3(view[0][2], view[1][2], view[2][2]);
    };
    CHECK(ahead().z == Approx(-1)); // north
    camera.yaw = 1.5707963f;
    CHECK(ahead().x == Approx(1)); // east
    camera.pitch = 0.5f;
    CHECK(ahead().y == Approx(std::sin(0.5)));
    // What is east of an eye that looks north is at the right of the picture.
    const glm::vec4 east = scene::viewMatrix(scene::Camera{}) * glm::vec4(1, 0, -3, 1);
    CHECK(east.x == Approx(1));
    CHECK(east.z == Approx(-3));
}

TEST_CASE("facing a wall shows its four corners") {
    const plan::Plan plan = house::read();
    const plan::Room& bedroom = house::room(plan, "bedroom");
    for (std::size_t wall = 0; wall < 4; ++wall) {
        const scene::Camera camera = scene::faceWall(plan, bedroom, wall, kAspect);
        const geometry::Frame frame = geometry::wallFrame(bedroom, wall);
        for (const double u : {0.0, frame.length_mm}) {
            for (const double v : {0.0, frame.height_mm}) {
                INFO("wall " << wall << " at " << u << ", " << v);
                CHECK(inPicture(camera, kAspect, scene::toScene(geometry::toHouse(frame, {u, v, 0}))));
            }
        }
        CHECK(camera.pitch == 0);
    }
}

TEST_CASE("facing a wall never leaves the room") {
    const plan::Plan narrow = rectangle(900, 9000, 2500);
    for (std::size_t wall = 0; wall < 4; ++wall) {
        const scene::Camera camera = scene::faceWall(narrow, narrow.rooms[0], wall, kAspect);
        const plan::Vec3 eye = scene::toHouse(camera.eye);
        CHECK(geometry::insideRoom(narrow.rooms[0], {eye.x, eye.y}));
        CHECK(camera.vertical_fov <= 1.5709f);
        CHECK(camera.vertical_fov >= 0.349f);
    }
}

TEST_CASE("facing a wall looks square at it, with its middle in the middle") {
    const plan::Plan plan = rectangle(4000, 3000, 2500);
    for (std::size_t wall = 0; wall < 4; ++wall) {
        const scene::Camera camera = scene::faceWall(plan, plan.rooms[0], wall, kAspect);
        const geometry::Frame frame = geometry::wallFrame(plan.rooms[0], wall);
        const plan::Vec3 eye = geometry::toFrame(frame, scene::toHouse(camera.eye));
        CHECK(eye.x == Approx(frame.length_mm / 2).margin(0.1));
        CHECK(eye.y == Approx(1250).margin(0.1));
        const glm::vec4 middle =
            scene::projectionMatrix(camera, kAspect) * scene::viewMatrix(camera) *
            glm::vec4(scene::toScene(geometry::toHouse(frame, {frame.length_mm / 2, 1250, 0})), 1);
        CHECK(middle.x / middle.w == Approx(0).margin(1e-4));
        CHECK(middle.y / middle.w == Approx(0).margin(1e-4));
    }
}

TEST_CASE("a room is seen from a place in it, at eye height, and most of it is in view") {
    const plan::Plan plan = house::read();
    for (const plan::Room& room : plan.rooms) {
        INFO(room.id);
        const scene::Camera camera = scene::roomView(plan, room);
        const plan::Vec3 eye = scene::toHouse(camera.eye);
        CHECK(geometry::insideRoom(room, {eye.x, eye.y}));
        const double elevation = room.storey == "upper" ? 2800 : 0;
        CHECK(eye.z - elevation <= scene::kEyeHeightMm + 0.1);
        CHECK(eye.z - elevation < geometry::ceilingHeightAt(room, {eye.x, eye.y}));
        int seen = 0;
        int all = 0;
        for (double x = 50; x < 7600; x += 300) {
            for (double y = -1150; y < 5000; y += 300) {
                if (!geometry::insideRoom(room, {x, y})) continue;
                ++all;
                seen += inPicture(camera, kAspect, scene::toScene({x, y, 800}, elevation)) ? 1 : 0;
            }
        }
        CHECK(seen > 0.6 * all);
    }
}

TEST_CASE("an L-shaped room is seen from where both its arms are in view") {
    const plan::Plan plan = house::read();
    const plan::Room& living = house::room(plan, "living");
    const scene::Camera camera = scene::roomView(plan, living);
    const plan::Vec3 eye = scene::toHouse(camera.eye);
    INFO("from " << eye.x << ", " << eye.y << " yaw " << camera.yaw);
    const auto seen = [&](plan::Vec2 p) {
        for (int i = 1; i < 100; ++i) { // nothing of the wall between
            const plan::Vec2 on_way = plan::Vec2{eye.x, eye.y} * (1 - i / 100.0) + p * (i / 100.0);
            if (!geometry::insideRoom(living, on_way)) return false;
        }
        return inPicture(camera, kAspect, scene::toScene({p.x, p.y, 1000}));
    };
    const auto part = [&](plan::Vec2 low, plan::Vec2 high) {
        int in_view = 0;
        for (int i = 0; i < 400; ++i) {
            const double a = (i % 20 + 0.5) / 20;
            const double b = (i / 20 + 0.5) / 20;
            in_view += seen({low.x + (high.x - low.x) * a, low.y + (high.y - low.y) * b}) ? 1 : 0;
        }
        return in_view / 400.0;
    };
    CHECK(part({0, 0}, {3500, 2500}) > 0.3);       // the arm to the south
    CHECK(part({3500, 2500}, {6000, 5000}) > 0.3); // the arm to the east
    CHECK(part({0, 2500}, {3500, 5000}) > 0.6);    // where they meet
}

TEST_CASE("the lid-off view holds the whole storey and fills the picture") {
    const plan::Plan plan = house::read();
    for (const float aspect : {0.6f, 1.0f, 1.6f, 2.4f}) {
        const scene::Camera camera = scene::lidOffView(plan, "ground", aspect);
        const glm::mat4 to_clip = scene::projectionMatrix(camera, aspect) * scene::viewMatrix(camera);
        float most = 0;
        for (const plan::Room& room : plan.rooms) {
            if (room.storey != "ground") continue;
            for (const plan::Vec2 p : room.outline) {
                for (const double z : {0.0, room.ceiling.heights_mm[0]}) {
                    const glm::vec4 clip = to_clip * glm::vec4(scene::toScene({p.x, p.y, z}), 1);
                    CHECK(clip.w > 0);
                    most = std::max({most, std::abs(clip.x / clip.w), std::abs(clip.y / clip.w)});
                }
            }
        }
        CHECK(most <= 1);
        CHECK(most > 0.85f);
    }
}

TEST_CASE("an orthographic camera shows its height from top to bottom") {
    scene::Camera camera;
    camera.orthographic = true;
    camera.ortho_height = 4;
    CHECK(inPicture(camera, 1, {0, 1.99f, -5}));
    CHECK_FALSE(inPicture(camera, 1, {0, 2.01f, -5}));
}
