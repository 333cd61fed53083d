#pragma once
// Whether the film of the surface can carry a fly: an upper bound, and what soaking leaves.

#include "core/water/water.h"

#include <string_view>
#include <vector>

namespace wrapwright {

/// How far a wetted surface lies below the level where it meets a slope: the capillary length.
/// Source  sqrt(gamma / (rho g))
[[nodiscard]] Length capillary_length(const Water& water);

/// The most that the film holds of a thin fibre lying on it, in N per metre of fibre.
///
/// Valid   0 <= contact <= pi
/// Source  2 gamma sin(min(contact, 90 degrees)): both sides' pull upwards at its steepest
[[nodiscard]] double film_hold(const Water& water, Angle contact);

/// The most that the film holds of one fibre that pierces it upright; never below 0.
///
/// Source  pi d gamma (-cos contact)
[[nodiscard]] Force tip_hold(const Water& water, Length diameter, Angle contact);

/// A stretch of the fly that may lie on the film: its ends along the shank and what it could carry.
struct Lying {
    Length from{}, to{};
    Force hold{};
};

enum class Floating : unsigned char {
    floats,         ///< lighter than the water that it displaces
    sinks_when_wet, ///< the film could carry it while it is dry and laid down flat
    sinks,          ///< not even the film could
};
[[nodiscard]] std::string_view name(Floating verdict);

struct FloatingCheck {
    Floating verdict = Floating::sinks;
    Force weight{};      ///< in water; negative: it is lifted
    Force film{};        ///< the most that the film could carry in balance
    double margin = 0.0; ///< film over weight; 0 where it floats by itself
};

/// Whether something of that weight in water floats, with its weight at `centre` along the shank.
///
/// Error   an upper bound: real flies are laid on less gently, and barbs sink through
/// Source  each stretch carries at most its hold; forces in balance about the weight's centre
[[nodiscard]] FloatingCheck floating(Force weight, Length centre, const std::vector<Lying>& lying);

} // namespace wrapwright
