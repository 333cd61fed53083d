#pragma once
// The record as JSON: the keys that other programs may rely on.

#include "core/tally/tally.h"
#include "platform/cli/load.h"

#include <nlohmann/json.hpp>

namespace wrapwright::cli {

using Json = nlohmann::ordered_json;

/// A number for a file: rounded to six decimals, so that it does not end in noise.
[[nodiscard]] double tidy(double value);

/// {value, low, high} in milligrams, with its origin.
[[nodiscard]] Json mass_json(const Estimate<Mass>& mass);

/// The finding's level, rule, step, message, evidence, remedy, part and caution.
[[nodiscard]] Json finding_json(const Pattern& pattern, const Finding& finding);

/// One line of a tally: id, role, material, count, turns, length_mm, mass_mg.
[[nodiscard]] Json tally_line_json(const Pattern& pattern, const TallyLine& line);

/// Everything that `plan` prints, for other programs.
[[nodiscard]] Json plan_json(const Loaded& loaded, const Fly& fly);

/// Prints JSON on standard output; bytes that are no UTF-8 are replaced.
void print(const Json& json);

} // namespace wrapwright::cli
