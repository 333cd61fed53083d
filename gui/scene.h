#pragma once
// A picture to be drawn, as plain data: what platform/gl reads. No GL here.

#include "core/geometry/fly/model.h"
#include "gui/camera.h"

#include <cstdint>
#include <string>
#include <vector>

namespace wrapwright {

/// Light or dark behind the fly.
enum class Backdrop : unsigned char { light, dark };

/// What a line or label of the overlay is for; the theme gives it its colour.
enum class Ink : unsigned char {
    measure, ///< dimension lines and their labels
    faint,   ///< extension lines, ticks
    warning, ///< the no-go zone
};

/// How a line of the overlay ends.
enum class LineEnd : unsigned char { plain, arrows };

/// A line of the overlay between two points of the model.
struct OverlayLine {
    glm::vec3 from{0.0F}, to{0.0F}; ///< mm
    Ink ink = Ink::measure;
    LineEnd end = LineEnd::plain;
    float width_px = 1.0F;
};

/// A quadrilateral of the overlay, hatched.
struct OverlayHatch {
    std::array<glm::vec3, 4> corners{}; ///< mm, in order round it
    Ink ink = Ink::warning;
};

/// Where a label stands to its point.
enum class LabelSide : unsigned char { middle, left, right, above, below };

/// A text of the overlay at a point of the model.
struct OverlayLabel {
    glm::vec3 at{0.0F}; ///< mm
    std::string text;
    Ink ink = Ink::measure;
    LabelSide side = LabelSide::middle;
    bool plate = true; ///< on a little of the backdrop's colour, so that it reads over a line
    glm::vec2 shift_px{0.0F}; ///< from there, to the right and down
};

/// One act or part shown as it is, everything else calmer; with neither, all as it is.
struct Highlight {
    int part = -1;
    int act = -1;
};

/// One picture.
struct Scene {
    const FlyModel* model = nullptr; ///< must outlive the drawing
    std::uint64_t model_stamp = 0;   ///< another number for another model; 0: send it every time
    Camera camera{};
    PixelSize size{};
    Backdrop backdrop = Backdrop::light;
    Highlight highlight{};
    glm::vec3 light{1.0F}; ///< share of red, green and blue that reaches the eye
    int supersample = 2;   ///< each pixel is drawn as that many squared, 1 to 4; fewer
                           ///< where the picture is very large
    std::vector<OverlayLine> lines{};
    std::vector<OverlayHatch> hatches{};
    std::vector<OverlayLabel> labels{};
    float text_px = 15.0F; ///< height of the overlay's letters
};

} // namespace wrapwright
