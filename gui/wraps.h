#pragma once
// The wraps beside the step: the scene of the fly as it is now, kept from frame to frame.

#include "gui/model.h"
#include "gui/scene.h"

#include <optional>

namespace wrapwright {

/// Composes the scene for a model, and knows whether the picture before still holds.
class WrapsScene {
  public:
    /// The scene for this model at that size in dots.
    ///
    /// Valid   a model with something pictured
    /// Cost    meshes are built anew for another moment, fly, or much other zoom; else only the
    ///         camera and the marks are set
    const Scene& compose(const Model& model, PixelSize size, float text_px,
                         Picture which = Picture::own);
    /// Whether the last call changed anything that shows.
    [[nodiscard]] bool changed() const { return changed_; }

  private:
    /// Everything that the picture depends on.
    struct Asked {
        std::shared_ptr<const OpenFly> fly{};
        int moment = none;
        WrapsView view{};
        bool left_handed = false;
        Theme theme = Theme::paper;
        PixelSize size{};
        float text_px = 0.0F;
        double turns = 0.0;
        bool working = false, count_turns = false, inches = false;
        double depth_m = 0.0;
        std::array<bool, overlay_count> overlays{};
        friend bool operator==(const Asked&, const Asked&) = default;
    };
    /// What the meshes depend on.
    struct Built {
        std::shared_ptr<const OpenFly> fly{};
        int moment = none;
        int fineness = 0;
        friend bool operator==(const Built&, const Built&) = default;
    };
    void frame(const Asked& asked);

    std::optional<Asked> asked_{};
    std::optional<Built> built_{};
    std::shared_ptr<const OpenFly> framed_{};
    std::vector<glm::vec3> outline_{}; ///< of the finished fly, roughly
    FlyModel model_{};
    Scene scene_{};
    std::uint64_t stamp_ = 0;
    bool changed_ = false;
};

} // namespace wrapwright
