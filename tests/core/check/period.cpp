#include "core/check/period.h"

#include "tests/support/close.h"
#include "tests/support/dice.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

double bell(test::Dice& dice) { // Box and Muller, one of the two
    const double u = dice.between(1e-9, 1.0), v = dice.between(0.0, 1.0);
    return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * std::numbers::pi * v);
}

/// Ribs as the independent script draws them: bright ridges of uneven height on a shaded body.
struct Body {
    std::vector<double> samples{};
    double period = 0.0;
};
Body body(test::Dice& dice, int n, double noise, double jitter) {
    const double cycles = dice.between(5.0, 8.0), phase = dice.between(0.0, 1.0);
    Body b;
    b.period = n / cycles;
    std::vector<std::pair<double, double>> ribs;
    for (int k = -2; k < static_cast<int>(cycles) + 3; ++k) {
        ribs.push_back({(k + phase) * b.period + jitter * b.period * bell(dice),
                        1.0 + dice.between(-0.3, 0.3)});
    }
    const double ripple = dice.between(0.0, 1.0);
    for (int i = 0; i < n; ++i) {
        const double u = static_cast<double>(i) / n;
        double y = 0.0;
        for (const auto& [centre, height] : ribs) {
            const double d = (i - centre) / (0.09 * b.period);
            y += height * std::exp(-0.5 * d * d);
        }
        y = y * (1.0 - (u - 0.5) * (u - 0.5)) + 1.5 * u - 1.2 * u * u +
            0.3 * std::sin(2.0 * std::numbers::pi * (0.8 * u + ripple)) + noise * bell(dice);
        b.samples.push_back(y);
    }
    return b;
}

struct Errors {
    double rms = 0.0;
    int gross = 0, accepted = 0, covered = 0;
};
Errors errors(int trials, double noise, double jitter) {
    test::Dice dice{static_cast<unsigned long long>(1000.0 * noise + 17.0 * jitter) + 5};
    Errors e;
    double squares = 0.0;
    for (int i = 0; i < trials; ++i) {
        const Body b = body(dice, 200, noise, jitter);
        const Period p = period_of(b.samples);
        if (!p.agree) continue;
        ++e.accepted;
        const double off = p.value / b.period - 1.0;
        if (std::abs(off) > 0.1) {
            ++e.gross;
            continue;
        }
        squares += off * off;
        e.covered += std::abs(p.value - b.period) < 1.96 * p.sd ? 1 : 0;
    }
    e.rms = std::sqrt(squares / std::max(1, e.accepted - e.gross));
    return e;
}

} // namespace

TEST_CASE("a sine in noise up to twice its height is found as closely as can be") {
    // Source     the Cramer-Rao bound for a sine, sd f / f = sqrt(6) s T / (pi A N^1.5) (Kay 1993)
    // Tolerance  1.3 of it; 40 trials know an rms to 11 %, two of which are allowed for
    constexpr int n = 2000, trials = 40;
    for (const double noise : {0.2, 2.0}) {
        test::Dice dice{static_cast<unsigned long long>(100.0 * noise)};
        double squares = 0.0, bound = 0.0;
        int gross = 0;
        for (int t = 0; t < trials; ++t) {
            const double period = dice.between(8.0, 68.0), phase = dice.between(0.0, 6.28);
            std::vector<double> y;
            for (int i = 0; i < n; ++i) {
                y.push_back(100.0 + std::cos(2.0 * std::numbers::pi * i / period + phase) +
                            noise * bell(dice));
            }
            const Period p = period_of(y, {4.0, 200.0});
            const double off = p.value / period - 1.0;
            gross += std::abs(off) > 0.1 ? 1 : 0;
            squares += off * off;
            const double least =
                std::sqrt(6.0) * noise / (std::numbers::pi * std::pow(n, 1.5)) * period;
            bound += least * least;
        }
        CAPTURE(noise);
        CHECK(gross == 0);
        CHECK(std::sqrt(squares / bound) < 1.3 * 1.22);
    }
}

TEST_CASE("ribs on a shaded body are found within the figures of an independent script") {
    // Source     400 trials each of the script: rms 0.09, 0.18, 0.40 % for noise 0.02, 0.10, 0.25 of the
    //            rib's height; 0.49 and 1.1 % at noise 0.10 with ribs set 2 and 5 % of a period off
    // Tolerance  1.35: 150 trials know an rms to 6 %, and a share of them is not accepted here
    constexpr double rows[][3] = {{0.02, 0.0, 0.0009},
                                  {0.10, 0.0, 0.0018},
                                  {0.25, 0.0, 0.0040},
                                  {0.10, 0.02, 0.0049},
                                  {0.10, 0.05, 0.011}};
    for (const auto& [noise, jitter, rms] : rows) {
        CAPTURE(noise);
        CAPTURE(jitter);
        const Errors e = errors(150, noise, jitter);
        CHECK(e.gross == 0); // where both ways agree
        CHECK(e.accepted > 90);
        CHECK(e.rms < 1.35 * rms);
    }
}

TEST_CASE("the interval holds the true spacing about as often as it says") {
    // 95 in 100 are promised, 90 to 99 allowed; 500 lines with noise and uneven setting.
    int covered = 0, accepted = 0;
    for (const auto& [noise, jitter] :
         {std::pair{0.05, 0.01}, {0.10, 0.02}, {0.20, 0.02}, {0.10, 0.04}, {0.30, 0.03}}) {
        const Errors e = errors(100, noise, jitter);
        covered += e.covered;
        accepted += e.accepted;
    }
    CAPTURE(covered);
    CAPTURE(accepted);
    CHECK(accepted > 300);
    CHECK(covered >= 0.90 * accepted);
    CHECK(covered <= 0.99 * accepted);
}

TEST_CASE("two highlights on each rib never pass for one where the two ways agree") {
    // Source     the independent script's ribs with a second highlight of 0.8 at 0.3 of a period: no gross
    //            error among those where both ways agreed
    test::Dice dice{71};
    int agreed = 0;
    for (int t = 0; t < 120; ++t) {
        const double period = 200.0 / dice.between(5.0, 8.0), phase = dice.between(0.0, 1.0);
        std::vector<double> heights;
        for (int k = 0; k < 12; ++k) heights.push_back(dice.between(0.7, 1.3));
        std::vector<double> y;
        for (int i = 0; i < 200; ++i) {
            const double u = i / 200.0;
            double v = 1.5 * u - 1.2 * u * u + 0.15 * bell(dice);
            for (int k = -2; k < 10; ++k) {
                const auto ridge = [&](double at) {
                    const double d = (i - at) / (0.06 * period);
                    return std::exp(-0.5 * d * d);
                };
                const double centre = (k + phase) * period;
                v += heights[static_cast<std::size_t>(k + 2)] *
                     (ridge(centre) + 0.8 * ridge(centre + 0.3 * period));
            }
            y.push_back(v);
        }
        const Period p = period_of(y);
        if (!p.agree) continue;
        ++agreed;
        CHECK(within_share(p.value, period, 0.1));
    }
    CHECK(agreed > 60);
}

TEST_CASE("a constant, a ramp, a mirror and another gain change no spacing") {
    test::Dice dice{5};
    const Body b = body(dice, 200, 0.05, 0.0);
    const double now = period_of(b.samples).value;
    std::vector<double> moved = b.samples, mirrored(b.samples.rbegin(), b.samples.rend());
    for (std::size_t i = 0; i < moved.size(); ++i) {
        moved[i] = 7.0 * moved[i] + 300.0 + 0.2 * static_cast<double>(i);
    }
    // Tolerance: the search for the least stops at 1e-7 of the period.
    CHECK(within_share(period_of(moved).value, now, 1e-6));
    CHECK(within_share(period_of(mirrored).value, now, 1e-6));
}

TEST_CASE("a line that holds no ribs gives none, and no number is lost") {
    CHECK(period_of({}).value == 0.0);
    CHECK(period_of(std::vector<double>(5, 1.0)).value == 0.0);
    CHECK(period_of(std::vector<double>(300, 4.0)).value == 0.0);
    std::vector<double> odd(300, 1.0);
    odd[7] = std::nan("");
    CHECK(period_of(odd).value == 0.0);
    test::Dice dice{2};
    for (int t = 0; t < 50; ++t) { // noise alone: whatever is said is finite, and rarely agreed on
        std::vector<double> noise;
        for (int i = 0; i < 120; ++i) noise.push_back(bell(dice));
        const Period p = period_of(noise);
        CHECK(std::isfinite(p.value));
        CHECK(std::isfinite(p.sd));
        CHECK(std::isfinite(p.unevenness));
    }
}
