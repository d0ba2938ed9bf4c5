// A plate as the checks look at it, and the wall it is on with all that stands there. Only for this folder.
#pragma once

#include "catalogue/pack.hpp"
#include "checks/bars.hpp"
#include "geometry/house_index.hpp"
#include "geometry/obstacles.hpp"
#include "geometry/walls.hpp"

#include <filesystem>
#include <memory>
#include <set>
#include <unordered_map>

namespace gangway::checks {

struct Point {
    const plan::Plate* plate = nullptr;
    catalogue::ComposedPlate made;
    plan::Vec2 half_mm; ///< of its outline
    bool socket = false;
    bool control = false; ///< a hand works it: switches, dimmers, controls
    bool data = false;
    double plug_mm = 0;                       ///< free depth that what is plugged in needs; 0: nothing is
    std::string plug_words;                   ///< "a straight plug"
    std::string plug_limit;                   ///< the id of that limit
    std::vector<const plan::Device*> devices; ///< plugged into it
    const std::string& tag() const { return plate->tag.empty() ? plate->id : plate->tag; }
    plan::Vec2 centre_mm() const { return {plate->host.u_mm, plate->host.v_mm}; }
};

/// A way of a plate that works a leg.
struct WorkedWay {
    int module = 1; ///< its number on the plate, from 1
    int way = 1;
    const plan::SwitchLeg* leg = nullptr;
};

/// An open leaf as it is seen square on a wall.
struct LeafShadow {
    const plan::Opening* opening = nullptr;
    std::vector<plan::Vec2> area_mm;
    double near_mm = 0;
};

/// One wall of a room, or a face of furniture in it, and what can stand in the way of a plate there.
struct WallScene {
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
    const plan::Furniture* host = nullptr; ///< whose face it is; nullptr: a wall
    geometry::Frame frame;
    std::vector<geometry::FaceHole> holes;
    std::vector<geometry::Obstacle> obstacles;
    std::vector<geometry::Obstacle> behind_plinths; ///< the room behind plinths, which nothing fills
    std::vector<LeafShadow> leaves;
    std::vector<const Point*> points; ///< the plates on it
};

/// What is looked at of a plan, each in its order.
struct FactParts {
    std::vector<const plan::Plate*> plates;
    std::vector<const plan::Luminaire*> lamps;
    std::vector<const plan::Device*> devices;
    std::vector<const plan::SwitchLeg*> legs;
};

/// A house made ready for the checks, in time linear in it. All that it is given must outlive it.
class Facts {
public:
    /// `rooms`: ids of the only rooms that are asked about; nullptr: all.
    Facts(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
          const catalogue::CountryPack& pack, std::filesystem::path base = {},
          const std::set<std::string>* rooms = nullptr);
    /// Of some parts of it, in time linear in them.
    Facts(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
          const catalogue::CountryPack& pack, std::filesystem::path base, const FactParts& parts);

    const geometry::HouseIndex& house() const { return house_; }
    const catalogue::Catalogue& catalogue() const { return catalogue_; }
    const catalogue::CountryPack& pack() const { return pack_; }
    const plan::Plan& plan() const { return house_.plan(); }
    const std::filesystem::path& base() const { return base_; }
    const std::vector<Point>& points() const { return points_; } ///< in the plan's order
    const std::vector<const Point*>& pointsOn(const std::string& room_id, const std::string& wall_id) const;
    const std::vector<const Point*>& pointsIn(const std::string& room_id) const;
    const std::vector<const plan::Luminaire*>& lampsIn(const std::string& room_id) const;
    const std::vector<const plan::Device*>& devicesIn(const std::string& room_id) const;
    const Point* point(const std::string& plate_id) const;    ///< nullptr when there is none
    const plan::Luminaire* lamp(const std::string& id) const; ///< nullptr when there is none
    /// What a plate works, in the order of its modules and their ways.
    const std::vector<WorkedWay>& waysOf(const std::string& plate_id) const;
    const std::vector<const plan::SwitchLeg*>& legsOf(const std::string& lamp_id) const;
    double limit(std::string_view id) const { return pack_.limit(id).value; }
    const std::string& source(std::string_view id) const { return pack_.limit(id).source; }

private:
    const geometry::HouseIndex& house_;
    const catalogue::Catalogue& catalogue_;
    const catalogue::CountryPack& pack_;
    std::filesystem::path base_;
    std::vector<Point> points_;
    std::unordered_map<std::string, std::vector<const Point*>> on_wall_;
    std::unordered_map<std::string_view, std::vector<const Point*>> in_room_;
    std::unordered_map<std::string_view, std::vector<const plan::Luminaire*>> lamps_in_room_;
    std::unordered_map<std::string_view, std::vector<const plan::Device*>> devices_in_room_;
    std::unordered_map<std::string_view, const Point*> by_id_;
    std::unordered_map<std::string_view, const plan::Luminaire*> lamp_by_id_;
    std::unordered_map<std::string_view, std::vector<WorkedWay>> ways_;
    std::unordered_map<std::string_view, std::vector<const plan::SwitchLeg*>> legs_;
};

Point pointOf(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
              const plan::Plate& plate, std::vector<const plan::Device*> devices = {});
WallScene sceneOf(const Facts& facts, const plan::Room& room, std::size_t wall);
/// The face of furniture that a plate is mounted on; nullopt when it is on none.
std::optional<WallScene> faceSceneOf(const Facts& facts, const Point& point);

/// Everything that bars a plate like this from places on the wall; itself left out.
std::vector<Bar> barsFor(const Facts& facts, const WallScene& scene, const Point& point);
/// From centre to centre between the wall's ends.
Interval wholeWall(const WallScene& scene, const Point& point);
/// Centres at the plate's height that the leads of its devices reach, slack included; the whole wall when
/// there are none. May be empty (from > to).
Interval reachedByLeads(const Facts& facts, const WallScene& scene, const Point& point);

// By family, for barsFor.
void barBuilding(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barFurniture(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barAbove(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barHeat(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barLeaves(const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barPlates(const WallScene& scene, const Point& point, std::vector<Bar>& bars);
void barFace(const WallScene& scene, std::vector<Bar>& bars); ///< the edges of a face of furniture

/// Whether the room turns inwards where a wall begins (its left end) or ends, so that another wall stands
/// there.
bool insideCorner(const plan::Room& room, std::size_t wall, bool left_end);
/// "radiator", by the piece's own name or its kind's.
std::string pieceName(const plan::Furniture& piece);
const std::string& openingName(const plan::Opening& opening);

} // namespace gangway::checks
