#pragma once
// The operations of tying: one word each in a recipe, one row each in the table of core/tying.

#include <optional>
#include <string_view>

namespace wrapwright {

enum class Op : unsigned char {
    flatten_barb, ///< press the barb flat
    slide_on,     ///< bead, cone or tube over the point to its seat
    clamp,        ///< hook into the vise
    wind_ballast, ///< weighting wire on the bare shank
    lock_ballast, ///< thread across the ballast and ramps at its ends
    start_thread, ///< jam turns over the standing end
    lay_base,     ///< close thread turns over a stretch
    travel,       ///< open thread turns to another place
    build_up,     ///< thread to a wanted diameter or taper: underbody, head
    tie_in,       ///< plain turns over a material's end
    pinch_in,     ///< pinch turns, so that it stays on top
    loop_in,      ///< soft loop, drawn tight straight
    gather,       ///< loose then tight turns round a bundle of hair
    bind_down,    ///< bind a butt or end along the shank
    stack_hair,   ///< tips even
    spin_hair,    ///< let hollow hair flare round the shank
    dub,          ///< fibre twisted on the thread and wound
    dubbing_loop, ///< fibre in a loop of thread, spun and wound
    wind,         ///< wind a body material
    rib,          ///< open turns over the body, the thread's way
    counter_rib,  ///< open turns over the body, against the body's way
    palmer,       ///< hackle in open turns over a body
    collar,       ///< hackle in close turns at one place
    set_wing,     ///< split, post or lay a wing
    wind_post,    ///< hackle round a post
    pull_over,    ///< wing case or shellback folded forward
    tie_off,      ///< turns over the end of a wound strand
    trim,         ///< cut the waste away
    shape,        ///< trim to a shape
    half_hitch,
    whip_finish,
    cut_thread,
    coat, ///< varnish, quick glue, resin, epoxy
    cure, ///< wait or lamp until a coat is hard
    clear_eye,
    mark,      ///< tool mark: marker, pick out, singe, flatten
    turn_hook, ///< rotate or re-angle the hook in the vise
    join,      ///< joint to another base
    unclamp,   ///< out of the vise
};

inline constexpr int op_count = static_cast<int>(Op::unclamp) + 1;

/// The word for an operation in a recipe file.
[[nodiscard]] std::string_view name(Op op);
[[nodiscard]] std::optional<Op> op(std::string_view word);

/// Which way a strand goes round, told by the thread: the same for either hand.
enum class Sense : unsigned char {
    with_thread,    ///< over the top, away from you
    against_thread, ///< over the top, towards you
};
[[nodiscard]] std::string_view name(Sense sense);

/// How turns follow each other.
enum class Spacing : unsigned char {
    unsaid,
    touching, ///< each turn lies against the last
    open,     ///< equal gaps
    graded,   ///< gaps grow with the body
};
[[nodiscard]] std::string_view name(Spacing spacing);

} // namespace wrapwright
