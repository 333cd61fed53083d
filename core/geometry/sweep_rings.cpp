#include "core/geometry/sweep_rings.h"

#include "core/assert.h"

#include <cstdint>
#include <cstring>

namespace wrapwright {

namespace {

// Beyond what a core's own caches hold, storing past them is faster, because a plain store first
// reads the line that it overwrites (measured: level at 9 MB, faster from 18 MB on).
constexpr std::size_t streaming_bytes = std::size_t{8} << 20;

} // namespace

RingWriter::RingWriter(const Section& section, int points, std::span<Vertex> out)
    : section_(section), kernels_(best_kernels()), next_(out.data()->position), left_(points),
      streamed_(out.size_bytes() >= streaming_bytes && section.sides % 4 == 0 &&
                reinterpret_cast<std::uintptr_t>(out.data()) % 32 == 0) {
    WW_ASSERT(section.sides >= 3 && section.sides <= max_sides);
    WW_ASSERT(out.size() ==
              static_cast<std::size_t>(points) * static_cast<std::size_t>(section.sides));
}

void RingWriter::write(const Frames& frames, int count, bool leaning) {
    left_ -= count;
    WW_ASSERT(left_ >= 0);
    const int floats = 6 * section_.sides;
    const bool overruns = left_ == 0 && section_.sides % 4 != 0;
    const int plain = overruns ? count - 1 : count;
    kernels_.write_rings(frames, 0, plain, section_, next_, leaning, streamed_);
    next_ += static_cast<std::ptrdiff_t>(plain) * floats;
    if (overruns) { // the buffer ends with this ring: by way of one that has room
        alignas(32) float ring[6 * max_sides];
        kernels_.write_rings(frames, plain, 1, section_, ring, leaning, false);
        std::memcpy(next_, ring, static_cast<std::size_t>(floats) * sizeof(float));
    }
}

} // namespace wrapwright
