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
};

} // namespace wrapwright::test
