#include "core/water/light.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr double first_nm = 400.0;
constexpr double step_nm = 20.0;
constexpr std::array<double, 16> absorption{0.00663, 0.00454, 0.00635, 0.00979, 0.0127, 0.0204,
                                            0.0409,  0.0474,  0.0619,  0.0896,  0.2224, 0.2755,
                                            0.3108,  0.410,   0.465,   0.624};

double band(double from_nm, double to_nm, double metres) {
    constexpr int samples = 40;
    double sum = 0.0;
    for (int i = 0; i < samples; ++i) {
        const double nm = from_nm + (to_nm - from_nm) * (i + 0.5) / samples;
        sum += std::exp(-water_absorption(nm) * metres);
    }
    return sum / samples;
}

} // namespace

double water_absorption(double nm) {
    const double x = std::clamp((nm - first_nm) / step_nm, 0.0, absorption.size() - 1.0);
    const auto i = std::min(static_cast<std::size_t>(x), absorption.size() - 2);
    const double f = x - static_cast<double>(i);
    return (1.0 - f) * absorption[i] + f * absorption[i + 1];
}

std::array<double, 3> light_left(Length depth) {
    const double d = depth.si;
    return {band(580.0, 680.0, d), band(500.0, 580.0, d), band(420.0, 500.0, d)};
}

} // namespace wrapwright
