#pragma once
// How fine a strand's mesh must be to look round, and what its flat pieces leave of its volume.

#include "core/units/quantity.h"

namespace wrapwright {

/// Sides of a round section whose chords stay within `chord_error` of the circle; 6 to max_sides.
/// Source  the middle of a side lies r (1 - cos(pi / n)) inside the circle, solved for n
[[nodiscard]] int sides_for(Length radius, Length chord_error);

/// Steps for each turn of a helix whose strand's outer side stays within `chord_error`; at least 6.
/// Source  as above on the outermost circle, radius 1/curvature + strand radius, over the angle
///         that the helix turns in one turn, 2 pi R / sqrt(R^2 + c^2)
[[nodiscard]] int steps_per_turn_for(Length radius, Length pitch, Length strand_radius,
                                     Length chord_error);

/// Area of an n-gon over that of its circle.
/// Error   exact
[[nodiscard]] double section_share(int sides);

/// Volume of a swept mesh over that of its curved strand, when each step turns by an angle.
/// Error   to the fourth order of the angle; sections as above come on top
/// Source  a chord step at radius R sweeps R^2 sin(D) where the arc sweeps R^2 D
[[nodiscard]] double path_share(Angle turning);

/// What to multiply a strand's radius by so that its mesh has the strand's volume.
[[nodiscard]] double true_volume_scale(int sides, Angle turning);

} // namespace wrapwright
