#include "core/tying/rows.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;

namespace {

constexpr int most = 37; // odd, so that wide registers end in the middle of a row

std::array<double, most> bumpy_core() {
    std::array<double, most> d{};
    for (int i = 0; i < most; ++i) {
        d[static_cast<std::size_t>(i)] = 5e-4 * (1.0 + 0.3 * std::sin(0.9 * i));
    }
    return d;
}

} // namespace

TEST_CASE("rows taken several cells at a time have the bits of cells taken one by one") {
    // Exact comparison: the same operations in the same order, and none of them fused.
    const std::array<double, most> d = bumpy_core();
    const double cell = 6e-5, w = 2.3e-4, h = 4e-5, pi = std::numbers::pi;
    for (const int n : {1, 2, 3, 4, 5, 8, 11, most}) {
        CAPTURE(n);
        std::array<double, most> l{}, nu{}, even{}, paced{}, grown{};
        grown.fill(1e-4);
        rows::lengthening(d.data(), n, cell, l.data());
        rows::touching_density(d.data(), l.data(), n, w, h, nu.data());
        rows::even_lengths(d.data(), l.data(), n, h, 900.0, even.data());
        rows::paced_lengths(d.data(), l.data(), nu.data(), grown.data(), n, h, paced.data());
        for (int i = 0; i < n; ++i) {
            const auto k = static_cast<std::size_t>(i);
            const int a = std::max(0, i - 1), b = std::min(n - 1, i + 1);
            const double per = b - a == 2 ? 1.0 / (4.0 * cell) : 1.0 / (2.0 * cell);
            const double t =
                (d[static_cast<std::size_t>(b)] - d[static_cast<std::size_t>(a)]) * per;
            CHECK(l[k] == 1.0 + t * t);
            const double share = w / (2.0 * pi * (0.5 * (d[k] + h)));
            CHECK(nu[k] == std::sqrt(std::max(0.0, 1.0 - share * share) * l[k]) / w);
            const double around = (d[k] + h) * (pi * 900.0);
            CHECK(even[k] == std::sqrt(around * around + l[k]));
            const double loose = pi * (d[k] + std::max(h, 0.5 * grown[k])) * nu[k];
            CHECK(paced[k] == std::sqrt(loose * loose + l[k]));
        }
    }
}
