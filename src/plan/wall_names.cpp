#include "plan/wall_names.hpp"

#include <algorithm>
#include <set>

namespace gangway::plan {

std::string letterName(std::size_t number) {
    constexpr std::size_t kLetters = 26;
    std::string name;
    for (++number; number > 0; number = (number - 1) / kLetters)
        name.insert(name.begin(), static_cast<char>('A' + (number - 1) % kLetters));
    return name;
}

std::size_t edgeCount(const Room& room) {
    std::size_t count = room.outline.size();
    for (const auto& column : room.columns)
        count += column.size();
    return count;
}

namespace {
std::size_t northMostEdge(const std::vector<Vec2>& outline) {
    std::size_t best = 0;
    Vec2 best_middle;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 middle = (outline[i] + outline[(i + 1) % outline.size()]) * 0.5;
        if (i == 0 || middle.y > best_middle.y || (middle.y == best_middle.y && middle.x < best_middle.x)) {
            best = i;
            best_middle = middle;
        }
    }
    return best;
}
} // namespace

void nameWalls(Room& room) {
    const std::size_t edges = edgeCount(room);
    if (room.walls.size() < edges) room.walls.resize(edges);
    std::set<std::string> used;
    for (const Wall& wall : room.walls)
        used.insert(wall.id);
    const std::size_t corners = room.outline.size();
    const std::size_t first = northMostEdge(room.outline);
    std::size_t spare = edges; // letters past the last edge's
    for (std::size_t i = 0; i < room.walls.size(); ++i) {
        if (!room.walls[i].id.empty()) continue;
        const std::size_t number = i < corners ? (i + corners - first) % corners : i;
        std::string name = letterName(number);
        while (used.contains(name))
            name = letterName(spare++);
        used.insert(name);
        room.walls[i].id = name;
    }
}

} // namespace gangway::plan
