// Plates taken to other rooms and to the other side of a piece of furniture.
#include "edit/arrange.hpp"

#include "edit/staying.hpp"
#include "edit/wall_marks.hpp"
#include "geometry/frames.hpp"
#include "geometry/furniture.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <utility>

namespace gangway::edit {
namespace {

using detail::nameOf;
using Edge = plan::KeptDistance::Edge;
using From = plan::KeptDistance::From;

// --- to another room

/// As far from the nearer end in the new length as in the old.
double fromNearerEnd(double at_mm, double old_length_mm, double new_length_mm) {
    return at_mm <= old_length_mm / 2 ? at_mm : new_length_mm - (old_length_mm - at_mm);
}

std::expected<plan::Host, std::string> hostInRoom(const plan::Plan& plan, const plan::Plate& plate,
                                                  const std::string& room_id,
                                                  const std::map<std::string, std::string>& walls) {
    plan::Host host = plate.host;
    if (host.kind == plan::Host::Kind::Furniture)
        return std::unexpected(fmt::format("{} is on a piece of furniture, which stays", nameOf(plate)));
    if (const auto mapped = walls.find(host.wall); mapped != walls.end()) host.wall = mapped->second;
    const auto from = geometry::hostFrame(plan, plate.room, plate.host);
    if (!from) return std::unexpected(from.error());
    const auto to = geometry::hostFrame(plan, room_id, host);
    if (!to) return std::unexpected(to.error());
    host.u_mm = fromNearerEnd(host.u_mm, from->length_mm, to->length_mm);
    if (host.kind != plan::Host::Kind::Wall)
        host.v_mm = fromNearerEnd(host.v_mm, from->height_mm, to->height_mm);
    return host;
}

bool onlyOfRoom(const std::optional<plan::KeptDistance>& kept) {
    return kept && kept->from != From::LeftCorner && kept->from != From::RightCorner &&
           kept->from != From::Floor;
}

plan::Plate copyInRoom(const plan::Plate& plate, const std::string& room_id, const plan::Host& host) {
    plan::Plate copy = plate;
    copy.room = room_id;
    copy.host = host;
    copy.anchor.clear();
    copy.symbol_offset_mm.reset();
    copy.kept_along.reset(); // it may now count from the other end
    if (onlyOfRoom(copy.kept_height)) copy.kept_height.reset();
    return copy;
}

// --- to the other side of a piece

/// The piece's own axis that runs along a direction: the mirror stands square to it.
enum class Across { Width, Depth };
Across acrossOf(const plan::Furniture& piece, plan::Vec3 direction) {
    const plan::Vec3 x = geometry::fromLocal(piece, {1, 0, 0}) - geometry::fromLocal(piece, {0, 0, 0});
    return std::abs(plan::dot(x, direction)) >= std::sqrt(0.5) ? Across::Width : Across::Depth;
}

plan::Vec3 mirrored(const plan::Furniture& piece, plan::Vec3 house_mm, Across across) {
    plan::Vec3 local = geometry::toLocal(piece, house_mm);
    (across == Across::Width ? local.x : local.y) *= -1;
    return geometry::fromLocal(piece, local);
}

/// Left and right sides of the piece itself change over.
plan::Host otherSideOf(plan::Host host, const plan::Furniture& piece) {
    if (host.kind != plan::Host::Kind::Furniture || host.furniture != piece.id) return host;
    if (host.face == "left" || host.face == "right") host.face = host.face == "left" ? "right" : "left";
    return host;
}

std::expected<plan::Host, std::string> mirroredHost(const plan::Plan& plan, const plan::Plate& plate,
                                                    const plan::Furniture& piece) {
    constexpr double kAskew_mm = 1;
    const auto frame = geometry::hostFrame(plan, plate.room, plate.host);
    if (!frame) return std::unexpected(frame.error());
    plan::Host host = otherSideOf(plate.host, piece);
    const bool sides = host.face != plate.host.face;
    const bool along_wall = detail::isUpright(*frame) && !sides;
    const Across across = along_wall ? acrossOf(piece, frame->u) : Across::Width;
    const plan::Vec3 here = geometry::toHouse(*frame, {plate.host.u_mm, plate.host.v_mm, 0});
    const auto there = geometry::hostFrame(plan, plate.room, host);
    if (!there) return std::unexpected(there.error());
    const plan::Vec3 uvw = geometry::toFrame(*there, mirrored(piece, here, across));
    if (std::abs(uvw.z) > kAskew_mm)
        return std::unexpected(fmt::format("the {} stands askew to the wall of {}, so that has no other side",
                                           piece.name, nameOf(plate)));
    host.u_mm = uvw.x;
    if (!detail::isUpright(*there)) host.v_mm = uvw.y; // heights stay to the bit
    return host;
}

/// "bedside left" becomes "bedside right", whole words only.
std::string sidesChangedOver(const std::string& words) {
    std::string changed;
    for (std::size_t at = 0; at < words.size();) {
        const auto isWord = [&](std::size_t i) {
            return i < words.size() && std::isalnum(static_cast<unsigned char>(words[i])) != 0;
        };
        std::size_t end = at;
        while (isWord(end))
            ++end;
        const std::string word = words.substr(at, std::max<std::size_t>(end - at, 1));
        changed += word == "left" ? "right" : word == "right" ? "left" : word;
        at += word.size();
    }
    return changed;
}

std::optional<plan::KeptDistance> mirroredKept(const std::optional<plan::KeptDistance>& kept,
                                               const plan::Furniture& piece) {
    if (!kept || kept->from != From::Furniture || kept->id != piece.id) return std::nullopt;
    plan::KeptDistance other = *kept;
    if (other.edge == Edge::Left || other.edge == Edge::Right)
        other.edge = other.edge == Edge::Left ? Edge::Right : Edge::Left;
    other.distance_mm = -other.distance_mm;
    return other;
}

plan::Plate mirroredCopy(const plan::Plate& plate, const plan::Host& host, const plan::Furniture& piece,
                         Mirroring::Modules modules) {
    plan::Plate copy = plate;
    copy.host = host;
    copy.purpose = sidesChangedOver(plate.purpose);
    if (copy.anchor != piece.id) copy.anchor.clear();
    copy.symbol_offset_mm.reset();
    copy.kept_along = mirroredKept(plate.kept_along, piece);
    if (modules == Mirroring::Modules::Reverse) std::ranges::reverse(copy.modules);
    return copy;
}

/// Moves the partner, and turns its modules round when that is wanted.
Arranged partnerMoved(const plan::Plan& plan, const catalogue::Catalogue& catalogue, std::string name,
                      const plan::Plate& plate, const plan::Host& host, const Mirroring& how) {
    const plan::Plate* partner = plan::findPlate(plan, how.partner);
    if (partner == nullptr || partner == &plate)
        return std::unexpected(fmt::format("there is no other plate '{}'", how.partner));
    auto command = detail::arranged(plan, catalogue, std::move(name), {{how.partner, host, plate.room}});
    if (!command || how.modules == Mirroring::Modules::KeepOrder) return command;
    command->apply = [move = command->apply, from = plate.id, to = how.partner](Draft& draft) {
        move(draft);
        const plan::Plate* model = plan::findPlate(draft.plan(), from);
        plan::Plate* changed = draft.change<plan::Plate>(to);
        if (model == nullptr || changed == nullptr) return;
        changed->modules = model->modules;
        std::ranges::reverse(changed->modules);
    };
    return command;
}

} // namespace

Arranged copyToRoom(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                    const std::string& room_id, const std::map<std::string, std::string>& walls) {
    const auto plates = detail::platesOf(plan, ids);
    if (!plates) return std::unexpected(plates.error());
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    std::vector<plan::Plate> copies;
    for (const plan::Plate* plate : *plates) {
        const auto host = hostInRoom(plan, *plate, room_id, walls);
        if (!host) return std::unexpected(host.error());
        copies.push_back(copyInRoom(*plate, room_id, *host));
    }
    return detail::arranged(
        plan, catalogue,
        fmt::format("Copy {} to {}", detail::wordsFor(*plates), room->name.empty() ? room_id : room->name),
        {}, std::move(copies));
}

Arranged mirrorToOtherSide(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                           const std::string& furniture_id, const Mirroring& how) {
    const auto plates = detail::platesOf(plan, ids);
    if (!plates) return std::unexpected(plates.error());
    const plan::Furniture* piece = plan::findFurniture(plan, furniture_id);
    if (piece == nullptr) return std::unexpected(fmt::format("there is no furniture '{}'", furniture_id));
    if (!how.partner.empty() && plates->size() > 1)
        return std::unexpected("only one plate can be mirrored onto a partner");
    std::string name =
        fmt::format("Mirror {} to the other side of the {}", detail::wordsFor(*plates), piece->name);
    std::vector<plan::Plate> copies;
    for (const plan::Plate* plate : *plates) {
        const auto host = mirroredHost(plan, *plate, *piece);
        if (!host) return std::unexpected(host.error());
        if (!how.partner.empty()) return partnerMoved(plan, catalogue, std::move(name), *plate, *host, how);
        copies.push_back(mirroredCopy(*plate, *host, *piece, how.modules));
    }
    return detail::arranged(plan, catalogue, std::move(name), {}, std::move(copies));
}

} // namespace gangway::edit
