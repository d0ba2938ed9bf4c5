#include "edit/luminaire_edits.hpp"

#include "edit/part_check.hpp"
#include "edit/wording.hpp"
#include "geometry/furniture.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace gangway::edit {
namespace {

using detail::lampName;
using plan::Vec2;

/// Tags and ids for new luminaires, each given once.
class Names {
public:
    explicit Names(const plan::Plan& plan) : plan_(plan) {
        for (const plan::Luminaire& lamp : plan.luminaires)
            tags_.insert(lamp.tag), ids_.insert(lamp.id);
    }
    std::string tag(const std::string& room_id, const std::string& wanted = {}) {
        if (!wanted.empty() && tags_.insert(wanted).second) return wanted;
        const plan::Room* room = plan::findRoom(plan_, room_id);
        const std::string letter = room && !room->letter.empty() ? room->letter : "P";
        for (int number = 1;; ++number)
            if (std::string tag = fmt::format("{}-L{:02}", letter, number); tags_.insert(tag).second)
                return tag;
    }
    std::string id(const std::string& wanted, const std::string& room_id) {
        std::string id = detail::freeId(wanted, fmt::format("{}-lamp", room_id),
                                        [&](const std::string& taken) { return ids_.contains(taken); });
        ids_.insert(id);
        return id;
    }

private:
    const plan::Plan& plan_;
    std::set<std::string> tags_;
    std::set<std::string> ids_;
};

std::string problemWith(const plan::Plan& plan, const std::vector<plan::Luminaire>& lamps) {
    std::vector<std::string> rooms;
    for (const plan::Luminaire& lamp : lamps)
        rooms.push_back(lamp.room);
    plan::Plan part = detail::partOf(plan, rooms);
    for (const plan::Luminaire& lamp : lamps) {
        part.luminaires.push_back(lamp);
        const plan::Furniture* piece = plan::findFurniture(plan, lamp.host.furniture);
        if (piece == nullptr || lamp.host.kind != plan::Host::Kind::Furniture ||
            plan::findFurniture(part, piece->id) != nullptr)
            continue;
        part.furniture.push_back(*piece);
        part.furniture.back().room = lamp.room;
    }
    return detail::problemOf(part).value_or("");
}

std::string noLamp(const std::string& id) {
    return fmt::format("there is no luminaire '{}'", id);
}

std::string namesOf(const plan::Plan& plan, const std::vector<std::string>& ids) {
    return ids.size() == 1 ? lampName(*plan::findLuminaire(plan, ids.front()))
                           : fmt::format("{} luminaires", ids.size());
}

PlanRectangle boundsOf(const std::vector<Vec2>& polygon) {
    PlanRectangle box{polygon.front(), polygon.front()};
    for (const Vec2 p : polygon) {
        box.low_mm = {std::min(box.low_mm.x, p.x), std::min(box.low_mm.y, p.y)};
        box.high_mm = {std::max(box.high_mm.x, p.x), std::max(box.high_mm.y, p.y)};
    }
    return box;
}

bool squareCorners(const std::vector<Vec2>& outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 edge = outline[(i + 1) % outline.size()] - outline[i];
        if (edge.x != 0 && edge.y != 0) return false;
    }
    return true;
}

/// The outline cut along all its corners' coordinates into cells, each inside or outside.
class Cells {
public:
    explicit Cells(const std::vector<Vec2>& outline) {
        std::set<double> xs;
        std::set<double> ys;
        for (const Vec2 p : outline)
            xs.insert(p.x), ys.insert(p.y);
        x_.assign(xs.begin(), xs.end());
        y_.assign(ys.begin(), ys.end());
        for (std::size_t j = 0; j + 1 < y_.size(); ++j)
            for (std::size_t i = 0; i + 1 < x_.size(); ++i)
                inside_.push_back(
                    geometry::insidePolygon(outline, {(x_[i] + x_[i + 1]) / 2, (y_[j] + y_[j + 1]) / 2}));
    }

    /// For each south-west cell it grows row by row northwards, as wide as all rows so far allow.
    PlanRectangle largest() const {
        PlanRectangle best;
        double best_area = 0;
        for (std::size_t south = 0; south + 1 < y_.size(); ++south)
            for (std::size_t west = 0; west + 1 < x_.size(); ++west) {
                std::size_t east = x_.size() - 1;
                for (std::size_t north = south; north + 1 < y_.size(); ++north) {
                    east = std::min(east, reach(west, north));
                    if (east == west) break;
                    const PlanRectangle grown{{x_[west], y_[south]}, {x_[east], y_[north + 1]}};
                    const Vec2 size = grown.high_mm - grown.low_mm;
                    if (size.x * size.y > best_area) best_area = size.x * size.y, best = grown;
                }
            }
        return best;
    }

private:
    std::size_t reach(std::size_t west, std::size_t row) const {
        std::size_t east = west;
        while (east + 1 < x_.size() && inside_[row * (x_.size() - 1) + east])
            ++east;
        return east;
    }
    std::vector<double> x_;
    std::vector<double> y_;
    std::vector<bool> inside_;
};

/// Points of a grid in the house, and what they are laid over in words.
std::expected<std::vector<Vec2>, std::string> pointsOf(const plan::Plan& plan, const plan::Room& room,
                                                       const LampGrid& grid) {
    if (const auto* rectangle = std::get_if<PlanRectangle>(&grid.over))
        return gridPoints(*rectangle, grid.rows, grid.columns);
    const auto* piece_id = std::get_if<std::string>(&grid.over);
    if (piece_id == nullptr) return gridPoints(gridRectangle(room), grid.rows, grid.columns);
    const plan::Furniture* piece = plan::findFurniture(plan, *piece_id);
    if (piece == nullptr) return std::unexpected(fmt::format("there is no furniture '{}'", *piece_id));
    const Vec2 half{piece->size.width_mm / 2, piece->size.depth_mm / 2};
    std::vector<Vec2> points = gridPoints({half * -1, half}, grid.rows, grid.columns);
    for (Vec2& point : points) {
        const plan::Vec3 at = geometry::fromLocal(*piece, {point.x, point.y, 0});
        point = {at.x, at.y};
    }
    return points;
}

} // namespace

std::string nextLampTag(const plan::Plan& plan, const std::string& room_id) {
    return Names(plan).tag(room_id);
}

Refusable addLuminaire(const plan::Plan& plan, plan::Luminaire luminaire) {
    Names names(plan);
    luminaire.tag = names.tag(luminaire.room, luminaire.tag);
    luminaire.id = names.id(luminaire.id, luminaire.room);
    luminaire.host = detail::heldToWall(plan, luminaire.room, luminaire.host);
    if (std::string problem = problemWith(plan, {luminaire}); !problem.empty())
        return std::unexpected(problem);
    std::string name = fmt::format("Add {}", lampName(luminaire));
    return Command{std::move(name), "",
                   [luminaire = std::move(luminaire)](Draft& draft) { draft.add(luminaire); }};
}

Refusable moveLuminaires(const plan::Plan& plan, const std::vector<LampMove>& moves) {
    if (moves.empty()) return std::unexpected("choose a luminaire to move");
    std::vector<plan::Luminaire> moved;
    std::vector<std::string> ids;
    std::string key = "move luminaires";
    for (const LampMove& move : moves) {
        const plan::Luminaire* lamp = plan::findLuminaire(plan, move.luminaire);
        if (lamp == nullptr) return std::unexpected(noLamp(move.luminaire));
        moved.push_back(*lamp);
        if (!move.room.empty()) moved.back().room = move.room;
        moved.back().host = detail::heldToWall(plan, moved.back().room, move.host);
        ids.push_back(move.luminaire);
        key += fmt::format(" {}", move.luminaire);
    }
    if (std::string problem = problemWith(plan, moved); !problem.empty()) return std::unexpected(problem);
    return Command{fmt::format("Move {}", namesOf(plan, ids)), key, [moved = std::move(moved)](Draft& draft) {
                       for (const plan::Luminaire& lamp : moved) {
                           plan::Luminaire* changed = draft.change<plan::Luminaire>(lamp.id);
                           if (changed == nullptr) continue;
                           changed->host = lamp.host;
                           changed->room = lamp.room;
                       }
                   }};
}

Refusable removeLuminaires(const plan::Plan& plan, const std::vector<std::string>& luminaire_ids) {
    if (luminaire_ids.empty()) return std::unexpected("choose a luminaire to remove");
    for (const std::string& id : luminaire_ids)
        if (plan::findLuminaire(plan, id) == nullptr) return std::unexpected(noLamp(id));
    return Command{fmt::format("Remove {}", namesOf(plan, luminaire_ids)), "", [luminaire_ids](Draft& draft) {
                       for (const std::string& id : luminaire_ids)
                           draft.remove<plan::Luminaire>(id);
                   }};
}

Refusable changeLuminaire(const plan::Plan& plan, plan::Luminaire luminaire, const std::string& what,
                          const std::string& merge_key) {
    if (plan::findLuminaire(plan, luminaire.id) == nullptr) return std::unexpected(noLamp(luminaire.id));
    for (const plan::Luminaire& other : plan.luminaires)
        if (other.id != luminaire.id && !luminaire.tag.empty() && other.tag == luminaire.tag)
            return std::unexpected(fmt::format("another luminaire is tagged {}", luminaire.tag));
    luminaire.host = detail::heldToWall(plan, luminaire.room, luminaire.host);
    if (std::string problem = problemWith(plan, {luminaire}); !problem.empty())
        return std::unexpected(problem);
    return Command{what, merge_key, [luminaire = std::move(luminaire)](Draft& draft) {
                       if (plan::Luminaire* lamp = draft.change<plan::Luminaire>(luminaire.id))
                           *lamp = luminaire;
                   }};
}

std::vector<Vec2> gridPoints(const PlanRectangle& over, int rows, int columns) {
    std::vector<Vec2> points;
    const Vec2 size = over.high_mm - over.low_mm;
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            points.push_back({over.low_mm.x + size.x * (2 * column + 1) / (2 * columns),
                              over.low_mm.y + size.y * (2 * row + 1) / (2 * rows)});
    return points;
}

PlanRectangle gridRectangle(const plan::Room& room) {
    constexpr std::size_t kMostCorners = 100; ///< the search grows with the third power of the corners
    if (room.outline.size() > kMostCorners || !squareCorners(room.outline)) return boundsOf(room.outline);
    return Cells(room.outline).largest();
}

Refusable gridLuminaires(const plan::Plan& plan, const LampGrid& grid) {
    constexpr int kMost = 100; ///< a row; more is a slip of the hand
    const plan::Room* room = plan::findRoom(plan, grid.room);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", grid.room));
    if (grid.rows < 1 || grid.columns < 1 || grid.rows > kMost || grid.columns > kMost)
        return std::unexpected(fmt::format("give 1 to {} rows and columns", kMost));
    const auto points = pointsOf(plan, *room, grid);
    if (!points) return std::unexpected(points.error());
    const Vec2 corner = boundsOf(room->outline).low_mm;
    Names names(plan);
    std::vector<plan::Luminaire> lamps;
    for (const Vec2 point : *points) {
        if (!geometry::insideRoom(*room, point)) continue;
        plan::Luminaire lamp = grid.like;
        const bool floor = lamp.host.kind == plan::Host::Kind::Floor;
        lamp.room = grid.room;
        lamp.host = {};
        lamp.host.kind = floor ? plan::Host::Kind::Floor : plan::Host::Kind::Ceiling;
        lamp.host.u_mm = point.x - corner.x;
        lamp.host.v_mm = point.y - corner.y;
        lamp.tag = names.tag(grid.room);
        lamp.id = names.id("", grid.room);
        lamps.push_back(std::move(lamp));
    }
    const std::string where = detail::roomName(*room);
    if (lamps.empty()) return std::unexpected(fmt::format("no point of the grid lies in {}", where));
    if (std::string problem = problemWith(plan, lamps); !problem.empty()) return std::unexpected(problem);
    std::string name =
        fmt::format("Add {} to {}", detail::counted(lamps.size(), "luminaire", "luminaires"), where);
    return Command{std::move(name), "", [lamps = std::move(lamps)](Draft& draft) {
                       for (const plan::Luminaire& lamp : lamps)
                           draft.add(lamp);
                   }};
}

} // namespace gangway::edit
