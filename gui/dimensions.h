#pragma once
// The lengths that a tyer checks, drawn beside the fly: plain data for the scene's overlay.
//
// Every number is read from the record; nothing is measured on the mesh.

#include "core/tying/record.h"
#include "gui/scene.h"

namespace wrapwright {

/// A length to be shown, in the plane of the hook.
struct Measure {
    enum class Where : unsigned char {
        row,   ///< along x, in a row of its own above the fly
        beside ///< beside what it measures, moved off by `away`
    };
    Where where = Where::row;
    glm::vec2 from{0.0F}, to{0.0F}; ///< mm
    glm::vec2 away{0.0F};           ///< mm
    std::string label;
};

/// What can be measured after that moment, on the first base: rib pitch, tail, wing, body, shank
/// (the rows, from the fly upwards), gape, hackle, bead. A number that nobody measured says
/// "about".
/// Valid   as build_fly
[[nodiscard]] std::vector<Measure> measures_of(const Pattern& pattern, const Tied& tied,
                                               int moment);

/// Room that the measures, the ruler and their labels need round the fly.
[[nodiscard]] Margins margins_for(const std::vector<Measure>& measures, PixelSize size,
                                  float text_px);

/// Adds the measures, a ruler along the shank and the zone to leave free behind the eye.
///
/// Labels that would lie over one another are moved apart.
/// Valid   a scene with camera, size and text_px set, seen straight from the side; `low` and `high`
///         are the fly's bounds, mm
void add_dimensions(const std::vector<Measure>& measures, const BaseRun& base,
                    const std::array<float, 3>& low, const std::array<float, 3>& high,
                    Scene& scene);

/// The place that a label takes, in pixels from the upper left: a little more than its letters.
struct LabelBox {
    glm::vec2 low{0.0F}, high{0.0F};
};
[[nodiscard]] LabelBox label_box(const Scene& scene, const OverlayLabel& label);

} // namespace wrapwright
