#include "sheets/wall_view.hpp"

#include "geometry/coverage.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

/// Furniture faces this near to square on a wall are drawn on its elevation: cos of 0.5 degrees.
constexpr double kParallel = 0.99996;
/// A luminaire of unknown size is drawn this wide; common practice, no source.
constexpr double kLuminaireSize = 120;
/// Covers are looked for as deep as furniture is drawn before the wall.
constexpr double kCoverReach = kFurnitureReach;
/// Below this part covered a plate counts as in view: the cover is measured on a grid, exact to about 4 %.
constexpr double kCoveredPart = 0.05;

std::optional<Spot> spotOnWall(const plan::Room& room, const plan::Host& host) {
    const auto wall = plan::wallIndex(room, host.wall);
    if (!wall) return std::nullopt;
    return Spot{*wall, {host.u_mm, host.v_mm}, {}, 0};
}

std::optional<Spot> spotOnFurniture(const House& house, const plan::Room& room, const plan::Host& host) {
    const plan::Furniture* piece = house.index().furniture(host.furniture);
    if (piece == nullptr) return std::nullopt;
    const auto face = geometry::furnitureFaceFrame(*piece, host.face);
    if (!face || std::abs(face->w.z) > 0.5) return std::nullopt;
    const auto point_mm = geometry::hostPoint(house.index(), room.id, host);
    if (!point_mm) return std::nullopt;
    std::optional<Spot> best;
    double best_mm = std::numeric_limits<double>::infinity();
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        if (plan::dot(frame.w, face->w) < kParallel) continue;
        const plan::Vec3 uvw = geometry::toFrame(frame, *point_mm);
        const bool before = uvw.z >= 0 && uvw.x >= 0 && uvw.x <= frame.length_mm;
        if (!before || uvw.z >= best_mm) continue;
        best_mm = uvw.z;
        best = Spot{wall, {uvw.x, uvw.y}, piece->name, uvw.z};
    }
    return best;
}

} // namespace

House::House(const plan::Plan& plan, const catalogue::Catalogue& catalogue, std::filesystem::path base)
    : plan_(&plan), catalogue_(&catalogue), index_(plan), base_(std::move(base)) {
    sortByRoom({});
}

House::House(const plan::Plan& plan, const catalogue::Catalogue& catalogue, std::filesystem::path base,
             const plan::Room& room)
    : plan_(&plan), catalogue_(&catalogue), index_(plan, room.id), base_(std::move(base)) {
    sortByRoom(room.id);
}

void House::sortByRoom(const std::string& only_room) {
    for (const plan::Plate& plate : plan_->plates)
        if (only_room.empty() || plate.room == only_room) plates_[plate.room].push_back(&plate);
    for (const plan::Luminaire& luminaire : plan_->luminaires)
        if (only_room.empty() || luminaire.room == only_room)
            luminaires_[luminaire.room].push_back(&luminaire);
}

const std::vector<const plan::Plate*>& House::platesIn(const std::string& room_id) const {
    static const std::vector<const plan::Plate*> kNone;
    const auto found = plates_.find(room_id);
    return found == plates_.end() ? kNone : found->second;
}

const std::vector<const plan::Luminaire*>& House::luminairesIn(const std::string& room_id) const {
    static const std::vector<const plan::Luminaire*> kNone;
    const auto found = luminaires_.find(room_id);
    return found == luminaires_.end() ? kNone : found->second;
}

std::optional<Spot> spotOf(const House& house, const plan::Room& room, const plan::Host& host) {
    if (host.kind == plan::Host::Kind::Wall) return spotOnWall(room, host);
    if (host.kind == plan::Host::Kind::Furniture) return spotOnFurniture(house, room, host);
    return std::nullopt;
}

Mounted mountedPlate(const catalogue::Catalogue& catalogue, const plan::Plate& plate, const Spot& spot) {
    Mounted item;
    item.plate = &plate;
    item.id = plate.id;
    item.tag = plate.tag.empty() ? plate.id : plate.tag;
    item.at_mm = spot.at_mm;
    item.on = spot.on;
    item.out_mm = spot.out_mm;
    item.face = catalogue::compose(catalogue, plate);
    item.width_mm = item.face.width_mm;
    item.height_mm = item.face.height_mm;
    for (const auto& box : item.face.boxes)
        item.box_centres_mm.push_back(spot.at_mm + box.centre_mm);
    if (item.box_centres_mm.empty()) item.box_centres_mm.push_back(spot.at_mm);
    return item;
}

Mounted mountedLuminaire(const plan::Luminaire& luminaire, const Spot& spot) {
    Mounted item;
    item.luminaire = &luminaire;
    item.id = luminaire.id;
    item.tag = luminaire.tag.empty() ? luminaire.id : luminaire.tag;
    item.at_mm = spot.at_mm;
    item.on = spot.on;
    item.out_mm = spot.out_mm;
    item.width_mm = luminaire.size_mm > 0 ? luminaire.size_mm : kLuminaireSize;
    item.height_mm = item.width_mm;
    item.box_centres_mm.push_back(spot.at_mm);
    return item;
}

std::vector<std::vector<Mounted>> mountedByWall(const House& house, const plan::Room& room) {
    std::vector<std::vector<Mounted>> walls(room.walls.size());
    for (const plan::Plate* plate : house.platesIn(room.id))
        if (const auto spot = spotOf(house, room, plate->host))
            walls[spot->wall].push_back(mountedPlate(house.catalogue(), *plate, *spot));
    for (const plan::Luminaire* luminaire : house.luminairesIn(room.id))
        if (const auto spot = spotOf(house, room, luminaire->host))
            walls[spot->wall].push_back(mountedLuminaire(*luminaire, *spot));
    for (auto& mounted : walls)
        std::sort(mounted.begin(), mounted.end(), [](const Mounted& a, const Mounted& b) {
            return std::tie(a.at_mm.x, a.at_mm.y, a.tag, a.id) < std::tie(b.at_mm.x, b.at_mm.y, b.tag, b.id);
        });
    return walls;
}

void findCovers(const House& house, const plan::Room& room, std::vector<Mounted>& mounted) {
    for (Mounted& item : mounted) {
        const plan::Host& host = item.plate != nullptr ? item.plate->host : item.luminaire->host;
        const auto covers = geometry::coversOf(house.index(), room.id, host, item.width_mm, item.height_mm,
                                               kCoverReach, house.base());
        const auto cover = std::find_if(covers.begin(), covers.end(), [](const geometry::Cover& candidate) {
            return candidate.covered_part >= kCoveredPart;
        });
        if (cover == covers.end()) continue;
        const bool leaf = cover->by == geometry::Cover::By::DoorLeaf;
        item.behind = leaf ? "open door" : cover->name;
    }
}

Answers::Answers(const plan::Plan& plan) {
    const auto states = review::states(plan);
    auto prints = review::fingerprints(plan);
    for (std::size_t i = 0; i < plan.plates.size(); ++i)
        answers_.emplace(&plan.plates[i], One{states[i], std::move(prints[i])});
}

void Answers::fill(std::vector<Mounted>& mounted) const {
    for (Mounted& item : mounted) {
        if (item.plate == nullptr) continue;
        item.state = stateOf(*item.plate);
        item.fingerprint = fingerprintOf(*item.plate);
    }
}

Neighbour neighbourOf(const plan::Room& room, std::size_t wall, End end) {
    // Walls come polygon by polygon: the outline's edges, then each column's.
    std::size_t first = 0;
    std::size_t count = room.outline.size();
    for (std::size_t column = 0; wall >= first + count && column < room.columns.size(); ++column) {
        first += count;
        count = room.columns[column].size();
    }
    const std::size_t at = wall - first;
    const std::size_t other = first + (end == End::Left ? at + count - 1 : at + 1) % count;
    const auto left = geometry::wallEdge(room, end == End::Left ? other : wall);
    const auto right = geometry::wallEdge(room, end == End::Left ? wall : other);
    // The room lies to the right of each edge, so a turn to the right is an inside corner.
    const double turn = plan::cross(left.to_mm - left.from_mm, right.to_mm - right.from_mm);
    const plan::Wall& data = room.walls[other];
    const double build_up_mm = thicknessOf(data.build_up);
    return {other, turn < 0, data.thickness_mm + build_up_mm, build_up_mm};
}

double thicknessOf(const std::vector<plan::Course>& courses) {
    double sum_mm = 0;
    for (const plan::Course& course : courses)
        sum_mm += course.thickness_mm;
    return sum_mm;
}

std::string inWords(const std::vector<plan::Course>& courses) {
    std::string words;
    for (const plan::Course& course : courses)
        words += fmt::format("{}{} {:g}", words.empty() ? "" : ", ", course.material, course.thickness_mm);
    return words;
}

double WallView::top_mm() const {
    double top = 0;
    for (Vec2 p : outline_mm)
        top = std::max(top, p.y);
    return top;
}

double WallView::topAt(double u_mm) const {
    // The outline runs (0, 0), (length, 0), then back along the ceiling.
    for (std::size_t i = 2; i < outline_mm.size(); ++i) {
        const Vec2 a = outline_mm[i];
        const Vec2 b = i + 1 < outline_mm.size() ? outline_mm[i + 1] : Vec2{0, a.y};
        if (u_mm > a.x || u_mm < b.x) continue;
        if (a.x - b.x < 1e-6) return std::max(a.y, b.y);
        return b.y + (a.y - b.y) * (u_mm - b.x) / (a.x - b.x);
    }
    return top_mm();
}

bool WallView::sloped() const {
    for (std::size_t i = 2; i < outline_mm.size(); ++i)
        if (std::abs(outline_mm[i].y - top_mm()) > 0.5) return true;
    return false;
}

WallView lookAt(const House& house, const plan::Room& room, std::size_t wall, std::vector<Mounted> mounted) {
    WallView view;
    view.house = &house;
    view.plan = &house.plan();
    view.room = &room;
    view.wall = wall;
    view.frame = geometry::wallFrame(room, wall);
    view.outline_mm = geometry::wallOutline(room, wall);
    view.holes = geometry::faceHoles(house.index(), {room.id, wall});
    view.mounted = std::move(mounted);
    return view;
}

} // namespace gangway::sheets
