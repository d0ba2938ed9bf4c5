// A scene that takes patches: parts keep their places in its arrays, so that whoever keeps a copy (the GPU)
// sends on only what was written.
#pragma once

#include "scene/range_pool.hpp"
#include "scene/scene_patch.hpp"

namespace gangway::scene {

class LiveScene {
public:
    LiveScene() = default;
    /// Vertices that parts share are copied, so that each part has a run of its own.
    explicit LiveScene(Scene scene);

    /// Parts without triangles are free places: objects that went. Vertices and indices may have free runs
    /// too.
    const Scene& scene() const { return scene_; }
    /// Where the vertices of a part are.
    detail::Range verticesOf(std::size_t part) const { return vertex_ranges_[part]; }

    struct Written {
        std::vector<std::uint32_t> parts; ///< places written or freed, ascending
        bool shadows = false; ///< something other than a plate changed, which may throw a visible shadow
        bool lights = false;
        bool moved = false; ///< the arrays were packed anew: everything has another place
    };
    /// Takes out what the patch names and puts in what it draws. An object that stays keeps its places in the
    /// order of parts; a new one takes free places, else the end. Bounds are those of a whole build.
    Written apply(const ScenePatch& patch);

private:
    std::vector<std::uint32_t> placesFor(const ScenePatch& patch, Written& written);
    void put(std::uint32_t place, const Part& part, const Scene& from);
    void remove(std::uint32_t place);
    bool applyLights(const ScenePatch& patch);
    void setBounds();
    void pack();

    Scene scene_;
    std::vector<detail::Range> vertex_ranges_; ///< one a part
    detail::RangePool vertex_pool_, index_pool_;
    std::vector<std::uint32_t> free_places_; ///< the lowest last
};

} // namespace gangway::scene
