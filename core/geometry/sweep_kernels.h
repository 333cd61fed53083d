#pragma once
// The two inner loops of the sweeps, for the processor at hand. Internal to core/geometry.
//
// Each exists as plain C++ and, on x86-64, once more with eight floats at a time. The latter rounds
// products and their sums once instead of twice, so the last bits differ.

#include "core/geometry/sweep.h"

#include <array>

namespace wrapwright {

/// One ring's frame: each vertex is centre + c height + s width, with c and s its section's
/// factors.
///
/// Like a vertex each is a position and a normal, then two floats that nobody reads. For a normal
/// the centre is what it leans along the strand, where the radius changes.
struct alignas(32) Frame {
    float centre[8];
    float height[8];
    float width[8];
};

/// Rings are written in batches, their frames first: the square roots and divisions of many rings
/// then overlap (measured, 5 times the speed of one ring after the other).
inline constexpr int batch_rings = 32;
/// Frames are computed in eights, so that the last eight may run over.
using Frames = std::array<Frame, batch_rings + 8>;
using FrameColumn = float[batch_rings + 8]; ///< one number of each

/// The core between two knots, as values at the first and what they gain to the second.
struct Stretch {
    glm::vec3 axis, axis_gain;
    glm::vec3 along, along_gain;
    glm::vec3 up, up_gain;
    float bend_up, bend_side; ///< how the axis turns towards them, 1/mm
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
    FrameColumn cosine, sine; ///< of the angle gained
    FrameColumn place;        ///< gained, in stretches, for a pitch of 1 mm
    FrameColumn pitch;        ///< over that of the start
    float around;             ///< mm of circumference in a turn, for a radius of 1 mm
};

struct SweepKernels {
    /// `count` frames of a winding within one stretch; those up to the next eight are spoilt.
    void (*winding_frames)(const Stretch& stretch, const WindingStart& start,
                           const WindingSteps& steps, int count, Frame* frames);
    /// Rings from frames. `streamed`: store past the caches, to be followed by `settle`.
    ///
    /// A ring whose sides are no multiple of four runs over into the next, so the caller leaves
    /// room for 18 floats behind the last.
    /// Valid   streamed only with sides a multiple of four and `out` aligned to 32 bytes
    void (*write_rings)(const Frame* frames, int count, const Section& section, float* out,
                        bool streamed);
    /// Makes what was stored past the caches visible to whoever reads it next.
    void (*settle)();
};

/// The plain C++ loops, for every target.
[[nodiscard]] SweepKernels portable_kernels();

/// The fastest that this processor has.
[[nodiscard]] SweepKernels best_kernels();

} // namespace wrapwright
