#include "render/part_index.hpp"

#include <algorithm>

namespace gangway::render {

using scene::PartKind;

int NameTable::number(const std::string& name) {
    return numbers_.emplace(name, static_cast<int>(numbers_.size())).first->second;
}

int NameTable::find(const std::string& name) const {
    const auto found = numbers_.find(name);
    return found == numbers_.end() ? -1 : found->second;
}

std::vector<char> NameTable::flags(const std::set<std::string>& names) const {
    std::vector<char> result(numbers_.size(), 0);
    for (const auto& name : names)
        if (const int at = find(name); at >= 0) result[static_cast<std::size_t>(at)] = 1;
    return result;
}

void PartIndex::noteRoom(const PartInfo& info, const std::string& name) {
    const auto at = static_cast<std::size_t>(info.room);
    if (room_infos.size() <= at) room_infos.resize(at + 1);
    RoomInfo& room = room_infos[at];
    const bool fabric =
        info.kind == PartKind::Floor || info.kind == PartKind::Ceiling || info.kind == PartKind::Wall;
    if (room.storey < 0) {
        room = {name, info.storey, info.low, info.high, info.low.y};
    } else if (fabric) {
        room.low = glm::min(room.low, info.low);
        room.high = glm::max(room.high, info.high);
    }
    if (info.kind == PartKind::Floor) room.floor_y = info.high.y;
}

PartIndex::PartIndex(const scene::Scene& scene) {
    parts.reserve(scene.parts.size());
    for (std::size_t i = 0; i < scene.parts.size(); ++i)
        set(i, scene.parts[i]);
}

void PartIndex::set(std::size_t place, const scene::Part& part) {
    if (parts.size() <= place) parts.resize(place + 1);
    PartInfo info;
    if (part.index_count == 0) {
        parts[place] = info;
        return;
    }
    info.kind = part.kind;
    info.object = objects.number(part.object);
    info.room = rooms.number(part.room);
    info.storey = storeys.number(part.storey);
    info.layer = layers.number(part.layer);
    if (!part.wall.empty()) info.wall = walls.number(part.room + '\n' + part.wall);
    info.pattern = std::clamp(part.material.pattern, 0, 5);
    info.translucent = part.material.opacity < 0.999f;
    info.low = part.low;
    info.high = part.high;
    info.facing = part.facing;
    info.first_index = part.first_index;
    info.index_count = part.index_count;
    noteRoom(info, part.room);
    if (info.wall >= 0) noteWall(info);
    parts[place] = info;
}

void PartIndex::noteWall(const PartInfo& info) {
    wall_infos.resize(static_cast<std::size_t>(walls.size()));
    WallInfo& wall = wall_infos[static_cast<std::size_t>(info.wall)];
    if (info.kind == PartKind::Wall && glm::length(info.facing) > 0.5f && glm::length(wall.facing) < 0.5f)
        wall = {info.facing, 0.5f * (info.low + info.high)};
}

} // namespace gangway::render
