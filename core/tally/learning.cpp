#include "core/tally/learning.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

// Source  T. P. Wright 1936 (cumulative average) and Crawford 1944 (unit), exponent b = log2(rate)

Duration Learning::unit(int k) const {
    WW_ASSERT(k >= 1);
    const double b = std::log2(rate);
    double share = std::pow(k, b);
    if (model == LearningModel::wright && k > 1) {
        share = std::pow(k, b + 1.0) - std::pow(k - 1, b + 1.0);
    }
    return std::max(best, share * first);
}

Duration Learning::total(int from, int to) const {
    Duration sum{};
    for (int k = from; k <= to; ++k) sum += unit(k);
    return sum;
}

Result<Learning> fit_learning(std::span<const double> seconds_each) {
    const Error unfit{ErrorCode::out_of_range,
                      "these times make no curve",
                      "give the times of two flies or more, each above 0",
                      {}};
    if (seconds_each.size() < 2) return unfit;
    const auto n = static_cast<double>(seconds_each.size());
    double x = 0.0, y = 0.0;
    for (std::size_t i = 0; i < seconds_each.size(); ++i) {
        if (!(seconds_each[i] > 0.0) || !std::isfinite(seconds_each[i])) return unfit;
        x += std::log2(static_cast<double>(i + 1)) / n;
        y += std::log2(seconds_each[i]) / n;
    }
    double xx = 0.0, xy = 0.0;
    for (std::size_t i = 0; i < seconds_each.size(); ++i) {
        const double dx = std::log2(static_cast<double>(i + 1)) - x;
        xx += dx * dx;
        xy += dx * (std::log2(seconds_each[i]) - y);
    }
    const double slope = std::clamp(xy / xx, -1.0, 0.0);
    Learning out;
    out.rate = std::exp2(slope);
    out.first = seconds(std::exp2(y - slope * x));
    return out;
}

} // namespace wrapwright
