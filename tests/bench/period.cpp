// Rib spacing on a line of samples against the least error that any way could have.
//
// Source  the Cramer-Rao bound of a sine's frequency, var(f) >= 6 s^2 / (pi^2 A^2 N^3) (Kay 1993), the
//         same trials as an independent script: 2,000 samples, 8 to 68 a period, noise over amplitude
//         0.2 to 2. A miss is an error above a tenth.

#include "core/check/period.h"
#include "tests/support/dice.h"

#include <chrono>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <vector>

using namespace wrapwright;

namespace {

constexpr int samples = 2000;
constexpr int trials = 400;
constexpr double pi = std::numbers::pi;

double bell(test::Dice& dice) {
    const double u = dice.between(1e-9, 1.0), v = dice.between(0.0, 1.0);
    return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * pi * v);
}

} // namespace

int main() {
    test::Dice dice{3};
    bool fails = false;
    for (const double noise : {0.2, 0.5, 1.0, 2.0}) {
        double squares = 0.0, bound = 0.0, spent = 0.0;
        int misses = 0, found = 0;
        for (int t = 0; t < trials; ++t) {
            const double period = dice.between(8.0, 68.0), phase = dice.between(0.0, 2.0 * pi);
            std::vector<double> line;
            for (int i = 0; i < samples; ++i) {
                line.push_back(100.0 + std::cos(2.0 * pi * i / period + phase) +
                               noise * bell(dice));
            }
            const auto from = std::chrono::steady_clock::now();
            const Period p = period_of(line, {4.0, 200.0});
            spent += std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
            const double off = (p.value - period) / period;
            const double least = std::sqrt(6.0) * noise /
                                 (pi * std::pow(static_cast<double>(samples), 1.5)) * period;
            bound += least * least;
            if (!(std::abs(off) < 0.1)) {
                ++misses;
                continue;
            }
            squares += off * off;
            ++found;
        }
        const double ratio = std::sqrt(squares / found) / std::sqrt(bound / trials);
        std::printf("noise %.1f of the amplitude: rms error %.2e, %.2f times the bound (goal 1.3), "
                    "%d misses of %d (goal 0), %.2f ms each\n",
                    noise, std::sqrt(squares / found), ratio, misses, trials, 1e3 * spent / trials);
        fails = fails || misses > 0 || ratio > 1.3;
    }
    return fails ? 1 : 0;
}
