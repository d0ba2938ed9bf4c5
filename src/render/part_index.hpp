// What the renderer knows of each part beside its triangles: names turned into numbers when a part
// comes, so that deciding what a view shows costs no string comparison per part.
#pragma once

#include "scene/scene.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace gangway::render {

/// Numbers for the different values of one name field, in order of first appearance.
class NameTable {
public:
    int number(const std::string& name);
    /// -1 for a name that the scene does not hold.
    int find(const std::string& name) const;
    int size() const { return static_cast<int>(numbers_.size()); }
    /// One flag a number, set for the names in `names`.
    std::vector<char> flags(const std::set<std::string>& names) const;

private:
    std::map<std::string, int, std::less<>> numbers_;
};

struct PartInfo {
    scene::PartKind kind = scene::PartKind::Wall;
    int object = -2; ///< of no object that a view could name, in a free place
    int room = 0;
    int storey = 0;
    int layer = 0;
    int wall = -1; ///< room and wall together; -1 for what is on no wall
    int pattern = 0;
    bool translucent = false;
    glm::vec3 low{0};
    glm::vec3 high{0};
    glm::vec3 facing{0};
    std::uint32_t first_index = 0; ///< into the scene's indices
    std::uint32_t index_count = 0; ///< 0: a free place
};

struct RoomInfo {
    std::string name; ///< room id
    int storey = -1;
    glm::vec3 low{0}; ///< bounds of the room's fabric, metres
    glm::vec3 high{0};
    float floor_y = 0;
};

/// A wall as the lid-off cut sees it.
struct WallInfo {
    glm::vec3 facing{0}; ///< into the room
    glm::vec3 centre{0};
};

struct PartIndex {
    NameTable objects, rooms, storeys, layers, walls;
    std::vector<PartInfo> parts;
    std::vector<RoomInfo> room_infos; ///< by room number
    std::vector<WallInfo> wall_infos; ///< by wall number

    PartIndex() = default;
    explicit PartIndex(const scene::Scene& scene);
    /// Takes up a part that was written to a place, new or used before. Rooms keep the bounds of their
    /// fabric.
    void set(std::size_t place, const scene::Part& part);

private:
    void noteRoom(const PartInfo& info, const std::string& name);
    void noteWall(const PartInfo& info);
};

} // namespace gangway::render
