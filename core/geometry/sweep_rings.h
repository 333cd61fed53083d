#pragma once
// Where the rings of a sweep go. Internal to core/geometry.

#include "core/geometry/sweep_kernels.h"

namespace wrapwright {

/// Writes the rings of one tube in batches, by the fastest loop that its buffer allows.
class RingWriter {
  public:
    RingWriter(const Section& section, int points, std::span<Vertex> out);

    [[nodiscard]] const SweepKernels& kernels() const { return kernels_; }
    void write(const Frames& frames, int count);

  private:
    const Section& section_;
    SweepKernels kernels_;
    float* next_;
    int left_;
    bool streamed_;
};

} // namespace wrapwright
