// A scene made by hand for the renderer's tests: one room 4 x 3 x 2.5 m with a window in its south wall,
// a wardrobe in front of a plate on the north wall, a table, a pendant lamp. Metres, y up, z south.
#pragma once

#include "render/renderer.hpp"

#include <array>

namespace gangway::test {

class BoxScene {
public:
    scene::Scene scene;

    BoxScene();
    /// Eye in the south of the room, looking north.
    static render::View view(int width = 320, int height = 200);

    scene::Part& begin(scene::PartKind kind, const std::string& object, const std::string& layer,
                       glm::vec3 colour);
    void quad(glm::vec3 a, glm::vec3 b, glm::vec3 c, glm::vec3 d);
    void box(glm::vec3 low, glm::vec3 high);
    void end();

private:
    void addRoom();
    void addWindowWall();
    void addThings();
};

} // namespace gangway::test
