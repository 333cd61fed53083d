#pragma once
// What the water does to a fly, for other programs and for people.

#include "core/water/in_water.h"
#include "platform/cli/json.h"
#include "platform/cli/terminal.h"

namespace wrapwright::cli {

/// What the water does, for other programs: mass_mg, volume_mm3, sink_m_s, ride, hang_deg, drift ...
[[nodiscard]] Json water_json(const Pattern& pattern, const InWater& water);

/// The same for people, in a few lines.
[[nodiscard]] std::string water_text(const Pattern& pattern, const InWater& water,
                                     const Fishing& fishing, const Terminal& to);

} // namespace wrapwright::cli
