#pragma once
// The table of operations: what each needs, what it does, what to be careful about.

#include "core/recipe/pattern.h"

#include <string_view>

namespace wrapwright {

struct Run;

/// What an operation needs before it can be done. The details are found by its effect.
enum class Need : unsigned char {
    nothing,
    bare_hook, ///< no thread and no dressing
    clamped,   ///< hook in the vise
    thread,    ///< hook in the vise and thread on
};

/// A short caution that is due at a step. Words: caution_text in step_text.h.
enum class Caution : unsigned short {
    quiet = 0,
    point = 1, ///< hook point, needle
    blade = 2, ///< scissors, razor
    lead = 4,
    solvent = 8,
    quick_glue = 16,
    resin = 32, ///< light-cured
    epoxy = 64,
    eyes = 128, ///< something may fly off: glasses
    protected_material = 256,
};
constexpr Caution operator|(Caution a, Caution b) {
    return static_cast<Caution>(static_cast<unsigned>(a) | static_cast<unsigned>(b));
}
constexpr bool has(Caution set, Caution one) {
    return (static_cast<unsigned>(set) & static_cast<unsigned>(one)) != 0;
}

/// One row of the table.
struct OpRow {
    Op op;
    Need need;
    Caution caution;
    void (*effect)(Run&, const Act&);
    std::string_view before; ///< what must be true before, in words
    std::string_view after;  ///< what it changes, in words
};

[[nodiscard]] const OpRow& op_row(Op op);

/// Whether an operation winds or lays the strand of a part that was tied in before.
[[nodiscard]] bool winds(Op op);

/// The cautions that are due when that act is done: the operation's own and its material's.
[[nodiscard]] Caution cautions_of(const Act& act, const Pattern& pattern, const Resolved& numbers);

} // namespace wrapwright
