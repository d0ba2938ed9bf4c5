// What pictures of lamps share: the evening, and the line that shows what works what.
#include "render/renderer.hpp"

namespace gangway::render {

namespace {
constexpr float kDusk = 0.1f;
constexpr glm::vec3 kNight{0.16f, 0.18f, 0.22f};                          ///< as shown
constexpr glm::vec3 kAccent{0xB0 / 255.0f, 0x50 / 255.0f, 0x29 / 255.0f}; ///< design.md, the look: fired clay
constexpr float kDash_m = 0.12f;
} // namespace

void setEvening(View& view) {
    view.daylight = kDusk;
    view.background = kNight;
}

Line routeLine() {
    Line line;
    line.colour = kAccent;
    line.dash_m = kDash_m;
    return line;
}

} // namespace gangway::render
