#pragma once
// A picture of a fly as it is after one moment of its tying, composed as a scene.

#include "core/tying/record.h"
#include "gui/scene.h"

namespace wrapwright {

/// From where the fly is shown.
enum class PictureView : unsigned char {
    side,          ///< as its tyer sees it, true to scale
    three_quarter, ///< from before the eye and a little above
    top,
    eye, ///< the hook's eye to the camera
};

/// What a picture shows.
struct PictureOptions {
    PixelSize size{1600, 1000};
    PictureView view = PictureView::side;
    Angle turn{}; ///< of the fly about its shank, the top away from the tyer first
    bool left_handed = false;
    bool dimensions = false; ///< in millimetres, while the first base is worked on; in the plain
                             ///< side view alone
    Backdrop backdrop = Backdrop::light;
    Highlight highlight{};
    bool vise = true;
};

/// Builds the fly after that moment and a scene that shows it.
///
/// The frame is that of the finished fly, so that the pictures of all steps lie over one another.
/// `scene` refers to `model`, which must outlive it.
/// Valid   as build_fly; a size of 160 x 120 at least
void compose_picture(const Pattern& pattern, const Tied& tied, int moment,
                     const PictureOptions& options, FlyModel& model, Scene& scene);

} // namespace wrapwright
