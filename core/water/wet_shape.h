#pragma once
// The record as the water meets it: bead, body, bend, hackle, tail and wing.

#include "core/tying/record.h"
#include "core/water/drag.h"
#include "core/water/floating.h"

namespace wrapwright {

/// What the water presses on, falling head first.
///
/// Stiff hackle stands at 90 degrees to the fall, soft feather is swept back to 45, a tail and a
/// wing lie as they were tied. Bends and eye legs count by the part of them that crosses the flow.
/// Error   see drag(); which fibre shelters which is not known
[[nodiscard]] WetShape wet_shape(const Pattern& pattern, const Resolved& numbers, const Tied& tied);

/// What of the fly could lie on the film: body, tail and the level part of its hackle and wings.
///
/// Barbs less than two capillary lengths apart share one film: a hackle holds by its outline, not by
/// the sum of its barbs.
/// Error   an upper bound; feather is taken to be met at 90 degrees or more
[[nodiscard]] std::vector<Lying> lying_parts(const Pattern& pattern, const Resolved& numbers,
                                             const Tied& tied, const Water& water);

} // namespace wrapwright
