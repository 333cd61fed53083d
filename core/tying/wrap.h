#pragma once
// One winding on a profile: turns, pitch, length of strand, and the profile that it leaves.

#include "core/recipe/op.h"
#include "core/tying/profile.h"

namespace wrapwright {

/// How a strand builds up.
enum class Build : unsigned char {
    section, ///< it keeps its height: wire, tinsel, quill, herl
    volume,  ///< its fibres spread and fill: thread, floss, yarn
};

/// What is wound, and what is known of how. Two of end, turns and pitch fix the third.
struct WrapAsk {
    Length from{};
    Length to{};
    bool has_to = false;
    double turns = 0.0;
    bool has_turns = false;
    Length pitch{};
    bool has_pitch = false;
    bool tailward = true; ///< the way to go where there is no `to`
    Spacing spacing = Spacing::touching;
    Length width{}, height{};
    Build build = Build::section;
    Area solid{};         ///< for Build::volume
    double packing = 0.7; ///< for Build::volume
};

/// What became of it.
struct Wrap {
    Length from{}, to{};
    double turns = 0.0;
    Length pitch{};      ///< mean
    double growth = 1.0; ///< ratio of successive pitches, end to end
    Length length{};     ///< of strand
    Length core{};       ///< mean diameter below
    double slope = 0.0;  ///< steepest tan below, over a window as wide as the strand
    Length slope_at{};
    Length step{};        ///< of diameter, across that window
    double grip = 0.0;    ///< friction needed there: tan(alpha) / sin(psi)
    double layers = 1.0;  ///< largest coverage: 1 is one touching layer
    bool clipped = false; ///< the wire ended first
};

/// Winds a strand on `below` and writes the profile that results into `above`.
///
/// `above` may be the same object as `below`, or nullptr where only the numbers are wanted. Slopes
/// are taken over `window` (0: not at all); within `held_end` of either end they do not count,
/// because the strand is held by thread there.
/// Units   m; places behind the eye
/// Valid   width, height > 0; places inside the profile (clipped otherwise)
/// Error   integration by cells: turns and length within (cell / span) of the exact integral; on a
///         profile that is flat or linear over the stretch better than 1e-6
/// Source  length per turn and touching pitch: core/geometry/helix.h; build-up by volume
///         conservation and by layers: derived in wrap.cpp
Wrap wrap(const Profile& below, Profile* above, const WrapAsk& ask, Length window = {},
          Length held_end = {});

/// The steepest tan of the profile between two places, over a window that wide, and where it is.
struct Steepest {
    double slope = 0.0;
    Length at{};
    Length step{}; ///< difference of diameters across the window
};
[[nodiscard]] Steepest steepest(const Profile& profile, Length from, Length to, Length window);

} // namespace wrapwright
