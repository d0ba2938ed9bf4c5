#include "geometry/house_index.hpp"

#include "geometry/furniture.hpp"
#include "geometry/wall_build.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::geometry {
namespace {

/// A room that would lie in more cells than this is kept aside and always looked at.
constexpr double kManyCells = 256;
constexpr double kLeastCellMm = 500;
/// How far a stair's top may be off the floor it leads to.
constexpr double kSameLevelMm = 500;
/// An index for one room keeps the rooms this near to it: a door's leaf and the wall it hangs in are nearer.
constexpr double kAroundMm = 5000;

struct Box {
    Vec2 low{1e300, 1e300};
    Vec2 high{-1e300, -1e300};

    void take(Vec2 p) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    Box grown(double by) const { return {low - Vec2{by, by}, high + Vec2{by, by}}; }
    bool meets(Vec2 other_low, Vec2 other_high) const {
        return low.x <= other_high.x && high.x >= other_low.x && low.y <= other_high.y &&
               high.y >= other_low.y;
    }
};

Box boxOf(const std::vector<Vec2>& polygon) {
    Box box;
    for (const Vec2 p : polygon)
        box.take(p);
    return box;
}

Box boxWithWalls(const plan::Room& room) {
    double reach = wallReach(nullptr);
    for (const plan::Wall& wall : room.walls)
        reach = std::max(reach, wallReach(&wall));
    return boxOf(room.outline).grown(reach);
}

/// Has a leaf, and not only within its own hole.
bool hasLeaf(const plan::Opening& opening) {
    using Kind = plan::Opening::Kind;
    return opening.kind != Kind::Window && opening.kind != Kind::Plain && opening.kind != Kind::Hatch;
}

/// It swings out of its own room, and the plan does not say where to.
bool swingsSomewhere(const plan::Opening& opening) {
    return opening.joins.empty() && opening.kind == plan::Opening::Kind::HingedDoor &&
           opening.swing == plan::Swing::Out;
}

} // namespace

HouseIndex::HouseIndex(const plan::Plan& plan) : plan_(&plan) {
    entries_.reserve(plan.rooms.size());
    for (const plan::Room& room : plan.rooms)
        addRoom(room);
    sortIntoCells();
    for (const plan::Opening& opening : plan.openings)
        addOpening(opening);
    for (const plan::Furniture& piece : plan.furniture) {
        furniture_.emplace(piece.id, &piece);
        if (Entry* home = entry(piece.room)) home->furniture.push_back(&piece);
        if (piece.kind == "stair") addStair(piece);
    }
}

HouseIndex::HouseIndex(const plan::Plan& plan, const std::string& room_id) : plan_(&plan), whole_(false) {
    const plan::Room* own = plan::findRoom(plan, room_id);
    if (own == nullptr) return;
    const Box around = boxWithWalls(*own).grown(kAroundMm);
    for (const plan::Room& room : plan.rooms) {
        if (room.storey != own->storey) continue;
        const Box box = boxOf(room.outline);
        if (&room == own || around.meets(box.low, box.high)) addRoom(room);
    }
    sortIntoCells();
    for (const plan::Opening& opening : plan.openings)
        addOpening(opening);
    for (const plan::Furniture& piece : plan.furniture) {
        if (piece.room == room_id) entry(room_id)->furniture.push_back(&piece);
        if (piece.kind == "stair") addStair(piece);
    }
}

void HouseIndex::addRoom(const plan::Room& room) {
    const auto number = static_cast<std::uint32_t>(entries_.size());
    if (!by_room_.emplace(room.id, number).second) return; // of two with one id the first counts
    const Box box = boxWithWalls(room);
    Entry made;
    made.room = &room;
    made.low_mm = box.low;
    made.high_mm = box.high;
    entries_.push_back(std::move(made));
}

void HouseIndex::sortIntoCells() {
    double sum = 0;
    for (const Entry& e : entries_)
        sum += std::max({e.high_mm.x - e.low_mm.x, e.high_mm.y - e.low_mm.y, 0.0});
    if (!entries_.empty()) cell_mm_ = std::max(kLeastCellMm, sum / static_cast<double>(entries_.size()));
    for (std::uint32_t i = 0; i < entries_.size(); ++i) {
        const Entry& e = entries_[i];
        if (e.room->outline.empty()) continue;
        const auto next = static_cast<std::uint32_t>(storeys_.size());
        const std::uint32_t storey = storeys_.emplace(e.room->storey, next).first->second;
        const Cells cells = cellsOf(e.low_mm, e.high_mm);
        if (cells.many()) {
            large_.push_back(i);
            continue;
        }
        for (std::int32_t column = cells.first_column; column <= cells.last_column; ++column)
            for (std::int32_t row = cells.first_row; row <= cells.last_row; ++row)
                cells_[{storey, column, row}].push_back(i);
    }
}

void HouseIndex::addOpening(const plan::Opening& opening) {
    Entry* host = entry(opening.room);
    if (host != nullptr) host->openings.push_back(&opening);
    if (!hasLeaf(opening)) return;
    if (host != nullptr) host->doors.push_back(&opening);
    if (opening.joins != opening.room)
        if (Entry* joined = entry(opening.joins)) joined->doors.push_back(&opening);
    if (host == nullptr || !swingsSomewhere(opening)) return;
    const auto wall = plan::wallIndex(*host->room, opening.wall);
    if (!wall) return;
    const WallEdge edge = wallEdge(*host->room, *wall);
    const Box box = boxOf({edge.from_mm, edge.to_mm}).grown(wallReach(&host->room->walls[*wall]));
    for (const plan::Room* near : roomsNear(host->room->storey, box.low, box.high))
        if (near != host->room) entry(near->id)->doors.push_back(&opening);
}

void HouseIndex::addStair(const plan::Furniture& piece) {
    const plan::Room* home = room(piece.room);
    const plan::Storey* lower = home == nullptr ? nullptr : plan::findStorey(*plan_, home->storey);
    if (lower == nullptr) return;
    const plan::Storey* upper = storeyReached(*plan_, *lower, piece);
    StairVoid through{&piece, footprint(piece), std::nullopt};
    if (upper != nullptr) through.rise_mm = upper->elevation_mm - lower->elevation_mm;
    const bool meets_ceiling = piece.bottom_mm + piece.size.height_mm > ceilingHeightAt(*home, piece.at_mm);
    if (upper == nullptr && !meets_ceiling) return; // a few steps within the room
    if (Entry* own = entry(piece.room)) own->ceiling_voids.push_back(through);
    if (upper == nullptr) return;
    const Box box = boxOf(through.outline_mm);
    for (const plan::Room* above : roomsNear(upper->id, box.low, box.high))
        entry(above->id)->floor_voids.push_back(through);
}

const plan::Room* HouseIndex::room(const std::string& id) const {
    if (const Entry* e = entry(id)) return e->room;
    return whole_ ? nullptr : plan::findRoom(*plan_, id);
}

const plan::Furniture* HouseIndex::furniture(const std::string& id) const {
    if (!whole_) return plan::findFurniture(*plan_, id);
    const auto found = furniture_.find(id);
    return found == furniture_.end() ? nullptr : found->second;
}

std::span<const plan::Opening* const> HouseIndex::openingsOf(const std::string& room_id) const {
    const Entry* e = entry(room_id);
    return e == nullptr ? std::span<const plan::Opening* const>() : e->openings;
}

std::span<const plan::Opening* const> HouseIndex::doorsInto(const std::string& room_id) const {
    const Entry* e = entry(room_id);
    return e == nullptr ? std::span<const plan::Opening* const>() : e->doors;
}

std::span<const plan::Furniture* const> HouseIndex::furnitureIn(const std::string& room_id) const {
    const Entry* e = entry(room_id);
    return e == nullptr ? std::span<const plan::Furniture* const>() : e->furniture;
}

std::span<const StairVoid> HouseIndex::ceilingVoids(const std::string& room_id) const {
    const Entry* e = entry(room_id);
    return e == nullptr ? std::span<const StairVoid>() : e->ceiling_voids;
}

std::span<const StairVoid> HouseIndex::floorVoids(const std::string& room_id) const {
    const Entry* e = entry(room_id);
    return e == nullptr ? std::span<const StairVoid>() : e->floor_voids;
}

std::vector<const plan::Room*> HouseIndex::roomsNear(const std::string& storey, Vec2 low_mm,
                                                     Vec2 high_mm) const {
    const auto number = storeys_.find(storey);
    if (number == storeys_.end()) return {};
    std::vector<std::uint32_t> candidates = large_;
    const Cells cells = cellsOf(low_mm, high_mm);
    if (cells.many()) {
        candidates.clear();
        for (std::uint32_t i = 0; i < entries_.size(); ++i)
            candidates.push_back(i);
    } else {
        for (std::int32_t column = cells.first_column; column <= cells.last_column; ++column) {
            for (std::int32_t row = cells.first_row; row <= cells.last_row; ++row) {
                const auto cell = cells_.find({number->second, column, row});
                if (cell == cells_.end()) continue;
                candidates.insert(candidates.end(), cell->second.begin(), cell->second.end());
            }
        }
    }
    std::ranges::sort(candidates);
    candidates.erase(std::unique(candidates.begin(), candidates.end()), candidates.end());
    std::vector<const plan::Room*> near;
    for (const std::uint32_t i : candidates) {
        const Entry& e = entries_[i];
        if (e.room->storey == storey && Box{e.low_mm, e.high_mm}.meets(low_mm, high_mm))
            near.push_back(e.room);
    }
    return near;
}

std::size_t HouseIndex::CellHash::operator()(const Cell& cell) const {
    // Three odd numbers without a common factor spread neighbouring cells over the buckets.
    return cell.storey * std::size_t{2654435761U} ^
           static_cast<std::uint32_t>(cell.column) * std::size_t{73856093U} ^
           static_cast<std::uint32_t>(cell.row) * std::size_t{19349663U};
}

bool HouseIndex::Cells::many() const {
    return (double{1} + last_column - first_column) * (double{1} + last_row - first_row) > kManyCells;
}

HouseIndex::Cells HouseIndex::cellsOf(Vec2 low_mm, Vec2 high_mm) const {
    // Held within a million cells each way; what lies beyond shares the outermost ones.
    const auto numberOf = [&](double mm) {
        return static_cast<std::int32_t>(std::floor(std::clamp(mm / cell_mm_, -1e6, 1e6)));
    };
    return {numberOf(low_mm.x), numberOf(high_mm.x), numberOf(low_mm.y), numberOf(high_mm.y)};
}

const HouseIndex::Entry* HouseIndex::entry(std::string_view room_id) const {
    const auto found = by_room_.find(room_id);
    return found == by_room_.end() ? nullptr : &entries_[found->second];
}

HouseIndex::Entry* HouseIndex::entry(std::string_view room_id) {
    const auto found = by_room_.find(room_id);
    return found == by_room_.end() ? nullptr : &entries_[found->second];
}

const plan::Storey* storeyReached(const plan::Plan& plan, const plan::Storey& lower,
                                  const plan::Furniture& stair) {
    const double top = lower.elevation_mm + stair.bottom_mm + stair.size.height_mm;
    const plan::Storey* nearest = nullptr;
    double least = kSameLevelMm;
    for (const plan::Storey& storey : plan.storeys) {
        const double off = std::abs(storey.elevation_mm - top);
        if (off > least || (nearest != nullptr && off >= least)) continue;
        nearest = &storey;
        least = off;
    }
    return nearest == nullptr || nearest->id == lower.id ? nullptr : nearest;
}

} // namespace gangway::geometry
