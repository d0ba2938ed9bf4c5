// The window's life: opening it, one frame, and resting until something happens.
#include "app/app.hpp"

#include "app/panels.hpp"
#include "app/report.hpp"
#include "app/sheet_preview.hpp"
#include "export/export.hpp"
#include "plan/io.hpp"

#include <epoxy/gl.h>

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

#include <GLFW/glfw3.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace gangway::app {

void place(State& state, const std::string& name) {
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    state.places[name] = {low.x, low.y, high.x - low.x, high.y - low.y};
}

void say(State& state, std::string words) {
    state.toast = std::move(words);
    state.toast_until = ImGui::GetTime() + 2.5;
}

namespace {
constexpr int kLeastWidth = 1180; ///< below this bar and docket would not hold their words
constexpr int kLeastHeight = 680;
constexpr int kSettlingFrames = 3; ///< ImGui needs a frame or two after an input to show its effect

struct WindowCloser {
    void operator()(GLFWwindow* window) const { glfwDestroyWindow(window); }
};
using Window = std::unique_ptr<GLFWwindow, WindowCloser>;

struct Library {
    bool ready = glfwInit() == GLFW_TRUE;
    Library() = default;
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;
    ~Library() { glfwTerminate(); }
};

State& stateOf(GLFWwindow* window) {
    return *static_cast<State*>(glfwGetWindowUserPointer(window));
}
void wake(GLFWwindow* window) {
    stateOf(window).frames_wanted = kSettlingFrames;
}

/// Our callbacks go in before ImGui's, which pass events on to them.
void listen(GLFWwindow* window) {
    glfwSetKeyCallback(window, [](GLFWwindow* w, int, int, int, int) { wake(w); });
    glfwSetCharCallback(window, [](GLFWwindow* w, unsigned) { wake(w); });
    glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int, int, int) { wake(w); });
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double, double) { wake(w); });
    glfwSetScrollCallback(window, [](GLFWwindow* w, double, double) { wake(w); });
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { wake(w); });
    glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { wake(w); });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int) { wake(w); });
    glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int) { wake(w); });
    glfwSetWindowCloseCallback(window, [](GLFWwindow* w) {
        glfwSetWindowShouldClose(w, GLFW_FALSE);
        requestClose(stateOf(w));
        wake(w);
    });
    glfwSetDropCallback(window, [](GLFWwindow* w, int count, const char** files) {
        if (count > 0) requestOpen(stateOf(w), files[0]);
        wake(w);
    });
}

/// A key pressed and let go between two frames would be missed: ImGui 1.86 looks at keys only once a frame.
/// Releases of such keys wait for the next frame.
void keyEvent(GLFWwindow* window, int key, int scancode, int action, int mods) {
    State& state = stateOf(window);
    if (action == GLFW_PRESS) state.keys_of_frame.insert(key);
    // After any press in this frame every release waits: else the Ctrl of a quick Ctrl+S would be let go
    // before the S was seen.
    const bool late = !state.keys_of_frame.empty() || !state.late_releases.empty();
    if (action == GLFW_RELEASE && late) {
        state.late_releases.push_back({key, scancode, mods});
        wake(window);
        return;
    }
    ImGui_ImplGlfw_KeyCallback(window, key, scancode, action, mods);
}

void releaseLateKeys(State& state, GLFWwindow* window) {
    state.keys_of_frame.clear();
    for (const auto& late : std::exchange(state.late_releases, {}))
        ImGui_ImplGlfw_KeyCallback(window, late.key, late.scancode, GLFW_RELEASE, late.mods);
}

Window makeWindow(const Options& options, std::string& problem) {
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 4);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 1);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
    Window window(glfwCreateWindow(std::max(options.width, kLeastWidth),
                                   std::max(options.height, kLeastHeight), "Gangway", nullptr, nullptr));
    if (!window) {
        const char* why = nullptr;
        glfwGetError(&why);
        problem = std::string("no window with OpenGL 4.1 could be opened") +
                  (why == nullptr ? "" : std::string(": ") + why) +
                  ". Without a display use `gangway shot` and `gangway sheets`.";
    }
    return window;
}

} // namespace

void beginBand(const char* name, Rect area, ImVec2 padding) {
    ImGui::SetNextWindowPos({area.x, area.y});
    ImGui::SetNextWindowSize({area.width, area.height});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, padding);
    ImGui::Begin(name, nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
}

void endBand() {
    ImGui::End();
    ImGui::PopStyleVar();
}

namespace {
void frameLine(const State& state, ImVec2 a, ImVec2 b) {
    ImGui::GetForegroundDrawList()->AddLine(a, b, packed(state.tokens->quiet), 1);
}

/// With the sheets open there is nothing but them beside bar and rail; true when they are.
bool layOutSheets(State& state, float width, float height) {
    if (state.panel != Panel::Sheets) return false;
    const float s = state.scale;
    const Rect stage = state.stage;
    beginBand("bar", {0, 0, width, stage.y}, {16 * s, 9 * s});
    drawTopBar(state);
    endBand();
    if (stage.x > 0) {
        beginBand("rail", {0, stage.y, stage.x, height - stage.y}, {4 * s, 8 * s});
        drawRail(state);
        endBand();
    }
    drawSheetPreview(state, width, height);
    drawDialogs(state);
    ImGui::GetBackgroundDrawList()->AddRectFilled({0, 0}, {width, height}, packed(state.tokens->paper));
    return true;
}

/// Bar on top, rail left, docket right, strip below, stage in the middle; the homeowner has stage and answers
/// only.
void layOut(State& state, render::Renderer& renderer, float width, float height) {
    const float s = state.scale;
    const bool designer = state.seat == Seat::Designer;
    const float top = 52 * s;
    const float rail = designer ? 76 * s : 0;
    const float docket = designer ? std::min(320 * s, width * 0.28F) : 0;
    const float below = designer ? std::clamp(height * 0.27F, 150 * s, 340 * s) : 148 * s;
    state.stage = {rail, top, width - rail - docket, height - top - below};

    if (layOutSheets(state, width, height)) return;
    drawStage(state, renderer);
    takeTyingClicks(state);
    beginBand("bar", {0, 0, width, top}, {16 * s, 9 * s});
    drawTopBar(state);
    endBand();
    if (designer) {
        beginBand("rail", {0, top, rail, height - top}, {4 * s, 8 * s});
        drawRail(state);
        endBand();
        beginBand("docket", {width - docket, top, docket, height - top}, {16 * s, 12 * s});
        drawDocket(state);
        endBand();
        beginBand("strip", {rail, height - below, width - rail - docket, below}, {16 * s, 8 * s});
        drawStrip(state);
        endBand();
        drawCard(state);
        drawThingCard(state);
    } else {
        beginBand("answers", {0, height - below, width, below}, {24 * s, 14 * s});
        drawHomeownerBar(state);
        endBand();
        drawCard(state);
    }
    drawScenesBar(state);
    drawSidePanel(state);
    drawPlateBench(state, width, height);
    drawDialogs(state);
    ImDrawList& back = *ImGui::GetBackgroundDrawList();
    back.AddRectFilled({0, 0}, {width, height}, packed(state.tokens->paper));
    const bool menu = ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
    if (!asked(state) && !menu) {
        frameLine(state, {0, top}, {width, top});
        if (designer) {
            frameLine(state, {rail, top}, {rail, height});
            frameLine(state, {width - docket, top}, {width - docket, height});
        }
        // In a low window the card reaches over the strip: the line goes under it.
        const float line = height - below;
        const auto card = state.places.find("card");
        const bool crossed = card != state.places.end() && card->second.y + card->second.height > line;
        frameLine(state, {rail, line}, {crossed ? card->second.x : width - docket, line});
        if (crossed) frameLine(state, {card->second.x + card->second.width, line}, {width - docket, line});
    }
}

void drawFrame(State& state, render::Renderer& renderer, GLFWwindow* window) {
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(window, &width, &height);
    if (width <= 0 || height <= 0) return;
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
    state.places.clear();
    handleKeys(state);
    keepNoteWithItsPlate(state);
    derive(state, renderer);
    drawPlugsAnew(state, renderer);
    tendSheets(state);
    if (!state.show_at_start.empty() && state.stage.height > 0) {
        showPlate(state, std::exchange(state.show_at_start, {}));
        state.frames_wanted = kSettlingFrames;
    }
    layOut(state, renderer, static_cast<float>(width), static_cast<float>(height));
    ImGui::Render();
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glViewport(0, 0, width, height);
    glClearColor(0.96F, 0.95F, 0.92F, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    ++state.frames;
}

exporting::Bitmap readWindow(GLFWwindow* window) {
    exporting::Bitmap picture;
    glfwGetFramebufferSize(window, &picture.width, &picture.height);
    const auto row = static_cast<std::size_t>(picture.width) * 4;
    std::vector<std::uint8_t> upside(row * static_cast<std::size_t>(picture.height));
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, picture.width, picture.height, GL_RGBA, GL_UNSIGNED_BYTE, upside.data());
    picture.rgba.resize(upside.size());
    for (std::size_t y = 0; y < static_cast<std::size_t>(picture.height); ++y) {
        const auto from = upside.begin() + static_cast<std::ptrdiff_t>(
                                               (static_cast<std::size_t>(picture.height) - 1 - y) * row);
        std::copy(from, from + static_cast<std::ptrdiff_t>(row),
                  picture.rgba.begin() + static_cast<std::ptrdiff_t>(y * row));
    }
    for (std::size_t i = 3; i < picture.rgba.size(); i += 4)
        picture.rgba[i] = 255;
    return picture;
}

void title(GLFWwindow* window, const State& state) {
    const std::string words = state.document.file().filename().string() +
                              (state.document.changed() ? " (unsaved)" : "") + " - Gangway";
    glfwSetWindowTitle(window, words.c_str());
}

/// Draws while something moves or was touched, and sleeps otherwise.
void live(State& state, render::Renderer& renderer, GLFWwindow* window) {
    double before = glfwGetTime();
    std::uint64_t journalled = state.document.version();
    while (!state.close) {
        const double now = glfwGetTime();
        const auto seconds = static_cast<float>(std::clamp(now - before, 0.0, 0.1));
        before = now;
        const bool moving = advance(state, seconds);
        // Every finished edit is on disk before anything else is drawn; a drag is one edit, finished when the
        // button is let go.
        const bool finished = state.drag.plate.empty() && !state.furnish.drag;
        if (finished && state.document.changed() && journalled != state.document.version()) {
            journalled = state.document.version();
            if (const auto kept = state.document.writeJournal(); !kept) say(state, kept.error());
        }
        const bool toast = !state.toast.empty() && ImGui::GetTime() <= state.toast_until;
        if (state.woken.exchange(false)) state.frames_wanted = std::max(state.frames_wanted, 2);
        if (state.options.plain) state.refining = false;
        if (!moving && state.frames_wanted <= 0 && state.refining && state.panel != Panel::Sheets) {
            // One finer sample a round, so that a touch is answered at once.
            state.refining = renderer.refine(viewOf(state));
            state.frames_wanted = 1;
        }
        if (!moving && state.frames_wanted <= 0) {
            if (!state.options.report.empty())
                writeReport(state, renderer.statistics(), !state.preview->busy(), state.options.report);
            if (toast) {
                glfwWaitEventsTimeout(std::max(0.01, state.toast_until - ImGui::GetTime() + 0.02));
                if (ImGui::GetTime() > state.toast_until) {
                    state.toast.clear();
                    state.frames_wanted = 1;
                }
            } else {
                glfwWaitEvents();
            }
            if (!state.options.report.empty() && state.frames_wanted > 0)
                writeReport(state, renderer.statistics(), false, state.options.report);
            before = glfwGetTime();
            continue;
        }
        glfwPollEvents();
        state.frames_wanted = moving ? kSettlingFrames : state.frames_wanted - 1;
        drawFrame(state, renderer, window);
        releaseLateKeys(state, window);
        title(window, state);
        if (!state.options.picture.empty() && !moving && state.frames_wanted <= 0 && !state.refining) {
            const auto written = exporting::writePng(readWindow(window), state.options.picture);
            if (!written) state.message = Message{"The picture was not written", {written.error()}};
            state.close = true;
        }
        glfwSwapBuffers(window);
    }
}

std::string userName(const Options& options) {
    if (!options.user.empty()) return options.user;
    const char* name = std::getenv("USER");
    return name == nullptr ? "" : name;
}

/// What the catalogue's own files say wrong is said once; the rest works.
void sayLeftOut(State& state) {
    std::vector<std::string> lines = state.shipped.problems;
    lines.insert(lines.end(), state.packs.problems.begin(), state.packs.problems.end());
    if (lines.empty()) return;
    if (!state.message) state.message = Message{"Files of the catalogue were left out", {}};
    state.message->lines.insert(state.message->lines.end(), lines.begin(), lines.end());
}

std::string begin(State& state, GLFWwindow* window) {
    float across = 1;
    float down = 1;
    glfwGetWindowContentScale(window, &across, &down);
    state.scale = std::clamp(across, 1.0F, 4.0F);
    ImGui::GetIO().IniFilename = nullptr;
    return applyTheme(*state.tokens, state.scale, state.fonts);
}
} // namespace

std::expected<void, std::string> run(const Options& options) {
    State state;
    state.preview = std::make_unique<SheetPreview>();
    state.options = options;
    state.answering = userName(options);
    loadRecent(state);
    if (!openPlan(state, options.plan)) {
        std::string lines;
        for (const auto& line : state.message->lines)
            lines += "\n" + line;
        return std::unexpected("this plan could not be opened" + lines);
    }
    if (!options.plate.empty()) {
        const auto* plate = plan::findPlateByName(state.plan(), options.plate);
        if (plate == nullptr) return std::unexpected("the plan has no plate '" + options.plate + "'");
        state.selected = plate->id;
    }
    const Library library;
    if (!library.ready)
        return std::unexpected("no display was found. Use `gangway shot` and `gangway sheets` without one.");
    std::string problem;
    const Window window = makeWindow(options, problem);
    if (!window) return std::unexpected(problem);
    glfwSetWindowSizeLimits(window.get(), kLeastWidth, kLeastHeight, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(window.get());
    glfwSwapInterval(1);

    auto catalogue = catalogue::load(options.assets / "catalogue");
    if (!catalogue) return std::unexpected(catalogue.error());
    auto renderer = render::Renderer::create(options.shaders);
    if (!renderer) return std::unexpected(renderer.error());

    state.shipped = std::move(*catalogue);
    if (auto packs = catalogue::loadPacks(options.assets / "packs", catalogue::ownPackFolders(options.plan)))
        state.packs = std::move(*packs);
    sayLeftOut(state);
    glfwSetWindowUserPointer(window.get(), &state);
    listen(window.get());
    state.wake = [&state] {
        state.woken = true;
        glfwPostEmptyEvent();
    };
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGui_ImplGlfw_InitForOpenGL(window.get(), true);
    glfwSetKeyCallback(window.get(), keyEvent);
    ImGui_ImplOpenGL3_Init("#version 410 core");
    problem = begin(state, window.get());
    if (problem.empty()) {
        if (!state.selected.empty()) state.show_at_start = state.selected;
        live(state, *renderer, window.get());
    }
    endBench(state);
    endSheets(state);
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
    if (!problem.empty()) return std::unexpected(problem);
    return {};
}

} // namespace gangway::app
