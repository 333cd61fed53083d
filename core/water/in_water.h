#pragma once
// Everything that the water does to one fly, in one place: the numbers of the command, the screen,
// the plan and the card.

#include "core/water/balance.h"
#include "core/water/drift.h"
#include "core/water/falls.h"
#include "core/water/wet_shape.h"

#include <array>
#include <optional>
#include <vector>

namespace wrapwright {

/// Where and how it is fished.
struct Fishing {
    Temperature temperature = celsius(10.0);
    WaterKind kind = WaterKind::fresh;
    Tippet tippet{millimetres(0.15), metres(1.0)};
    Stream stream{metres(1.2), metres_per_second(0.9)};
    Length drift = metres(6.0);
    Volume air{};              ///< carried down in the dressing
    std::vector<Fall> falls{}; ///< timed with this fly
    Estimate<Mass> weighed{};  ///< the whole fly on a scale; 0: it was not
};

/// One place of the drift: how deep the fly is there.
struct DriftPlace {
    Length along{};
    Estimate<Length> depth{};
};

inline constexpr std::size_t drift_places = 25;

/// The fly in the water.
struct InWater {
    Water water{};
    FlyBody body{};
    Estimate<Mass> mass{};
    Estimate<Volume> volume{};
    Estimate<Force> weight{};    ///< what the water does not carry, without the tippet
    Estimate<Speed> sink_free{}; ///< without a tippet; below 0: it rises
    Estimate<Speed> sink{};      ///< on that tippet
    Speed drawn{}, bowed{};      ///< its middle, the tippet drawn along or bowed: the band
    bool nearly_neutral = false; ///< whether it sinks or rises is within the doubt
    FallFit fit{};               ///< of the timed falls
    bool timed = false;          ///< there is one
    StartUp start{};
    FloatingCheck film{};
    Centres centres{};
    glm::dvec2 drag_at{}; ///< centre of its drag while it sinks
    Angle hang{};         ///< of the shank from straight down, from the eye
    Angle attitude{};     ///< of the shank from upright, sinking freely
    RideCheck ride{};
    std::array<DriftPlace, drift_places> drift{};
    Estimate<Length> to_bed{}; ///< way along to the bed; its high end at most 1 km
};

/// What the water does to the fly of that record.
///
/// Error   the intervals are 95 in 100: W by first order (exact for a sum), speed by a fixed sample of
///         64 points over weight, drag factor and how the tippet follows, drift with the river's
///         turbulence on top
/// Fails   out_of_range for water, tippet or stream that there is none like
/// Cost    about a millisecond
[[nodiscard]] Result<InWater> in_water(const Pattern& pattern, const Resolved& numbers,
                                       const Tied& tied, const Fishing& fishing);

/// Whether those are waters, tippets and streams that exist; nothing where they are.
[[nodiscard]] std::optional<Error> refuse(const Fishing& fishing);

/// The steady speed with its interval, for a shape and a weight in water.
[[nodiscard]] Estimate<Speed> sink_speed(const WetShape& shape, const Estimate<Force>& weight,
                                         const Water& water, const Tippet& tippet,
                                         const Estimate<Factor>& factor);

/// How far from the wire's middle a strand of ballast would lie on top of what is there.
[[nodiscard]] Length ballast_height(const Tied& tied);

} // namespace wrapwright
