#include "core/geometry/sweep_kernels.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <random>
#include <vector>

using namespace wrapwright;

namespace {

std::mt19937 generator(5);

float random_float(float low, float high) {
    return std::uniform_real_distribution<float>(low, high)(generator);
}

glm::vec3 random_vector() {
    return {random_float(-1, 1), random_float(-1, 1), random_float(-1, 1)};
}

double apart(double worst, float a, float b) {
    return std::max(worst, std::abs(static_cast<double>(a) - b));
}

} // namespace

TEST_CASE("the processor's own loops give the portable ones' rings") {
    // Tolerance  a fused product and sum rounds once instead of twice: a few 2^-24 of the size, 3
    Frames frames{};
    for (Frame& frame : frames) {
        for (auto* row : {&frame.centre, &frame.height, &frame.width}) {
            for (float& x : *row) x = random_float(-1, 1);
        }
    }
    for (int sides = 3; sides <= max_sides; ++sides) {
        CAPTURE(sides);
        const Section section = ellipse_section(sides, 0.4, 1.1);
        constexpr int count = 20;
        const auto floats = static_cast<std::size_t>(count * sides * 6);
        std::vector<float> plain(floats + 18), best(floats + 18);
        portable_kernels().write_rings(frames.data(), count, section, plain.data(), false);
        best_kernels().write_rings(frames.data(), count, section, best.data(), false);
        double worst = 0.0;
        double worst_reference = 0.0;
        for (std::size_t i = 0; i < floats; ++i) {
            worst = apart(worst, plain[i], best[i]);
            // Against    one number at a time, in double
            const Frame& frame = frames[i / static_cast<std::size_t>(sides * 6)];
            const std::size_t k = i % static_cast<std::size_t>(sides * 6);
            const double c = section.along_height[k];
            const double s = section.along_width[k];
            const double expected =
                frame.centre[k % 6] + c * frame.height[k % 6] + s * frame.width[k % 6];
            worst_reference = std::max(worst_reference, std::abs(expected - plain[i]));
        }
        CHECK(worst < 1e-6);
        CHECK(worst_reference < 1e-6);
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
            s.bend_up = random_float(-0.2F, 0.2F);
            s.bend_side = random_float(-0.2F, 0.2F);
        }
        s.axis = random_vector();
        s.axis_gain = 0.1F * random_vector();
        s.radius = random_float(0.1F, 2.0F);
        s.radius_gain = random_float(-0.05F, 0.05F);
        s.section = random_float(0.01F, 0.3F);
        s.slope = random_float(-0.3F, 0.3F);
        WindingSteps steps{};
        for (int j = 0; j < batch_rings + 8; ++j) {
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
        const int count = 1 + trial % batch_rings;
        portable_kernels().winding_frames(s, start, steps, count, plain.data());
        best_kernels().winding_frames(s, start, steps, count, best.data());
        double worst = 0.0;
        double worst_square = 0.0;
        for (std::size_t j = 0; j < static_cast<std::size_t>(count); ++j) {
            for (std::size_t i = 0; i < 6; ++i) {
                worst = apart(worst, plain[j].centre[i], best[j].centre[i]);
                worst = apart(worst, plain[j].height[i], best[j].height[i]);
                worst = apart(worst, plain[j].width[i], best[j].width[i]);
            }
            if (!s.straight) continue;
            const float* n = best[j].height + 3;
            const float* b = best[j].width + 3;
            const glm::dvec3 normal(n[0], n[1], n[2]);
            const glm::dvec3 binormal(b[0], b[1], b[2]);
            worst_square = std::max({worst_square, std::abs(glm::dot(normal, binormal)),
                                     std::abs(glm::length(normal) - 1.0),
                                     std::abs(glm::length(binormal) - 1.0)});
        }
        CAPTURE(trial);
        CHECK(worst < 2e-6);
        CHECK(worst_square < 1e-6); // unit and square to each other
    }
}
