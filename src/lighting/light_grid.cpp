#include "lighting/light_grid.hpp"

#include "geometry/walls.hpp"
#include "lighting/lumen_method.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace gangway::lighting {

namespace {

using plan::Vec2;

constexpr double kNearRooms_mm = 4000;
constexpr double kMostCells = 40000;
constexpr double kOverTop_mm = 5; ///< a point on a piece of furniture lies this far over it
constexpr double kOffWall_mm = 2;
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

struct Box {
    Vec2 low{1e300, 1e300};
    Vec2 high{-1e300, -1e300};
};

Box boxOf(const std::vector<Vec2>& points) {
    Box box;
    for (const Vec2 p : points) {
        box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
        box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
    return box;
}

/// Cells over a rectangle, as many left over at either side.
LightGrid gridOver(Vec2 low, Vec2 high, double cell_mm) {
    LightGrid grid;
    const double width = std::max(1.0, high.x - low.x);
    const double depth = std::max(1.0, high.y - low.y);
    grid.cell_mm = std::max({cell_mm, 1.0, std::sqrt(width * depth / kMostCells)});
    grid.cell_mm = std::max(grid.cell_mm, std::max(width, depth) / kMostCells);
    grid.columns = std::max(1, static_cast<int>(width / grid.cell_mm));
    grid.rows = std::max(1, static_cast<int>(depth / grid.cell_mm));
    const double over_x = width - grid.columns * grid.cell_mm;
    const double over_y = depth - grid.rows * grid.cell_mm;
    grid.origin_mm = {low.x + over_x / 2, low.y + over_y / 2};
    return grid;
}

template <typename Value>
void fill(LightGrid& grid, Value value) {
    grid.lux.reserve(static_cast<std::size_t>(grid.columns) * static_cast<std::size_t>(grid.rows));
    for (int row = 0; row < grid.rows; ++row)
        for (int column = 0; column < grid.columns; ++column)
            grid.lux.push_back(value(grid.middleOf(column, row)));
}

/// Where the work plane is over a point of the room; not set inside tall furniture.
std::optional<double> planeOver(const RayWorld& world, const plan::Room& room, Vec2 at, double plane_mm) {
    const double ceiling = geometry::ceilingHeightAt(room, at);
    if (ceiling <= plane_mm) return std::nullopt;
    const double top = std::min(plane_mm + kPlaneRise_mm, ceiling - 1);
    // A piece that reaches over the highest top: inside a wardrobe, or under a flight of stairs.
    const auto over = world.nearest({at.x, at.y, top}, {0, 0, 1}, ceiling - top);
    const bool tall = over && over->piece != nullptr && over->piece->bottom_mm < top;
    // Below something built that is not the ceiling: within an open door leaf.
    const bool built = over && over->piece == nullptr && over->distance_mm < ceiling - top - kOverTop_mm;
    if (tall || built) return std::nullopt;
    const auto under = world.nearest({at.x, at.y, top}, {0, 0, -1}, top - plane_mm);
    if (!under || under->piece == nullptr) return plane_mm;
    return top - under->distance_mm + kOverTop_mm;
}

double distanceToSegment(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 way = b - a;
    const double square = dot(way, way);
    const double part = square > 0 ? std::clamp(dot(p - a, way) / square, 0.0, 1.0) : 0;
    return length(p - (a + way * part));
}

double distanceToWalls(const plan::Room& room, Vec2 at) {
    double least = 1e300;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const geometry::WallEdge edge = geometry::wallEdge(room, wall);
        least = std::min(least, distanceToSegment(at, edge.from_mm, edge.to_mm));
    }
    return least;
}

/// Levels of the cells that are not in the strip along the walls; of all when there are no others.
Levels levelsWithin(const plan::Room& room, const LightGrid& grid, double margin_mm) {
    std::vector<double> within;
    for (int row = 0; row < grid.rows; ++row)
        for (int column = 0; column < grid.columns; ++column)
            if (!std::isnan(grid.at(column, row)) &&
                distanceToWalls(room, grid.middleOf(column, row)) >= margin_mm - 1e-6)
                within.push_back(grid.at(column, row));
    return levelsOf(within.empty() ? grid.lux : within);
}

double areaOf(const plan::Room& room) {
    double area = std::abs(geometry::signedArea(room.outline));
    for (const auto& column : room.columns)
        area -= std::abs(geometry::signedArea(column));
    return area / 1e6;
}

double perimeterOf(const plan::Room& room) {
    double sum = 0;
    for (std::size_t i = 0; i < room.outline.size(); ++i)
        sum += length(room.outline[(i + 1) % room.outline.size()] - room.outline[i]);
    return sum / 1000;
}

/// Flux of a room's own emitters, and the height of those over the plane, weighted by their flux.
struct OwnFlux {
    double lumens = 0;
    double height_m = 0;
};
OwnFlux ownFlux(const std::vector<Emitter>& emitters, const plan::Room& room, double plane_mm) {
    OwnFlux own;
    double over = 0;
    for (const Emitter& emitter : emitters) {
        if (emitter.luminaire->room != room.id) continue;
        const double lumens = emitter.distribution->lumens() * emitter.part;
        own.lumens += lumens;
        if (emitter.at_mm.z <= plane_mm) continue;
        over += lumens;
        own.height_m += lumens * (emitter.at_mm.z - plane_mm) / 1000;
    }
    if (over > 0) own.height_m /= over;
    return own;
}

const plan::Room* roomOf(const geometry::HouseIndex& house, const std::string& room_id) {
    return house.room(room_id);
}

} // namespace

LitStorey::LitStorey(const geometry::HouseIndex& house, const std::string& storey_id, LightOptions options)
    : house_(&house), options_(std::move(options)), world_(house, storey_id, options_.base) {
    for (const plan::Luminaire& lamp : house.plan().luminaires)
        if (const plan::Room* room = house.room(lamp.room); room != nullptr && room->storey == storey_id)
            luminaires_[lamp.room].push_back(&lamp);
    for (const auto& [room_id, lamps] : luminaires_)
        by_room_[room_id] = emittersOf(house, lamps, options_);
}

std::vector<Emitter> LitStorey::emittersNear(const plan::Room& room) const {
    const Box box = boxOf(room.outline);
    const Vec2 reach{kNearRooms_mm, kNearRooms_mm};
    std::vector<Emitter> emitters;
    for (const plan::Room* near : house_->roomsNear(room.storey, box.low - reach, box.high + reach)) {
        const auto found = by_room_.find(near->id);
        if (found == by_room_.end()) continue;
        emitters.insert(emitters.end(), found->second.points.begin(), found->second.points.end());
    }
    return emitters;
}

std::vector<std::string> LitStorey::problemsOf(const plan::Room& room) const {
    const auto found = by_room_.find(room.id);
    return found == by_room_.end() ? std::vector<std::string>{} : found->second.problems;
}

std::vector<const plan::Luminaire*> LitStorey::luminairesIn(const plan::Room& room) const {
    const auto found = luminaires_.find(room.id);
    return found == luminaires_.end() ? std::vector<const plan::Luminaire*>{} : found->second;
}

double wallsAverage(const LitStorey& storey, const plan::Room& room) {
    std::vector<double> lux;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        if (const auto light = verticalLight(storey, room.id, wall))
            lux.insert(lux.end(), light->grid.lux.begin(), light->grid.lux.end());
    return levelsOf(lux).average_lx;
}

Levels levelsOf(const std::vector<double>& lux) {
    Levels levels;
    levels.minimum_lx = std::numeric_limits<double>::infinity();
    double sum = 0;
    std::size_t count = 0;
    for (const double value : lux) {
        if (std::isnan(value)) continue;
        sum += value;
        ++count;
        levels.minimum_lx = std::min(levels.minimum_lx, value);
        levels.maximum_lx = std::max(levels.maximum_lx, value);
    }
    if (count == 0) return {};
    levels.average_lx = sum / static_cast<double>(count);
    if (levels.average_lx > 0) levels.uniformity = levels.minimum_lx / levels.average_lx;
    return levels;
}

std::expected<RoomLight, std::string> roomLight(const LitStorey& storey, const catalogue::CountryPack& pack,
                                                const std::string& room_id) {
    const plan::Room* room = roomOf(storey.house(), room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    RoomLight light;
    light.room = room_id;
    light.plane_mm = pack.work_plane_mm.value;
    light.problems = storey.problemsOf(*room);
    const Box box = boxOf(room->outline);
    light.grid = gridOver(box.low, box.high, storey.options().cell_mm);
    const auto emitters = storey.emittersNear(*room);
    const RayWorld* world = storey.options().shadows ? &storey.world() : nullptr;
    fill(light.grid, [&](Vec2 at) {
        if (!geometry::insideRoom(*room, at)) return kNone;
        const auto height = planeOver(storey.world(), *room, at, light.plane_mm);
        return height ? illuminance(emitters, {{at.x, at.y, *height}}, world) : kNone;
    });
    const double shorter = std::min(box.high.x - box.low.x, box.high.y - box.low.y);
    light.margin_mm = std::min(kMostMargin_mm, kMarginPart * shorter);
    light.levels = levelsWithin(*room, light.grid, light.margin_mm);
    light.area_m2 = areaOf(*room);
    const OwnFlux own = ownFlux(emitters, *room, light.plane_mm);
    light.lumens = own.lumens;
    light.room_index = roomIndex(light.area_m2, perimeterOf(*room), own.height_m);
    light.lumen_method_lx =
        lumenMethod(light.lumens, pack.utilisation.value, pack.maintenance.value, light.area_m2);
    return light;
}

std::expected<RoomLight, std::string> roomLight(const geometry::HouseIndex& house,
                                                const catalogue::CountryPack& pack,
                                                const std::string& room_id, const LightOptions& options) {
    const plan::Room* room = roomOf(house, room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    return roomLight(LitStorey(house, room->storey, options), pack, room_id);
}

std::expected<WallLight, std::string> verticalLight(const LitStorey& storey, const std::string& room_id,
                                                    std::size_t wall) {
    const plan::Room* room = roomOf(storey.house(), room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    if (wall >= room->walls.size())
        return std::unexpected(
            fmt::format("room '{}' has {} walls, not {}", room_id, room->walls.size(), wall + 1));
    const geometry::Frame frame = geometry::wallFrame(*room, wall);
    const auto outline = geometry::wallOutline(*room, wall);
    const auto holes = geometry::faceHoles(storey.house(), {room_id, wall});
    const auto emitters = storey.emittersNear(*room);
    const RayWorld* world = storey.options().shadows ? &storey.world() : nullptr;
    WallLight light{room_id, room->walls[wall].id, {}, {}};
    const Box box = boxOf(outline);
    light.grid = gridOver(box.low, box.high, storey.options().cell_mm);
    fill(light.grid, [&](Vec2 uv) {
        const auto in_hole = [&](const geometry::FaceHole& hole) {
            return uv.x > hole.left_mm && uv.x < hole.right_mm && uv.y > hole.bottom_mm && uv.y < hole.top_mm;
        };
        if (!geometry::insidePolygon(outline, uv) || std::ranges::any_of(holes, in_hole)) return kNone;
        return illuminance(emitters, {geometry::toHouse(frame, {uv.x, uv.y, kOffWall_mm}), frame.w}, world);
    });
    light.levels = levelsOf(light.grid.lux);
    return light;
}

} // namespace gangway::lighting
