#include "core/geometry/sweep_kernels.h"

#include "core/geometry/winding_frames.h"

#include <cstring>

namespace wrapwright {

namespace {

void winding_frames_portable(const Stretch& stretch, const WindingStart& start,
                             const WindingSteps& steps, int first, int count, Frames& frames) {
    if (stretch.straight) {
        winding_frames_loop<PlainSum, true>(stretch, start, steps, first, count, frames);
    } else {
        winding_frames_loop<PlainSum, false>(stretch, start, steps, first, count, frames);
    }
}

// Four floats, in one register on x86-64, ARM64 and wasm with SIMD.
using Float4 = float __attribute__((vector_size(16)));

Float4 load4(const float* p) {
    Float4 v;
    std::memcpy(&v, p, sizeof v);
    return v;
}

void store4(float* p, Float4 v) { std::memcpy(p, &v, sizeof v); }

// A vector's components in the period of two vertices, three registers.
struct Period4 {
    Float4 v0, v1, v2;
};

Period4 lay(const Frames::Column (&columns)[3], int j) {
    const float x = columns[0][j];
    const float y = columns[1][j];
    const float z = columns[2][j];
    return {Float4{x, y, z, x}, Float4{y, z, x, y}, Float4{z, x, y, z}};
}

template <bool leaning>
void write_rings_portable(const Frames& frames, int first, int count, const Section& section,
                          float* out) {
    const int floats = 6 * section.sides;
    for (int j = first; j < first + count; ++j, out += floats) {
        const auto [c0, c1, c2] = lay(frames.centre, j);
        const auto [n0, n1, n2] = lay(frames.height, j);
        const auto [b0, b1, b2] = lay(frames.width, j);
        const auto [l0, l1, l2] = leaning ? lay(frames.lean, j) : Period4{};
        const Float4 r = Float4{} + frames.radius[j];
        const Float4 u = Float4{} + (leaning ? frames.upright[j] : 1.0F);
        // The first three of every six floats are a position, the others a normal.
        const Float4 o0 = __builtin_shufflevector(c0, l0, 0, 1, 2, 7);
        const Float4 o1 = __builtin_shufflevector(c1, l1, 4, 5, 2, 3);
        const Float4 o2 = __builtin_shufflevector(c2, l2, 0, 5, 6, 7);
        const Float4 s0 = __builtin_shufflevector(r, u, 0, 1, 2, 7);
        const Float4 s1 = __builtin_shufflevector(r, u, 4, 5, 2, 3);
        const Float4 s2 = __builtin_shufflevector(r, u, 0, 5, 6, 7);
        const Float4 h0 = s0 * n0;
        const Float4 h1 = s1 * n1;
        const Float4 h2 = s2 * n2;
        const Float4 w0 = s0 * b0;
        const Float4 w1 = s1 * b1;
        const Float4 w2 = s2 * b2;
        const float* a = section.along_height.data();
        const float* d = section.along_width.data();
        for (int k = 0; k < floats; k += 12) {
            store4(out + k, o0 + (load4(a + k) * h0 + load4(d + k) * w0));
            store4(out + k + 4, o1 + (load4(a + k + 4) * h1 + load4(d + k + 4) * w1));
            store4(out + k + 8, o2 + (load4(a + k + 8) * h2 + load4(d + k + 8) * w2));
        }
    }
}

void write_rings_portable(const Frames& frames, int first, int count, const Section& section,
                          float* out, bool leaning, bool /*streamed*/) {
    if (leaning) {
        write_rings_portable<true>(frames, first, count, section, out);
    } else {
        write_rings_portable<false>(frames, first, count, section, out);
    }
}

} // namespace

SweepKernels portable_kernels() { return {winding_frames_portable, write_rings_portable}; }

#if !defined(__x86_64__)
SweepKernels best_kernels() { return portable_kernels(); }
#endif

} // namespace wrapwright
