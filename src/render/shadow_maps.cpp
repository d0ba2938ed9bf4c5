#include "render/shadow_maps.hpp"

#include "render/frame_targets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/gtc/matrix_transform.hpp>

namespace gangway::render {

namespace {

constexpr int kSunSize = 2048;
constexpr float kSpanM = 24;
constexpr int kCubeSize = 160;

void compareDepth(GLenum target) {
    glTexParameteri(target, GL_TEXTURE_COMPARE_MODE, GL_COMPARE_REF_TO_TEXTURE);
    glTexParameteri(target, GL_TEXTURE_COMPARE_FUNC, GL_LEQUAL);
    glTexParameteri(target, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(target, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
}

void drawDepthOnly(GLuint frame, int size) {
    glBindFramebuffer(GL_FRAMEBUFFER, frame);
    glViewport(0, 0, size, size);
    glDisable(GL_BLEND);
    glDisable(GL_SCISSOR_TEST);
    glEnable(GL_DEPTH_TEST);
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LEQUAL);
}

// A plate stands out less than the 15 mm by which surfaces are lifted when they look for their shadow
// (compose.frag, lamp.frag), so that its shadow is never seen; left out, a dragged plate costs no map.
bool casts(const PartInfo& part, Shown shown) {
    return shown == Shown::Solid && part.kind != scene::PartKind::Plate;
}

/// The places of the casters. Places past the last one are left out, so that new plates change nothing.
std::vector<char> castersOf(const PartIndex& index, const std::vector<Shown>& shown) {
    std::vector<char> casters(index.parts.size(), 0);
    std::size_t end = 0;
    for (std::size_t i = 0; i < casters.size(); ++i) {
        if (!casts(index.parts[i], shown[i])) continue;
        casters[i] = 1;
        end = i + 1;
    }
    casters.resize(end);
    return casters;
}

struct Box {
    glm::vec3 low{1e9f};
    glm::vec3 high{-1e9f};
};

} // namespace

glm::vec3 sunDirection() {
    return glm::normalize(glm::vec3(-0.42f, 0.60f, 0.68f));
}

void SunShadow::update(const SceneBuffers& buffers, const PartIndex& index, const std::vector<Shown>& shown,
                       glm::vec3 eye, ShaderProgram& caster) {
    const glm::ivec2 cell(std::lround(eye.x / (kSpanM / 3)), std::lround(eye.z / (kSpanM / 3)));
    auto casters = castersOf(index, shown);
    if (map_ && !stale_ && drawn_for_ == casters && cell_ == cell) return;
    if (!map_) {
        map_ = makeTexture(GL_DEPTH_COMPONENT32F, kSunSize, kSunSize);
        compareDepth(GL_TEXTURE_2D);
        frame_ = makeFramebuffer({}, map_.name());
    }
    ++drawn_;
    stale_ = false;
    drawn_for_ = std::move(casters);
    cell_ = cell;
    const glm::vec3 centre(static_cast<float>(cell.x) * kSpanM / 3, 0,
                           static_cast<float>(cell.y) * kSpanM / 3);
    const glm::vec3 direction = sunDirection();
    const glm::mat4 turn = glm::lookAt(glm::vec3(0), -direction, glm::vec3(0, 1, 0));
    Box box;
    DrawList list;
    for (std::size_t i = 0; i < index.parts.size(); ++i) {
        const auto& part = index.parts[i];
        if (!casts(part, shown[i])) continue;
        const glm::vec3 to = glm::max(glm::max(part.low - centre, centre - part.high), glm::vec3(0));
        if (std::max(to.x, to.z) > kSpanM) continue;
        list.add(part.first_index, part.index_count);
        for (int corner = 0; corner < 8; ++corner) {
            const glm::vec3 at(corner & 1 ? part.high.x : part.low.x, corner & 2 ? part.high.y : part.low.y,
                               corner & 4 ? part.high.z : part.low.z);
            const glm::vec3 seen(turn * glm::vec4(at, 1));
            box.low = glm::min(box.low, seen);
            box.high = glm::max(box.high, seen);
        }
    }
    if (list.empty()) box = {glm::vec3(-1), glm::vec3(1)};
    const glm::mat4 flat = glm::ortho(box.low.x - 0.1f, box.high.x + 0.1f, box.low.y - 0.1f,
                                      box.high.y + 0.1f, -box.high.z - 0.5f, -box.low.z + 4.0f);
    world_to_sun_ = flat * turn;
    texel_m_ = std::max(box.high.x - box.low.x, box.high.y - box.low.y) / static_cast<float>(kSunSize);
    drawDepthOnly(frame_.name(), kSunSize);
    glClear(GL_DEPTH_BUFFER_BIT);
    glEnable(GL_POLYGON_OFFSET_FILL);
    glPolygonOffset(1.5f, 2.0f);
    caster.use();
    buffers.bindParts(0);
    caster.set("part_table", 0);
    caster.set("lay_on_floor", 0.0f);
    caster.set("view_projection", world_to_sun_);
    buffers.draw(list);
    glDisable(GL_POLYGON_OFFSET_FILL);
}

void LampShadows::forget() {
    drawn_for_.clear();
    tiles_.clear();
    used_ = 0;
}

glm::vec4 LampShadows::tile(std::size_t source) const {
    if (source >= tiles_.size() || tiles_[source] < 0) return glm::vec4(0);
    const float size = 1.0f / static_cast<float>(kTilesAcross);
    const auto column = static_cast<float>(tiles_[source] % kTilesAcross);
    const auto row = static_cast<float>(tiles_[source] / kTilesAcross);
    return {column * size, row * size, size, size};
}

void LampShadows::prepare() {
    if (atlas_) return;
    atlas_ = makeTexture(GL_DEPTH_COMPONENT32F, kTile * kTilesAcross, kTile * kTilesAcross);
    compareDepth(GL_TEXTURE_2D);
    atlas_frame_ = makeFramebuffer({}, atlas_.name());
    cube_ = Texture::make();
    glBindTexture(GL_TEXTURE_CUBE_MAP, cube_.name());
    for (int face = 0; face < 6; ++face)
        glTexImage2D(static_cast<GLenum>(GL_TEXTURE_CUBE_MAP_POSITIVE_X + face), 0, GL_DEPTH_COMPONENT32F,
                     kCubeSize, kCubeSize, 0, GL_DEPTH_COMPONENT, GL_FLOAT, nullptr);
    glTexParameteri(GL_TEXTURE_CUBE_MAP, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_CUBE_MAP, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_CUBE_MAP, GL_TEXTURE_MAX_LEVEL, 0);
    cube_frame_ = makeFramebuffer({});
}

void LampShadows::drawCube(const SceneBuffers& buffers, const PartIndex& index,
                           const std::vector<Shown>& shown, const LightSource& source,
                           ShaderProgram& caster) {
    struct Face {
        glm::vec3 look;
        glm::vec3 up;
    };
    static constexpr std::array<Face, 6> faces{{{{1, 0, 0}, {0, -1, 0}},
                                                {{-1, 0, 0}, {0, -1, 0}},
                                                {{0, 1, 0}, {0, 0, 1}},
                                                {{0, -1, 0}, {0, 0, -1}},
                                                {{0, 0, 1}, {0, -1, 0}},
                                                {{0, 0, -1}, {0, -1, 0}}}};
    // Small parts and the lamp itself throw no shadow worth its cost.
    std::vector<const PartInfo*> near;
    for (std::size_t i = 0; i < index.parts.size(); ++i) {
        const auto& part = index.parts[i];
        if (!casts(part, shown[i]) || part.kind == scene::PartKind::Lamp) continue;
        if (glm::length(part.high - part.low) < 0.12f) continue;
        const glm::vec3 gap =
            glm::max(glm::max(part.low - source.position, source.position - part.high), glm::vec3(0));
        if (glm::length(gap) < source.reach_m) near.push_back(&part);
    }
    const glm::mat4 lens = glm::perspective(glm::radians(90.0f), 1.0f, kNearM, source.reach_m);
    caster.use();
    buffers.bindParts(0);
    caster.set("part_table", 0);
    caster.set("lay_on_floor", 0.0f);
    drawDepthOnly(cube_frame_.name(), kCubeSize);
    for (std::size_t f = 0; f < faces.size(); ++f) {
        const glm::mat4 matrix =
            lens * glm::lookAt(source.position, source.position + faces[f].look, faces[f].up);
        const Frustum frustum(matrix);
        DrawList list;
        for (const auto* part : near)
            if (frustum.touches(part->low, part->high)) list.add(part->first_index, part->index_count);
        glFramebufferTexture2D(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT,
                               static_cast<GLenum>(GL_TEXTURE_CUBE_MAP_POSITIVE_X + f), cube_.name(), 0);
        glClear(GL_DEPTH_BUFFER_BIT);
        caster.set("view_projection", matrix);
        buffers.draw(list);
    }
}

void LampShadows::update(const SceneBuffers& buffers, const PartIndex& index, const std::vector<Shown>& shown,
                         const std::vector<LightSource>& sources, const std::vector<std::size_t>& wanted,
                         ShaderProgram& caster, ShaderProgram& unfold, GLuint no_vertices) {
    auto casters = castersOf(index, shown);
    if (drawn_for_ != casters || tiles_.size() != sources.size()) {
        forget();
        drawn_for_ = std::move(casters);
        tiles_.assign(sources.size(), -1);
    }
    for (const std::size_t at : wanted) {
        if (tiles_[at] >= 0 || sources[at].pane || used_ >= kTilesAcross * kTilesAcross) continue;
        prepare();
        tiles_[at] = used_++;
        ++drawn_;
        drawCube(buffers, index, shown, sources[at], caster);
        glBindFramebuffer(GL_FRAMEBUFFER, atlas_frame_.name());
        glViewport((tiles_[at] % kTilesAcross) * kTile, (tiles_[at] / kTilesAcross) * kTile, kTile, kTile);
        glDepthFunc(GL_ALWAYS);
        unfold.use();
        glActiveTexture(GL_TEXTURE0);
        glBindTexture(GL_TEXTURE_CUBE_MAP, cube_.name());
        unfold.set("distances", 0);
        unfold.set("near_m", kNearM);
        unfold.set("far_m", sources[at].reach_m);
        glBindVertexArray(no_vertices);
        glDrawArrays(GL_TRIANGLES, 0, 3);
        glDepthFunc(GL_LEQUAL);
    }
}

} // namespace gangway::render
