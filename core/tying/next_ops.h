#pragma once
// What can be done next, at any place of a recipe: the operations, and why the others cannot.

#include "core/hook/hook.h"
#include "core/recipe/op.h"
#include "core/recipe/recipe.h"

#include <string>
#include <vector>

namespace wrapwright {

/// One operation that could come next, with the part that it would be for.
struct NextOp {
    Op op = Op::clamp;
    int part = -1; ///< index into Recipe::parts; -1: it needs none, or none fits
    bool possible = false;
    std::string why{}; ///< not possible: the reason, and what mends it
};

/// All operations before the action `action` of step `step`: those that the fly's state allows
/// there first, each for each part that it fits; then one row for each that it does not.
///
/// The recipe is run up to there, and each operation that the table's needs allow is tried.
/// Cost    up to some sixty runs of that much of the recipe
/// Fails   as link(), make_rig() and resolve() do for what comes before
[[nodiscard]] Result<std::vector<NextOp>> next_ops(const Recipe& recipe, HookSize size,
                                                   const Hook* own, std::size_t step,
                                                   std::size_t action);

/// Whether an operation can be done with a material of that kind.
[[nodiscard]] bool suits(Op op, MaterialKind kind);

/// Whether an operation is for one part, so that one has to be picked.
[[nodiscard]] bool wants_part(Op op);

} // namespace wrapwright
