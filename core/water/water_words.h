#pragma once
// What the water does to a fly, in sentences: the same on the screen, in the plan and from the
// command.

#include "core/water/in_water.h"

#include <string>
#include <vector>

namespace wrapwright {

/// What every number of depth and sinking says until a fall was timed.
inline constexpr std::string_view until_timed = "until you time one";

/// "0.27 m/s (0.16 to 0.41)"; the doubt that is left stays visible in the digits.
[[nodiscard]] std::string speed_words(const Estimate<Speed>& speed);
/// "217 mg (190 to 244)".
[[nodiscard]] std::string weight_words(const Estimate<Mass>& mass);
/// "0.85 m (0.55 to 1.2)".
[[nodiscard]] std::string depth_words(const Estimate<Length>& depth);

/// "sinks 0.27 m/s (0.16 to 0.41) on this tippet, until you time one"; "rises ..."; or that it is
/// nearly neutral.
[[nodiscard]] std::string sink_words(const InWater& w);
/// "0.70 m (0.45 to 1.0) deep after 4 m, until you time one".
[[nodiscard]] std::string drift_words(const InWater& w, Length along);
/// "sinks: the film could hold 0.3 of its weight at most".
[[nodiscard]] std::string film_words(const InWater& w);
/// "rides point up, likely: its weight lies 1.3 mm (0.35 either way) beyond the eye's line".
[[nodiscard]] std::string ride_words(const InWater& w);
/// What would turn it point up, a line each; none where it rides so.
[[nodiscard]] std::vector<std::string> turn_over_words(const InWater& w);
/// "hangs 35 degrees from straight down".
[[nodiscard]] std::string hang_words(const InWater& w);
/// What the numbers rest on: weighed and measured, typical, guessed; a line each.
[[nodiscard]] std::vector<std::string> ground_words(const Pattern& pattern, const InWater& w);

} // namespace wrapwright
