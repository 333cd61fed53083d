#pragma once
// The one comparison of floating-point numbers in the tests: an absolute tolerance, with a reason
// beside it. doctest's Approx is not used: its default scale accepts 2e-6 as 9e-6.

#include <cmath>

namespace wrapwright::test {

/// Whether actual lies within tolerance of expected; never true for a NaN.
inline bool within(double actual, double expected, double tolerance) {
    return std::abs(actual - expected) <= tolerance;
}

/// Whether actual lies within a share of expected, such as 1e-6 for one part in a million.
inline bool within_share(double actual, double expected, double share) {
    return std::abs(actual - expected) <= share * std::abs(expected);
}

} // namespace wrapwright::test
