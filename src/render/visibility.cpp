#include "render/visibility.hpp"

namespace gangway::render {

using scene::PartKind;

namespace {

/// Walls seen from behind: their inner side points away from the eye. A wall seen edge-on stays.
std::vector<char> cutWalls(const PartIndex& index, const View& view) {
    std::vector<char> cut(index.wall_infos.size(), 0);
    if (!view.lid_off) return cut;
    const glm::mat4 camera = scene::viewMatrix(view.camera);
    const glm::vec3 backwards(camera[0][2], camera[1][2], camera[2][2]);
    for (std::size_t i = 0; i < cut.size(); ++i) {
        const WallInfo& wall = index.wall_infos[i];
        const glm::vec3 to_eye = view.camera.orthographic ? backwards : view.camera.eye - wall.centre;
        cut[i] = glm::dot(wall.facing, to_eye) < -0.02f * glm::length(to_eye) ? 1 : 0;
    }
    return cut;
}

struct Choice {
    std::vector<char> hidden_layers, ghosted_layers, hidden_rooms, ghosted_objects, cut_walls;
    int storey = -1;
    bool only_storey = false;
    bool lid_off = false;
};

bool at(const std::vector<char>& flags, int number) {
    return number >= 0 && static_cast<std::size_t>(number) < flags.size() &&
           flags[static_cast<std::size_t>(number)];
}

Shown shown(const PartInfo& part, const Choice& choice) {
    if (part.index_count == 0) return Shown::No;
    if (choice.only_storey && part.storey != choice.storey) return Shown::No;
    if (at(choice.hidden_layers, part.layer) || at(choice.hidden_rooms, part.room)) return Shown::No;
    if (choice.lid_off) {
        if (part.kind == PartKind::Ceiling) return Shown::No;
        if (at(choice.cut_walls, part.wall))
            return part.kind == PartKind::WallCut ? Shown::FloorLine : Shown::No;
    } else if (part.kind == PartKind::WallCut) {
        return Shown::No; // the caps only mean something where the lid is off
    }
    if (at(choice.ghosted_layers, part.layer) || at(choice.ghosted_objects, part.object)) return Shown::Ghost;
    return part.translucent ? Shown::Glass : Shown::Solid;
}

} // namespace

std::vector<Shown> shownParts(const PartIndex& index, const View& view) {
    Choice choice;
    choice.hidden_layers = index.layers.flags(view.hidden_layers);
    choice.ghosted_layers = index.layers.flags(view.ghosted_layers);
    choice.hidden_rooms = index.rooms.flags(view.hidden_rooms);
    choice.ghosted_objects = index.objects.flags(view.ghosted_objects);
    choice.cut_walls = cutWalls(index, view);
    choice.only_storey = !view.storey.empty();
    choice.storey = index.storeys.find(view.storey);
    choice.lid_off = view.lid_off;
    std::vector<Shown> result;
    result.reserve(index.parts.size());
    for (const auto& part : index.parts)
        result.push_back(shown(part, choice));
    return result;
}

Frustum::Frustum(const glm::mat4& m) {
    const auto row = [&m](int i) { return glm::vec4(m[0][i], m[1][i], m[2][i], m[3][i]); };
    planes_ = {row(3) + row(0), row(3) - row(0), row(3) + row(1),
               row(3) - row(1), row(3) + row(2), row(3) - row(2)};
}

bool Frustum::touches(glm::vec3 low, glm::vec3 high) const {
    for (const auto& plane : planes_) {
        const glm::vec3 nearest(plane.x > 0 ? high.x : low.x, plane.y > 0 ? high.y : low.y,
                                plane.z > 0 ? high.z : low.z);
        if (glm::dot(glm::vec3(plane), nearest) + plane.w < 0) return false;
    }
    return true;
}

} // namespace gangway::render
