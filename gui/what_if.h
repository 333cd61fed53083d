#pragma once
// "What if": the same fly with one winding done otherwise, run through the same tying.

#include "gui/open_fly.h"

#include <array>
#include <optional>

namespace wrapwright {

/// What can be tried at a winding.
enum class Trial : unsigned char { turns, pitch, width, from, to, count_ };
inline constexpr std::size_t trial_count = static_cast<std::size_t>(Trial::count_);

/// The values that are tried, in SI or turns; those of the record where nothing is said.
using Trials = std::array<std::optional<double>, trial_count>;

/// The range of a value's slider, and the value as the record has it.
struct TrialRange {
    double least = 0.0, most = 1.0, now = 0.0;
};
/// The ranges at a moment: turns to three times, places over the whole shank, and so on. Nothing
/// where it winds no strand.
[[nodiscard]] std::optional<std::array<TrialRange, trial_count>> trial_ranges(const OpenFly& fly,
                                                                              int moment);

/// The fly with these values at that moment, run whole; its other actions as they were.
///
/// Turns and pitch say the same thing twice over a stretch: pitch wins where both are said.
/// Valid   as trial_ranges
/// Cost    a copy of the pattern and a run of the tying
[[nodiscard]] std::shared_ptr<const OpenFly> try_out(const OpenFly& fly, int moment,
                                                     const Trials& trials);

/// What was tried, in a line for the sitting's notes: "rib: 7 turns, 0.5 mm apart".
[[nodiscard]] std::string trial_words(const OpenFly& tried, int moment);

} // namespace wrapwright
