#pragma once
// Numbers that look random and are the same on every run: no two fibres alike, no picture twice
// different.

#include <cstdint>

namespace wrapwright {

/// A stream of numbers that depends on its seeds alone.
/// Source  O'Neill, PCG: a family of simple fast space-efficient statistically good algorithms
///         for random number generation (2014), the RXS-M-XS 32-bit member
class Dice {
  public:
    explicit Dice(int a, int b = 0) {
        state_ = static_cast<std::uint32_t>(a) * 0x9E3779B9U + static_cast<std::uint32_t>(b);
        roll();
        roll();
    }
    /// Evenly in [0, 1).
    float even() { return static_cast<float>(roll() >> 8U) * (1.0F / 16777216.0F); }
    /// Evenly between two values.
    float between(float low, float high) { return low + (high - low) * even(); }
    /// About 0, mostly within +-0.5, never beyond +-1.
    float bell() { return (even() + even() + even()) * (2.0F / 3.0F) - 1.0F; }

  private:
    std::uint32_t roll() {
        state_ = state_ * 747796405U + 2891336453U;
        const std::uint32_t word = ((state_ >> ((state_ >> 28U) + 4U)) ^ state_) * 277803737U;
        return (word >> 22U) ^ word;
    }
    std::uint32_t state_ = 0;
};

/// A smooth wandering value of two coordinates in [-1, 1], period `around` in the second.
[[nodiscard]] inline float wander(float x, float y, int around, int seed) {
    const auto floor_of = [](float v) {
        const int i = static_cast<int>(v);
        return v < static_cast<float>(i) ? i - 1 : i;
    };
    const int i = floor_of(x);
    const int j = floor_of(y);
    const auto ease = [](float t) { return t * t * (3.0F - 2.0F * t); };
    const float u = ease(x - static_cast<float>(i));
    const float v = ease(y - static_cast<float>(j));
    const auto corner = [&](int a, int b) {
        const int wrapped = ((b % around) + around) % around;
        return Dice(a * 7919 + wrapped, seed).even() * 2.0F - 1.0F;
    };
    const float low = corner(i, j) * (1.0F - v) + corner(i, j + 1) * v;
    const float high = corner(i + 1, j) * (1.0F - v) + corner(i + 1, j + 1) * v;
    return low * (1.0F - u) + high * u;
}

} // namespace wrapwright
