#pragma once
// The inner loop of every sweep: one ring of vertices from a frame. Internal to core/geometry.

#include "core/geometry/sweep.h"

#include <cstring>

#if defined(__SSE__)
#include <xmmintrin.h>
#endif

namespace wrapwright {

/// One ring: vertex = centre + c height + s width for its position and likewise for its normal,
/// with c and s the section's factors.
struct Ring {
    glm::vec3 centre;
    glm::vec3 height;
    glm::vec3 width;
    glm::vec3 normal_centre;
    glm::vec3 normal_height;
    glm::vec3 normal_width;
};

// Four floats that compilers keep in one register on x86-64, ARM64 and wasm with SIMD, and split
// where there is none. Sums and products are the plain ones, so every target rounds alike.
using Float4 = float __attribute__((vector_size(16)));

inline Float4 load4(const float* p) {
    Float4 v;
    std::memcpy(&v, p, sizeof v);
    return v;
}

/// Stores past the cache when `streamed`: pays only for buffers too big for it.
template <bool streamed>
void store4(float* p, Float4 v) {
#if defined(__SSE__)
    if constexpr (streamed) {
        _mm_stream_ps(p, v);
        return;
    }
#endif
    std::memcpy(p, &v, sizeof v);
}

/// Writes section.sides vertices.
///
/// Two vertices are twelve floats, three registers; the frame is laid out once in that period.
/// Built in registers on purpose: small arrays written float by float and read back as vectors
/// stall on store forwarding (measured, half the speed).
/// Valid   streamed only with `out` aligned to 16 bytes and an even number of sides
template <bool streamed>
inline void write_ring(float* out, const Section& section, const Ring& r) {
    const Float4 o0{r.centre.x, r.centre.y, r.centre.z, r.normal_centre.x};
    const Float4 o1{r.normal_centre.y, r.normal_centre.z, r.centre.x, r.centre.y};
    const Float4 o2{r.centre.z, r.normal_centre.x, r.normal_centre.y, r.normal_centre.z};
    const Float4 h0{r.height.x, r.height.y, r.height.z, r.normal_height.x};
    const Float4 h1{r.normal_height.y, r.normal_height.z, r.height.x, r.height.y};
    const Float4 h2{r.height.z, r.normal_height.x, r.normal_height.y, r.normal_height.z};
    const Float4 w0{r.width.x, r.width.y, r.width.z, r.normal_width.x};
    const Float4 w1{r.normal_width.y, r.normal_width.z, r.width.x, r.width.y};
    const Float4 w2{r.width.z, r.normal_width.x, r.normal_width.y, r.normal_width.z};
    const float* c = section.along_height.data();
    const float* s = section.along_width.data();
    const int pairs = section.sides / 2;
    for (int k = 0; k < pairs; ++k, out += 12, c += 12, s += 12) {
        store4<streamed>(out, o0 + (load4(c) * h0 + load4(s) * w0));
        store4<streamed>(out + 4, o1 + (load4(c + 4) * h1 + load4(s + 4) * w1));
        store4<streamed>(out + 8, o2 + (load4(c + 8) * h2 + load4(s + 8) * w2));
    }
    if (section.sides % 2 != 0) {
        store4<false>(out, o0 + (load4(c) * h0 + load4(s) * w0));
        const Float4 rest = o1 + (load4(c + 4) * h1 + load4(s + 4) * w1);
        std::memcpy(out + 4, &rest, 2 * sizeof(float));
    }
}

} // namespace wrapwright
