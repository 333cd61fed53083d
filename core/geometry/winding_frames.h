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

/// The numbers of a batch of frames, each in a column of its own. A strand of even thickness does
/// not lean, so the centres' second halves are zero.
struct FrameColumns {
    alignas(32) FrameColumn centre[3];
    alignas(32) FrameColumn height[6]; ///< position, normal
    alignas(32) FrameColumn width[6];
};

/// See SweepKernels::winding_frames. Every line is a column over the rings, so that compilers do
/// several at a time; vectors of three would hide the columns from them.
///
/// The strand's frame is worked out in the basis (along, outward, forward) of the core at its
/// angle, which is orthonormal: direction (a, b, c), surface normal (-slope, wide, 0).
/// `straight`: the axis does not turn on this stretch.
template <class Sum, bool straight>
[[gnu::always_inline]] inline void
fill_columns(const Stretch& __restrict s, const WindingStart& __restrict start,
             const WindingSteps& __restrict steps, int rings, FrameColumns& __restrict columns) {
    constexpr auto sum = [](float a, float b, float c)
                             __attribute__((always_inline)) { return Sum::of(a, b, c); };
    // Two passes: in the first the square roots and divisions of several turns of the loop overlap,
    // which they would not if each turn were as long as both together.
    alignas(32) FrameColumn cosines, sines, places, radii, n_outs, n_alongs, w_alongs, w_outs,
        w_forwards;
    const float around = steps.around;
    for (int k = 0; k < rings; ++k) {
        const float cosine = sum(start.cosine, steps.cosine[k], -(start.sine * steps.sine[k]));
        const float sine = sum(start.sine, steps.cosine[k], start.cosine * steps.sine[k]);
        const float f = sum(start.pitch, steps.place[k], start.place);
        const float pitch = start.pitch * steps.pitch[k];
        const float radius = sum(f, s.radius_gain, s.radius);
        const float slope = sum(f, s.slope_gain, s.slope);
        // On a bent axis what lies outside the bend is farther from ring to ring.
        const float wide = sum(-radius, sum(cosine, s.bend_up, sine * s.bend_side), 1.0F);
        const float a = pitch * wide;
        const float b = pitch * slope;
        const float c = around * radius;
        const float per_n = 1.0F / std::sqrt(sum(slope, slope, wide * wide));
        const float per_tn = per_n / std::sqrt(sum(a, a, sum(b, b, c * c)));
        const float w_across = -per_tn * c;
        cosines[k] = cosine;
        sines[k] = sine;
        places[k] = f;
        radii[k] = radius;
        n_outs[k] = per_n * wide;
        n_alongs[k] = -per_n * slope;
        w_alongs[k] = w_across * wide;
        w_outs[k] = w_across * slope;
        w_forwards[k] = per_tn * sum(a, wide, b * slope);
    }
    for (int k = 0; k < rings; ++k) {
        const float cosine = cosines[k];
        const float sine = sines[k];
        const float f = places[k];
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
        const float radius = radii[k];
        const float n_out = n_outs[k];
        const float n_along = n_alongs[k];
        const float w_along = w_alongs[k];
        const float w_out = w_outs[k];
        const float w_forward = w_forwards[k];
        const float section = sum(f, s.section_gain, s.section);
        const float height_x = sum(n_out, out_x, n_along * along_x);
        const float height_y = sum(n_out, out_y, n_along * along_y);
        const float height_z = sum(n_out, out_z, n_along * along_z);
        const float width_x = sum(w_forward, forward_x, sum(w_out, out_x, w_along * along_x));
        const float width_y = sum(w_forward, forward_y, sum(w_out, out_y, w_along * along_y));
        const float width_z = sum(w_forward, forward_z, sum(w_out, out_z, w_along * along_z));
        columns.centre[0][k] = sum(radius, out_x, sum(f, s.axis_gain.x, s.axis.x));
        columns.centre[1][k] = sum(radius, out_y, sum(f, s.axis_gain.y, s.axis.y));
        columns.centre[2][k] = sum(radius, out_z, sum(f, s.axis_gain.z, s.axis.z));
        columns.height[0][k] = section * height_x;
        columns.height[1][k] = section * height_y;
        columns.height[2][k] = section * height_z;
        columns.height[3][k] = height_x;
        columns.height[4][k] = height_y;
        columns.height[5][k] = height_z;
        columns.width[0][k] = section * width_x;
        columns.width[1][k] = section * width_y;
        columns.width[2][k] = section * width_z;
        columns.width[3][k] = width_x;
        columns.width[4][k] = width_y;
        columns.width[5][k] = width_z;
    }
}

/// Rounds up to a whole number of eights.
constexpr int eights(int rings) { return (rings + 7) / 8 * 8; }

template <class Sum>
[[gnu::always_inline]] inline void fill_columns(const Stretch& s, const WindingStart& start,
                                                const WindingSteps& steps, int rings,
                                                FrameColumns& columns) {
    if (s.straight) {
        fill_columns<Sum, true>(s, start, steps, rings, columns);
    } else {
        fill_columns<Sum, false>(s, start, steps, rings, columns);
    }
}

} // namespace wrapwright
