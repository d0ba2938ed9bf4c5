// The passes that make one sample of a picture, and the programs they run.
#pragma once

#include "render/draw_lists.hpp"
#include "render/frame_targets.hpp"
#include "render/light_sources.hpp"
#include "render/shadow_maps.hpp"

#include <expected>
#include <filesystem>
#include <string>

namespace gangway::render {

/// What one sample is made of; everything is borrowed for the call.
struct Sample {
    const View& view;
    const Lens& lens;
    const DrawLists& lists;
    const SceneBuffers& buffers;
    const PartIndex& index;
    const std::vector<LightSource>& sources;
    const SunShadow& sun;
    const LampShadows& lamps;
    int number = 0;    ///< of this sample in the picture; turns noise and soft shadows
    bool fine = false; ///< one of several samples: soft shadows, lamp light looked at more finely
};

/// A source that reaches the picture, and where: x, y, width, height in pixels, y up.
struct Reaching {
    std::size_t source = 0;
    glm::ivec4 rectangle{0};
};

class FramePasses {
public:
    static std::expected<FramePasses, std::string> create(const std::filesystem::path& shader_folder);

    /// First half of a sample: what is seen. Returns where in the picture each room is seen, by room number;
    /// no width: nowhere.
    std::vector<glm::ivec4> surfaces(const Sample& sample, FrameTargets& targets);
    /// Second half: lights it and draws `targets.picture`.
    void finish(const Sample& sample, const std::vector<Reaching>& lights, FrameTargets& targets);
    /// Softens the edges of `targets.picture` into a framebuffer.
    void smooth(const FrameTargets& targets, GLuint frame);
    /// Adds `targets.picture` to the sum; the first sample starts it anew.
    void addToSum(const FrameTargets& targets, bool first);
    /// Writes the sum divided by the number of samples into a framebuffer.
    void showSum(const FrameTargets& targets, int samples, GLuint frame);

    ShaderProgram& caster() { return caster_; }
    ShaderProgram& unfold() { return unfold_; }
    GLuint noVertices() const { return no_vertices_.name(); }

private:
    void drawSurfaces(const Sample& sample, FrameTargets& targets);
    void drawOcclusion(const Sample& sample, FrameTargets& targets, LightTargets& light);
    void drawLights(const Sample& sample, const std::vector<Reaching>& lights, FrameTargets& targets,
                    LightTargets& light);
    void setLamp(int slot, const LightSource& source, glm::vec3 colour, glm::vec4 tile);
    std::vector<glm::ivec4> roomRectangles(const PartIndex& index, FrameTargets& targets);
    void compose(const Sample& sample, FrameTargets& targets, LightTargets& light);
    void drawTranslucent(const Sample& sample, FrameTargets& targets);
    void drawOutline(const Sample& sample, FrameTargets& targets, const DrawList& list, glm::ivec4 rectangle,
                     glm::vec3 colour, float width);
    /// The view's lines over `targets.picture`.
    void drawLines(const Sample& sample, FrameTargets& targets);
    void fillScreen() const;

    std::array<ShaderProgram, kPatterns> surface_;
    ShaderProgram occlusion_, calm_, lamp_, compose_, translucent_, caster_, outline_, smooth_, copy_,
        unfold_, rooms_, lines_;
    VertexArray no_vertices_, line_array_;
    Buffer line_buffer_;
    Texture noise_;
};

} // namespace gangway::render
