// Light over whole rooms and walls: grids of points, their average, minimum and uniformity.
#pragma once

#include "lighting/illuminance.hpp"
#include "lighting/light.hpp"

namespace gangway::lighting {

/// A storey made ready for light: one scene for rays, and the emitters of its luminaires with their IES files
/// read once. The index, its plan and the pack must outlive it unchanged.
class LitStorey {
public:
    LitStorey(const geometry::HouseIndex& house, const std::string& storey_id, LightOptions options);

    const geometry::HouseIndex& house() const { return *house_; }
    const LightOptions& options() const { return options_; }
    const RayWorld& world() const { return world_; }
    /// Emitters that can matter to a room: those of rooms within 4 m of it on plan, its own among them. Light
    /// from further off, and through the voids of stairs, is left out.
    std::vector<Emitter> emittersNear(const plan::Room& room) const;
    /// Of luminaires that stand in the room.
    std::vector<std::string> problemsOf(const plan::Room& room) const;
    std::vector<const plan::Luminaire*> luminairesIn(const plan::Room& room) const;

private:
    const geometry::HouseIndex* house_;
    LightOptions options_;
    RayWorld world_;
    std::map<std::string, Emitters> by_room_;
    std::map<std::string, std::vector<const plan::Luminaire*>> luminaires_;
};

/// Horizontal illuminance on the pack's work plane over a room of the storey. Where furniture tops stand over
/// the plane by up to kPlaneRise_mm the light is taken on them; cells inside taller furniture have no value.
/// The error is a sentence: no such room.
[[nodiscard]] std::expected<RoomLight, std::string>
roomLight(const LitStorey& storey, const catalogue::CountryPack& pack, const std::string& room_id);
/// For one room alone; many rooms of a storey share a LitStorey.
[[nodiscard]] std::expected<RoomLight, std::string> roomLight(const geometry::HouseIndex& house,
                                                              const catalogue::CountryPack& pack,
                                                              const std::string& room_id,
                                                              const LightOptions& options = {});

/// Illuminance on the face of wall `wall` (index in room.walls), 2 mm off it.
[[nodiscard]] std::expected<WallLight, std::string>
verticalLight(const LitStorey& storey, const std::string& room_id, std::size_t wall);

/// Average vertical illuminance over all wall faces of a room, each cell counting the same; 0 for a room
/// without.
[[nodiscard]] double wallsAverage(const LitStorey& storey, const plan::Room& room);

/// Average, least, most and uniformity of values that are not NaN.
Levels levelsOf(const std::vector<double>& lux);

} // namespace gangway::lighting
