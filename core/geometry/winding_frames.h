#pragma once
// The frames of a winding as one loop over columns, to be compiled for several processors.

#include "core/geometry/sweep_kernels.h"

#include <cmath>

namespace wrapwright {

/// Product and sum with a rounding each: the same everywhere.
struct PlainSum {
    [[gnu::always_inline]] static float of(float a, float b, float c) { return a * b + c; }
};

/// Product and sum rounded once, for processors that do both in one instruction.
struct FusedSum {
    [[gnu::always_inline]] static float of(float a, float b, float c) {
        return __builtin_fmaf(a, b, c);
    }
};

/// See SweepKernels::winding_frames. Every line is a column over the rings, so that compilers do
/// several at a time; vectors of three would hide the columns from them.
///
/// The strand's frame is worked out in the basis (along, outward, forward) of the core at its
/// angle, which is orthonormal: direction (a, b, c), surface normal (-slope, wide, 0).
/// `straight`: the axis does not turn on this stretch.
template <class Sum, bool straight>
[[gnu::always_inline]] inline void
winding_frames_loop(const Stretch s, const WindingStart start, const WindingSteps& __restrict steps,
                    int first, int count, Frames& __restrict frames) {
    constexpr auto sum = [](float a, float b, float c)
                             __attribute__((always_inline)) { return Sum::of(a, b, c); };
    const float around = steps.around;
    const int eights = (count + Frames::spare - 1) / Frames::spare * Frames::spare;
    for (int k = 0; k < eights; ++k) {
        const float cosine = sum(start.cosine, steps.cosine[k], -(start.sine * steps.sine[k]));
        const float sine = sum(start.sine, steps.cosine[k], start.cosine * steps.sine[k]);
        const float f = sum(start.pitch, steps.place[k], start.place);
        const float pitch = start.pitch * steps.pitch[k];
        const float along_x = straight ? s.along.x : sum(f, s.along_gain.x, s.along.x);
        const float along_y = straight ? s.along.y : sum(f, s.along_gain.y, s.along.y);
        const float along_z = straight ? s.along.z : sum(f, s.along_gain.z, s.along.z);
        const float up_x = straight ? s.up.x : sum(f, s.up_gain.x, s.up.x);
        const float up_y = straight ? s.up.y : sum(f, s.up_gain.y, s.up.y);
        const float up_z = straight ? s.up.z : sum(f, s.up_gain.z, s.up.z);
        const float side_x = sum(along_y, up_z, -(along_z * up_y));
        const float side_y = sum(along_z, up_x, -(along_x * up_z));
        const float side_z = sum(along_x, up_y, -(along_y * up_x));
        const float out_x = sum(cosine, up_x, sine * side_x);
        const float out_y = sum(cosine, up_y, sine * side_y);
        const float out_z = sum(cosine, up_z, sine * side_z);
        const float forward_x = sum(cosine, side_x, -(sine * up_x));
        const float forward_y = sum(cosine, side_y, -(sine * up_y));
        const float forward_z = sum(cosine, side_z, -(sine * up_z));
        const float radius = sum(f, s.radius_gain, s.radius);
        const float slope = sum(f, s.slope_gain, s.slope);
        // On a bent axis what lies outside the bend is farther from ring to ring.
        const float bend = sum(s.bend.x, out_x, sum(s.bend.y, out_y, s.bend.z * out_z));
        const float wide = straight ? 1.0F : sum(-radius, bend, 1.0F);
        const float a = pitch * wide;
        const float b = pitch * slope;
        const float c = around * radius;
        const float per_n = 1.0F / std::sqrt(sum(slope, slope, wide * wide));
        const float per_tn = per_n / std::sqrt(sum(a, a, sum(b, b, c * c)));
        const float n_out = per_n * wide;
        const float n_along = -per_n * slope;
        const float w_across = -per_tn * c;
        const float w_along = w_across * wide;
        const float w_out = w_across * slope;
        const float w_forward = per_tn * sum(a, wide, b * slope);
        const int j = first + k;
        frames.centre[0][j] = sum(radius, out_x, sum(f, s.axis_gain.x, s.axis.x));
        frames.centre[1][j] = sum(radius, out_y, sum(f, s.axis_gain.y, s.axis.y));
        frames.centre[2][j] = sum(radius, out_z, sum(f, s.axis_gain.z, s.axis.z));
        frames.height[0][j] = sum(n_out, out_x, n_along * along_x);
        frames.height[1][j] = sum(n_out, out_y, n_along * along_y);
        frames.height[2][j] = sum(n_out, out_z, n_along * along_z);
        frames.width[0][j] = sum(w_forward, forward_x, sum(w_out, out_x, w_along * along_x));
        frames.width[1][j] = sum(w_forward, forward_y, sum(w_out, out_y, w_along * along_y));
        frames.width[2][j] = sum(w_forward, forward_z, sum(w_out, out_z, w_along * along_z));
        frames.radius[j] = sum(f, s.section_gain, s.section);
    }
}

} // namespace wrapwright
