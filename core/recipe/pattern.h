#pragma once
// A recipe with its references resolved to indices, and the same for one size in numbers.

#include "core/recipe/recipe.h"

#include <vector>

namespace wrapwright {

/// Index of nothing.
inline constexpr int none = -1;

/// A recipe whose every reference is checked: what tie() runs, whatever the size.
///
/// Indices are positions in recipe.bases, .materials, .parts, .steps.
struct Pattern {
    struct LinkedIngredient {
        int material = none;
        double share = 1.0;
    };
    struct LinkedPart {
        int base = 0;
        int first_ingredient = 0;
        int ingredients = 0;
        int turns_of = none, count_of = none, length_of = none, diameter_of = none,
            pitch_of = none; ///< the part that such an amount is relative to
    };
    struct LinkedAction {
        int step = 0;
        int index = 0; ///< within its step
        int part = none, material = none, base = 0;
        int other_part = none, other_base = none;
        int from_part = none, to_part = none;
        int turns_of = none, count_of = none, length_of = none, diameter_of = none,
            diameter_end_of = none, pitch_of = none;
    };
    Recipe recipe;
    std::vector<LinkedIngredient> ingredients{};
    std::vector<LinkedPart> parts{};
    std::vector<LinkedAction> actions{};
};

/// The recipe as a pattern.
///
/// Fails   unknown_word for an id that nothing has; duplicate for one that two have; cyclic for
///         amounts that lead back to themselves; all with the key's path
[[nodiscard]] Result<Pattern> link(Recipe recipe);

/// The hooks and other bases that one fly is tied on: one for each base of the recipe.
struct Rig {
    HookSize size;
    std::vector<Hook> hooks{};
};

/// The rig for that size: measured hooks where the recipe has them for it, typical ones elsewhere.
///
/// `own`, where given, stands in for the first base.
/// Fails   out_of_range for a size that the family's table does not hold
[[nodiscard]] Result<Rig> make_rig(const Pattern& pattern, HookSize size,
                                   const Hook* own = nullptr);

/// An amount in numbers, for one size; not given when there was nothing or only a word.
struct Number {
    double value = 0.0, low = 0.0, high = 0.0; ///< SI, or a count
    Origin origin = Origin::stated;
    Unit unit = Unit::count;
    bool given = false;
    bool word = false; ///< there is a word that stays a word
};

/// A place in numbers; where it lies is known only while tying (a bead, another part's end).
struct Anchor {
    Landmark landmark = Landmark::none;
    int part = none;
    double offset = 0.0; ///< m, tailward positive
    bool given = false;
};

/// One action in numbers.
struct Act {
    Op op = Op::mark;
    int step = 0, index = 0;
    int part = none, material = none, base = 0, other_part = none, other_base = none;
    Anchor from{}, to{};
    Number turns{}, count{}, length{}, diameter{}, diameter_end{}, pitch{};
    Sense sense = Sense::with_thread;
    bool sense_said = false; ///< false: the sense is the operation's own
    Spacing spacing = Spacing::unsaid;
    bool over_wet = false;
};

/// One part in numbers.
struct PartNumbers {
    bool present = true; ///< false: left out at this size, or an alternative not chosen
    int base = 0;
    int first_ingredient = 0, ingredients = 0;
    int copies = 1;
    Number turns{}, count{}, length{}, diameter{}, pitch{};
};

/// The whole recipe in numbers for one rig.
struct Resolved {
    std::vector<Stuff> materials{};
    std::vector<PartNumbers> parts{};
    std::vector<Act> acts{}; ///< actions of parts that are left out are not here
};

/// Fills `out` with the pattern's numbers on that rig.
///
/// Cost    no allocation when `out` was filled before from a pattern no larger
/// Fails   out_of_range, with the key's path, for a number that its use cannot mean
[[nodiscard]] Result<bool> resolve(const Pattern& pattern, const Rig& rig, Resolved& out);

} // namespace wrapwright
