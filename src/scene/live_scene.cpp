#include "scene/live_scene.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <limits>
#include <optional>
#include <string_view>
#include <unordered_map>

namespace gangway::scene {
namespace {

using detail::Range;

/// Free runs are let be until they are this many, and more than half of what is used.
constexpr std::uint32_t kFewFree = 1u << 16;

Range indicesOf(const Part& part) {
    return {part.first_index, part.index_count};
}

/// The run of vertices from the lowest to the highest that a part uses.
Range usedVertices(const Scene& scene, const Part& part) {
    if (part.index_count == 0) return {};
    const auto first = scene.indices.begin() + part.first_index;
    const auto [low, high] = std::minmax_element(first, first + part.index_count);
    return {*low, *high - *low + 1};
}

/// Each part's run, when the runs follow each other as build() makes them; nullopt otherwise.
std::optional<std::vector<Range>> separateRuns(const Scene& scene) {
    std::vector<Range> runs;
    std::uint32_t end = 0;
    for (const Part& part : scene.parts) {
        runs.push_back(usedVertices(scene, part));
        if (runs.back().count == 0) continue;
        if (runs.back().first < end) return std::nullopt;
        end = runs.back().end();
    }
    return runs;
}

/// The same scene with parts, vertices and indices packed one after the other, nothing shared.
std::vector<Range> separate(Scene& scene) {
    std::vector<Range> runs;
    std::vector<Vertex> vertices;
    std::vector<std::uint32_t> indices;
    std::vector<std::uint32_t> place(scene.vertices.size(), std::numeric_limits<std::uint32_t>::max());
    for (Part& part : scene.parts) {
        const auto first = static_cast<std::uint32_t>(vertices.size());
        const auto first_index = static_cast<std::uint32_t>(indices.size());
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; ++i) {
            const std::uint32_t from = scene.indices[i];
            // A place from an earlier part lies below `first`.
            const bool known = place[from] >= first && place[from] < vertices.size();
            if (!known) {
                place[from] = static_cast<std::uint32_t>(vertices.size());
                vertices.push_back(scene.vertices[from]);
            }
            indices.push_back(place[from]);
        }
        part.first_index = part.index_count > 0 ? first_index : 0;
        runs.push_back({first, static_cast<std::uint32_t>(vertices.size()) - first});
    }
    scene.vertices = std::move(vertices);
    scene.indices = std::move(indices);
    return runs;
}

ScenePatch::Kind kindOf(const Part& part) {
    using Kind = ScenePatch::Kind;
    // Plugs come and go with their plate.
    return part.kind == PartKind::Plate || part.kind == PartKind::Plug ? Kind::Plate
           : part.kind == PartKind::Lamp                               ? Kind::Luminaire
                                                                       : Kind::Furniture;
}

/// Places by object; keys point into a patch, so that looking one up copies no name.
class PlacesOf {
public:
    std::vector<std::uint32_t>& of(ScenePatch::Kind kind, std::string_view id) {
        return places_[static_cast<std::size_t>(kind)][id];
    }
    std::vector<std::uint32_t>* find(ScenePatch::Kind kind, std::string_view id) {
        auto& named = places_[static_cast<std::size_t>(kind)];
        const auto found = named.find(id);
        return found == named.end() ? nullptr : &found->second;
    }
    const auto& kinds() const { return places_; }

private:
    std::array<std::unordered_map<std::string_view, std::vector<std::uint32_t>>, 3> places_;
};

bool patchable(const Part& part) {
    return part.index_count > 0 &&
           (part.kind == PartKind::Plate || part.kind == PartKind::Plug || part.kind == PartKind::Lamp ||
            part.kind == PartKind::Furniture || part.kind == PartKind::Soft);
}

} // namespace

LiveScene::LiveScene(Scene scene) : scene_(std::move(scene)) {
    if (auto runs = separateRuns(scene_)) {
        vertex_ranges_ = std::move(*runs);
    } else {
        vertex_ranges_ = separate(scene_);
    }
    vertex_pool_ = detail::RangePool(static_cast<std::uint32_t>(scene_.vertices.size()));
    index_pool_ = detail::RangePool(static_cast<std::uint32_t>(scene_.indices.size()));
}

void LiveScene::remove(std::uint32_t place) {
    vertex_pool_.release(vertex_ranges_[place]);
    index_pool_.release(indicesOf(scene_.parts[place]));
    vertex_ranges_[place] = {};
    scene_.parts[place] = Part{};
}

void LiveScene::put(std::uint32_t place, const Part& part, const Scene& from) {
    const Range source = usedVertices(from, part);
    if (vertex_ranges_[place].count != source.count || scene_.parts[place].index_count != part.index_count) {
        remove(place);
        vertex_ranges_[place] = vertex_pool_.take(source.count);
        scene_.parts[place].first_index = index_pool_.take(part.index_count).first;
        scene_.vertices.resize(vertex_pool_.end());
        scene_.indices.resize(index_pool_.end());
    }
    const Range vertices = vertex_ranges_[place];
    const std::uint32_t first_index = scene_.parts[place].first_index;
    std::copy_n(from.vertices.begin() + source.first, source.count, scene_.vertices.begin() + vertices.first);
    std::transform(from.indices.begin() + part.first_index,
                   from.indices.begin() + part.first_index + part.index_count,
                   scene_.indices.begin() + first_index,
                   [&](std::uint32_t i) { return i - source.first + vertices.first; });
    scene_.parts[place] = part;
    scene_.parts[place].first_index = first_index;
}

// One place for each part drawn: those its object had first. Places that are left over are freed.
std::vector<std::uint32_t> LiveScene::placesFor(const ScenePatch& patch, Written& written) {
    PlacesOf had;
    for (const auto& object : patch.objects)
        had.of(object.kind, object.id);
    for (auto i = static_cast<std::uint32_t>(scene_.parts.size()); i-- > 0;) {
        const Part& part = scene_.parts[i];
        if (!patchable(part)) continue;
        if (auto* own = had.find(kindOf(part), part.object)) own->push_back(i); // the lowest at the back
    }
    std::vector<std::uint32_t> places(patch.drawn.parts.size());
    std::vector<std::size_t> homeless;
    for (std::size_t i = 0; i < places.size(); ++i) {
        auto& own = had.of(kindOf(patch.drawn.parts[i]), patch.drawn.parts[i].object);
        if (own.empty()) {
            homeless.push_back(i);
            continue;
        }
        places[i] = own.back();
        own.pop_back();
    }
    std::vector<std::uint32_t> freed;
    for (const auto& named : had.kinds())
        for (const auto& [id, rest] : named)
            freed.insert(freed.end(), rest.begin(), rest.end());
    std::ranges::sort(freed); // the order of a hash must not show
    for (const std::uint32_t place : freed) {
        written.shadows = written.shadows || scene_.parts[place].kind != PartKind::Plate;
        written.parts.push_back(place);
        remove(place);
        free_places_.push_back(place);
    }
    std::ranges::sort(free_places_, std::greater{});
    for (const std::size_t i : homeless) {
        if (free_places_.empty()) {
            places[i] = static_cast<std::uint32_t>(scene_.parts.size());
            scene_.parts.emplace_back();
            vertex_ranges_.emplace_back();
        } else {
            places[i] = free_places_.back();
            free_places_.pop_back();
        }
    }
    return places;
}

bool LiveScene::applyLights(const ScenePatch& patch) {
    std::vector<Light> fresh = patch.drawn.lights;
    std::vector<Light> kept;
    bool changed = false;
    for (Light& light : scene_.lights) {
        const ScenePatch::Object object{ScenePatch::Kind::Luminaire, light.luminaire};
        if (std::ranges::find(patch.objects, object) == patch.objects.end()) {
            kept.push_back(std::move(light));
            continue;
        }
        changed = true;
        const auto now = std::ranges::find(fresh, object.id, &Light::luminaire);
        if (now == fresh.end()) continue;
        kept.push_back(*now);
        fresh.erase(now);
    }
    kept.insert(kept.end(), fresh.begin(), fresh.end());
    scene_.lights = std::move(kept);
    return changed || !fresh.empty();
}

LiveScene::Written LiveScene::apply(const ScenePatch& patch) {
    Written written;
    const std::vector<std::uint32_t> places = placesFor(patch, written);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const Part& part = patch.drawn.parts[i];
        written.shadows = written.shadows || part.kind != PartKind::Plate;
        put(places[i], part, patch.drawn);
        written.parts.push_back(places[i]);
    }
    std::ranges::sort(written.parts);
    written.parts.erase(std::unique(written.parts.begin(), written.parts.end()), written.parts.end());
    written.lights = applyLights(patch);
    setBounds();
    if (vertex_pool_.free() > std::max(kFewFree, (vertex_pool_.end() - vertex_pool_.free()) / 2)) {
        pack();
        written.moved = true;
    }
    return written;
}

void LiveScene::setBounds() {
    bool first = true;
    for (const Part& part : scene_.parts) {
        if (part.index_count == 0) continue;
        scene_.low = first ? part.low : glm::min(scene_.low, part.low);
        scene_.high = first ? part.high : glm::max(scene_.high, part.high);
        first = false;
    }
}

void LiveScene::pack() {
    vertex_ranges_ = separate(scene_);
    vertex_pool_ = detail::RangePool(static_cast<std::uint32_t>(scene_.vertices.size()));
    index_pool_ = detail::RangePool(static_cast<std::uint32_t>(scene_.indices.size()));
}

} // namespace gangway::scene
