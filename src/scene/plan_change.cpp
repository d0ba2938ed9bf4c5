// Which objects of two plans look different. Only what the stage draws is compared.
#include "scene/scene_patch.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

namespace gangway::scene {
namespace {

template <class T, class Same>
bool sameList(const std::vector<T>& a, const std::vector<T>& b, Same same) {
    return std::ranges::equal(a, b, same);
}

bool sameLine(const plan::WallLine& a, const plan::WallLine& b) {
    const auto key = [](const plan::WallLine& line) {
        return std::tie(line.kind, line.bottom_mm, line.height_mm, line.depth_mm, line.from_mm, line.to_mm,
                        line.tile_width_mm, line.tile_height_mm, line.joint_mm, line.start_u_mm,
                        line.start_v_mm);
    };
    return key(a) == key(b);
}

bool sameCourse(const plan::Course& a, const plan::Course& b) {
    return a.material == b.material && a.thickness_mm == b.thickness_mm;
}

bool sameWall(const plan::Wall& a, const plan::Wall& b) {
    return a.id == b.id && a.thickness_mm == b.thickness_mm && a.structure == b.structure &&
           a.colour == b.colour && sameList(a.build_up, b.build_up, sameCourse) &&
           sameList(a.lines, b.lines, sameLine);
}

bool sameRoom(const plan::Room& a, const plan::Room& b) {
    return a.id == b.id && a.storey == b.storey && a.outline == b.outline && a.columns == b.columns &&
           a.ceiling.heights_mm == b.ceiling.heights_mm && a.ceiling.creases == b.ceiling.creases &&
           a.floor_finish == b.floor_finish && a.wall_colour == b.wall_colour &&
           sameList(a.walls, b.walls, sameWall) && sameList(a.floor_build_up, b.floor_build_up, sameCourse);
}

bool sameOpening(const plan::Opening& a, const plan::Opening& b) {
    const auto key = [](const plan::Opening& o) {
        return std::tie(o.id, o.kind, o.room, o.wall, o.left_mm, o.width_mm, o.sill_mm, o.height_mm,
                        o.frame_mm, o.casing_mm, o.casing_beyond_mm, o.joins, o.hinge, o.swing, o.leaves,
                        o.leaf_mm, o.stop_deg, o.parks, o.cavity_mm, o.reveal_mm, o.sill_board_mm);
    };
    return key(a) == key(b);
}

bool sameStorey(const plan::Storey& a, const plan::Storey& b) {
    return a.id == b.id && a.elevation_mm == b.elevation_mm && a.plate_format == b.plate_format;
}

bool sameModule(const plan::Module& a, const plan::Module& b) {
    return a.type == b.type && a.finish == b.finish;
}

bool samePlate(const plan::Plate& a, const plan::Plate& b) {
    const auto key = [](const plan::Plate& p) {
        return std::tie(p.room, p.host, p.format, p.direction, p.gangs, p.finish);
    };
    return key(a) == key(b) && sameList(a.modules, b.modules, sameModule);
}

bool samePiece(const plan::Furniture& a, const plan::Furniture& b) {
    const auto key = [](const plan::Furniture& f) {
        return std::tie(f.kind, f.room, f.layer, f.at_mm, f.bottom_mm, f.turn_deg, f.size.width_mm,
                        f.size.depth_mm, f.size.height_mm, f.with, f.colour, f.file);
    };
    return key(a) == key(b);
}

bool sameLuminaire(const plan::Luminaire& a, const plan::Luminaire& b) {
    const auto key = [](const plan::Luminaire& l) {
        return std::tie(l.kind, l.room, l.host, l.drop_mm, l.size_mm, l.turn_deg, l.watts, l.lumens, l.kelvin,
                        l.beam_deg, l.ies);
    };
    return key(a) == key(b);
}

bool sameFormat(const plan::OwnFormat& a, const plan::OwnFormat& b) {
    const auto key = [](const plan::OwnFormat& f) {
        return std::tie(f.id, f.module_width_mm, f.module_height_mm, f.plate_width_mm, f.plate_height_mm,
                        f.pitch_mm, f.corner_mm, f.relief_mm, f.max_gangs);
    };
    return key(a) == key(b);
}

using Ids = std::unordered_set<std::string_view>;

/// Ids of objects that came, went, differ, or are `touched` in either plan; in order of the plans.
template <class T, class Same, class Touched>
std::vector<std::string> changed(const std::vector<T>& before, const std::vector<T>& after, Same same,
                                 Touched touched) {
    std::vector<std::string> result;
    const auto note = [&](const T* a, const T* b) {
        if (a != nullptr && b != nullptr && same(*a, *b) && !touched(*a)) return;
        result.push_back(a != nullptr ? a->id : b->id);
    };
    // Mostly nothing came or went: then no look-up by id is needed.
    if (std::ranges::equal(before, after, {}, &T::id, &T::id)) {
        for (std::size_t i = 0; i < before.size(); ++i)
            note(&before[i], &after[i]);
        return result;
    }
    std::unordered_map<std::string_view, const T*> now;
    for (const T& object : after)
        now.emplace(object.id, &object);
    Ids known;
    for (const T& object : before) {
        known.insert(object.id);
        const auto found = now.find(object.id);
        note(&object, found == now.end() ? nullptr : found->second);
    }
    for (const T& object : after)
        if (!known.contains(object.id)) note(nullptr, &object);
    return result;
}

bool anyStair(const plan::Plan& plan, const Ids& ids) {
    return std::ranges::any_of(plan.furniture, [&](const plan::Furniture& piece) {
        return piece.kind == "stair" && ids.contains(piece.id);
    });
}

} // namespace

std::optional<Change> changeBetween(const plan::Plan& before, const plan::Plan& after) {
    if (!sameList(before.storeys, after.storeys, sameStorey) ||
        !sameList(before.rooms, after.rooms, sameRoom) ||
        !sameList(before.openings, after.openings, sameOpening))
        return std::nullopt;
    Change change;
    const auto alone = [](const auto&) { return false; };
    change.furniture = changed(before.furniture, after.furniture, samePiece, alone);
    const Ids moved(change.furniture.begin(), change.furniture.end());
    if (anyStair(before, moved) || anyStair(after, moved))
        return std::nullopt; // they cut floors and ceilings
    const bool other_formats = !sameList(before.formats, after.formats, sameFormat);
    const auto carried = [&](const auto& object) {
        return object.host.kind == plan::Host::Kind::Furniture && moved.contains(object.host.furniture);
    };
    change.plates = changed(before.plates, after.plates, samePlate,
                            [&](const plan::Plate& plate) { return other_formats || carried(plate); });
    change.luminaires = changed(before.luminaires, after.luminaires, sameLuminaire, carried);
    return change;
}

} // namespace gangway::scene
