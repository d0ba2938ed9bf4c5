#include "render/draw_lists.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace gangway::render {

namespace {

struct Entry {
    int distance_cm; ///< to the nearest point of the part; ties keep the scene's order
    std::uint32_t part;
};

int distanceCm(const PartInfo& part, const Lens& lens) {
    const glm::vec3 from(lens.eye);
    if (lens.orthographic) return static_cast<int>(-100 * glm::dot(0.5f * (part.low + part.high), from));
    const glm::vec3 gap = glm::max(glm::max(part.low - from, from - part.high), glm::vec3(0));
    return static_cast<int>(100 * glm::length(gap));
}

void addSorted(DrawList& list, std::vector<Entry>& entries, const PartIndex& index) {
    // Steps of half a metre, so that parts which follow each other in the buffer mostly stay together.
    const auto key = [](const Entry& e) { return std::tuple(e.distance_cm / 50, e.part); };
    std::ranges::sort(entries, [&](const Entry& a, const Entry& b) { return key(a) < key(b); });
    for (const auto& entry : entries)
        list.add(index.parts[entry.part].first_index, index.parts[entry.part].index_count);
}

void addFarFirst(DrawList& list, std::vector<Entry>& entries, const PartIndex& index) {
    std::ranges::sort(entries, [](const Entry& a, const Entry& b) {
        return std::tuple(-a.distance_cm, a.part) < std::tuple(-b.distance_cm, b.part);
    });
    for (const auto& entry : entries)
        list.add(index.parts[entry.part].first_index, index.parts[entry.part].index_count);
}

void addOutlined(DrawList& list, glm::vec3& low, glm::vec3& high, const PartInfo& part) {
    low = list.empty() ? part.low : glm::min(low, part.low);
    high = list.empty() ? part.high : glm::max(high, part.high);
    list.add(part.first_index, part.index_count);
}

} // namespace

DrawLists makeDrawLists(const PartIndex& index, const std::vector<Shown>& shown, const View& view,
                        const Lens& lens, float least_pixels) {
    DrawLists lists;
    std::array<std::vector<Entry>, kPatterns> solid;
    std::vector<Entry> ghosts;
    std::vector<Entry> glass;
    const Frustum frustum(lens.view_projection);
    const int selected = view.selected.empty() ? -1 : index.objects.find(view.selected);
    const int hovered =
        view.hovered.empty() || view.hovered == view.selected ? -1 : index.objects.find(view.hovered);
    for (std::size_t i = 0; i < index.parts.size(); ++i) {
        const PartInfo& part = index.parts[i];
        if (shown[i] == Shown::No) continue;
        const bool floor_line = shown[i] == Shown::FloorLine;
        if (!floor_line && !frustum.touches(part.low, part.high)) continue;
        if (part.object == selected)
            addOutlined(lists.selected, lists.selected_low, lists.selected_high, part);
        if (part.object == hovered) addOutlined(lists.hovered, lists.hovered_low, lists.hovered_high, part);
        const glm::vec3 nearest = glm::clamp(glm::vec3(lens.eye), part.low, part.high);
        if (lens.pixels(glm::length(part.high - part.low), nearest) < least_pixels) continue;
        const Entry entry{distanceCm(part, lens), static_cast<std::uint32_t>(i)};
        if (floor_line) lists.floor_lines.add(part.first_index, part.index_count);
        if (shown[i] == Shown::Solid) solid[static_cast<std::size_t>(part.pattern)].push_back(entry);
        if (shown[i] == Shown::Ghost) ghosts.push_back(entry);
        if (shown[i] == Shown::Glass) glass.push_back(entry);
    }
    for (std::size_t p = 0; p < solid.size(); ++p)
        addSorted(lists.solid[p], solid[p], index);
    addFarFirst(lists.ghosts, ghosts, index);
    addFarFirst(lists.glass, glass, index);
    return lists;
}

} // namespace gangway::render
