#pragma once
// The fly that is open: one recipe at one size on one hook, with the record of its run.

#include "core/bench/course.h"
#include "core/recipe/pattern.h"
#include "core/tying/record.h"

#include <memory>
#include <optional>
#include <string>

namespace wrapwright {

/// What every panel reads. Made once, never changed, shared between models.
struct OpenFly {
    std::string id; ///< of the recipe in the library
    HookSize size{};
    std::optional<Hook> own{}; ///< the person's measured hook, where it stands in for the first
    Pattern pattern{};
    Rig rig{};
    Resolved resolved{};
    Tied tied{};
};

/// Runs a recipe at a size; the middle one of its own where none is said.
///
/// A recipe of words alone is open too: its record has no moments.
/// Fails   as link(), make_rig() and resolve() do
[[nodiscard]] Result<std::shared_ptr<const OpenFly>>
open_fly(std::string id, Recipe recipe, const HookSize* size = nullptr, const Hook* own = nullptr);

} // namespace wrapwright
