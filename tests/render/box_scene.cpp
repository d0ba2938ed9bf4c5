#include "render/box_scene.hpp"

#include <string>
#include <utility>

namespace gangway::test {

using scene::PartKind;

scene::Part& BoxScene::begin(PartKind kind, const std::string& object, const std::string& layer,
                             glm::vec3 colour) {
    // std::string(...) rather than a literal: GCC 12 warns falsely (restrict) where a literal is assigned.
    scene::Part part;
    part.kind = kind;
    part.object = object;
    part.room = std::string("room");
    part.storey = std::string("ground");
    part.layer = layer;
    part.first_index = static_cast<std::uint32_t>(scene.indices.size());
    part.material.colour = colour;
    scene.parts.push_back(part);
    return scene.parts.back();
}

void BoxScene::quad(glm::vec3 a, glm::vec3 b, glm::vec3 c, glm::vec3 d) {
    const glm::vec3 normal = glm::normalize(glm::cross(b - a, c - a));
    const auto first = static_cast<std::uint32_t>(scene.vertices.size());
    for (const glm::vec3& corner : {a, b, c, d})
        scene.vertices.push_back({corner, normal});
    for (const std::uint32_t i : {0u, 1u, 2u, 0u, 2u, 3u})
        scene.indices.push_back(first + i);
}

void BoxScene::box(glm::vec3 l, glm::vec3 h) {
    quad({l.x, l.y, h.z}, {h.x, l.y, h.z}, {h.x, h.y, h.z}, {l.x, h.y, h.z});
    quad({h.x, l.y, l.z}, {l.x, l.y, l.z}, {l.x, h.y, l.z}, {h.x, h.y, l.z});
    quad({h.x, l.y, h.z}, {h.x, l.y, l.z}, {h.x, h.y, l.z}, {h.x, h.y, h.z});
    quad({l.x, l.y, l.z}, {l.x, l.y, h.z}, {l.x, h.y, h.z}, {l.x, h.y, l.z});
    quad({l.x, h.y, h.z}, {h.x, h.y, h.z}, {h.x, h.y, l.z}, {l.x, h.y, l.z});
    quad({l.x, l.y, l.z}, {h.x, l.y, l.z}, {h.x, l.y, h.z}, {l.x, l.y, h.z});
}

void BoxScene::end() {
    auto& part = scene.parts.back();
    part.index_count = static_cast<std::uint32_t>(scene.indices.size()) - part.first_index;
    part.low = glm::vec3(1e9f);
    part.high = glm::vec3(-1e9f);
    for (std::size_t i = part.first_index; i < scene.indices.size(); ++i) {
        part.low = glm::min(part.low, scene.vertices[scene.indices[i]].position);
        part.high = glm::max(part.high, scene.vertices[scene.indices[i]].position);
    }
}

void BoxScene::addRoom() {
    const glm::vec3 paint{0.72f, 0.69f, 0.63f};
    auto& floor = begin(PartKind::Floor, "room", "building", {0.45f, 0.30f, 0.18f});
    floor.material.pattern = 1;
    floor.material.pattern_size_m = {0.14f, 1.2f};
    quad({0, 0, 0}, {4, 0, 0}, {4, 0, -3}, {0, 0, -3});
    end();
    begin(PartKind::Ceiling, "room", "building", {0.85f, 0.84f, 0.82f});
    quad({0, 2.5f, -3}, {4, 2.5f, -3}, {4, 2.5f, 0}, {0, 2.5f, 0});
    end();
    auto& north = begin(PartKind::Wall, "room", "building", paint);
    north.wall = std::string("A");
    north.facing = {0, 0, 1};
    quad({0, 0, -3}, {4, 0, -3}, {4, 2.5f, -3}, {0, 2.5f, -3});
    end();
    auto& east = begin(PartKind::Wall, "room", "building", paint);
    east.wall = std::string("B");
    east.facing = {-1, 0, 0};
    quad({4, 0, -3}, {4, 0, 0}, {4, 2.5f, 0}, {4, 2.5f, -3});
    end();
    auto& west = begin(PartKind::Wall, "room", "building", paint);
    west.wall = std::string("D");
    west.facing = {1, 0, 0};
    quad({0, 0, 0}, {0, 0, -3}, {0, 2.5f, -3}, {0, 2.5f, 0});
    end();
    auto& cap = begin(PartKind::WallCut, "room", "building", {0.02f, 0.025f, 0.03f});
    cap.wall = std::string("A");
    quad({0, 2.5f, -3}, {4, 2.5f, -3}, {4, 2.5f, -3.1f}, {0, 2.5f, -3.1f});
    end();
}

void BoxScene::addWindowWall() {
    auto& south = begin(PartKind::Wall, "room", "building", {0.72f, 0.69f, 0.63f});
    south.wall = std::string("C");
    south.facing = {0, 0, -1};
    const auto piece = [this](float x0, float x1, float y0, float y1) {
        quad({x1, y0, 0}, {x0, y0, 0}, {x0, y1, 0}, {x1, y1, 0});
    };
    piece(0, 1.2f, 0, 2.5f);
    piece(2.8f, 4, 0, 2.5f);
    piece(1.2f, 2.8f, 0, 0.9f);
    piece(1.2f, 2.8f, 2.2f, 2.5f);
    end();
    auto& glass = begin(PartKind::Opening, "window", "building", {0.7f, 0.8f, 0.82f});
    glass.wall = std::string("C");
    glass.material.opacity = 0.2f;
    glass.material.roughness = 0.1f;
    quad({2.8f, 0.9f, 0.05f}, {1.2f, 0.9f, 0.05f}, {1.2f, 2.2f, 0.05f}, {2.8f, 2.2f, 0.05f});
    end();
}

void BoxScene::addThings() {
    auto& wardrobe = begin(PartKind::Furniture, "wardrobe", "furniture", {0.30f, 0.38f, 0.22f});
    wardrobe.material.pattern = 0;
    box({0.4f, 0, -2.95f}, {1.6f, 2.1f, -2.35f});
    end();
    auto& table = begin(PartKind::Furniture, "table", "furniture", {0.40f, 0.24f, 0.13f});
    table.material.pattern = 4;
    table.material.roughness = 0.4f;
    box({2.3f, 0.70f, -1.9f}, {3.5f, 0.74f, -1.1f});
    for (const auto& [x, z] : {std::pair{2.35f, -1.85f}, {3.4f, -1.85f}, {2.35f, -1.2f}, {3.4f, -1.2f}})
        box({x, 0, z}, {x + 0.05f, 0.70f, z + 0.05f});
    end();
    auto& behind = begin(PartKind::Plate, "covered", "plates", {0.80f, 0.02f, 0.02f});
    behind.wall = std::string("A");
    box({0.7f, 0.9f, -3}, {1.3f, 1.3f, -2.99f});
    end();
    auto& open = begin(PartKind::Plate, "open", "plates", {0.80f, 0.79f, 0.76f});
    open.wall = std::string("A");
    open.material.roughness = 0.3f;
    box({2.4f, 1.0f, -3}, {2.552f, 1.081f, -2.99f});
    end();
    auto& shade = begin(PartKind::Lamp, "pendant", "lamps", {0.9f, 0.8f, 0.6f});
    shade.material.emission = 3;
    box({2.8f, 1.7f, -1.6f}, {3.0f, 1.9f, -1.4f});
    end();
    scene::Light light;
    light.luminaire = std::string("pendant");
    light.room = std::string("room");
    light.position = {2.9f, 1.66f, -1.5f};
    light.colour = {1.0f, 0.78f, 0.5f};
    light.flux_lm = 800;
    scene.lights.push_back(light);
}

BoxScene::BoxScene() {
    addRoom();
    addWindowWall();
    addThings();
    scene.low = {0, 0, -3.1f};
    scene.high = {4, 2.5f, 0.05f};
}

render::View BoxScene::view(int width, int height) {
    render::View view;
    view.width = width;
    view.height = height;
    view.camera.eye = {2, 1.5f, -0.2f};
    view.camera.vertical_fov = 1.2f;
    view.camera.pitch = -0.08f;
    return view;
}

} // namespace gangway::test
