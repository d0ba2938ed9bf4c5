#include "render/frame_passes.hpp"

#include "render/line_quads.hpp"
#include "render/noise.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::render {

namespace {

constexpr glm::vec3 kAccent{0xB0 / 255.0f, 0x50 / 255.0f, 0x29 / 255.0f}; ///< design.md, the look: fired clay
constexpr glm::vec3 kInk{0x1E / 255.0f, 0x2A / 255.0f, 0x32 / 255.0f};
constexpr glm::vec3 kSunColour{1.05f, 0.93f, 0.74f};
constexpr float kOcclusionReachM = 0.45f;
constexpr std::size_t kLampsAtOnce = 4; ///< as in lamp.frag

void bindTexture(int unit, GLuint texture, GLenum target = GL_TEXTURE_2D) {
    glActiveTexture(static_cast<GLenum>(GL_TEXTURE0 + unit));
    glBindTexture(target, texture);
}

void begin(GLuint frame, int width, int height) {
    glBindFramebuffer(GL_FRAMEBUFFER, frame);
    glViewport(0, 0, width, height);
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
    glDisable(GL_STENCIL_TEST);
    glDisable(GL_FRAMEBUFFER_SRGB);
    glPolygonMode(GL_FRONT_AND_BACK, GL_FILL);
    glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
}

/// Low-discrepancy numbers for the number-th sample: the R2 sequence of the plastic number.
glm::vec2 spread(int number) {
    const float n = static_cast<float>(number) + 0.5f;
    return {std::fmod(n * 0.7548776662f, 1.0f), std::fmod(n * 0.5698402910f, 1.0f)};
}

/// Which pixel of each scale x scale block the coarse passes look at: another one each sample, so that their
/// sum is as fine as the picture.
void setOffset(ShaderProgram& program, const Sample& sample, const LightTargets& light) {
    program.set("offset", sample.fine ? glm::ivec2(sample.number % light.scale,
                                                   sample.number / light.scale % light.scale)
                                      : glm::ivec2(light.scale / 2));
}

glm::vec3 onSphere(int number) {
    const glm::vec2 u = spread(number);
    const float z = 2 * u.x - 1;
    const float side = std::sqrt(std::max(0.0f, 1 - z * z));
    const float angle = 2 * std::numbers::pi_v<float> * u.y;
    return {side * std::cos(angle), z, side * std::sin(angle)};
}

} // namespace

std::expected<FramePasses, std::string> FramePasses::create(const std::filesystem::path& folder) {
    FramePasses passes;
    struct Wanted {
        ShaderProgram& program;
        const char* vertex;
        const char* fragment;
        std::string defines;
    };
    std::vector<Wanted> wanted{{passes.occlusion_, "fullscreen.vert", "occlusion.frag", {}},
                               {passes.calm_, "fullscreen.vert", "calm.frag", {}},
                               {passes.lamp_, "fullscreen.vert", "lamp.frag", {}},
                               {passes.rooms_, "fullscreen.vert", "rooms.frag", {}},
                               {passes.compose_, "fullscreen.vert", "compose.frag", {}},
                               {passes.translucent_, "translucent.vert", "translucent.frag", {}},
                               {passes.caster_, "mask.vert", "mask.frag", {}},
                               {passes.outline_, "fullscreen.vert", "outline.frag", {}},
                               {passes.smooth_, "fullscreen.vert", "smooth.frag", {}},
                               {passes.copy_, "fullscreen.vert", "copy.frag", {}},
                               {passes.unfold_, "fullscreen.vert", "octahedron.frag", {}},
                               {passes.lines_, "lines.vert", "lines.frag", {}}};
    for (int p = 0; p < kPatterns; ++p)
        wanted.push_back({passes.surface_[static_cast<std::size_t>(p)], "surface.vert", "surface.frag",
                          fmt::format("#define PATTERN {}\n", p)});
    for (auto& each : wanted) {
        auto program = ShaderProgram::load(folder, each.vertex, each.fragment, each.defines);
        if (!program) return std::unexpected(program.error());
        each.program = std::move(*program);
    }
    passes.no_vertices_ = VertexArray::make();
    passes.line_array_ = VertexArray::make();
    passes.line_buffer_ = Buffer::make();
    passes.noise_ = makeNoiseTexture();
    return passes;
}

void FramePasses::fillScreen() const {
    glBindVertexArray(no_vertices_.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
}

std::vector<glm::ivec4> FramePasses::surfaces(const Sample& sample, FrameTargets& targets) {
    drawSurfaces(sample, targets);
    return roomRectangles(sample.index, targets);
}

std::vector<glm::ivec4> FramePasses::roomRectangles(const PartIndex& index, FrameTargets& targets) {
    constexpr int kStep = FrameTargets::kRoomStep;
    const int width = (targets.width + kStep - 1) / kStep;
    const int height = (targets.height + kStep - 1) / kStep;
    begin(targets.rooms_frame.name(), width, height);
    rooms_.use();
    bindTexture(0, targets.surface.name());
    rooms_.set("surface_map", 0);
    rooms_.set("step_px", kStep);
    fillScreen();
    std::vector<std::uint16_t> seen(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width, height, GL_RED_INTEGER, GL_UNSIGNED_SHORT, seen.data());
    glPixelStorei(GL_PACK_ALIGNMENT, 4);
    std::vector<glm::ivec4> corners(index.room_infos.size(), glm::ivec4(width, height, -1, -1));
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const std::size_t room = seen[static_cast<std::size_t>(y * width + x)];
            if (room == 0 || room > corners.size()) continue;
            glm::ivec4& c = corners[room - 1];
            c = {std::min(c.x, x), std::min(c.y, y), std::max(c.z, x), std::max(c.w, y)};
        }
    // A step more on each side: what is seen between two of the looked-at pixels counts too.
    for (auto& c : corners) {
        if (c.z < 0) {
            c = glm::ivec4(0);
            continue;
        }
        const glm::ivec2 from = glm::max(glm::ivec2(c.x - 1, c.y - 1) * kStep, glm::ivec2(0));
        const glm::ivec2 to =
            glm::min(glm::ivec2(c.z + 2, c.w + 2) * kStep, glm::ivec2(targets.width, targets.height));
        c = {from, to - from};
    }
    return corners;
}

void FramePasses::finish(const Sample& sample, const std::vector<Reaching>& lights, FrameTargets& targets) {
    LightTargets& light = sample.fine ? targets.fine : targets.coarse;
    drawOcclusion(sample, targets, light);
    drawLights(sample, lights, targets, light);
    compose(sample, targets, light);
    drawTranslucent(sample, targets);
    drawLines(sample, targets);
    const auto rectangle = [&](glm::vec3 low, glm::vec3 high) {
        return sample.lens.rectangle(low, high, targets.width, targets.height, 6);
    };
    const float scale = std::max(1.0f, static_cast<float>(targets.height) / 900.0f);
    if (!sample.lists.hovered.empty())
        drawOutline(sample, targets, sample.lists.hovered,
                    rectangle(sample.lists.hovered_low, sample.lists.hovered_high), kInk, 1.4f * scale);
    if (!sample.lists.selected.empty())
        drawOutline(sample, targets, sample.lists.selected,
                    rectangle(sample.lists.selected_low, sample.lists.selected_high), kAccent, 2.6f * scale);
}

void FramePasses::drawSurfaces(const Sample& sample, FrameTargets& targets) {
    begin(targets.surface_frame.name(), targets.width, targets.height);
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LESS);
    glDepthMask(GL_TRUE);
    const GLuint nothing[4] = {0, 0, 0, 0};
    const float black[4] = {0, 0, 0, 0};
    const float far_depth = 1;
    glClearBufferfv(GL_COLOR, 0, black);
    glClearBufferuiv(GL_COLOR, 1, nothing);
    glClearBufferfv(GL_DEPTH, 0, &far_depth);
    sample.buffers.bindParts(0);
    bindTexture(1, noise_.name());
    const int hovered = sample.view.hovered.empty() ? -1 : sample.index.objects.find(sample.view.hovered);
    for (std::size_t p = 0; p < surface_.size(); ++p) {
        const bool lines = p == 0 && !sample.lists.floor_lines.empty();
        if (sample.lists.solid[p].empty() && !lines) continue;
        ShaderProgram& program = surface_[p];
        program.use();
        program.set("part_table", 0);
        program.set("noise", 1);
        program.set("view_projection", sample.lens.view_projection);
        program.set("eye", sample.lens.eye);
        program.set("hovered_object", static_cast<float>(hovered));
        program.set("lay_on_floor", 0.0f);
        sample.buffers.draw(sample.lists.solid[p]);
        if (!lines) continue;
        program.set("lay_on_floor", 1.0f);
        sample.buffers.draw(sample.lists.floor_lines);
    }
}

void FramePasses::drawOcclusion(const Sample& sample, FrameTargets& targets, LightTargets& light) {
    begin(light.occlusion_frame.name(), light.width, light.height);
    occlusion_.use();
    sample.lens.give(occlusion_);
    bindTexture(0, targets.depth.name());
    bindTexture(1, targets.surface.name());
    occlusion_.set("depth_map", 0);
    occlusion_.set("surface_map", 1);
    occlusion_.set("scale", light.scale);
    setOffset(occlusion_, sample, light);
    occlusion_.set("pixel", glm::vec2(1.0f / static_cast<float>(targets.width),
                                      1.0f / static_cast<float>(targets.height)));
    occlusion_.set("reach", kOcclusionReachM);
    occlusion_.set("pixels_a_metre", sample.lens.pixels_a_metre);
    occlusion_.set("turn", static_cast<float>(sample.number) * 2.3999632f);
    fillScreen();
    begin(light.calm_frame.name(), light.width, light.height);
    calm_.use();
    bindTexture(0, light.occlusion.name());
    calm_.set("occlusion_map", 0);
    fillScreen();
}

void FramePasses::setLamp(int slot, const LightSource& source, glm::vec3 colour, glm::vec4 tile) {
    const bool shadows = tile.z > 0;
    const auto name = [slot](const char* what) { return fmt::format("{}[{}]", what, slot); };
    const float own_room = source.pane || !shadows ? static_cast<float>(source.room + 1) : 0.0f;
    lamp_.set(name("place"), glm::vec4(source.position, source.soft_size_m2));
    lamp_.set(name("front"), glm::vec4(source.direction, source.pane ? 1.0f : 0.0f));
    lamp_.set(name("colour"), glm::vec4(colour, own_room));
    lamp_.set(name("beam"), glm::vec4(source.beam.x, 1 / std::max(source.beam.y - source.beam.x, 1e-3f),
                                      1 / source.reach_m, shadows ? 1.0f : 0.0f));
    lamp_.set(name("tile"), tile);
}

void FramePasses::drawLights(const Sample& sample, const std::vector<Reaching>& lights, FrameTargets& targets,
                             LightTargets& light) {
    begin(light.light_frame.name(), light.width, light.height);
    const float black[4] = {0, 0, 0, 0};
    glClearBufferfv(GL_COLOR, 0, black);
    lamp_.use();
    sample.lens.give(lamp_);
    bindTexture(0, targets.depth.name());
    bindTexture(1, targets.surface.name());
    bindTexture(2, sample.lamps.texture());
    lamp_.set("depth_map", 0);
    lamp_.set("surface_map", 1);
    lamp_.set("shadow_atlas", 2);
    lamp_.set("scale", light.scale);
    setOffset(lamp_, sample, light);
    lamp_.set("pixel",
              glm::vec2(1.0f / static_cast<float>(targets.width), 1.0f / static_cast<float>(targets.height)));
    lamp_.set("shadow_sway", sample.fine ? 0.035f * onSphere(sample.number) : glm::vec3(0));
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFunc(GL_ONE, GL_ONE);
    glEnable(GL_SCISSOR_TEST);
    LightSource none;
    none.colour = glm::vec3(0);
    for (std::size_t first = 0; first < lights.size(); first += kLampsAtOnce) {
        glm::ivec2 from(targets.width, targets.height);
        glm::ivec2 to(0);
        for (std::size_t slot = 0; slot < kLampsAtOnce; ++slot) {
            const bool used = first + slot < lights.size();
            if (used) {
                const glm::ivec4 r = lights[first + slot].rectangle;
                from = glm::min(from, glm::ivec2(r.x, r.y));
                to = glm::max(to, glm::ivec2(r.x + r.z, r.y + r.w));
            }
            const std::size_t at = used ? lights[first + slot].source : 0;
            const LightSource& source = used ? sample.sources[at] : none;
            setLamp(static_cast<int>(slot), source, shownLight(source, sample.view),
                    used ? sample.lamps.tile(at) : glm::vec4(0));
        }
        from = from / light.scale - 1;
        to = to / light.scale + 2;
        glScissor(from.x, from.y, std::max(to.x - from.x, 0), std::max(to.y - from.y, 0));
        fillScreen();
    }
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
}

void FramePasses::compose(const Sample& sample, FrameTargets& targets, LightTargets& light) {
    begin(targets.picture_frame.name(), targets.width, targets.height);
    compose_.use();
    sample.lens.give(compose_);
    const GLuint maps[] = {targets.colour.name(), targets.surface.name(), targets.depth.name(),
                           light.light.name(),    light.calm.name(),      sample.sun.texture()};
    const char* names[] = {"colour_map", "surface_map", "depth_map", "light_map", "occlusion_map", "sun_map"};
    for (int i = 0; i < 6; ++i) {
        bindTexture(i, maps[i]);
        compose_.set(names[i], i);
    }
    compose_.set("world_to_sun", sample.sun.worldToSun());
    compose_.set("sun_direction", sunDirection());
    // A model with its lid off stands in the sun all over: softer, so that floors keep their colour.
    compose_.set("sun_colour", (sample.view.lid_off ? 0.7f : 1.0f) * sample.view.daylight * kSunColour);
    compose_.set("daylight", sample.view.daylight);
    compose_.set("sun_texel", sample.sun.texelM());
    compose_.set("sun_sway", sample.fine ? (spread(sample.number) - 0.5f) * 0.0022f : glm::vec2(0));
    compose_.set("pixel", glm::vec2(1.0f / static_cast<float>(targets.width),
                                    1.0f / static_cast<float>(targets.height)));
    compose_.set("scale", light.scale);
    setOffset(compose_, sample, light);
    compose_.set("background", sample.view.background);
    float ground = 1e9f;
    for (const auto& room : sample.index.room_infos)
        if (sample.view.storey.empty() || room.storey == sample.index.storeys.find(sample.view.storey))
            ground = std::min(ground, room.low.y);
    compose_.set("ground_y", ground - 0.02f);
    compose_.set("on_paper", sample.view.lid_off && ground < 1e8f ? 1.0f : 0.0f);
    fillScreen();
}

void FramePasses::drawTranslucent(const Sample& sample, FrameTargets& targets) {
    if (sample.lists.ghosts.empty() && sample.lists.glass.empty()) return;
    begin(targets.through_frame.name(), targets.width, targets.height);
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LEQUAL);
    glDepthMask(GL_FALSE);
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ZERO, GL_ONE);
    translucent_.use();
    sample.buffers.bindParts(0);
    translucent_.set("part_table", 0);
    translucent_.set("view_projection", sample.lens.view_projection);
    translucent_.set("eye", sample.lens.eye);
    translucent_.set("lay_on_floor", 0.0f);
    translucent_.set("daylight", sample.view.daylight);
    translucent_.set("ghost", 0.0f);
    sample.buffers.draw(sample.lists.glass);
    // Of ghosts only the nearest surface is drawn: a bookcase of a hundred books would cover what stands
    // behind it.
    translucent_.set("ghost", 1.0f);
    glDepthMask(GL_TRUE);
    glColorMask(GL_FALSE, GL_FALSE, GL_FALSE, GL_FALSE);
    sample.buffers.draw(sample.lists.ghosts);
    glDepthMask(GL_FALSE);
    glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
    sample.buffers.draw(sample.lists.ghosts);
    glDepthMask(GL_TRUE);
    glDisable(GL_BLEND);
}

void FramePasses::drawLines(const Sample& sample, FrameTargets& targets) {
    const std::vector<LineCorner> corners =
        lineCorners(sample.view.lines, sample.lens, targets.width, targets.height);
    if (corners.empty()) return;
    begin(targets.picture_frame.name(), targets.width, targets.height);
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ZERO, GL_ONE);
    lines_.use();
    sample.lens.give(lines_);
    bindTexture(0, targets.depth.name());
    lines_.set("depth_map", 0);
    glBindVertexArray(line_array_.name());
    glBindBuffer(GL_ARRAY_BUFFER, line_buffer_.name());
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(corners.size() * sizeof(LineCorner)),
                 corners.data(), GL_STREAM_DRAW);
    const auto attribute = [](GLuint at, GLint size, std::size_t offset) {
        glEnableVertexAttribArray(at);
        glVertexAttribPointer(at, size, GL_FLOAT, GL_FALSE, sizeof(LineCorner),
                              reinterpret_cast<const void*>(offset));
    };
    attribute(0, 3, offsetof(LineCorner, place));
    attribute(1, 4, offsetof(LineCorner, ends));
    attribute(2, 4, offsetof(LineCorner, look));
    glDrawArrays(GL_TRIANGLES, 0, static_cast<GLsizei>(corners.size()));
    glBindVertexArray(0);
    glDisable(GL_BLEND);
}

void FramePasses::drawOutline(const Sample& sample, FrameTargets& targets, const DrawList& list, glm::ivec4 r,
                              glm::vec3 colour, float width) {
    if (r.z == 0 || r.w == 0) return;
    begin(targets.mask_frame.name(), targets.width, targets.height);
    glEnable(GL_SCISSOR_TEST);
    // The line looks a few pixels past the rectangle: what an earlier picture left there must go too.
    constexpr int kPast = 8;
    glScissor(r.x - kPast, r.y - kPast, r.z + 2 * kPast, r.w + 2 * kPast);
    const float black[4] = {0, 0, 0, 0};
    glClearBufferfv(GL_COLOR, 0, black);
    glScissor(r.x, r.y, r.z, r.w);
    caster_.use();
    sample.buffers.bindParts(0);
    caster_.set("part_table", 0);
    caster_.set("view_projection", sample.lens.view_projection);
    caster_.set("lay_on_floor", 0.0f);
    sample.buffers.draw(list);
    begin(targets.picture_frame.name(), targets.width, targets.height);
    glEnable(GL_SCISSOR_TEST);
    glScissor(r.x, r.y, r.z, r.w);
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ZERO, GL_ONE);
    outline_.use();
    bindTexture(0, targets.mask.name());
    outline_.set("mask_map", 0);
    outline_.set("line_colour", colour);
    outline_.set("line_width", width);
    fillScreen();
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
}

void FramePasses::smooth(const FrameTargets& targets, GLuint frame) {
    begin(frame, targets.width, targets.height);
    smooth_.use();
    bindTexture(0, targets.picture.name());
    smooth_.set("picture", 0);
    smooth_.set("pixel", glm::vec2(1.0f / static_cast<float>(targets.width),
                                   1.0f / static_cast<float>(targets.height)));
    fillScreen();
}

void FramePasses::addToSum(const FrameTargets& targets, bool first) {
    begin(targets.sum_frame.name(), targets.width, targets.height);
    if (!first) {
        glEnable(GL_BLEND);
        glBlendEquation(GL_FUNC_ADD);
        glBlendFunc(GL_ONE, GL_ONE);
    }
    copy_.use();
    bindTexture(0, targets.picture.name());
    copy_.set("picture", 0);
    copy_.set("weight", 1.0f);
    fillScreen();
    glDisable(GL_BLEND);
}

void FramePasses::showSum(const FrameTargets& targets, int samples, GLuint frame) {
    begin(frame, targets.width, targets.height);
    copy_.use();
    bindTexture(0, targets.sum.name());
    copy_.set("picture", 0);
    copy_.set("weight", 1.0f / static_cast<float>(samples));
    fillScreen();
}

} // namespace gangway::render
