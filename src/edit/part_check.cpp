#include "edit/part_check.hpp"

#include "geometry/frames.hpp"
#include "plan/io.hpp"

#include <algorithm>
#include <iterator>

namespace gangway::edit::detail {
namespace {

std::string firstError(const plan::Diagnostics& diagnostics) {
    const auto found = std::ranges::find(diagnostics, plan::Level::Error, &plan::Diagnostic::level);
    return found == diagnostics.end() ? std::string() : found->message;
}

} // namespace

plan::Plan partOf(const plan::Plan& plan, const std::vector<std::string>& room_ids) {
    const auto named = [&](const std::string& id) {
        return std::ranges::find(room_ids, id) != room_ids.end();
    };
    plan::Plan part;
    part.layers = plan.layers;
    part.storeys = plan.storeys;
    std::ranges::copy_if(plan.rooms, std::back_inserter(part.rooms), named, &plan::Room::id);
    std::ranges::copy_if(plan.openings, std::back_inserter(part.openings), named, &plan::Opening::room);
    for (plan::Opening& opening : part.openings)
        if (opening.joins != opening.room && !named(opening.joins)) opening.joins.clear();
    return part;
}

std::optional<std::string> problemOf(const plan::Plan& part) {
    const auto read = plan::read(plan::write(part));
    if (read) return std::nullopt;
    return firstError(read.error());
}

plan::Host heldToWall(const plan::Plan& plan, const std::string& room_id, plan::Host host) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    const auto wall =
        room && host.kind == plan::Host::Kind::Wall ? plan::wallIndex(*room, host.wall) : std::nullopt;
    if (!wall) return host;
    const geometry::WallEdge edge = geometry::wallEdge(*room, *wall);
    const double size = length(edge.to_mm - edge.from_mm);
    host.u_mm = std::clamp(host.u_mm, 0.0, size);
    const plan::Vec2 at = edge.from_mm + (edge.to_mm - edge.from_mm) * (host.u_mm / size);
    host.v_mm = std::clamp(host.v_mm, 0.0, geometry::ceilingHeightAt(*room, at));
    return host;
}

std::optional<std::string> completeRoom(const plan::Plan& plan, plan::Room& room) {
    plan::Plan part = partOf(plan, {});
    part.rooms.push_back(room);
    auto read = plan::read(plan::write(part));
    if (!read) return firstError(read.error());
    room = std::move(read->plan.rooms.front());
    return std::nullopt;
}

} // namespace gangway::edit::detail
