#pragma once
// Takes pictures of scenes without a window.

#include "gui/scene.h"
#include "platform/gl/api.h"
#include "platform/gl/image.h"

#include <memory>

namespace wrapwright {

/// A context without a window and all that drawing needs, kept from picture to picture.
///
/// One at a time in a program. It leaves the current ImGui context as it was.
class Photographer {
  public:
    /// Fails   as Offscreen::open and SceneRenderer::make do
    [[nodiscard]] static Result<Photographer> open(GlKind kind = GlKind::desktop_33);
    Photographer(Photographer&&) noexcept;
    Photographer& operator=(Photographer&&) = delete;
    ~Photographer();

    /// The scene with its overlay. The same scene gives the same pixels on the same driver.
    /// Cost    see SceneRenderer::draw; letters of a new size are prepared once
    /// Fails   too_large when the driver cannot hold the picture; malformed when it reports an
    ///         error of ours
    [[nodiscard]] Result<Image> take(const Scene& scene);

  private:
    struct Gear;
    explicit Photographer(std::unique_ptr<Gear> gear);
    std::unique_ptr<Gear> gear_;
};

} // namespace wrapwright
