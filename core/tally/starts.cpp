#include "core/tally/starts.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

Result<int> starts_for(int good, double spoil, double confidence) {
    const bool fits = good >= 0 && good <= 100'000 && spoil >= 0.0 && spoil < 0.9 &&
                      confidence > 0.0 && confidence < 1.0; // false for a NaN
    if (!fits) {
        return Error{
            ErrorCode::out_of_range,
            "no batch like that",
            "give up to 100,000 flies, a spoilt share from 0 to below 0.9, and a confidence "
            "between 0 and 1",
            {}};
    }
    if (good == 0 || spoil == 0.0) return good;
    // The chance that k spoilt ones come before the last good one, k = 0, 1, 2 ...; by logarithms,
    // for the first of them may be smaller than a double holds.
    double log_term = good * std::log1p(-spoil);
    double sum = 0.0;
    const int most = 20 * good + 1000;
    for (int k = 0; k <= most; ++k) {
        sum += std::exp(log_term);
        if (sum >= confidence) return good + k;
        log_term += std::log(spoil * (good + k) / (k + 1.0));
    }
    return good + most; // beyond what the sum of rounded terms can tell
}

int packs_for(double need, double have, double pack) {
    WW_ASSERT(pack > 0.0 && need >= 0.0 && have >= 0.0);
    const double packs = (need - have) / pack;
    return packs <= 1e-9 ? 0 : static_cast<int>(std::min(std::ceil(packs - 1e-9), 2e9));
}

} // namespace wrapwright
