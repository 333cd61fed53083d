#pragma once
// Timed falls in a jar, and the drag that they say this fly has.

#include "core/water/fly_body.h"
#include "core/water/sink.h"

#include <vector>

namespace wrapwright {

/// A plain factor, as a quantity.
using Factor = Quantity<struct FactorKind>;

/// The doubt of the drag of a fly that nobody has timed: -20 to +30 % in speed.
/// Source  the spread of laws for bodies that are not round about the sum over parts (0.28 to 0.56 m/s
///         for one fly of 0.56): 25 to 30 % as an estimate, because no measured flies were at hand
inline constexpr Estimate<Factor> untimed{{1.0}, {0.66}, {1.5}, Origin::typical};

/// One fall that somebody timed, without a tippet.
struct Fall {
    Length height{};
    Duration time{};
    Temperature temperature = celsius(15.0);
    WaterKind kind = WaterKind::fresh;
    Length jar{};           ///< inside diameter; 0: wide, or not said
    bool from_rest = false; ///< the clock was started when it was let go
    friend bool operator==(const Fall&, const Fall&) = default;
};

/// What the falls say.
struct FallFit {
    Estimate<Factor> factor = untimed; ///< on the drag of the fly as reckoned
    std::vector<Factor> each{};        ///< of each fall, in their order
    double scatter = 0.0;              ///< relative standard deviation of the speeds; 0 for one
    bool wall_near = false;            ///< a jar narrower than 20 bead diameters
    bool too_short = false;            ///< a fall of less than 0.3 m before or while it was timed
};

/// The drag factor that the falls give; `untimed` where there are none.
///
/// Error   +-5 % in speed from one fall, more where repeats scatter; a jar's wall is corrected by
///         1 - (d / D)^1.5 (from memory): 1 % at 20 diameters, 3 % at 10
/// Fails   out_of_range, naming the fall from 1, for one that no fly makes, or for a fly that rises
/// Source  factor = weight in water / drag at the speed; mean of the logarithms; their scatter
///         pooled with that of usual hands
[[nodiscard]] Result<FallFit> fit_falls(const WetShape& shape, const FlyBody& body,
                                        const std::vector<Fall>& falls);

} // namespace wrapwright
