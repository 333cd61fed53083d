#pragma once
// How hands get quicker: time against the number of flies tied, by two models that are not the same.

#include "core/result.h"
#include "core/units/quantity.h"

#include <span>

namespace wrapwright {

/// Crawford: each fly takes a * k^b. Wright: the first k flies take a * k^b on average.
enum class LearningModel : unsigned char { crawford, wright };

/// What one doubling of the number of flies does to the time, and the time of the first.
struct Learning {
    LearningModel model = LearningModel::crawford;
    Duration first{};
    double rate = 1.0; ///< 0.5 to 1: 0.8 is "an 80 % curve"
    Duration best{};   ///< no fly is quicker than this; 0: no floor

    /// Time of the k-th fly, from 1.
    [[nodiscard]] Duration unit(int k) const;
    /// Time of the flies from..to, both included.
    /// Cost    one power for each fly
    [[nodiscard]] Duration total(int from, int to) const;
};

/// The curve through times of the first flies, in order.
///
/// Source  straight line of log2(time) on log2(k), least squares; rate = 2^slope, held to 0.5 to 1
/// Error   fewer than six timings give some five points (common practice, no source)
/// Fails   out_of_range for fewer than two times, or one that is not above 0
[[nodiscard]] Result<Learning> fit_learning(std::span<const double> seconds_each);

} // namespace wrapwright
