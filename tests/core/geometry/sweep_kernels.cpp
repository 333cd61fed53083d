#include "core/geometry/sweep_kernels.h"
#include "tests/support/close.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within;

namespace {

std::mt19937 generator(5);

float random_float(float low, float high) {
    return std::uniform_real_distribution<float>(low, high)(generator);
}

glm::vec3 random_vector() {
    return {random_float(-1, 1), random_float(-1, 1), random_float(-1, 1)};
}

} // namespace

TEST_CASE("the processor's own loops give the portable ones' rings") {
    // Tolerance  a fused product and sum rounds once instead of twice: a few 2^-24 of the size, 3
    Frames frames{};
    const auto fill = [](Frames::Column& column) {
        for (float& x : column) x = random_float(-1, 1);
    };
    for (auto* columns : {&frames.centre, &frames.height, &frames.width, &frames.lean}) {
        for (Frames::Column& column : *columns) fill(column);
    }
    fill(frames.radius);
    fill(frames.upright);
    for (int sides = 3; sides <= max_sides; ++sides) {
        const Section section = ellipse_section(sides, 0.4, 1.1);
        for (const bool leaning : {false, true}) {
            CAPTURE(sides);
            CAPTURE(leaning);
            constexpr int first = 3;
            constexpr int count = 20;
            const auto floats = static_cast<std::size_t>(count * sides * 6);
            std::vector<float> plain(floats + 18), best(floats + 18);
            portable_kernels().write_rings(frames, first, count, section, plain.data(), leaning,
                                           false);
            best_kernels().write_rings(frames, first, count, section, best.data(), leaning, false);
            double worst = 0.0;
            double worst_reference = 0.0;
            for (std::size_t i = 0; i < floats; ++i) {
                worst = std::max(worst, std::abs(static_cast<double>(plain[i]) - best[i]));
                // Against    one number at a time
                const std::size_t ring = i / static_cast<std::size_t>(sides * 6) + first;
                const std::size_t k = i % static_cast<std::size_t>(sides * 6);
                const std::size_t axis = k % 3;
                const double c = section.along_height[k];
                const double s = section.along_width[k];
                const double across = c * frames.height[axis][ring] + s * frames.width[axis][ring];
                const bool normal = k % 6 >= 3;
                const double expected =
                    !normal   ? frames.centre[axis][ring] + frames.radius[ring] * across
                    : leaning ? frames.lean[axis][ring] + frames.upright[ring] * across
                              : across;
                worst_reference = std::max(worst_reference, std::abs(expected - plain[i]));
            }
            CHECK(worst < 1e-6);
            CHECK(worst_reference < 1e-6);
        }
    }
}

TEST_CASE("the processor's own loops give the portable ones' frames") {
    // Tolerance  a dozen roundings of 2^-24 on numbers up to 3
    for (int trial = 0; trial < 200; ++trial) {
        Stretch s{};
        s.along = glm::vec3(1, 0, 0);
        s.up = glm::vec3(0, 1, 0);
        s.straight = trial % 2 == 0;
        if (!s.straight) {
            s.along_gain = 0.05F * random_vector();
            s.up_gain = 0.05F * random_vector();
            s.bend = 0.2F * random_vector();
        }
        s.axis = random_vector();
        s.axis_gain = 0.1F * random_vector();
        s.radius = random_float(0.1F, 2.0F);
        s.radius_gain = random_float(-0.05F, 0.05F);
        s.section = random_float(0.01F, 0.3F);
        s.slope = random_float(-0.3F, 0.3F);
        WindingSteps steps{};
        for (int j = 0; j < Frames::capacity + Frames::spare; ++j) {
            const double a = 0.2 * j;
            steps.cosine[j] = static_cast<float>(std::cos(a));
            steps.sine[j] = static_cast<float>(std::sin(a));
            steps.place[j] = 0.02F * static_cast<float>(j);
            steps.pitch[j] = 1.0F;
        }
        steps.around = trial % 3 == 0 ? 6.2831853F : -6.2831853F;
        const float angle = random_float(0, 6);
        const WindingStart start{std::cos(angle), std::sin(angle), 0.1F, random_float(-1, 1)};
        Frames plain{}, best{};
        const int count = 1 + trial % Frames::capacity;
        portable_kernels().winding_frames(s, start, steps, 0, count, plain);
        best_kernels().winding_frames(s, start, steps, 0, count, best);
        double worst = 0.0;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (int j = 0; j < count; ++j) {
                worst = std::max(
                    {worst,
                     std::abs(static_cast<double>(plain.centre[axis][j]) - best.centre[axis][j]),
                     std::abs(static_cast<double>(plain.height[axis][j]) - best.height[axis][j]),
                     std::abs(static_cast<double>(plain.width[axis][j]) - best.width[axis][j]),
                     std::abs(static_cast<double>(plain.radius[j]) - best.radius[j])});
            }
        }
        CAPTURE(trial);
        CHECK(worst < 2e-6);
    }
}
