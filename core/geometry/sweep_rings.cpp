#include "core/geometry/sweep_rings.h"

#include "core/assert.h"

#include <cstdint>
#include <cstring>

namespace wrapwright {

namespace {

// Beyond what a core's own caches hold, storing past them is faster: a plain store first reads the
// line that it overwrites, and waits for it while the next frames could be computed (measured on a
// core with 1 MB: level at 1.4 MB, a quarter faster at 4 MB, half the time at 18 MB).
constexpr std::size_t streaming_bytes = std::size_t{2} << 20;

} // namespace

RingWriter::RingWriter(const Section& section, int points, std::span<Vertex> out)
    : section_(section), kernels_(best_kernels()), next_(out.data()->position), left_(points),
      streamed_(out.size_bytes() >= streaming_bytes && section.sides % 4 == 0 &&
                reinterpret_cast<std::uintptr_t>(out.data()) % 32 == 0) {
    WW_ASSERT(section.sides >= 3 && section.sides <= max_sides);
    WW_ASSERT(out.size() ==
              static_cast<std::size_t>(points) * static_cast<std::size_t>(section.sides));
}

void RingWriter::write(const Frames& frames, int count) {
    left_ -= count;
    WW_ASSERT(left_ >= 0);
    const int floats = 6 * section_.sides;
    const bool overruns = left_ == 0 && section_.sides % 4 != 0;
    const int plain = overruns ? count - 1 : count;
    kernels_.write_rings(frames.data(), plain, section_, next_, streamed_);
    next_ += static_cast<std::ptrdiff_t>(plain) * floats;
    if (left_ == 0 && streamed_) kernels_.settle();
    if (overruns) { // the buffer ends with this ring: by way of one that has room
        alignas(32) float ring[6 * max_sides];
        kernels_.write_rings(&frames[static_cast<std::size_t>(plain)], 1, section_, ring, false);
        std::memcpy(next_, ring, static_cast<std::size_t>(floats) * sizeof(float));
    }
}

} // namespace wrapwright
