#include "scene/plate_preview.hpp"

#include "scene/object_parts.hpp"
#include "scene/palette.hpp"
#include "scene/plate_relief.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::scene {
namespace {

using namespace detail;

constexpr const char* kRoom = "preview";
constexpr double kWallRound_mm = 45; // of wall to see round the plate
constexpr double kWallDepth_mm = 15;
constexpr float kFieldOfView = 0.42f;

/// x right, y up, z towards the south, where the camera is at yaw 0.
Placement facingSouth() {
    return {{0, 0, 0}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
}

Mesh wallPiece(double width_mm, double height_mm) {
    const Loop face = roundedRect({}, width_mm - 3, height_mm - 3, 4.5, 0, 4);
    const Loop rim = roundedRect({}, width_mm, height_mm, 6, 0, 4);
    Mesh mesh;
    addBand(mesh, rim, {-kWallDepth_mm}, rim, {-1.5}, Facing::Outwards);
    addBand(mesh, rim, {-1.5}, face, {0}, Facing::Outwards);
    addFace(mesh, face, {}, {0});
    return mesh;
}

Mesh wallBack(double width_mm, double height_mm) {
    Mesh mesh;
    addFace(mesh, roundedRect({}, width_mm, height_mm, 6, 0, 4), {}, {0});
    return placed(std::move(mesh), {{0, kWallDepth_mm, 0}, {-1, 0, 0}, {0, 0, 1}, {0, 1, 0}});
}

void enlarge(Scene& scene) {
    for (Vertex& vertex : scene.vertices)
        vertex.position *= kPreviewScale;
    for (Part& part : scene.parts) {
        part.low *= kPreviewScale;
        part.high *= kPreviewScale;
    }
    scene.low *= kPreviewScale;
    scene.high *= kPreviewScale;
}

Light fillLight() {
    Light light;
    light.room = kRoom;
    light.position = {3.2f, -0.6f, 1.9f};
    light.direction = glm::normalize(-light.position);
    light.colour = {1.0f, 0.95f, 0.88f};
    light.flux_lm = 3000;
    return light;
}

} // namespace

Scene platePreview(const catalogue::Catalogue& catalogue, const plan::Plate& plate,
                   const std::string& wall_colour) {
    Scene scene;
    const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
    const double width = composed.width_mm + 2 * kWallRound_mm;
    const double height = composed.height_mm + 2 * kWallRound_mm;
    ObjectParts wall;
    Mesh& mesh = wall.of(fabricMaterial(geometry::FabricPart::Role::Wall, wall_colour));
    meshes::append(mesh, placed(wallPiece(width, height), facingSouth()));
    meshes::append(mesh, wallBack(width, height));
    Part label;
    label.room = kRoom;
    label.object = "wall";
    addToScene(scene, label, wall, 0);
    ObjectParts front;
    addPlate(front, catalogue, composed, facingSouth());
    // At this size a plate throws shadows, as furniture does.
    label.kind = PartKind::Furniture;
    label.object = plate.id;
    addToScene(scene, label, front, 0);
    enlarge(scene);
    scene.lights.push_back(fillLight());
    return scene;
}

Camera plateCamera(double width_mm, double height_mm, float yaw, float pitch, float aspect) {
    const float half_width = kPreviewScale * static_cast<float>(width_mm / 2 + 0.4 * kWallRound_mm) / 1000;
    const float half_height = kPreviewScale * static_cast<float>(height_mm / 2 + 0.4 * kWallRound_mm) / 1000;
    const float a = std::clamp(yaw, -1.4f, 1.4f);
    const float b = std::clamp(pitch, -1.4f, 1.4f);
    const float slope = std::tan(kFieldOfView / 2);
    const float away = std::max(half_height, half_width / std::max(aspect, 0.1f)) / slope +
                       half_width * std::abs(std::sin(a)) + half_height * std::abs(std::sin(b));
    Camera camera;
    camera.eye = away * glm::vec3(std::sin(a) * std::cos(b), std::sin(b), std::cos(a) * std::cos(b));
    camera.yaw = -a;
    camera.pitch = -b;
    camera.vertical_fov = kFieldOfView;
    return camera;
}

plan::Vec3 toPlate(glm::vec3 preview_m) {
    const glm::dvec3 mm = glm::dvec3(preview_m) * (1000.0 / static_cast<double>(kPreviewScale));
    return {mm.x, mm.y, mm.z};
}

} // namespace gangway::scene
