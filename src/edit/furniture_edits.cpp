#include "edit/furniture_edits.hpp"

#include "edit/part_check.hpp"
#include "edit/wording.hpp"
#include "geometry/furniture.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <numbers>

namespace gangway::edit {
namespace {

using detail::counted;
using detail::pieceName;
using detail::shownMm;
using plan::Vec2;

std::expected<plan::Furniture, std::string> copyOf(const plan::Plan& plan, const std::string& id) {
    const plan::Furniture* piece = plan::findFurniture(plan, id);
    if (piece == nullptr) return std::unexpected(fmt::format("there is no furniture '{}'", id));
    return *piece;
}

/// 0 to less than 360.
double wholeTurn(double turn_deg) {
    const double turn = std::fmod(std::fmod(turn_deg, 360.0) + 360.0, 360.0);
    return turn + 0.0;
}

std::string problemWith(const plan::Plan& plan, const plan::Furniture& piece) {
    plan::Plan part = detail::partOf(plan, {piece.room});
    part.furniture.push_back(piece);
    return detail::problemOf(part).value_or("");
}

template <class T>
void renameRoomOf(Draft& draft, const plan::Furniture& after) {
    for (std::size_t i = 0; i < List<T>::of(draft.plan()).size(); ++i) {
        const T& mounted = List<T>::of(draft.plan())[i];
        if (mounted.host.kind != plan::Host::Kind::Furniture || mounted.host.furniture != after.id) continue;
        if (mounted.room != after.room) draft.change<T>(i).room = after.room;
    }
}

/// Devices in the piece go along; those that merely are in the same room stay.
void carryDevices(Draft& draft, const plan::Furniture& before, const plan::Furniture& after) {
    for (std::size_t i = 0; i < draft.plan().devices.size(); ++i) {
        if (draft.plan().devices[i].furniture != after.id) continue;
        plan::Device& device = draft.change<plan::Device>(i);
        const plan::Vec3 local = geometry::toLocal(before, device.lead_exit_mm);
        device.lead_exit_mm = geometry::fromLocal(after, local);
        device.room = after.room;
    }
}

bool samePlace(const plan::Furniture& a, const plan::Furniture& b) {
    return a.at_mm == b.at_mm && a.turn_deg == b.turn_deg && a.bottom_mm == b.bottom_mm && a.room == b.room;
}

/// Puts the piece as it is to be into the plan, and what belongs to it along.
Refusable replaced(const plan::Plan& plan, plan::Furniture after, std::string name, std::string merge_key) {
    if (std::string problem = problemWith(plan, after); !problem.empty()) return std::unexpected(problem);
    return Command{std::move(name), std::move(merge_key), [after = std::move(after)](Draft& draft) {
                       plan::Furniture* piece = draft.change<plan::Furniture>(after.id);
                       if (piece == nullptr) return;
                       const plan::Furniture before = *piece;
                       *piece = after;
                       if (samePlace(before, after)) return;
                       carryDevices(draft, before, after);
                       renameRoomOf<plan::Plate>(draft, after);
                       renameRoomOf<plan::Luminaire>(draft, after);
                   }};
}

std::string roomUnder(const plan::Plan& plan, const std::string& storey, Vec2 at) {
    const plan::Room* room = geometry::roomAt(plan, storey, at);
    return room ? room->id : std::string();
}

template <class T>
std::size_t mountedOn(const std::vector<T>& list, const std::vector<std::string>& pieces) {
    return static_cast<std::size_t>(std::ranges::count_if(list, [&](const T& mounted) {
        return mounted.host.kind == plan::Host::Kind::Furniture &&
               std::ranges::find(pieces, mounted.host.furniture) != pieces.end();
    }));
}

std::string namesOf(const plan::Plan& plan, const std::vector<std::string>& ids) {
    return ids.size() == 1 ? pieceName(*plan::findFurniture(plan, ids.front()))
                           : fmt::format("{} pieces of furniture", ids.size());
}

std::string removalName(const plan::Plan& plan, const std::vector<std::string>& ids) {
    std::vector<std::string> parts;
    if (const std::size_t plates = mountedOn(plan.plates, ids); plates > 0)
        parts.push_back(counted(plates, "plate", "plates"));
    if (const std::size_t lamps = mountedOn(plan.luminaires, ids); lamps > 0)
        parts.push_back(counted(lamps, "lamp", "lamps"));
    return fmt::format("Remove {}{}{}", namesOf(plan, ids), parts.empty() ? "" : " with ",
                       detail::listed(parts));
}

std::string freePieceId(const plan::Plan& plan, const std::vector<plan::Furniture>& more,
                        const std::string& wanted, const std::string& stem) {
    return detail::freeId(wanted, stem, [&](const std::string& id) {
        return plan::findFurniture(plan, id) != nullptr ||
               std::ranges::find(more, id, &plan::Furniture::id) != more.end();
    });
}

/// Keeps what is mounted on a piece on its face; what stood beyond it before (on a headboard) stays.
template <class T>
void keepOnFaces(Draft& draft, const plan::Furniture& before, const plan::Furniture& after) {
    for (std::size_t i = 0; i < List<T>::of(draft.plan()).size(); ++i) {
        const plan::Host host = List<T>::of(draft.plan())[i].host;
        if (host.kind != plan::Host::Kind::Furniture || host.furniture != after.id) continue;
        const auto was = geometry::furnitureFaceFrame(before, host.face);
        const auto is = geometry::furnitureFaceFrame(after, host.face);
        if (!was || !is || host.u_mm > was->length_mm || host.u_mm <= is->length_mm) continue;
        draft.change<T>(i).host.u_mm = is->length_mm;
    }
}

} // namespace

std::expected<plan::Furniture, std::string> usualPiece(const std::string& kind) {
    const plan::FurnitureKind* known = plan::findFurnitureKind(kind);
    if (known == nullptr) return std::unexpected(fmt::format("'{}' is no kind of furniture", kind));
    plan::Furniture piece;
    piece.kind = kind;
    piece.name = known->name;
    piece.layer = known->layer;
    piece.size = known->size;
    return piece;
}

plan::Furniture pieceFromFile(const std::string& gltf_file, plan::Size3 size) {
    plan::Furniture piece;
    piece.kind = "gltf";
    piece.file = gltf_file;
    const std::size_t slash = gltf_file.find_last_of('/');
    const std::string file_name = slash == std::string::npos ? gltf_file : gltf_file.substr(slash + 1);
    piece.name = file_name.substr(0, file_name.rfind('.'));
    piece.layer = plan::kLayerFurniture;
    piece.size = size;
    return piece;
}

Refusable addFurniture(const plan::Plan& plan, plan::Furniture piece, const std::string& storey) {
    const std::string level = storey.empty() && !plan.storeys.empty() ? plan.storeys.front().id : storey;
    if (piece.room.empty()) piece.room = roomUnder(plan, level, piece.at_mm);
    if (piece.room.empty()) return std::unexpected("there is no room; put it inside one");
    piece.id = freePieceId(plan, {}, piece.id, fmt::format("{}-{}", piece.room, piece.kind));
    piece.turn_deg = wholeTurn(piece.turn_deg);
    if (std::string problem = problemWith(plan, piece); !problem.empty()) return std::unexpected(problem);
    const plan::Room& room = *plan::findRoom(plan, piece.room);
    std::string name = fmt::format("Add {} to {}", pieceName(piece), detail::roomName(room));
    return Command{std::move(name), "", [piece = std::move(piece)](Draft& draft) { draft.add(piece); }};
}

Refusable moveFurniture(const plan::Plan& plan, const std::string& piece_id, const Stand& stand) {
    auto piece = copyOf(plan, piece_id);
    if (!piece) return std::unexpected(piece.error());
    const Vec2 way = stand.at_mm - piece->at_mm;
    piece->at_mm = stand.at_mm;
    piece->turn_deg = wholeTurn(stand.turn_deg);
    if (const plan::Room* room = plan::findRoom(plan, piece->room))
        if (const std::string under = roomUnder(plan, room->storey, stand.at_mm); !under.empty())
            piece->room = under;
    const std::string who = pieceName(*piece);
    auto command = replaced(plan, std::move(*piece), fmt::format("Move {} by {}", who, shownMm(length(way))),
                            fmt::format("move furniture {}", piece_id));
    if (command)
        command->describe = [who, piece_id](const plan::Plan& after, const Delta& step) {
            const auto* was = step.before<plan::Furniture>(piece_id);
            const auto* is = plan::findFurniture(after, piece_id);
            if (was && is && was->at_mm == is->at_mm) return fmt::format("Turn {}", who);
            return fmt::format("Move {} by {}", who, shownMm(was && is ? length(is->at_mm - was->at_mm) : 0));
        };
    return command;
}

Refusable turnFurniture(const plan::Plan& plan, const std::string& piece_id, double turn_deg) {
    auto piece = copyOf(plan, piece_id);
    if (!piece) return std::unexpected(piece.error());
    piece->turn_deg = wholeTurn(turn_deg);
    const std::string name =
        fmt::format("Turn {} to {:.10g} degrees", pieceName(*piece), std::round(piece->turn_deg * 10) / 10);
    return replaced(plan, std::move(*piece), name, fmt::format("turn furniture {}", piece_id));
}

Refusable resizeFurniture(const plan::Plan& plan, const std::string& piece_id, plan::Size3 size) {
    auto piece = copyOf(plan, piece_id);
    if (!piece) return std::unexpected(piece.error());
    if (!(size.width_mm > 0 && size.depth_mm > 0 && size.height_mm > 0))
        return std::unexpected(
            fmt::format("{} needs a width, depth and height above 0 mm", pieceName(*piece)));
    const plan::Furniture before = *piece;
    piece->size = size;
    const std::string name = fmt::format("Resize {} to {:.10g} x {:.10g} x {}", pieceName(*piece),
                                         size.width_mm, size.depth_mm, shownMm(size.height_mm));
    const plan::Furniture after = *piece;
    auto command = replaced(plan, std::move(*piece), name, fmt::format("resize furniture {}", piece_id));
    if (command)
        command->apply = [before, after, put = command->apply](Draft& draft) {
            put(draft);
            keepOnFaces<plan::Plate>(draft, before, after);
            keepOnFaces<plan::Luminaire>(draft, before, after);
        };
    return command;
}

Refusable setFurnitureValue(const plan::Plan& plan, const std::string& piece_id, const std::string& key,
                            double value) {
    auto piece = copyOf(plan, piece_id);
    if (!piece) return std::unexpected(piece.error());
    const plan::FurnitureKind* kind = plan::findFurnitureKind(piece->kind);
    const auto known =
        kind ? std::ranges::find(kind->values, std::string_view(key), &plan::FurnitureValue::key)
             : std::span<const plan::FurnitureValue>::iterator{};
    if (kind == nullptr || known == kind->values.end())
        return std::unexpected(fmt::format("{} has no value '{}'", pieceName(*piece), key));
    if (!(value >= known->min && value <= known->max))
        return std::unexpected(
            fmt::format("give {:.10g} to {:.10g}: {}", known->min, known->max, known->meaning));
    std::erase_if(piece->with, [&](const auto& entry) { return entry.first == key; });
    if (value != known->default_value) piece->with.emplace_back(key, value);
    const std::string name = fmt::format("Change {}: {}", pieceName(*piece), known->meaning);
    return replaced(plan, std::move(*piece), name, fmt::format("value {} of furniture {}", key, piece_id));
}

Refusable changeFurniture(const plan::Plan& plan, plan::Furniture piece, const std::string& what,
                          const std::string& merge_key) {
    if (auto there = copyOf(plan, piece.id); !there) return std::unexpected(there.error());
    return replaced(plan, std::move(piece), what, merge_key);
}

Refusable removeFurniture(const plan::Plan& plan, const std::vector<std::string>& piece_ids) {
    if (piece_ids.empty()) return std::unexpected("choose a piece of furniture to remove");
    for (const std::string& id : piece_ids)
        if (auto there = copyOf(plan, id); !there) return std::unexpected(there.error());
    return Command{removalName(plan, piece_ids), "", [piece_ids](Draft& draft) {
                       for (const std::string& id : piece_ids)
                           draft.remove<plan::Furniture>(
                               id); // what is mounted on it goes when the plan settles
                   }};
}

Refusable duplicateFurniture(const plan::Plan& plan, const std::vector<std::string>& piece_ids,
                             Vec2 offset_mm) {
    if (piece_ids.empty()) return std::unexpected("choose a piece of furniture to duplicate");
    std::vector<plan::Furniture> copies;
    for (const std::string& id : piece_ids) {
        auto piece = copyOf(plan, id);
        if (!piece) return std::unexpected(piece.error());
        piece->id = freePieceId(plan, copies, id, piece->kind);
        piece->at_mm = piece->at_mm + offset_mm;
        const plan::Room* room = plan::findRoom(plan, piece->room);
        if (const auto under = room ? roomUnder(plan, room->storey, piece->at_mm) : ""; !under.empty())
            piece->room = under;
        if (std::string problem = problemWith(plan, *piece); !problem.empty())
            return std::unexpected(problem);
        copies.push_back(std::move(*piece));
    }
    return Command{fmt::format("Duplicate {}", namesOf(plan, piece_ids)), "",
                   [copies = std::move(copies)](Draft& draft) {
                       for (const plan::Furniture& piece : copies)
                           draft.add(piece);
                   }};
}

std::optional<Stand> snapToWall(const plan::Plan& plan, const plan::Furniture& piece) {
    constexpr double kReach_mm = 150;
    const plan::Room* room = plan::findRoom(plan, piece.room);
    if (room == nullptr) return std::nullopt;
    std::optional<Stand> best;
    double best_gap = 0;
    for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(*room, wall);
        const double u = geometry::toFrame(frame, {piece.at_mm.x, piece.at_mm.y, 0}).x;
        if (u < 0 || u > frame.length_mm) continue;
        double near = std::numeric_limits<double>::max();
        double far = std::numeric_limits<double>::lowest();
        for (const Vec2 corner : geometry::footprint(piece)) {
            const double w = geometry::toFrame(frame, {corner.x, corner.y, 0}).z;
            near = std::min(near, w);
            far = std::max(far, w);
        }
        if (near > kReach_mm || far < 0) continue;
        if (best && std::abs(near) >= best_gap) continue;
        best_gap = std::abs(near);
        const double half = piece.size.width_mm / 2;
        const double along = half * 2 <= frame.length_mm ? std::clamp(u, half, frame.length_mm - half) : u;
        const plan::Vec3 at = geometry::toHouse(frame, {along, 0, piece.size.depth_mm / 2});
        const double wall_deg = std::atan2(frame.u.y, frame.u.x) * 180 / std::numbers::pi;
        best = Stand{{at.x, at.y}, wholeTurn(wall_deg)};
    }
    return best;
}

} // namespace gangway::edit
