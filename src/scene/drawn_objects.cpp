#include "scene/drawn_objects.hpp"

#include "geometry/frames.hpp"
#include "geometry/furniture.hpp"
#include "scene/colour.hpp"
#include "scene/luminaire_bodies.hpp"
#include "scene/object_parts.hpp"
#include "scene/palette.hpp"
#include "scene/plate_relief.hpp"

#include <algorithm>
#include <numbers>
#include <optional>

namespace gangway::scene::detail {

using geometry::HouseIndex;

namespace {

std::string storeyOf(const HouseIndex& house, const std::string& room_id) {
    const plan::Room* room = house.room(room_id);
    return room != nullptr ? room->storey : std::string();
}

std::expected<Mounting, std::string> mountingOf(const HouseIndex& house, const std::string& what,
                                                const std::string& room_id, const plan::Host& host) {
    const auto frame = geometry::hostFrame(house, room_id, host);
    const auto point = geometry::hostPoint(house, room_id, host);
    if (!frame || !point) return std::unexpected(what + ": " + (frame ? point.error() : frame.error()));
    Mounting mounting{{*point, frame->u, frame->v, frame->w}, glm::vec3(0)};
    if (host.kind == plan::Host::Kind::Wall) mounting.facing = toSceneDirection(frame->w);
    return mounting;
}

// What has no place is told and left out.
std::optional<Mounting> toldMounting(Scene& scene, std::expected<Mounting, std::string> mounting) {
    if (mounting) return *mounting;
    scene.problems.push_back(mounting.error());
    return std::nullopt;
}

// How far out of the finished face a plate stands: on the tiles or panelling that it reaches over.
double standsOut(const HouseIndex& house, const plan::Plate& plate,
                 const catalogue::ComposedPlate& composed) {
    const plan::Room* room = house.room(plate.room);
    if (room == nullptr || plate.host.kind != plan::Host::Kind::Wall) return 0;
    const auto wall = plan::wallIndex(*room, plate.host.wall);
    if (!wall) return 0;
    double depth = 0;
    for (const plan::WallLine& line : room->walls[*wall].lines) {
        if (line.kind != plan::WallLine::Kind::Tiles && line.kind != plan::WallLine::Kind::Panel) continue;
        const bool along = (!line.from_mm || *line.from_mm < plate.host.u_mm + composed.width_mm / 2) &&
                           (!line.to_mm || *line.to_mm > plate.host.u_mm - composed.width_mm / 2);
        const bool up = line.bottom_mm < plate.host.v_mm + composed.height_mm / 2 &&
                        line.bottom_mm + line.height_mm > plate.host.v_mm - composed.height_mm / 2;
        if (along && up) depth = std::max(depth, line.depth_mm);
    }
    return depth;
}

Light lightOf(const plan::Luminaire& luminaire, const LightPoint& point, const Placement& placement,
              double elevation_mm) {
    Light light;
    light.luminaire = luminaire.id;
    light.room = luminaire.room;
    light.position = toScene(placement.point(point.at), elevation_mm);
    light.direction = toSceneDirection(placement.direction(point.direction));
    light.colour = lightColour(luminaire.kelvin);
    light.flux_lm = static_cast<float>(luminaire.lumens);
    light.beam_rad = static_cast<float>(point.beam_deg * std::numbers::pi / 180);
    return light;
}

} // namespace

double elevationOf(const HouseIndex& house, const std::string& room_id) {
    const plan::Room* room = house.room(room_id);
    const plan::Storey* storey = room != nullptr ? plan::findStorey(house.plan(), room->storey) : nullptr;
    return storey != nullptr ? storey->elevation_mm : 0;
}

void drawFurniture(Scene& scene, const HouseIndex& house, const plan::Furniture& piece,
                   const std::filesystem::path& base) {
    const geometry::FurnitureSolids solids = geometry::furnitureSolids(piece, base);
    if (!solids.problem.empty()) scene.problems.push_back(solids.problem);
    ObjectParts parts;
    for (const geometry::Solid& solid : solids.solids) {
        meshes::append(parts.of(furnitureMaterial(solid.surface, solid.colour)), solid.mesh);
    }
    Part label;
    label.kind = piece.layer == plan::kLayerSoft ? PartKind::Soft : PartKind::Furniture;
    label.object = piece.id;
    label.room = piece.room;
    label.storey = storeyOf(house, piece.room);
    label.layer = piece.layer;
    addToScene(scene, label, parts, elevationOf(house, piece.room));
}

std::expected<Mounting, std::string> plateMounting(const HouseIndex& house, const plan::Plate& plate,
                                                   const catalogue::ComposedPlate& composed) {
    auto mounting = mountingOf(house, "plate '" + plate.id + "'", plate.room, plate.host);
    if (!mounting) return mounting;
    Placement& placement = mounting->placement;
    placement.origin_mm = placement.point({0, 0, standsOut(house, plate, composed)});
    return mounting;
}

Part plateLabel(const HouseIndex& house, const plan::Plate& plate, const Mounting& mounting) {
    Part label;
    label.kind = PartKind::Plate;
    label.object = plate.id;
    label.room = plate.room;
    label.storey = storeyOf(house, plate.room);
    label.layer = plan::kLayerPlates;
    label.wall = plate.host.wall;
    label.facing = mounting.facing;
    return label;
}

void drawPlate(Scene& scene, const HouseIndex& house, const catalogue::Catalogue& catalogue,
               const plan::Plate& plate) {
    const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
    const auto mounting = toldMounting(scene, plateMounting(house, plate, composed));
    if (!mounting) return;
    ObjectParts parts;
    addPlate(parts, catalogue, composed, mounting->placement);
    addToScene(scene, plateLabel(house, plate, *mounting), parts, elevationOf(house, plate.room));
}

void drawLuminaire(Scene& scene, const HouseIndex& house, const plan::Luminaire& luminaire) {
    const auto mounting = toldMounting(
        scene, mountingOf(house, "luminaire '" + luminaire.id + "'", luminaire.room, luminaire.host));
    if (!mounting) return;
    const double elevation = elevationOf(house, luminaire.room);
    ObjectParts parts;
    const LightPoint point = addLuminaire(parts, luminaire, mounting->placement);
    scene.lights.push_back(lightOf(luminaire, point, mounting->placement, elevation));
    Part label;
    label.kind = PartKind::Lamp;
    label.object = luminaire.id;
    label.room = luminaire.room;
    label.storey = storeyOf(house, luminaire.room);
    label.layer = plan::kLayerLamps;
    label.wall = luminaire.host.wall;
    label.facing = mounting->facing;
    addToScene(scene, label, parts, elevation);
}

} // namespace gangway::scene::detail
