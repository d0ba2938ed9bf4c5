// What there is to see on one wall from inside the room: its frame, holes, the plates and wall luminaires on
// it or on furniture faces before it. Everything in the wall's (u, v), mm; no paper yet.
#pragma once

#include "checks/cable_zones.hpp"
#include "checks/wet_zones.hpp"
#include "geometry/frames.hpp"
#include "geometry/house_index.hpp"
#include "geometry/walls.hpp"
#include "plan/plan.hpp"
#include "review/review.hpp"
#include "sheets/datum.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace gangway::sheets {

using plan::Vec2;

/// Furniture nearer to a wall than this stands before it: units and beds do, an island does not.
inline constexpr double kFurnitureReach = 650;

/// A plan made ready to be drawn wall by wall: what stands in a room is found without going through the
/// house. The plan and the catalogue must outlive it unchanged.
class House {
public:
    House(const plan::Plan& plan, const catalogue::Catalogue& catalogue, std::filesystem::path base);
    /// For the walls of one room alone.
    House(const plan::Plan& plan, const catalogue::Catalogue& catalogue, std::filesystem::path base,
          const plan::Room& room);

    const plan::Plan& plan() const { return *plan_; }
    const catalogue::Catalogue& catalogue() const { return *catalogue_; }
    const geometry::HouseIndex& index() const { return index_; }
    const std::filesystem::path& base() const { return base_; }
    /// In the plan's order.
    const std::vector<const plan::Plate*>& platesIn(const std::string& room_id) const;
    const std::vector<const plan::Luminaire*>& luminairesIn(const std::string& room_id) const;

private:
    void sortByRoom(const std::string& only_room);

    const plan::Plan* plan_;
    const catalogue::Catalogue* catalogue_;
    geometry::HouseIndex index_;
    std::filesystem::path base_;
    std::map<std::string, std::vector<const plan::Plate*>> plates_;
    std::map<std::string, std::vector<const plan::Luminaire*>> luminaires_;
};

/// A plate or a luminaire as it is seen on a wall; one of the two pointers is set.
struct Mounted {
    const plan::Plate* plate = nullptr;
    const plan::Luminaire* luminaire = nullptr;
    std::string id;
    std::string tag; ///< as printed; the id when no tag is given
    Vec2 at_mm;      ///< centre in the wall's (u, v)
    double width_mm = 0;
    double height_mm = 0;
    catalogue::ComposedPlate face;    ///< plates only
    std::vector<Vec2> box_centres_mm; ///< (u, v) of what is drilled, left to right and top to bottom
    std::string on;                   ///< furniture it is mounted on: "headboard"; empty: the wall
    double out_mm = 0;                ///< how far that face stands before the wall
    std::string behind;               ///< what hides it from straight in front: "wardrobe"; empty: nothing
    review::State state = review::State::Open;
    std::string fingerprint; ///< plates only, when answers were looked up
    /// By how many mm its place is right before a check fails; 0: it is not. Plates only, when it was asked
    /// for.
    std::optional<double> margin_mm;
    /// Auxiliary dimensions in words, their numbers in brackets: distance from the nearest opening, pitch of
    /// its boxes.
    std::string checks;
    std::size_t detail = 0; ///< of the wall's details, the one that has its numbers and tag; 0: none
};

/// Where a host's point is on one of the room's walls: on the wall itself, or on a vertical furniture face
/// that is parallel to the wall and stands before it. nullopt for floors, ceilings and faces no wall looks
/// like.
struct Spot {
    std::size_t wall = 0;
    Vec2 at_mm;
    std::string on;
    double out_mm = 0;
};
std::optional<Spot> spotOf(const House& house, const plan::Room& room, const plan::Host& host);

/// A plate or luminaire as mounted at a spot; `behind`, `state` and `fingerprint` are not filled yet.
Mounted mountedPlate(const catalogue::Catalogue& catalogue, const plan::Plate& plate, const Spot& spot);
Mounted mountedLuminaire(const plan::Luminaire& luminaire, const Spot& spot);

/// The plates and wall luminaires of a room by wall, each list from left to right. `behind`, `state` and
/// `fingerprint` are not filled yet.
std::vector<std::vector<Mounted>> mountedByWall(const House& house, const plan::Room& room);

/// Fills `behind` of everything on a wall (geometry::coversOf).
void findCovers(const House& house, const plan::Room& room, std::vector<Mounted>& mounted);

/// The homeowner's answers to all plates, looked up once.
class Answers {
public:
    explicit Answers(const plan::Plan& plan);
    review::State stateOf(const plan::Plate& plate) const { return answers_.at(&plate).state; }
    const std::string& fingerprintOf(const plan::Plate& plate) const {
        return answers_.at(&plate).fingerprint;
    }
    /// Fills state and fingerprint of what is mounted.
    void fill(std::vector<Mounted>& mounted) const;

private:
    struct One {
        review::State state = review::State::Open;
        std::string fingerprint;
    };
    std::unordered_map<const plan::Plate*, One> answers_; // looked up, never walked
};

/// The wall that meets this one at its left or right end.
struct Neighbour {
    std::size_t wall = 0;
    bool towards_viewer = true; ///< an inside corner; false: the wall turns away (outside corner)
    double thickness_mm = 0;    ///< structure and this face's build-up
    double build_up_mm = 0;     ///< finished face to structural face
};
enum class End { Left, Right };
Neighbour neighbourOf(const plan::Room& room, std::size_t wall, End end);

double thicknessOf(const std::vector<plan::Course>& courses);
/// "plaster 13, tile 10"; empty when nothing is known.
std::string inWords(const std::vector<plan::Course>& courses);

/// Something on a wall that is not as it was in an older state of the plan.
struct RevisionMark {
    Vec2 at_mm; ///< centre in the wall's (u, v); of what is gone: where it was
    double width_mm = 0;
    double height_mm = 0;
    bool gone = false;
    std::string words; ///< "K-04 moved 120 right, 50 up"
};

/// What a picture shows of a wall that is too long or too crowded for one.
struct Portion {
    double left_mm = 0; ///< along the wall
    double right_mm = 0;
    /// Its heights, of a detail; not set: a part from floor to ceiling, between match lines.
    std::optional<std::pair<double, double>> v_mm;
    std::size_t number = 1;
    std::size_t count = 1; ///< parts of the wall
    double scale = 0;      ///< of a detail, 1:scale
};

/// A wall with everything on it.
struct WallView {
    const House* house = nullptr;
    const plan::Plan* plan = nullptr;
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
    geometry::Frame frame;
    std::vector<Vec2> outline_mm;          ///< counter-clockwise from (0, 0)
    std::vector<geometry::FaceHole> holes; ///< left to right
    std::vector<Mounted> mounted;
    /// Zones to be drawn on it and whose they are; empty: none.
    std::vector<checks::WetWallArea> wet_zones;
    std::vector<checks::ZoneArea> cable_zones;
    const catalogue::CountryPack* zones_pack = nullptr;
    /// What changed on it since `since` ("revision A of 2026-11-25"); that is empty when nothing is compared.
    std::vector<RevisionMark> changes;
    std::string since;
    Fix fix = Fix::Second;
    bool check_dimensions = false;
    /// From where its numbers count, and where that is in the wall's own (u, v).
    Datum datum;
    double u_datum_mm = 0;
    double v_datum_mm = 0;
    std::optional<Portion> portion; ///< not set: all of it is shown
    std::vector<Portion> details;   ///< drawn apart, larger

    const std::filesystem::path& base() const { return house->base(); }
    const plan::Wall& data() const { return room->walls[wall]; }
    double length_mm() const { return frame.length_mm; }
    double left_mm() const { return portion ? std::max(portion->left_mm, 0.0) : 0; }
    double right_mm() const { return portion ? std::min(portion->right_mm, length_mm()) : length_mm(); }
    /// True when the picture reaches to this end of the wall.
    bool shows(End end) const { return end == End::Left ? left_mm() <= 0 : right_mm() >= length_mm(); }
    double top_mm() const;           ///< highest point of the outline
    double topAt(double u_mm) const; ///< ceiling line at u
    bool sloped() const;
    double slab_mm() const { return -thicknessOf(room->floor_build_up); } ///< v of the slab, at most 0
    /// What is printed for a place on the wall.
    Vec2 printed(Vec2 at_mm) const { return {at_mm.x - u_datum_mm, at_mm.y - v_datum_mm}; }
    const plan::Storey* storey() const { return plan::findStorey(*plan, room->storey); }
};
WallView lookAt(const House& house, const plan::Room& room, std::size_t wall, std::vector<Mounted> mounted);

} // namespace gangway::sheets
