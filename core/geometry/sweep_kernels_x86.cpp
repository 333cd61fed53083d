#include "core/geometry/sweep_kernels.h"

#if defined(__x86_64__)

#include "core/geometry/winding_frames.h"

#include <immintrin.h>

namespace wrapwright {

namespace {

[[gnu::target("avx2,fma")]] void winding_frames_avx2(const Stretch& stretch,
                                                     const WindingStart& start,
                                                     const WindingSteps& steps, int first,
                                                     int count, Frames& frames) {
    if (stretch.straight) {
        winding_frames_loop<FusedSum, true>(stretch, start, steps, first, count, frames);
    } else {
        winding_frames_loop<FusedSum, false>(stretch, start, steps, first, count, frames);
    }
}

template <bool streamed>
[[gnu::target("avx2,fma"), gnu::always_inline]] inline void store8(float* p, __m256 v) {
    if constexpr (streamed) {
        _mm256_stream_ps(p, v);
    } else {
        _mm256_storeu_ps(p, v);
    }
}

// A vector's components in the period of four vertices, 24 floats, three registers.
struct Period8 {
    __m256 v0, v1, v2;
};

[[gnu::target("avx2,fma"), gnu::always_inline]] inline Period8
lay(const Frames::Column (&columns)[3], int j) {
    const __m256 x = _mm256_broadcast_ss(&columns[0][j]);
    const __m256 y = _mm256_broadcast_ss(&columns[1][j]);
    const __m256 z = _mm256_broadcast_ss(&columns[2][j]);
    return {_mm256_blend_ps(_mm256_blend_ps(x, y, 0b10010010), z, 0b00100100),
            _mm256_blend_ps(_mm256_blend_ps(x, y, 0b00100100), z, 0b01001001),
            _mm256_blend_ps(_mm256_blend_ps(x, y, 0b01001001), z, 0b10010010)};
}

template <bool leaning, bool streamed>
[[gnu::target("avx2,fma")]] void write_rings_avx2(const Frames& frames, int first, int count,
                                                  const Section& section, float* out) {
    const int floats = 6 * section.sides;
    // Which of the floats belong to a normal: the last three of every six.
    constexpr int m0 = 0b00111000;
    constexpr int m1 = 0b10001110;
    constexpr int m2 = 0b11100011;
    for (int j = first; j < first + count; ++j, out += floats) {
        const Period8 c = lay(frames.centre, j);
        const Period8 n = lay(frames.height, j);
        const Period8 b = lay(frames.width, j);
        const __m256 r = _mm256_broadcast_ss(&frames.radius[j]);
        const __m256 u = leaning ? _mm256_broadcast_ss(&frames.upright[j]) : _mm256_set1_ps(1.0F);
        const Period8 l = leaning ? lay(frames.lean, j) : Period8{};
        const __m256 o0 = _mm256_blend_ps(c.v0, l.v0, m0);
        const __m256 o1 = _mm256_blend_ps(c.v1, l.v1, m1);
        const __m256 o2 = _mm256_blend_ps(c.v2, l.v2, m2);
        const __m256 s0 = _mm256_blend_ps(r, u, m0);
        const __m256 s1 = _mm256_blend_ps(r, u, m1);
        const __m256 s2 = _mm256_blend_ps(r, u, m2);
        const __m256 h0 = s0 * n.v0;
        const __m256 h1 = s1 * n.v1;
        const __m256 h2 = s2 * n.v2;
        const __m256 w0 = s0 * b.v0;
        const __m256 w1 = s1 * b.v1;
        const __m256 w2 = s2 * b.v2;
        const float* a = section.along_height.data();
        const float* d = section.along_width.data();
        for (int k = 0; k < floats; k += 24) {
            const __m256 v0 = _mm256_fmadd_ps(_mm256_load_ps(a + k), h0, o0);
            const __m256 v1 = _mm256_fmadd_ps(_mm256_load_ps(a + k + 8), h1, o1);
            const __m256 v2 = _mm256_fmadd_ps(_mm256_load_ps(a + k + 16), h2, o2);
            store8<streamed>(out + k, _mm256_fmadd_ps(_mm256_load_ps(d + k), w0, v0));
            store8<streamed>(out + k + 8, _mm256_fmadd_ps(_mm256_load_ps(d + k + 8), w1, v1));
            store8<streamed>(out + k + 16, _mm256_fmadd_ps(_mm256_load_ps(d + k + 16), w2, v2));
        }
    }
}

void write_rings_avx2(const Frames& frames, int first, int count, const Section& section,
                      float* out, bool leaning, bool streamed) {
    const auto write =
        leaning ? (streamed ? write_rings_avx2<true, true> : write_rings_avx2<true, false>)
                : (streamed ? write_rings_avx2<false, true> : write_rings_avx2<false, false>);
    write(frames, first, count, section, out);
}

} // namespace

SweepKernels best_kernels() {
    return __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma")
               ? SweepKernels{winding_frames_avx2, write_rings_avx2}
               : portable_kernels();
}

} // namespace wrapwright

#endif
