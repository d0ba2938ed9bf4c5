// Scene to pixels with OpenGL 4.1 core, in whatever context is current: a window's or an offscreen one.
#pragma once

#include "scene/scene.hpp"
#include "scene/scene_patch.hpp"

#include <array>
#include <cstdint>
#include <expected>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gangway::render {

/// How one state mark is shown over a plate: shape and colour; the word is drawn by the caller.
struct Mark {
    std::string plate;
    glm::vec3 colour{0}; ///< linear RGB
};

/// A line of a route drawn over the picture; where something stands before it, it is fainter.
struct Line {
    std::vector<glm::vec3> points_m;
    glm::vec3 colour{0};   ///< as shown (sRGB values)
    float width_px = 3;    ///< in a picture of 900 rows; wider in a higher one
    float dash_m = 0;      ///< 0: unbroken, else the length of dashes, with gaps of half of it between
    bool operator==(const Line&) const = default;
};

/// How much work goes into a picture.
enum class Quality {
    Moving, ///< one sample a pixel, lamp light at a third of the size, edges softened: for a stage in motion
    Still,  ///< kStillSamples samples a pixel, soft shadows: for a picture that stays
};

inline constexpr int kStillSamples = 9;

struct View {
    scene::Camera camera;
    int width = 1280; ///< pixels
    int height = 720;
    std::set<std::string> hidden_layers;
    std::set<std::string> ghosted_layers;
    std::set<std::string> hidden_rooms;
    std::set<std::string> ghosted_objects; ///< faded to show what is behind them
    std::string storey;                    ///< only this storey; empty: all
    bool lid_off = false;                  ///< no ceilings; walls that face away from the camera are cut away
    bool all_lights_on = true;
    /// By luminaire, 0 to 1: the part of its light and glow that it gives. Not listed: all of it.
    std::map<std::string, float> light_levels;
    float daylight = 1; ///< part of sun, sky and windows' light there is: 0 night, 1 day
    std::vector<Line> lines;
    std::string selected; ///< object id, outlined
    std::string hovered;
    std::vector<Mark> marks;
    glm::vec3 background{0.93f, 0.91f, 0.87f}; ///< as shown (sRGB values, not linear)
    std::optional<Quality> quality;            ///< not set: Moving for draw and drawToTexture, Still for read
};

/// Night outside with a little dusk left, so that a room with its lamps off is dark and still seen; what is
/// behind the house darkens too. Chosen by eye.
void setEvening(View& view);
/// How the control of lamps is drawn, without points: dashed, since no cable runs there.
Line routeLine();

struct Picture {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba; ///< row 0 on top
};

/// What is under a pixel.
struct Pick {
    std::string object;
    scene::PartKind kind = scene::PartKind::Wall;
    std::string room;
    std::string wall;
    glm::vec3 point{0};  ///< metres
    glm::vec3 normal{0}; ///< of the surface there, on the side that is seen; zero when there is nothing
};

struct Statistics {
    std::uint64_t uploads = 0; ///< times all geometry was sent to the GPU
    std::uint64_t patches = 0; ///< times single objects were
    std::uint64_t bytes = 0;   ///< sent in both ways, and when lamps were switched
    std::uint64_t draws = 0;   ///< pictures drawn
    std::uint64_t shadow_maps =
        0;                  ///< shadow maps drawn, one for the sun and one a lamp while nothing changes
    std::uint64_t kept = 0; ///< times drawToTexture had nothing to do
};

/// Where a point (metres) is in the picture: pixels, x right, y down, fractions included. Empty behind the
/// eye; a point beside the picture gives a place outside it.
std::optional<glm::vec2> project(const View& view, glm::vec3 point_m);

/// The ray through the middle of a pixel (y down): where it begins, and its unit direction; metres.
struct Ray {
    glm::vec3 from{0};
    glm::vec3 direction{0, 0, -1};
};
Ray pixelRay(const View& view, int x, int y);

/// Owns the GL objects of one scene. All calls need the context that was current at creation.
class Renderer {
public:
    /// Compiles the shaders found in `shader_folder`; the error carries the compiler's text and the file.
    static std::expected<Renderer, std::string> create(const std::filesystem::path& shader_folder);
    Renderer(Renderer&&) noexcept;
    Renderer& operator=(Renderer&&) noexcept;
    Renderer(const Renderer&) = delete;
    Renderer& operator=(const Renderer&) = delete;
    ~Renderer();

    /// Uploads a scene; for a new plan, or when rooms or openings changed.
    void setScene(scene::Scene scene);
    /// Draws single objects anew from now on; sends only them. Shadow maps are kept when only plates changed:
    /// plates throw no shadow that could be seen (surfaces take their light 15 mm in front of themselves,
    /// which is further than a plate stands out), so they are in no shadow map.
    void update(const scene::ScenePatch& patch);
    /// What is drawn now. After update() parts without triangles may lie between the others: free places.
    const scene::Scene& scene() const;

    /// Draws into the framebuffer `target` (0: the window's) at the view's size, antialiased.
    void draw(const View& view, unsigned target = 0);
    /// Draws into a texture kept by the renderer and returns its GL name, for a panel of the screen. Row 0 of
    /// the texture is the picture's bottom, as OpenGL has it. Does no work when view and scene are those of
    /// the last call, so it may be called for every frame of the screen.
    unsigned drawToTexture(const View& view);
    /// Adds one sample to the picture of the last drawToTexture, for a stage at rest; the texture changes
    /// once enough samples are in. True while another call would make it better; false for another view or
    /// scene.
    bool refine(const View& view);
    /// The nearest pickable part under a pixel (y down); hidden layers do not count, ghosted ones are looked
    /// through. Among things seen through, plates come first. An empty object: nothing there.
    Pick pick(const View& view, int x, int y) const;
    /// True when nothing solid stands between the eye and a point of an object (metres); the object's own
    /// parts and things seen through do not count, nor what lies within 15 mm of the point.
    bool visible(const View& view, const std::string& object, glm::vec3 point_m) const;
    Picture read(const View& view);
    Statistics statistics() const;

private:
    struct Impl;
    explicit Renderer(std::unique_ptr<Impl> impl);
    std::unique_ptr<Impl> impl_;
};

/// An OpenGL 4.1 core context without any window (EGL, surfaceless or device platform), made current.
class OffscreenContext {
public:
    static std::expected<OffscreenContext, std::string> create();
    OffscreenContext(OffscreenContext&&) noexcept;
    OffscreenContext& operator=(OffscreenContext&&) noexcept;
    OffscreenContext(const OffscreenContext&) = delete;
    OffscreenContext& operator=(const OffscreenContext&) = delete;
    ~OffscreenContext();
    std::string description() const; ///< renderer string, for messages

private:
    struct Impl;
    explicit OffscreenContext(std::unique_ptr<Impl> impl);
    std::unique_ptr<Impl> impl_;
};

} // namespace gangway::render
