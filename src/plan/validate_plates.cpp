// Plates and luminaires: what they are mounted on, and whether their place is on it.
#include "plan/furniture_kinds.hpp"
#include "plan/number_text.hpp"
#include "plan/polygon_checks.hpp"
#include "plan/validation.hpp"

#include <algorithm>

namespace gangway::plan {

namespace {

struct Mounted {
    std::string pointer;
    std::string subject;
    std::string room;
    const Host* host = nullptr;
};

void validateOnWall(Validation& v, const Room& room, const Mounted& m) {
    const auto wall = v.wallOf(room, m.host->wall, m.pointer + "/wall", m.subject);
    if (!wall) return;
    const double along = wallLength(room, *wall);
    const double u = m.host->u_mm;
    if (u < 0 || u > along + kPlayMm)
        v.error(m.pointer + "/setOut",
                fmt::format("{}: set-out {} lies past the {} of wall '{}', which is {} long; give 0 to {}",
                            m.subject, shownNumber(u), u < 0 ? "left end" : "end", m.host->wall,
                            shownNumber(along), shownNumber(along)));
    const double ceiling = ceilingOverWall(room, *wall, u);
    if (m.host->v_mm < 0)
        v.error(m.pointer + "/height",
                fmt::format("{}: height {} lies below the floor; give 0 to {}", m.subject,
                            shownNumber(m.host->v_mm), shownNumber(ceiling)));
    else if (m.host->v_mm > ceiling + kPlayMm)
        v.error(m.pointer + "/height",
                fmt::format("{}: height {} lies above the ceiling, which is {} high there; give 0 to {}",
                            m.subject, shownNumber(m.host->v_mm), shownNumber(ceiling),
                            shownNumber(ceiling)));
}

void validateInRoom(Validation& v, const Room& room, const Mounted& m) {
    Vec2 low = room.outline.front();
    Vec2 high = low;
    for (const Vec2 corner : room.outline) {
        low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
        high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
    }
    const Vec2 size = high - low;
    const double u = m.host->u_mm;
    const double w = m.host->v_mm;
    const bool in_box = u >= -kPlayMm && w >= -kPlayMm && u <= size.x + kPlayMm && w <= size.y + kPlayMm;
    if (!in_box)
        v.error(m.pointer,
                fmt::format("{}: east {}, north {} lies outside room '{}'; counted from its south-west "
                            "corner give east 0 to {}, north 0 to {}",
                            m.subject, shownNumber(u), shownNumber(w), room.id, shownNumber(size.x),
                            shownNumber(size.y)));
    else if (!insideOrOn(room.outline, low + Vec2{u, w}, kPlayMm))
        v.error(m.pointer,
                fmt::format("{}: east {}, north {} lies outside the outline of room '{}'; move it inside",
                            m.subject, shownNumber(u), shownNumber(w), room.id));
}

/// Only said, not refused: a headboard may be wider than its bed, and a piece may be resized later.
void validateOnFurniture(Validation& v, const Mounted& m) {
    const Furniture* piece = v.furniture(m.host->furniture);
    if (piece == nullptr || !(piece->size.width_mm > 0)) return;
    const bool side = m.host->face == "left" || m.host->face == "right";
    const double along = side ? piece->size.depth_mm : piece->size.width_mm;
    const double beyond = side ? 0 : std::max(0.0, (furnitureValue(*piece, "headboardWidth") - along) / 2);
    if (m.host->u_mm < -beyond - kPlayMm || m.host->u_mm > along + beyond + kPlayMm)
        v.warning(m.pointer,
                  fmt::format("{}: {} lies past the {} of furniture '{}', which is {} wide; give 0 to {}",
                              m.subject, shownNumber(m.host->u_mm), m.host->face, piece->id,
                              shownNumber(along), shownNumber(along)));
}

void validateHost(Validation& v, const Mounted& m) {
    if (m.host->kind == Host::Kind::Furniture && v.refers(v.plan().furniture, "furniture", m.host->furniture,
                                                          m.pointer + "/furniture", m.subject, "furniture"))
        validateOnFurniture(v, m);
    if (!v.refers(v.plan().rooms, "rooms", m.room, m.pointer + "/room", m.subject, "room")) return;
    const Room* room = v.soundRoom(m.room);
    if (room == nullptr) return;
    if (m.host->kind == Host::Kind::Wall) validateOnWall(v, *room, m);
    if (m.host->kind == Host::Kind::Floor || m.host->kind == Host::Kind::Ceiling) validateInRoom(v, *room, m);
}

} // namespace

void validatePlates(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.plates.size(); ++i) {
        const Plate& plate = plan.plates[i];
        if (v.sound("plates", i))
            validateHost(v, {fmt::format("/plates/{}", i), fmt::format("plate '{}'", plate.id), plate.room,
                             &plate.host});
    }
    for (std::size_t i = 0; i < plan.luminaires.size(); ++i) {
        const Luminaire& lamp = plan.luminaires[i];
        if (v.sound("luminaires", i))
            validateHost(v, {fmt::format("/luminaires/{}", i), fmt::format("luminaire '{}'", lamp.id),
                             lamp.room, &lamp.host});
    }
}

} // namespace gangway::plan
