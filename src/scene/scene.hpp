// Plan to what is drawn: triangles in metres, y up, with materials, grouped so that layers, rooms and
// single objects can be shown, ghosted, hidden and picked without rebuilding anything.
#pragma once

#include "catalogue/catalogue.hpp"
#include "plan/plan.hpp"

#include <glm/glm.hpp>

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace gangway::scene {

/// House mm (x east, y north, z up, plus the storey's elevation) to scene metres (x east, y up, z south).
glm::vec3 toScene(plan::Vec3 house_mm, double storey_elevation_mm = 0);
/// And back, without the elevation taken off.
plan::Vec3 toHouse(glm::vec3 scene_m);

struct Vertex {
    glm::vec3 position;
    glm::vec3 normal;
};

struct Material {
    glm::vec3 colour{0.8f, 0.8f, 0.8f}; ///< linear RGB
    float roughness = 0.8f;
    float metalness = 0;
    float opacity = 1; ///< glass below 1
    float emission = 0;
    /// Procedural surface drawn in the shader: 0 none, 1 floor boards, 2 tiles, 3 carpet, 4 wood grain, 5
    /// fabric.
    int pattern = 0;
    glm::vec2 pattern_size_m{
        0.2f, 0.2f}; ///< boards: width, length; tiles: one tile with one joint, along and across
    /// Where the pattern starts and the direction of its first size, in the scene. Tiles: the lower left
    /// corner of one whole tile, so that a joint on the stage is where the plan has it.
    glm::vec3 pattern_origin{0};
    glm::vec3 pattern_along{1, 0, 0};
    float joint_m = 0; ///< tiles: width of the joint
    bool operator==(const Material&) const = default;
};

enum class PartKind { Wall, WallCut, Floor, Ceiling, Opening, Furniture, Soft, Lamp, Plate, Zone, Plug };

/// One drawable: a run of triangles of one material that belongs to one object.
struct Part {
    PartKind kind = PartKind::Wall;
    std::string object; ///< plate, furniture, opening, luminaire or room id
    std::string room;
    std::string storey;
    std::string layer; ///< plan layer id
    std::string wall;  ///< walls, what is built into them and what hangs on them
    std::uint32_t first_index = 0;
    std::uint32_t index_count = 0;
    Material material;
    glm::vec3 low{0}; ///< bounds, metres
    glm::vec3 high{0};
    /// Walls, what is built into them and what hangs on them: unit normal into the room, for the lid-off cut;
    /// zero otherwise.
    glm::vec3 facing{0};
};

struct Light {
    std::string luminaire;
    std::string room;
    glm::vec3 position{0};
    glm::vec3 direction{0, -1, 0};
    glm::vec3 colour{1}; ///< linear RGB by colour temperature
    float flux_lm = 0;
    float beam_rad = 0; ///< full angle; 0: all round
    bool on = true;
};

struct Scene {
    std::vector<Vertex> vertices;
    std::vector<std::uint32_t> indices;
    std::vector<Part> parts;
    std::vector<Light> lights;
    glm::vec3 low{0};
    glm::vec3 high{0};
    std::vector<std::string> problems; ///< glTF files that could not be read, in words
};

/// Everything of a plan, all storeys; what is hidden is decided when drawing. Deterministic order.
[[nodiscard]] Scene build(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const std::filesystem::path& base = {});

/// Where to stand for a picture. Angles in radians; yaw 0 looks north, positive turns right; pitch up.
struct Camera {
    glm::vec3 eye{0}; ///< metres
    float yaw = 0;
    float pitch = 0;
    float vertical_fov = 1.05f;
    bool orthographic = false;
    float ortho_height = 4; ///< metres seen from top to bottom
};

inline constexpr double kEyeHeightMm = 1600; ///< standing eye, common practice, no source

/// A good place to see a room from: eye height, in the corner that sees most of it, looking across.
Camera roomView(const plan::Plan& plan, const plan::Room& room);
/// Square to a wall, as far back as the room allows or as the wall needs.
Camera faceWall(const plan::Plan& plan, const plan::Room& room, std::size_t wall_index, float aspect);
/// From above, looking down and north a little; lid off.
Camera lidOffView(const plan::Plan& plan, const std::string& storey, float aspect);

glm::mat4 viewMatrix(const Camera& camera);
glm::mat4 projectionMatrix(const Camera& camera, float aspect);

inline constexpr double kBodyRadiusMm =
    250; ///< half the breadth a person walks with, common practice, no source

/// Where a body of radius 250 mm can stand and walk. In the way are walls and furniture that is higher than a
/// step (200) and hangs lower than 1800; rugs, curtains and stairs are not, and doors are pushed open.
/// Openings from the floor, 500 or wider, between two rooms let one through; nothing leads out of the house.
class WalkMap {
public:
    WalkMap() = default;
    WalkMap(const plan::Plan& plan, const std::string& storey, const std::filesystem::path& base = {});
    /// The furthest point towards `to_mm` that the body can reach from `from_mm`, sliding along what is in
    /// the way. From a place where it can't stand it is first put on the nearest one where it can.
    plan::Vec2 move(plan::Vec2 from_mm, plan::Vec2 to_mm) const;
    bool free(plan::Vec2 at_mm) const;
    /// Nearest place where the body can stand.
    plan::Vec2 nearestFree(plan::Vec2 at_mm) const;
    /// Way from a to b round furniture and through doors as corner points with b last; empty when there is
    /// none, or when b is not free (ask nearestFree first). Starts at the free place nearest to a.
    std::vector<plan::Vec2> way(plan::Vec2 from_mm, plan::Vec2 to_mm) const;

private:
    struct Cell {
        int column = 0;
        int row = 0;
        bool operator==(const Cell&) const = default;
    };
    Cell cellAt(plan::Vec2 at_mm) const;
    plan::Vec2 centreOf(Cell cell) const;
    bool freeCell(Cell cell) const;
    std::size_t index(Cell cell) const;
    bool freeLine(plan::Vec2 from_mm, plan::Vec2 to_mm) const;
    std::vector<Cell> cellPath(Cell from, Cell to) const;

    plan::Vec2 origin_mm_;
    double cell_mm_ = 50;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<std::uint8_t> blocked_; ///< grid of cells, 1: the body's centre can't be there
};

/// A stair as one climbs it: where it is entered below and left above.
struct StairLink {
    std::string furniture; ///< piece of kind "stair"
    std::string lower_storey;
    plan::Vec2 lower_mm; ///< a free place before its first step
    std::string upper_storey;
    plan::Vec2 upper_mm; ///< the free place nearest to its top
};
/// The stairs that lead to a storey: the one whose elevation is nearest to the stair's top, within 500 mm. A
/// stair is climbed from its front to its back. One without a free place below or above is left out.
std::vector<StairLink> stairLinks(const plan::Plan& plan);

} // namespace gangway::scene
