#include "render/renderer.hpp"

#include "render/frame_passes.hpp"
#include "render/picking.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::render {

namespace {

constexpr float kSpillM = 2.5f; ///< how far from a lamp a room next door may begin to get light from it
constexpr int kShownFrom = 4;   ///< samples from which the sum looks better than the softened single sample

bool sameCamera(const scene::Camera& a, const scene::Camera& b) {
    return a.eye == b.eye && a.yaw == b.yaw && a.pitch == b.pitch && a.vertical_fov == b.vertical_fov &&
           a.orthographic == b.orthographic && a.ortho_height == b.ortho_height;
}

/// Marks are left out: they are not drawn here.
bool sameView(const View& a, const View& b) {
    return sameCamera(a.camera, b.camera) && a.width == b.width && a.height == b.height &&
           a.hidden_layers == b.hidden_layers && a.ghosted_layers == b.ghosted_layers &&
           a.hidden_rooms == b.hidden_rooms && a.ghosted_objects == b.ghosted_objects &&
           a.storey == b.storey && a.lid_off == b.lid_off && a.all_lights_on == b.all_lights_on &&
           a.light_levels == b.light_levels && a.daylight == b.daylight && a.lines == b.lines && a.selected == b.selected && a.hovered == b.hovered &&
           a.background == b.background && a.quality == b.quality;
}

/// Where the number-th sample of a picture looks within its pixel: Halton numbers, bases 2 and 3.
glm::vec2 pixelShift(int number) {
    const auto halton = [](int n, int base) {
        float result = 0;
        float part = 1;
        for (; n > 0; n /= base) {
            part /= static_cast<float>(base);
            result += part * static_cast<float>(n % base);
        }
        return result;
    };
    return {halton(number + 1, 2) - 0.5f, halton(number + 1, 3) - 0.5f};
}

} // namespace

struct Renderer::Impl {
    FramePasses passes;
    scene::LiveScene live;
    PartIndex index;
    SceneBuffers buffers;
    std::vector<LightSource> sources;
    std::vector<float> lit;
    SunShadow sun;
    LampShadows lamps;
    FrameTargets targets;
    Statistics statistics;
    std::optional<View> kept_view; ///< what the output texture holds
    int kept_samples = 0;

    const scene::Scene& scene() const { return live.scene(); }
    void sendAll();
    void update(const scene::ScenePatch& patch);
    void ensureTargets(const View& view);
    void setLit(const View& view);
    std::vector<Reaching> reachingSources(const View& view, const Lens& lens,
                                          const std::vector<glm::ivec4>& rooms) const;
    void updateLampShadows(const View& view, const std::vector<Shown>& shown,
                           const std::vector<Reaching>& lights);
    void drawSample(const View& view, int number, bool fine, bool shifted);
    void drawPicture(const View& view, Quality quality, GLuint frame);
};

void Renderer::Impl::sendAll() {
    index = PartIndex(scene());
    lit.assign(scene().parts.size(), 1);
    buffers.send(live, index, lit);
    sources = lightSources(scene(), index);
    sun.forget();
    lamps.forget();
    kept_view.reset();
    ++statistics.uploads;
    statistics.bytes = buffers.sent();
}

void Renderer::Impl::update(const scene::ScenePatch& patch) {
    const auto written = live.apply(patch);
    if (written.moved) return sendAll();
    lit.resize(scene().parts.size(), 1);
    for (const std::uint32_t place : written.parts) {
        index.set(place, scene().parts[place]);
        lit[place] = 1;
    }
    buffers.update(live, index, lit, written.parts);
    if (written.lights) sources = lightSources(scene(), index);
    if (written.shadows || written.lights) {
        sun.forget();
        lamps.forget();
    }
    kept_view.reset();
    ++statistics.patches;
    statistics.bytes = buffers.sent();
}

void Renderer::Impl::ensureTargets(const View& view) {
    const int width = std::clamp(view.width, 1, 16384);
    const int height = std::clamp(view.height, 1, 16384);
    if (targets.width == width && targets.height == height) return;
    targets = FrameTargets(width, height);
    kept_view.reset();
}

void Renderer::Impl::setLit(const View& view) {
    auto now = litParts(scene(), view);
    if (now == lit) return;
    buffers.setLit(scene(), index, lit, now);
    lit = std::move(now);
    statistics.bytes = buffers.sent();
}

/// How far a box is from a point; 0 inside.
float distanceTo(const RoomInfo& room, glm::vec3 point) {
    return glm::length(glm::max(glm::max(room.low - point, point - room.high), glm::vec3(0)));
}

std::vector<Reaching> Renderer::Impl::reachingSources(const View& view, const Lens& lens,
                                                      const std::vector<glm::ivec4>& rooms) const {
    const auto hidden = index.rooms.flags(view.hidden_rooms);
    const int storey = view.storey.empty() ? -1 : index.storeys.find(view.storey);
    std::vector<Reaching> result;
    for (std::size_t i = 0; i < sources.size(); ++i) {
        const LightSource& source = sources[i];
        if (levelOf(source, view) <= 0 || hidden[static_cast<std::size_t>(source.room)]) continue;
        if (!view.storey.empty() && source.storey != storey) continue;
        const glm::ivec4 sphere =
            lens.rectangle(source.position - source.reach_m, source.position + source.reach_m, targets.width,
                           targets.height);
        glm::ivec2 from(targets.width, targets.height);
        glm::ivec2 to(0);
        for (std::size_t r = 0; r < rooms.size(); ++r) {
            // Light spills into the rooms next door, where it is still strong.
            const bool own = static_cast<int>(r) == source.room;
            if (rooms[r].z == 0 ||
                (!own && (source.pane || distanceTo(index.room_infos[r], source.position) > kSpillM)))
                continue;
            from = glm::min(from, glm::ivec2(rooms[r].x, rooms[r].y));
            to = glm::max(to, glm::ivec2(rooms[r].x + rooms[r].z, rooms[r].y + rooms[r].w));
        }
        from = glm::max(from, glm::ivec2(sphere.x, sphere.y));
        to = glm::min(to, glm::ivec2(sphere.x + sphere.z, sphere.y + sphere.w));
        if (from.x < to.x && from.y < to.y) result.push_back({i, {from, to - from}});
    }
    return result;
}

void Renderer::Impl::updateLampShadows(const View& view, const std::vector<Shown>& shown,
                                       const std::vector<Reaching>& lights) {
    // Lamps see the house whole, wherever the camera is, so that turning the lid-off view redraws nothing.
    View whole = view;
    whole.lid_off = false;
    const auto casting = view.lid_off ? shownParts(index, whole) : shown;
    std::vector<std::size_t> wanted;
    for (const auto& light : lights)
        wanted.push_back(light.source);
    lamps.update(buffers, index, casting, sources, wanted, passes.caster(), passes.unfold(),
                 passes.noVertices());
    statistics.shadow_maps = sun.drawn() + lamps.drawn();
}

void Renderer::Impl::drawSample(const View& view, int number, bool fine, bool shifted) {
    ensureTargets(view);
    setLit(view);
    const Lens lens(view, scene().low, scene().high, shifted ? pixelShift(number) : glm::vec2(0));
    const auto shown = shownParts(index, view);
    sun.update(buffers, index, shown, view.camera.eye, passes.caster());
    const DrawLists lists = makeDrawLists(index, shown, view, lens, fine ? 0.5f : 1.2f);
    const Sample sample{view, lens, lists, buffers, index, sources, sun, lamps, number, fine};
    const auto rooms = passes.surfaces(sample, targets);
    const auto lights = reachingSources(view, lens, rooms);
    updateLampShadows(view, shown, lights);
    passes.finish(sample, lights, targets);
}

void Renderer::Impl::drawPicture(const View& view, Quality quality, GLuint frame) {
    ++statistics.draws;
    if (quality == Quality::Moving) {
        drawSample(view, 0, false, false);
        passes.smooth(targets, frame);
        return;
    }
    for (int i = 0; i < kStillSamples; ++i) {
        drawSample(view, i, true, true);
        passes.addToSum(targets, i == 0);
    }
    passes.showSum(targets, kStillSamples, frame);
}

Renderer::Renderer(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Renderer::Renderer(Renderer&&) noexcept = default;
Renderer& Renderer::operator=(Renderer&&) noexcept = default;
Renderer::~Renderer() = default;

std::expected<Renderer, std::string> Renderer::create(const std::filesystem::path& shader_folder) {
    if (!std::filesystem::is_directory(shader_folder))
        return std::unexpected(
            fmt::format("the folder of shaders is missing: {} (GANGWAY_SHADERS points to another one)",
                        shader_folder.string()));
    auto passes = FramePasses::create(shader_folder);
    if (!passes) return std::unexpected(passes.error());
    auto impl = std::make_unique<Impl>();
    impl->passes = std::move(*passes);
    return Renderer(std::move(impl));
}

void Renderer::setScene(scene::Scene scene) {
    impl_->live = scene::LiveScene(std::move(scene));
    impl_->sendAll();
}

void Renderer::update(const scene::ScenePatch& patch) {
    impl_->update(patch);
}

const scene::Scene& Renderer::scene() const {
    return impl_->live.scene();
}

void Renderer::draw(const View& view, unsigned target) {
    impl_->kept_view.reset(); // the sum may be overwritten
    impl_->drawPicture(view, view.quality.value_or(Quality::Moving), target);
}

unsigned Renderer::drawToTexture(const View& view) {
    impl_->ensureTargets(view);
    if (impl_->kept_view && sameView(*impl_->kept_view, view)) {
        ++impl_->statistics.kept;
        return impl_->targets.output.name();
    }
    const Quality quality = view.quality.value_or(Quality::Moving);
    impl_->drawPicture(view, quality, impl_->targets.output_frame.name());
    impl_->kept_view = view;
    impl_->kept_samples = quality == Quality::Still ? kStillSamples : 0;
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    return impl_->targets.output.name();
}

bool Renderer::refine(const View& view) {
    if (!impl_->kept_view || !sameView(*impl_->kept_view, view)) return false;
    if (impl_->kept_samples >= kStillSamples) return false;
    impl_->drawSample(view, impl_->kept_samples, true, true);
    impl_->passes.addToSum(impl_->targets, impl_->kept_samples == 0);
    ++impl_->kept_samples;
    if (impl_->kept_samples >= kShownFrom)
        impl_->passes.showSum(impl_->targets, impl_->kept_samples, impl_->targets.output_frame.name());
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    return impl_->kept_samples < kStillSamples;
}

Pick Renderer::pick(const View& view, int x, int y) const {
    return pickAlong(impl_->scene(), impl_->index, shownParts(impl_->index, view), pixelRay(view, x, y));
}

bool Renderer::visible(const View& view, const std::string& object, glm::vec3 point_m) const {
    Ray ray{view.camera.eye, point_m - view.camera.eye};
    if (view.camera.orthographic) {
        const glm::vec3 ahead = -glm::vec3(glm::inverse(scene::viewMatrix(view.camera))[2]);
        ray.from = point_m - glm::dot(ray.direction, ahead) * ahead;
        ray.direction = point_m - ray.from;
    }
    const float distance = glm::length(point_m - ray.from);
    if (distance < 0.015f) return true;
    ray.direction = glm::normalize(ray.direction);
    return reaches(impl_->scene(), impl_->index, shownParts(impl_->index, view), ray, distance - 0.015f,
                   impl_->index.objects.find(object));
}

Picture Renderer::read(const View& view) {
    impl_->ensureTargets(view);
    impl_->kept_view.reset();
    impl_->drawPicture(view, view.quality.value_or(Quality::Still), impl_->targets.output_frame.name());
    Picture picture;
    picture.width = impl_->targets.width;
    picture.height = impl_->targets.height;
    const auto row = static_cast<std::size_t>(picture.width) * 4;
    const auto rows = static_cast<std::size_t>(picture.height);
    std::vector<std::uint8_t> upwards(row * rows);
    glBindFramebuffer(GL_READ_FRAMEBUFFER, impl_->targets.output_frame.name());
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, picture.width, picture.height, GL_RGBA, GL_UNSIGNED_BYTE, upwards.data());
    glPixelStorei(GL_PACK_ALIGNMENT, 4);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    picture.rgba.resize(upwards.size());
    for (std::size_t y = 0; y < rows; ++y)
        std::copy_n(upwards.begin() + static_cast<std::ptrdiff_t>((rows - 1 - y) * row), row,
                    picture.rgba.begin() + static_cast<std::ptrdiff_t>(y * row));
    return picture;
}

Statistics Renderer::statistics() const {
    return impl_->statistics;
}

} // namespace gangway::render
