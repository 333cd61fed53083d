#pragma once
// The run of a recipe on a hook.

#include "core/tying/limits.h"
#include "core/tying/record.h"

namespace wrapwright {

/// Runs every action of the recipe once and writes the complete record of that run.
///
/// Findings never stop it: an action that cannot be done as written is done as far as it goes.
/// Cost    no allocation when `out` already held a record no smaller; linear in acts and turns'
///         cells, not in turns
void tie(const Pattern& pattern, const Rig& rig, const Resolved& numbers, const Limits& limits,
         Tied& out);

/// Resolves and ties in one call, for whoever runs a recipe once.
///
/// Fails   as make_rig and resolve do
[[nodiscard]] Result<Tied> tie_once(const Pattern& pattern, HookSize size,
                                    const Hook* own = nullptr, const Limits& limits = {});

} // namespace wrapwright
