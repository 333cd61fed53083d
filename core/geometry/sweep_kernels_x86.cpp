#include "core/geometry/sweep_kernels.h"

#if defined(__x86_64__)

#include "core/geometry/winding_frames.h"

#include <cstddef>
#include <immintrin.h>

namespace wrapwright {

namespace {

// Eight rows from eight columns, a Frame apart: the transpose of a square of eight.
[[gnu::target("avx2,fma"), gnu::always_inline]] inline void store_rows(const __m256 (&x)[8],
                                                                       float* rows) {
    __m256 quads[8]; // row i of columns 0-3, row i + 4 of them; then likewise of columns 4-7
    for (int i = 0; i < 8; i += 4) {
        const __m256 a = _mm256_unpacklo_ps(x[i], x[i + 1]);
        const __m256 b = _mm256_unpackhi_ps(x[i], x[i + 1]);
        const __m256 c = _mm256_unpacklo_ps(x[i + 2], x[i + 3]);
        const __m256 d = _mm256_unpackhi_ps(x[i + 2], x[i + 3]);
        quads[i] = _mm256_shuffle_ps(a, c, 0x44);
        quads[i + 1] = _mm256_shuffle_ps(a, c, 0xEE);
        quads[i + 2] = _mm256_shuffle_ps(b, d, 0x44);
        quads[i + 3] = _mm256_shuffle_ps(b, d, 0xEE);
    }
    constexpr std::ptrdiff_t apart = sizeof(Frame) / sizeof(float);
    for (int i = 0; i < 4; ++i) {
        _mm256_store_ps(rows + apart * i, _mm256_permute2f128_ps(quads[i], quads[i + 4], 0x20));
        _mm256_store_ps(rows + apart * (i + 4),
                        _mm256_permute2f128_ps(quads[i], quads[i + 4], 0x31));
    }
}

[[gnu::target("avx2,fma")]] void winding_frames_avx2(const Stretch& stretch,
                                                     const WindingStart& start,
                                                     const WindingSteps& steps, int count,
                                                     Frame* frames) {
    const int rings = eights(count);
    FrameColumns columns;
    fill_columns<FusedSum>(stretch, start, steps, rings, columns);
    const __m256 zero = _mm256_setzero_ps();
    for (int j = 0; j < rings; j += 8) {
        __m256 x[8] = {zero, zero, zero, zero, zero, zero, zero, zero};
        for (int i = 0; i < 3; ++i) x[i] = _mm256_load_ps(columns.centre[i] + j);
        store_rows(x, frames[j].centre);
        for (int i = 0; i < 6; ++i) x[i] = _mm256_load_ps(columns.height[i] + j);
        store_rows(x, frames[j].height);
        for (int i = 0; i < 6; ++i) x[i] = _mm256_load_ps(columns.width[i] + j);
        store_rows(x, frames[j].width);
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

// Four vertices are 24 floats, three registers; each row of six is laid out once in that period.
template <bool streamed>
[[gnu::target("avx2,fma")]] void write_rings_avx2(const Frame* frames, int count,
                                                  const Section& section, float* out) {
    const __m256i p0 = _mm256_setr_epi32(0, 1, 2, 3, 4, 5, 0, 1);
    const __m256i p1 = _mm256_setr_epi32(2, 3, 4, 5, 0, 1, 2, 3);
    const __m256i p2 = _mm256_setr_epi32(4, 5, 0, 1, 2, 3, 4, 5);
    const int floats = 6 * section.sides;
    const float* c = section.along_height.data();
    const float* s = section.along_width.data();
    for (int j = 0; j < count; ++j, out += floats) {
        const __m256 o = _mm256_load_ps(frames[j].centre);
        const __m256 h = _mm256_load_ps(frames[j].height);
        const __m256 w = _mm256_load_ps(frames[j].width);
        const __m256 o0 = _mm256_permutevar8x32_ps(o, p0);
        const __m256 o1 = _mm256_permutevar8x32_ps(o, p1);
        const __m256 o2 = _mm256_permutevar8x32_ps(o, p2);
        const __m256 h0 = _mm256_permutevar8x32_ps(h, p0);
        const __m256 h1 = _mm256_permutevar8x32_ps(h, p1);
        const __m256 h2 = _mm256_permutevar8x32_ps(h, p2);
        const __m256 w0 = _mm256_permutevar8x32_ps(w, p0);
        const __m256 w1 = _mm256_permutevar8x32_ps(w, p1);
        const __m256 w2 = _mm256_permutevar8x32_ps(w, p2);
        for (int k = 0; k < floats; k += 24) {
            const __m256 v0 = _mm256_fmadd_ps(_mm256_load_ps(c + k), h0, o0);
            const __m256 v1 = _mm256_fmadd_ps(_mm256_load_ps(c + k + 8), h1, o1);
            const __m256 v2 = _mm256_fmadd_ps(_mm256_load_ps(c + k + 16), h2, o2);
            store8<streamed>(out + k, _mm256_fmadd_ps(_mm256_load_ps(s + k), w0, v0));
            store8<streamed>(out + k + 8, _mm256_fmadd_ps(_mm256_load_ps(s + k + 8), w1, v1));
            store8<streamed>(out + k + 16, _mm256_fmadd_ps(_mm256_load_ps(s + k + 16), w2, v2));
        }
    }
}

[[gnu::target("avx2,fma")]] void write_rings_avx2(const Frame* frames, int count,
                                                  const Section& section, float* out,
                                                  bool streamed) {
    if (streamed) {
        write_rings_avx2<true>(frames, count, section, out);
    } else {
        write_rings_avx2<false>(frames, count, section, out);
    }
}

} // namespace

SweepKernels best_kernels() {
    return __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma")
               ? SweepKernels{winding_frames_avx2, write_rings_avx2, [] { _mm_sfence(); }}
               : portable_kernels();
}

} // namespace wrapwright

#endif
