#pragma once
// A generator for property tests: the same sequence everywhere.

namespace wrapwright::test {

/// Source  the 64-bit linear congruential generator of Knuth's MMIX, from memory; its upper bits
struct Dice {
    unsigned long long state;
    int roll(int sides) {
        state = state * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<int>((state >> 33U) % static_cast<unsigned long long>(sides));
    }
    double between(double low, double high) {
        return low + (high - low) * roll(1 << 30) / (1 << 30);
    }
};

} // namespace wrapwright::test
