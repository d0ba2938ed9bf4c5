// Shadows of the sun and of the lamps, drawn when what casts them changes and kept until then.
#pragma once

#include "render/light_sources.hpp"
#include "render/scene_buffers.hpp"
#include "render/shader_program.hpp"
#include "render/visibility.hpp"

#include <vector>

namespace gangway::render {

/// Towards the sun: a low sun from the south-west, so that windows throw patches on floors.
glm::vec3 sunDirection();

class SunShadow {
public:
    /// Draws the map again when the set of casters differs from the last time. Only casters within
    /// `kSpanM` of the eye count, so that the map stays fine in large houses.
    void update(const SceneBuffers& buffers, const PartIndex& index, const std::vector<Shown>& shown,
                glm::vec3 eye, ShaderProgram& caster);
    const glm::mat4& worldToSun() const { return world_to_sun_; }
    float texelM() const { return texel_m_; }
    GLuint texture() const { return map_.name(); }
    void forget() { stale_ = true; }
    std::uint64_t drawn() const { return drawn_; } ///< times the map was drawn

private:
    std::uint64_t drawn_ = 0;
    Texture map_;
    Framebuffer frame_;
    std::vector<char> drawn_for_; ///< casters, by place
    bool stale_ = true;
    glm::ivec2 cell_{0};
    glm::mat4 world_to_sun_{1};
    float texel_m_ = 0.01f;
};

/// Distances seen from each lamp, one square tile a lamp in one texture.
class LampShadows {
public:
    static constexpr int kTile = 256;
    static constexpr int kTilesAcross = 8; ///< 64 lamps have shadows; any further ones light their room only
    static constexpr float kNearM = 0.04f;

    /// Draws tiles for the sources named in `wanted` that have none yet; all again when casters changed.
    void update(const SceneBuffers& buffers, const PartIndex& index, const std::vector<Shown>& shown,
                const std::vector<LightSource>& sources, const std::vector<std::size_t>& wanted,
                ShaderProgram& caster, ShaderProgram& unfold, GLuint no_vertices);
    /// Corner and size of a source's tile in texture units; zero size when it has none.
    glm::vec4 tile(std::size_t source) const;
    GLuint texture() const { return atlas_.name(); }
    void forget();
    std::uint64_t drawn() const { return drawn_; } ///< tiles drawn so far

private:
    void prepare();
    void drawCube(const SceneBuffers& buffers, const PartIndex& index, const std::vector<Shown>& shown,
                  const LightSource& source, ShaderProgram& caster);

    Texture atlas_, cube_;
    Framebuffer atlas_frame_, cube_frame_;
    std::vector<char> drawn_for_; ///< casters, by place
    std::vector<int> tiles_;      ///< by source, -1 without
    int used_ = 0;
    std::uint64_t drawn_ = 0;
};

} // namespace gangway::render
