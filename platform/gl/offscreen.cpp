#include "platform/gl/offscreen.h"

#include <EGL/egl.h>
#include <EGL/eglext.h>
#include <array>
#include <string>
#include <utility>

namespace wrapwright {

namespace {

Error lacking(const std::string& what) {
    return {ErrorCode::not_found, what,
            "install a graphics driver that works without a screen: "
            "apt-get install libegl1 libgl1 libgl1-mesa-dri"};
}

// Mesa's display without a screen, else whatever the system's default is.
EGLDisplay open_display() {
    const auto by_platform = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(
        eglGetProcAddress("eglGetPlatformDisplayEXT"));
    EGLDisplay display = EGL_NO_DISPLAY;
    if (by_platform != nullptr) {
        display = by_platform(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
    }
    if (display != EGL_NO_DISPLAY && eglInitialize(display, nullptr, nullptr) != EGL_FALSE) {
        return display;
    }
    display = eglGetDisplay(EGL_DEFAULT_DISPLAY);
    if (display != EGL_NO_DISPLAY && eglInitialize(display, nullptr, nullptr) != EGL_FALSE) {
        return display;
    }
    return EGL_NO_DISPLAY;
}

} // namespace

Result<Offscreen> Offscreen::open(GlKind kind) {
    EGLDisplay display = open_display();
    if (display == EGL_NO_DISPLAY) return lacking("no EGL display can be opened");
    const bool desktop = kind == GlKind::desktop_33;
    const EGLint renderable = desktop ? EGL_OPENGL_BIT : EGL_OPENGL_ES3_BIT;
    const std::array wanted{EGL_SURFACE_TYPE, EGL_DONT_CARE, EGL_RENDERABLE_TYPE, renderable,
                            EGL_NONE};
    EGLConfig config = nullptr;
    EGLint found = 0;
    const std::array<EGLint, 7> version{
        EGL_CONTEXT_MAJOR_VERSION,
        3,
        EGL_CONTEXT_MINOR_VERSION,
        desktop ? 3 : 0,
        desktop ? EGL_CONTEXT_OPENGL_PROFILE_MASK : EGL_NONE,
        EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
        EGL_NONE,
    };
    EGLContext context = EGL_NO_CONTEXT;
    if (eglBindAPI(desktop ? EGL_OPENGL_API : EGL_OPENGL_ES_API) != EGL_FALSE &&
        eglChooseConfig(display, wanted.data(), &config, 1, &found) != EGL_FALSE && found > 0) {
        context = eglCreateContext(display, config, EGL_NO_CONTEXT, version.data());
    }
    Offscreen off(display, context);
    if (context == EGL_NO_CONTEXT ||
        eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) == EGL_FALSE) {
        return lacking(desktop ? "the graphics driver has no OpenGL 3.3"
                               : "the graphics driver has no OpenGL ES 3.0");
    }
    Result<Gl> gl = load_gl(kind, eglGetProcAddress);
    if (!gl.ok()) return gl.error();
    off.gl_ = std::move(gl).value();
    return off;
}

Offscreen::Offscreen(Offscreen&& other) noexcept
    : display_(std::exchange(other.display_, EGL_NO_DISPLAY)),
      context_(std::exchange(other.context_, EGL_NO_CONTEXT)), gl_(other.gl_) {}

Offscreen::~Offscreen() {
    if (display_ == EGL_NO_DISPLAY) return;
    eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    if (context_ != EGL_NO_CONTEXT) eglDestroyContext(display_, context_);
    eglTerminate(display_);
}

} // namespace wrapwright
