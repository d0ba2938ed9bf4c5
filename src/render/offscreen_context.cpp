// OpenGL without a window through EGL: Mesa's surfaceless platform, then each EGL device, then the
// default display.
#include "render/renderer.hpp"

#include <epoxy/gl.h>

#include <epoxy/egl.h>
#include <fmt/format.h>

#include <cstring>
#include <vector>

namespace gangway::render {

struct OffscreenContext::Impl {
    EGLDisplay display = EGL_NO_DISPLAY;
    EGLSurface surface = EGL_NO_SURFACE;
    EGLContext context = EGL_NO_CONTEXT;

    Impl() = default;
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    ~Impl() {
        // The display is left initialised: another context of this process may live on it.
        if (display == EGL_NO_DISPLAY) return;
        eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
        if (context != EGL_NO_CONTEXT) eglDestroyContext(display, context);
        if (surface != EGL_NO_SURFACE) eglDestroySurface(display, surface);
    }
};

namespace {

bool hasExtension(const char* list, const char* name) {
    if (list == nullptr) return false;
    const std::size_t length = std::strlen(name);
    for (const char* at = std::strstr(list, name); at != nullptr; at = std::strstr(at + length, name))
        if ((at == list || at[-1] == ' ') && (at[length] == ' ' || at[length] == '\0')) return true;
    return false;
}

std::vector<EGLDisplay> candidateDisplays() {
    std::vector<EGLDisplay> displays;
    const char* client = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
    if (hasExtension(client, "EGL_EXT_platform_base")) {
        if (hasExtension(client, "EGL_MESA_platform_surfaceless"))
            displays.push_back(eglGetPlatformDisplayEXT(EGL_PLATFORM_SURFACELESS_MESA, nullptr, nullptr));
        if (hasExtension(client, "EGL_EXT_platform_device") &&
            hasExtension(client, "EGL_EXT_device_enumeration")) {
            std::vector<EGLDeviceEXT> devices(16);
            EGLint count = 0;
            if (eglQueryDevicesEXT(static_cast<EGLint>(devices.size()), devices.data(), &count) == EGL_TRUE)
                for (EGLint i = 0; i < count; ++i)
                    displays.push_back(eglGetPlatformDisplayEXT(
                        EGL_PLATFORM_DEVICE_EXT, devices[static_cast<std::size_t>(i)], nullptr));
        }
    }
    displays.push_back(eglGetDisplay(EGL_DEFAULT_DISPLAY));
    return displays;
}

/// A 4.1 core context made current on the display; false when the display cannot give one.
bool makeCurrentOn(EGLDisplay display, EGLSurface& surface, EGLContext& context) {
    EGLint major = 0;
    EGLint minor = 0;
    if (display == EGL_NO_DISPLAY || eglInitialize(display, &major, &minor) != EGL_TRUE) return false;
    if (eglBindAPI(EGL_OPENGL_API) != EGL_TRUE) return false;
    const EGLint wanted[] = {EGL_SURFACE_TYPE, EGL_PBUFFER_BIT, EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT,
                             EGL_NONE};
    EGLConfig config = nullptr;
    EGLint count = 0;
    if (eglChooseConfig(display, wanted, &config, 1, &count) != EGL_TRUE || count == 0) return false;
    const EGLint version[] = {EGL_CONTEXT_MAJOR_VERSION,
                              4,
                              EGL_CONTEXT_MINOR_VERSION,
                              1,
                              EGL_CONTEXT_OPENGL_PROFILE_MASK,
                              EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                              EGL_NONE};
    context = eglCreateContext(display, config, EGL_NO_CONTEXT, version);
    if (context == EGL_NO_CONTEXT) return false;
    if (eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) == EGL_TRUE) return true;
    const EGLint size[] = {EGL_WIDTH, 1, EGL_HEIGHT, 1, EGL_NONE};
    surface = eglCreatePbufferSurface(display, config, size);
    if (surface != EGL_NO_SURFACE && eglMakeCurrent(display, surface, surface, context) == EGL_TRUE)
        return true;
    if (surface != EGL_NO_SURFACE) eglDestroySurface(display, surface);
    eglDestroyContext(display, context);
    surface = EGL_NO_SURFACE;
    context = EGL_NO_CONTEXT;
    return false;
}

} // namespace

OffscreenContext::OffscreenContext(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
OffscreenContext::OffscreenContext(OffscreenContext&&) noexcept = default;
OffscreenContext& OffscreenContext::operator=(OffscreenContext&&) noexcept = default;
OffscreenContext::~OffscreenContext() = default;

std::expected<OffscreenContext, std::string> OffscreenContext::create() {
    auto impl = std::make_unique<Impl>();
    for (EGLDisplay display : candidateDisplays()) {
        if (!makeCurrentOn(display, impl->surface, impl->context)) continue;
        impl->display = display;
        return OffscreenContext(std::move(impl));
    }
    return std::unexpected("no OpenGL 4.1 driver was found to draw pictures without a window; install "
                           "libgl1-mesa-dri (software drawing) or the driver of the graphics card");
}

std::string OffscreenContext::description() const {
    const auto* renderer = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
    const auto* version = reinterpret_cast<const char*>(glGetString(GL_VERSION));
    return fmt::format("{}, OpenGL {}", renderer ? renderer : "unknown", version ? version : "unknown");
}

} // namespace gangway::render
