#pragma once
// The fly as masses and volumes in their places, from the record: what weight, balance and sinking
// are reckoned from.

#include "core/tying/record.h"
#include "core/water/water.h"

#include <glm/vec2.hpp>
#include <vector>

namespace wrapwright {

/// What one part has of one material; a hook has neither.
struct Portion {
    int part = none;
    int material = none;
    int base = 0; ///< of a hook
    Estimate<Mass> mass{};
    Estimate<Volume> volume{};   ///< solid; air in it not counted
    double density_spread = 0.0; ///< relative half-width of the solid's density
    bool weighed = false;        ///< its mass was; then mass and density go apart
};

/// A piece of a portion and where it is, in the plane of the hook: x tailward, y away from the point.
struct Lump {
    glm::dvec2 at{}; ///< m
    Mass mass{};
    Volume volume{};
    int portion = 0;
};

/// The whole fly.
struct FlyBody {
    std::vector<Portion> portions{}; ///< hooks first, then as they were drawn
    std::vector<Lump> lumps{};
    Estimate<Mass> mass{}; ///< the record's own, or as the whole fly was weighed
    Estimate<Volume> volume{};
    glm::dvec2 eye{};           ///< centre of the first eye's ring, m
    bool weighed_whole = false; ///< its parts' errors are then tied to each other
};

/// The fly of that record.
///
/// A winding lies about its wire; what stands free reaches from its root along its lean; a bundle's
/// middle is taken at half its length. Dubbing and herl count as solid fibre, soaked through.
/// Error   heights +-0.2 mm
/// Shape   the sum of the lumps is the sum of the portions, and that is the record's mass
[[nodiscard]] FlyBody fly_body(const Pattern& pattern, const Resolved& numbers, const Tied& tied);

/// Mass or volume summed over portions: those of one material straight, materials in quadrature.
[[nodiscard]] Estimate<Mass> sum_of_masses(const std::vector<Portion>& portions);
[[nodiscard]] Estimate<Volume> sum_of_volumes(const std::vector<Portion>& portions);

/// The weight in water of the whole fly, with what mass and volume leave open.
///
/// Source  first order, exact for a sum: W = sum (m - rho V) g; where mass comes from volume times
///         density the two errors are kept apart
[[nodiscard]] Estimate<Force> fly_weight(const FlyBody& body, const Water& water);

/// So many pieces weighed together, divided: one piece.
///
/// `readability` is the last digit of the scale.
/// Valid   pieces >= 1
/// Source  half a digit each for zero and reading, in quadrature, over the pieces; one tenth of a
///         piece in ten that differ, for what pieces differ (common practice, no source)
[[nodiscard]] Estimate<Mass> one_of_weighed(int pieces, Mass together, Mass readability);

/// The fly after it was weighed whole: each portion takes its share of the difference.
///
/// Source  least squares with the intervals as weights: a portion's share goes by the square of
///         its half-width, and its own interval narrows by what the weighing says of it; the
///         whole's interval is that of both together
/// Valid   whole.value > 0
void weigh_whole(FlyBody& body, const Estimate<Mass>& whole);

} // namespace wrapwright
