#pragma once
// Windings of a strand on a core: lengths, touching turns, counts, layers, ribs, grip.
//
// `radius` is that of the strand's centreline (centre_radius); `width` is the strand across its own
// run; `pitch` is along the core's axis, from turn to turn. core/geometry/helix_kernel.h has the
// bare formulas and their sources; here are kinds and refusals.

#include "core/result.h"
#include "core/units/quantity.h"

namespace wrapwright {

/// Radius at which a strand's centre runs: half of core diameter plus strand height.
[[nodiscard]] Length centre_radius(Length core_diameter, Length strand_height);

/// Length of strand in n turns on a cylinder.
/// Error   exact
[[nodiscard]] Length helix_length(double turns, Length radius, Length pitch);

/// Length of strand on a cone whose centreline radius runs from r0 to r1.
/// Error   exact
/// Fails   out_of_range unless the radii are >= 0 and not both 0, and along and pitch are positive
[[nodiscard]] Result<Length> cone_winding_length(Length r0, Length r1, Length along, Length pitch);

/// Pitch at which neighbouring turns just touch, on a core whose surface rises by `slope` (tan).
/// Error   turns 3e-5 of the width too close for a strand as wide as the core, 2e-4 for twice that
/// Fails   out_of_range where the strand is as wide as the core is round: it can only lie
/// lengthwise
[[nodiscard]] Result<Length> touching_pitch(Length width, Length radius, double slope = 0.0);

/// Whole turns at a pitch that fit on a stretch, one strand's width included.
[[nodiscard]] int turns_in_cover(Length cover, Length pitch, Length width, Length radius);

/// Stretch that n turns take, one strand's width included.
[[nodiscard]] Length span_of_turns(double turns, Length pitch, Length width, Length radius);

/// Turns that a strand of a given length makes: a feather stem, a piece of chenille.
[[nodiscard]] double turns_from_length(Length strand, Length radius, Length pitch);

/// Share of the core that an open winding hides, at most 1.
[[nodiscard]] double coverage(Length width, Length radius, Length pitch);

/// How sharply a helix bends and twists.
/// Units   1/m
struct HelixBend {
    double curvature = 0.0;
    double torsion = 0.0;
};

/// Source  do Carmo, Differential Geometry of Curves and Surfaces (1976), sec. 1-5, exercise 1:
///         R / (R^2 + c^2) and c / (R^2 + c^2) with c = p / 2 pi
/// Error   exact
[[nodiscard]] HelixBend helix_bend(Length radius, Length pitch);

/// How often two windings over the same stretch cross.
struct Crossings {
    double mean = 0.0; ///< over all starting places round the hook
    int least = 0;
    int most = 0;
};

/// Source  each turn of one relative to the other is one crossing: n1 + n2 turns of opposite
///         senses, |n1 - n2| of equal ones; where they start decides between floor and ceil
[[nodiscard]] Crossings crossings(double turns_a, double turns_b, bool same_sense);

/// Rib marks that show on the near side of n turns.
///
/// `phase` is the part of a turn from the tie-in to the line of sight, 0 < phase <= 1.
/// Mark k, from 0, lies at (k + phase) pitches.
/// Source  counts the whole turns k with k + phase <= n: floor(n - phase) + 1
[[nodiscard]] int visible_marks(double turns, double phase);

/// A rib whose gaps grow with the body.
struct GradedRib {
    double turns = 0.0;
    double pitch_share = 0.0; ///< pitch over local diameter
    double growth = 1.0;      ///< each gap over the one before
};

/// The rib whose pitch is a share of the local diameter, on a linear taper.
/// Fails   out_of_range unless all four are positive
[[nodiscard]] Result<GradedRib> graded_rib(Length d0, Length d1, Length along, double pitch_share);

/// The same rib when the turns are given and the share is wanted.
/// Fails   out_of_range unless all four are positive
[[nodiscard]] Result<GradedRib> graded_rib_of_turns(Length d0, Length d1, Length along,
                                                    double turns);

/// How much of its height each further layer of a winding adds.
struct Stacking {
    double rise = 1.0;
};
inline constexpr Stacking stacked{1.0};
/// Same hand, lying in the grooves: sqrt(3)/2, from three touching circles.
inline constexpr Stacking nested{0.86602540378443864676};
/// Wound straight back: in the grooves but for two crossings a turn. Between the two above; the
/// value itself is an estimate (derived), not measured.
inline constexpr Stacking back_wound{0.93};

/// Diameter over k layers of a strand.
[[nodiscard]] Length layer_diameter(Length core_diameter, Length strand_height, int layers,
                                    Stacking stacking);

/// Width of a soft round strand pressed to a height, as a rectangle with round ends of equal area.
/// Fails   out_of_range unless 0 < height <= diameter
[[nodiscard]] Result<Length> flattened_width(Length diameter, Length height);

/// Friction that a strand needs to hold on a taper.
///
/// `slope` is tan of the cone's half-angle, `to_generator` the angle between strand and taper line:
/// 90 degrees for a turn straight round.
/// Fails   out_of_range unless 0 < to_generator <= 90 degrees
[[nodiscard]] Result<double> friction_needed(double slope, Angle to_generator);

/// Tension behind a wrap over tension before it.
/// Source  capstan equation: e^(mu phi), from dT = mu T dphi
[[nodiscard]] double capstan_ratio(double friction, Angle wrapped);

} // namespace wrapwright
