#include "core/water/drag_law.h"

#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

using std::numbers::pi;

double creeping(double re) {
    const double e = 1.0 / (0.5 - std::numbers::egamma - std::log(re / 8.0));
    return 8.0 * pi / re * (e - 0.87 * e * e * e);
}

double steady(double x) { return 2.33771 + x * (-0.65720 + x * (0.03380 + x * 0.00070)); }

double shedding(double re) {
    return 11.0 * std::pow(re, -0.75) + 0.9 * (1.0 - std::exp(-1000.0 / re)) +
           1.2 * (1.0 - std::exp(-std::pow(re / 4500.0, 0.7)));
}

} // namespace

double sphere_drag(double re) {
    return 24.0 / re * (1.0 + 0.150 * std::pow(re, 0.681)) + 0.407 / (1.0 + 8710.0 / re);
}

double cylinder_drag(double re) {
    constexpr double low = 40.0, high = 100.0;
    if (re < 0.1) return creeping(re);
    const double x = std::log(re);
    if (re <= low) return std::exp(steady(x));
    if (re >= high) return shedding(re);
    const double share = (x - std::log(low)) / std::log(high / low);
    return std::exp((1.0 - share) * steady(std::log(low)) + share * std::log(shedding(high)));
}

double irregular_drag(double re, double s) {
    const double a = std::exp(2.3288 + s * (-6.4581 + s * 2.4486));
    const double b = 0.0964 + 0.5565 * s;
    const double c = std::exp(4.905 + s * (-13.8944 + s * (18.4222 - s * 10.2599)));
    const double d = std::exp(1.4681 + s * (12.2584 + s * (-20.7322 + s * 15.8855)));
    return 24.0 / re * (1.0 + a * std::pow(re, b)) + c / (1.0 + d / re);
}

double skin_drag(double re) { return 1.328 / std::sqrt(re); }

} // namespace wrapwright
