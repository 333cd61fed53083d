#pragma once
// How many flies to begin so that enough are good, and how many packs to buy.

#include "core/result.h"

namespace wrapwright {

/// The fewest flies to begin so that at least `good` come out well with that confidence, where each
/// is spoilt by itself with that chance.
///
/// Valid   good 0 to 100,000; spoil 0 to below 0.9; confidence above 0 and below 1
/// Error   none: the sum of the binomial's own terms; good / (1 - spoil) alone is safe half the time
/// Fails   out_of_range for anything else
/// Source  P(Binomial(n, 1 - q) >= N) >= c, which is N and the quantile of the negative binomial
[[nodiscard]] Result<int> starts_for(int good, double spoil, double confidence);

/// Whole packs that cover what is missing; 0 where nothing is.
///
/// Valid   need, have >= 0; pack > 0
/// Error   never too few: a need over a whole pack by a billionth of it is taken as rounding
[[nodiscard]] int packs_for(double need, double have, double pack);

} // namespace wrapwright
