#pragma once
// The force of the water on a fly: the sum over its parts, times one factor that a timed fall fits.

#include "core/water/water.h"

#include <glm/vec2.hpp>
#include <vector>

namespace wrapwright {

/// Wires, barbs or hairs that lie in the flow.
struct WetFibres {
    double count = 1.0;
    Length diameter{};
    Length length{};     ///< of one
    double across = 1.0; ///< sine of the angle between fibre and flow
    Area most{};     ///< disc or fan that they fill together, of which no more can drag; 0: none
    glm::dvec2 at{}; ///< m, middle of them in the plane of the hook
};

/// What of a fly the water presses on, falling head first along its shank.
struct WetShape {
    Length bead{};                   ///< diameter of the sphere in front; 0: none
    Area blunt{};                    ///< frontal area that no bead shelters
    Length skin_length{};            ///< of the body along the flow
    Area skin{};                     ///< wetted area of the body
    glm::dvec2 bead_at{}, body_at{}; ///< m, in the plane of the hook
    std::vector<WetFibres> fibres{}; ///< bend, hackle, tail, wing
    double factor = 1.0;             ///< on the whole: 1 until a fall was timed
};

/// The force at that speed.
///
/// Error   a whole fly +-25 to 30 % in the speed that follows, until one was timed: a bead shelters
///         the body, fibres sweep back
/// Valid   speed >= 0; strictly growing with it
/// Source  core/water/drag_law.h; fibres by the cross-flow principle: their normal speed alone; most
///         1.15 of a disc, blunt ends 0.95 (from memory)
/// Cost    some ten exponentials for each group of fibres; no allocation
[[nodiscard]] Force drag(const WetShape& shape, Speed speed, const Water& water);

/// Where the drag of all but the bead acts, as a mean weighted by force; `whole` takes the bead too.
///
/// Where nothing trails it is the bead's place.
[[nodiscard]] glm::dvec2 drag_centre(const WetShape& shape, Speed speed, const Water& water,
                                     bool whole);

/// A round line in the water, between fly and surface.
struct Tippet {
    Length thickness{};
    Length length{};                       ///< of it in the water; 0: no tippet
    Density density = grams_per_cm3(1.14); ///< nylon, Morton & Hearle, table 5.1
};

/// How the tippet follows the fly: nobody knows, but between the first two.
enum class TippetWay : unsigned char {
    axial,  ///< drawn along its own length
    bowed,  ///< the fly's speed at the fly, standing still at the surface
    across, ///< all of it pushed sideways at the fly's speed: the most that it can hold
};

/// The force on the tippet when the fly has that speed.
///
/// Valid   speed >= 0, thickness > 0 unless length is 0
/// Source  axial: Glauert and Lighthill's leading term 4 pi mu U / (ln(4 nu L / (U a^2)) - 1) per
///         length, with Blasius as a floor; bowed and across: cylinder_drag along it
[[nodiscard]] Force tippet_drag(const Tippet& tippet, TippetWay way, Speed speed,
                                const Water& water);

/// What the tippet weighs in the water.
[[nodiscard]] Force tippet_weight(const Tippet& tippet, const Water& water);

} // namespace wrapwright
