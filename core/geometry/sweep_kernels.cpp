#include "core/geometry/sweep_kernels.h"

#include "core/geometry/winding_frames.h"

#include <cstring>

namespace wrapwright {

namespace {

void winding_frames_portable(const Stretch& stretch, const WindingStart& start,
                             const WindingSteps& steps, int count, Frame* frames) {
    const int rings = eights(count);
    FrameColumns columns;
    fill_columns<PlainSum>(stretch, start, steps, rings, columns);
    for (int j = 0; j < rings; ++j) {
        Frame& frame = frames[j];
        for (int i = 0; i < 6; ++i) {
            frame.centre[i] = i < 3 ? columns.centre[i][j] : 0.0F;
            frame.height[i] = columns.height[i][j];
            frame.width[i] = columns.width[i][j];
        }
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

// Six floats over and over, in the period of two vertices: three registers.
struct Period4 {
    Float4 v0, v1, v2;
};

Period4 lay(const float* six) {
    const Float4 a = load4(six);
    const Float4 b = load4(six + 2);
    return {a, __builtin_shufflevector(b, a, 2, 3, 4, 5), b};
}

void write_rings_portable(const Frame* frames, int count, const Section& section, float* out,
                          bool /*streamed*/) {
    const int floats = 6 * section.sides;
    const float* c = section.along_height.data();
    const float* s = section.along_width.data();
    for (int j = 0; j < count; ++j, out += floats) {
        const Period4 o = lay(frames[j].centre);
        const Period4 h = lay(frames[j].height);
        const Period4 w = lay(frames[j].width);
        for (int k = 0; k < floats; k += 12) {
            store4(out + k, o.v0 + (load4(c + k) * h.v0 + load4(s + k) * w.v0));
            store4(out + k + 4, o.v1 + (load4(c + k + 4) * h.v1 + load4(s + k + 4) * w.v1));
            store4(out + k + 8, o.v2 + (load4(c + k + 8) * h.v2 + load4(s + k + 8) * w.v2));
        }
    }
}

} // namespace

SweepKernels portable_kernels() {
    return {winding_frames_portable, write_rings_portable, [] {}};
}

#if !defined(__x86_64__)
SweepKernels best_kernels() { return portable_kernels(); }
#endif

} // namespace wrapwright
