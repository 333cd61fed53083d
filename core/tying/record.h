#pragma once
// The record of one run of the tying. Every view reads this and computes nothing again.
//
// Plain numbers and indices: no text, so that a recompute allocates nothing. Indices refer to the
// pattern (parts, materials, steps) and to the vectors below. Places `at` are distances along a
// base's wire behind the back of its eye (core/hook/centreline.h).

#include "core/hook/centreline.h"
#include "core/material/bead.h"
#include "core/recipe/pattern.h"
#include "core/tying/finding.h"
#include "core/tying/profile.h"

#include <vector>

namespace wrapwright {

/// The thread on one base.
struct ThreadState {
    bool on = false;
    int material = none;
    Length at{};                   ///< where it hangs
    double turns = 0.0;            ///< since it was started
    double turns_since_lock = 0.0; ///< since the last half hitch or whip finish
    bool finished = false;         ///< a whip finish, or hitches enough, was the last thing done
};

/// A base as the fly grows on it.
struct BaseState {
    ThreadState thread;
    bool clamped = false;
    bool dressed = false; ///< something other than bead and ballast is on it
    int coat_act = none;  ///< the coat that is still wet, and since which act
    Length head_room{};   ///< bare wire between the eye (or bead) and what is nearest to it
};

/// The fly after one action: enough to draw it, to fall back to it, to say what it still holds.
struct Moment {
    int act = 0;
    int step = 0;
    int base = 0;
    int profile = 0;  ///< index into Tied::profiles: the base's diameter after this action
    int windings = 0; ///< how many windings, placed things, strands and findings exist
    int placed = 0;   ///< now; those before this index are on the fly
    int strands = 0;
    int findings = 0;
    bool restore_point = false;
    BaseState state{};
    double thread_length = 0.0; ///< m of thread drawn so far
};

/// One stretch of turns of one strand.
struct Winding {
    int act = 0, step = 0, base = 0, part = none, material = none;
    Length from{}, to{}; ///< in the order of winding
    double turns = 0.0;
    Length pitch{};           ///< mean, axially
    double growth = 1.0;      ///< ratio of successive pitches; 1 when they are equal
    Length width{}, height{}; ///< of the strand as it lies
    Length core{};            ///< mean diameter below it
    Length length{};          ///< of strand wound, tags left out
    Mass mass{};              ///< of that length
    Sense sense = Sense::with_thread;
    bool against_thread = false;
    Spacing spacing = Spacing::touching;
    double pieces = 1.0; ///< fibres or herls wound together; `width` is that of all of them
    int layer = 1;
    int profile_below = 0;   ///< index into Tied::profiles: what it lies on
    double start_turn = 0.0; ///< where round the hook it starts: 0 on top, in turns, its own way
    double slope = 0.0;      ///< steepest |tan| of the core below it
    double grip = 0.0;       ///< friction that it needs to hold there (0: holds by itself)
};

enum class PlacedKind : unsigned char {
    bead,
    cone,
    dumbbell,
    tube,
    butt,   ///< bound down along the shank
    bundle, ///< tail, wing, legs: fibres that stand free
    barbs,  ///< hackle barbs that stand round the hook
    post,
    case_strip,
    coat,
    loop,
    knot,
    joint,
    clump,
};

/// One thing that is somewhere on the fly and is not a winding.
struct Placed {
    PlacedKind kind = PlacedKind::bundle;
    int act = 0, step = 0, base = 0, part = none, material = none;
    Length at{}, to{};  ///< where it is held, or the stretch that it covers
    Length reach{};     ///< how far it stands free: fibre length, barb length, bead diameter
    double count = 1.0; ///< fibres, barbs, pieces
    Length root{};      ///< diameter of the body where it starts
    Length thick{};     ///< of the bundle where it is held
    Angle lean{};       ///< to the wire, 0 tailward, 90 degrees upright, 180 eyeward
    Angle spread{};     ///< half-angle of the fan
    Angle around{};     ///< where round the hook: 0 on top, 180 degrees below
    bool all_round = false;
    Mass mass{};
    int removed_act = none; ///< when it was trimmed away or folded over
};

/// One strand's life: tied in, wound, tied off, trimmed are four places and times.
struct Strand {
    int part = none, material = none, base = 0;
    int tied_in = none, wound = none, tied_off = none, trimmed = none; ///< acts
    Length at{};                                                       ///< where it was tied in
    double tie_turns = 0.0;
    double off_turns = 0.0;
    double wound_turns = 0.0;
    double count = 1.0;
    Length free{}; ///< usable length of one piece beyond the tie-in
    Length used{}; ///< of it that the windings took
    Sense sense = Sense::with_thread;
    bool to_wind = false; ///< it was tied in to be wound
    bool springy = false;
};

/// What one part took: the line of a tally.
struct PartTake {
    int part = none;     ///< none: a base (no material either), or thread with no part of its own
    int material = none; ///< a part of several materials has a line for each
    int step = none;     ///< the step in which it was drawn
    double count = 0.0;  ///< pieces: beads, fibres, feathers, drops
    double turns = 0.0;
    Length length{};       ///< of strand or of one fibre, with tags
    Estimate<Mass> mass{}; ///< that stays on the fly
    Volume volume{};       ///< solid, that stays on the fly
};

/// Where a part lies on its base, from the first to the last thing done for it.
struct Extent {
    Length front{}, rear{};
    bool set = false;
};

/// One base, its centreline and what tyers call its stretches.
struct BaseRun {
    Hook hook;
    Centreline line;
    Length no_go{};     ///< from the eye to where the head must end
    int bead = none;    ///< index into placed
    Length bead_rear{}; ///< behind the bead; the eye where there is none
};

/// The complete record of one run.
struct Tied {
    HookSize size;
    std::vector<BaseRun> bases{};
    std::vector<Profile> profiles{}; ///< the first of each base is bare
    std::vector<int> last_profile{}; ///< of each base
    std::vector<Moment> moments{};   ///< one for each action, in order
    std::vector<Winding> windings{};
    std::vector<Placed> placed{};
    std::vector<Strand> strands{};
    std::vector<PartTake> takes{};
    std::vector<Extent> extents{}; ///< one for each part of the pattern
    std::vector<Finding> findings{};
    Estimate<Mass> mass{}; ///< of the whole fly

    [[nodiscard]] const Profile& profile(int base) const {
        return profiles[static_cast<std::size_t>(last_profile[static_cast<std::size_t>(base)])];
    }
};

} // namespace wrapwright
