#include "render/light_sources.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace gangway::render {

using scene::PartKind;

namespace {

/// One unit of the picture's light is this much illuminance: 320 lx of lamp light stand well beside
/// the daylight of the surroundings. Chosen by eye.
constexpr float kLuxToPicture = 1.0f / 320.0f;
/// Light below this is not seen beside the surroundings.
constexpr float kFaint = 0.02f;
/// At night the eye takes lamplight for white by this part. Chosen by eye.
constexpr float kTakenForWhite = 0.45f;
LightSource lampSource(const scene::Light& light, const PartIndex& index) {
    LightSource source;
    const float half = 0.5f * std::min(light.beam_rad, 2.0f * std::numbers::pi_v<float>);
    const bool spot = light.beam_rad > 0.01f;
    // Luminous intensity of a source that spreads its flux evenly over a cone: flux / (2 pi (1 - cos)).
    const float solid = spot ? 2 * std::numbers::pi_v<float> * (1 - std::cos(std::max(half, 0.1f)))
                             : 4 * std::numbers::pi_v<float>;
    source.direction =
        glm::length(light.direction) > 0 ? glm::normalize(light.direction) : glm::vec3(0, -1, 0);
    source.position = light.position + (spot ? 0.04f * source.direction : glm::vec3(0));
    source.colour = light.colour * (light.flux_lm / solid * kLuxToPicture);
    if (spot) source.beam = {std::cos(std::min(half * 1.35f, 3.1f)), std::cos(half * 0.55f)};
    const float peak = std::max({source.colour.r, source.colour.g, source.colour.b, 0.0f});
    source.reach_m = std::clamp(std::sqrt(peak / kFaint), 0.5f, 6.0f);
    source.room = std::max(index.rooms.find(light.room), 0);
    source.storey =
        index.room_infos.empty() ? 0 : index.room_infos[static_cast<std::size_t>(source.room)].storey;
    source.luminaire = light.luminaire;
    return source;
}

struct Pane {
    glm::vec3 low{1e9f};
    glm::vec3 high{-1e9f};
    glm::vec3 normal{0};
    int room = 0;
};

/// Where the first triangle of a part looks to.
glm::vec3 firstNormal(const scene::Scene& scene, const scene::Part& part) {
    if (part.index_count < 3) return {0, 0, 0};
    const auto at = [&](std::uint32_t i) {
        return scene.vertices[scene.indices[part.first_index + i]].position;
    };
    const glm::vec3 normal = glm::cross(at(1) - at(0), at(2) - at(0));
    return glm::length(normal) > 0 ? glm::normalize(normal) : glm::vec3(0);
}

/// The upright face with the largest area tells which way a pane looks, whatever triangle comes first.
glm::vec3 paneNormal(const scene::Scene& scene, const scene::Part& part) {
    glm::vec3 best{0};
    float area = 0;
    for (std::uint32_t i = 0; i + 2 < part.index_count; i += 3) {
        const auto at = [&](std::uint32_t k) {
            return scene.vertices[scene.indices[part.first_index + i + k]].position;
        };
        const glm::vec3 cross = glm::cross(at(1) - at(0), at(2) - at(0));
        if (glm::length(cross) <= area) continue;
        area = glm::length(cross);
        best = cross / area;
    }
    return area > 0 ? best : firstNormal(scene, part);
}

LightSource windowSource(const Pane& pane, const PartIndex& index) {
    LightSource source;
    const RoomInfo& room = index.room_infos[static_cast<std::size_t>(pane.room)];
    const glm::vec3 centre = 0.5f * (pane.low + pane.high);
    const glm::vec3 size = pane.high - pane.low;
    glm::vec3 inwards = glm::normalize(glm::vec3(pane.normal.x, 0, pane.normal.z));
    if (glm::dot(inwards, 0.5f * (room.low + room.high) - centre) < 0) inwards = -inwards;
    const float area = std::max(size.y * std::hypot(size.x, size.z), 0.05f);
    source.position = centre - 0.15f * inwards;
    source.direction = inwards;
    source.colour = glm::vec3(0.92f, 0.97f, 1.04f) * std::min(area, 6.0f) * 0.55f;
    source.beam = {-0.05f, 0.35f};
    source.pane = true;
    source.soft_size_m2 = 0.35f * area + 0.1f;
    source.room = pane.room;
    source.storey = room.storey;
    return source;
}

} // namespace

std::vector<LightSource> lightSources(const scene::Scene& scene, const PartIndex& index) {
    std::vector<LightSource> sources;
    for (const auto& light : scene.lights)
        if (light.on && light.flux_lm > 0) sources.push_back(lampSource(light, index));
    std::map<std::pair<int, int>, Pane> panes; // by room and opening, so that one window is one source
    for (std::size_t i = 0; i < scene.parts.size(); ++i) {
        const auto& info = index.parts[i];
        if (info.kind != PartKind::Opening || !info.translucent) continue;
        const glm::vec3 normal = paneNormal(scene, scene.parts[i]);
        if (std::hypot(normal.x, normal.z) < 0.3f) continue;
        Pane& pane = panes[{info.room, info.object}];
        pane.low = glm::min(pane.low, info.low);
        pane.high = glm::max(pane.high, info.high);
        pane.normal = normal;
        pane.room = info.room;
    }
    for (const auto& [key, pane] : panes)
        sources.push_back(windowSource(pane, index));
    return sources;
}

namespace {
float lampLevel(const std::string& luminaire, const View& view) {
    if (!view.all_lights_on) return 0;
    const auto listed = view.light_levels.find(luminaire);
    return listed == view.light_levels.end() ? 1.0f : std::clamp(listed->second, 0.0f, 1.0f);
}
} // namespace

float levelOf(const LightSource& source, const View& view) {
    const float daylight = std::clamp(view.daylight, 0.0f, 1.0f);
    if (source.luminaire.empty()) return daylight;
    return lampLevel(source.luminaire, view) * std::lerp(kUsedToDusk, 1.0f, daylight);
}

glm::vec3 shownLight(const LightSource& source, const View& view) {
    const float level = levelOf(source, view);
    if (source.luminaire.empty()) return source.colour * level;
    const float luminance = glm::dot(source.colour, glm::vec3(0.2126f, 0.7152f, 0.0722f)); // IEC 61966-2-1
    const float taken_for_white = kTakenForWhite * (1 - std::clamp(view.daylight, 0.0f, 1.0f));
    return glm::mix(source.colour, glm::vec3(luminance), taken_for_white) * level;
}

std::vector<float> litParts(const scene::Scene& scene, const View& view) {
    std::vector<float> lit;
    lit.reserve(scene.parts.size());
    for (const auto& part : scene.parts) {
        const bool lamp = part.kind == PartKind::Lamp && part.material.emission > 0;
        lit.push_back(lamp ? lampLevel(part.object, view) : 1.0f);
    }
    return lit;
}

} // namespace gangway::render
