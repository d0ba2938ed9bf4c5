#include "edit/staying.hpp"

#include "edit/number_shown.hpp"
#include "edit/wall_marks.hpp"
#include "geometry/frames.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::edit::detail {
namespace {

/// Arithmetic's own play: a plate that just fits stays.
constexpr double kPlay_mm = 1e-6;

std::string hostWords(const plan::Plan& plan, const plan::Plate& plate) {
    const plan::Host& host = plate.host;
    if (host.kind == plan::Host::Kind::Furniture) {
        const plan::Furniture* piece = plan::findFurniture(plan, host.furniture);
        return fmt::format("the {} of the {}", host.face, piece ? piece->name : host.furniture);
    }
    const plan::Room* room = plan::findRoom(plan, plate.room);
    const std::string where = room && !room->name.empty() ? room->name : plate.room;
    if (host.kind == plan::Host::Kind::Wall) return fmt::format("wall {} of {}", host.wall, where);
    return fmt::format("the {} of {}", host.kind == plan::Host::Kind::Floor ? "floor" : "ceiling", where);
}

/// Past an end of its host, by how much.
std::optional<std::string> pastEnd(const plan::Plan& plan, const plan::Plate& plate, const char* end,
                                   double by_mm) {
    if (by_mm <= kPlay_mm) return std::nullopt;
    return fmt::format("{} would stand {} past {} of {}", nameOf(plate), lengthInWords(by_mm, plan.units),
                       end, hostWords(plan, plate));
}

/// Where the host ends over the plate: under a slope, over the lower of its corners.
double topOver(const plan::Plan& plan, const geometry::Frame& frame, const plan::Plate& plate,
               double half_width_mm, double top) {
    const plan::Room* room = plan::findRoom(plan, plate.room);
    if (plate.host.kind != plan::Host::Kind::Wall || room == nullptr) return top;
    for (const double u : {plate.host.u_mm - half_width_mm, plate.host.u_mm + half_width_mm}) {
        const plan::Vec3 at = geometry::toHouse(frame, {std::clamp(u, 0.0, frame.length_mm), 0, 0});
        top = std::min(top, geometry::ceilingHeightAt(*room, {at.x, at.y}));
    }
    return top;
}

} // namespace

std::optional<std::string> leavesHost(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                      const plan::Plate& plate) {
    const auto frame = geometry::hostFrame(plan, plate.room, plate.host);
    if (!frame) return frame.error();
    const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
    const double half_width = composed.width_mm / 2;
    const double half_height = composed.height_mm / 2;
    const double u = plate.host.u_mm;
    const double v = plate.host.v_mm;
    const bool upright = isUpright(*frame);
    const HostExtents extents =
        extentsOf(*frame, plate.host, plan::findFurniture(plan, plate.host.furniture));
    if (auto past =
            pastEnd(plan, plate, upright ? "the left end" : "an edge", extents.left_mm + half_width - u))
        return past;
    if (auto past =
            pastEnd(plan, plate, upright ? "the right end" : "an edge", u + half_width - extents.right_mm))
        return past;
    if (auto past = pastEnd(plan, plate, upright ? "the foot" : "an edge", half_height - v)) return past;
    const double top = topOver(plan, *frame, plate, half_width, extents.top_mm);
    if (auto past = pastEnd(plan, plate, upright ? "the top" : "an edge", v + half_height - top)) return past;
    const bool of_room =
        plate.host.kind == plan::Host::Kind::Floor || plate.host.kind == plan::Host::Kind::Ceiling;
    const plan::Vec3 at = geometry::toHouse(*frame, {u, v, 0});
    const plan::Room* room = plan::findRoom(plan, plate.room);
    if (of_room && room != nullptr && !geometry::insideRoom(*room, {at.x, at.y}))
        return fmt::format("{} would lie outside {}", nameOf(plate), hostWords(plan, plate));
    return std::nullopt;
}

std::expected<std::vector<const plan::Plate*>, std::string>
platesOf(const plan::Plan& plan, const std::vector<std::string>& ids, std::size_t least) {
    std::vector<const plan::Plate*> plates;
    for (const std::string& id : ids) {
        const plan::Plate* plate = plan::findPlate(plan, id);
        if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", id));
        if (std::ranges::find(plates, plate) == plates.end()) plates.push_back(plate);
    }
    if (plates.size() < least)
        return std::unexpected(fmt::format("choose at least {} plate{}", least, least == 1 ? "" : "s"));
    return plates;
}

std::string wordsFor(const std::vector<const plan::Plate*>& plates) {
    return plates.size() == 1 ? nameOf(*plates.front()) : fmt::format("{} plates", plates.size());
}

std::expected<Command, std::string> arranged(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                             std::string name, std::vector<PlateMove> moves,
                                             std::vector<plan::Plate> added) {
    for (const PlateMove& move : moves) {
        plan::Plate moved = *plan::findPlate(plan, move.plate);
        moved.host = move.host;
        if (!move.room.empty()) moved.room = move.room;
        if (auto leaves = leavesHost(plan, catalogue, moved)) return std::unexpected(*leaves);
    }
    for (plan::Plate& plate : added) {
        if (auto leaves = leavesHost(plan, catalogue, plate)) return std::unexpected(*leaves);
        plate.id.clear();
        plate.tag.clear();
    }
    return Command{std::move(name), "", [moves = std::move(moves), added = std::move(added)](Draft& draft) {
                       if (!moves.empty()) movePlates(draft.plan(), moves).apply(draft);
                       for (const plan::Plate& plate : added) // each sees the tags of those before it
                           addPlate(draft.plan(), plate).apply(draft);
                   }};
}

} // namespace gangway::edit::detail
