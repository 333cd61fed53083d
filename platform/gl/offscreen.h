#pragma once
// A GL context with no window, for pictures from the command line and for tests.

#include "platform/gl/api.h"

namespace wrapwright {

/// An EGL context without any surface, current on this thread while it lives.
class Offscreen {
  public:
    /// Fails   not_found when EGL, a driver or that kind of context is missing, with the package
    ///         to install
    [[nodiscard]] static Result<Offscreen> open(GlKind kind = GlKind::desktop_33);

    Offscreen(Offscreen&& other) noexcept;
    Offscreen& operator=(Offscreen&&) = delete;
    ~Offscreen();

    [[nodiscard]] const Gl& gl() const { return gl_; }

  private:
    Offscreen(void* display, void* context) : display_(display), context_(context) {}

    void* display_;
    void* context_;
    Gl gl_;
};

} // namespace wrapwright
