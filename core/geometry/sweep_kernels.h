#pragma once
// The two inner loops of the sweeps, for the processor at hand. Internal to core/geometry.
//
// Each exists as plain C++ and, on x86-64, once more with eight floats at a time. Both do the same
// products and sums in the same order, so their results are the same to the last bit.

#include "core/geometry/sweep.h"

namespace wrapwright {

/// Frames of a batch of rings, computed before any ring is written: the square roots and divisions
/// of many rings then overlap (measured, 5 times the speed of one ring after the other).
struct Frames {
    static constexpr int capacity = 32;
    static constexpr int spare = 8; ///< columns are filled in eights, so the last may run over
    using Column = float[capacity + spare];
    alignas(32) Column centre[3]; ///< x, y, z
    alignas(32) Column height[3]; ///< unit normal
    alignas(32) Column width[3];  ///< unit binormal
    alignas(32) Column radius;    ///< scales the section
    alignas(32) Column lean[3];   ///< added to each normal, only where the radius changes
    alignas(32) Column upright;   ///< scales the rest of it, likewise
};

/// The core between two knots, as values at the first and what they gain to the second.
struct Stretch {
    glm::vec3 axis, axis_gain;
    glm::vec3 along, along_gain;
    glm::vec3 up, up_gain;
    glm::vec3 bend; ///< d along / d z, 1/mm
    float radius, radius_gain;
    float section, section_gain;
    bool straight;           ///< along and up gain nothing
    float slope, slope_gain; ///< d radius / d z, linear too, so that normals run smoothly
};

/// Where some rings of a winding start.
struct WindingStart {
    float cosine, sine; ///< of the angle round the core
    float place;        ///< share of the stretch
    float pitch;        ///< along the core, mm a turn
};

/// What each further ring adds to the start; the same wherever they start.
struct WindingSteps {
    using Column = float[Frames::capacity + Frames::spare];
    Column cosine, sine; ///< of the angle gained
    Column place;        ///< gained, in stretches, for a pitch of 1 mm
    Column pitch;        ///< over that of the start
    float around;        ///< mm of circumference in a turn, for a radius of 1 mm
};

struct SweepKernels {
    /// Frames of a winding within one stretch, the first of them into row `first`.
    void (*winding_frames)(const Stretch& stretch, const WindingStart& start,
                           const WindingSteps& steps, int first, int count, Frames& frames);
    /// Rings from the frames `first` on. `leaning`: read lean and upright. `streamed`: store past
    /// the caches.
    ///
    /// A ring whose sides are no multiple of four runs over into the next, so the caller leaves
    /// room for 18 floats behind the last.
    /// Valid   streamed only with sides a multiple of four and `out` aligned to 32 bytes
    void (*write_rings)(const Frames& frames, int first, int count, const Section& section,
                        float* out, bool leaning, bool streamed);
};

/// The plain C++ loops, for every target.
[[nodiscard]] SweepKernels portable_kernels();

/// The fastest that this processor has.
[[nodiscard]] SweepKernels best_kernels();

} // namespace wrapwright
