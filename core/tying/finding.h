#pragma once
// What a precondition found: a level, a rule, the place, and the evidence in numbers.
//
// A finding holds no text, so that tying allocates nothing; finding_text.h writes it out.

#include "core/units/quantity.h"

#include <array>

namespace wrapwright {

enum class Level : unsigned char {
    stops,  ///< the fly cannot be tied so, or falls apart
    likely, ///< likely trouble
    note,   ///< worth knowing
};

/// Each rule with its evidence, in order.
enum class Rule : unsigned char {
    bead_after_thread,    ///< -
    bead_will_not_pass,   ///< needed, has, margin (lengths), where: 0 wire 1 barb 2 bend 3 jig bend
    bead_tight,           ///< the same
    bead_falls_off,       ///< eye's outside, bore or slot (lengths)
    gape_left_small,      ///< left (length), its share, the least share (ratios)
    ballast_does_not_fit, ///< its span, the room, what is over (lengths)
    ballast_crowds_eye,   ///< clear, wanted (lengths)
    ballast_not_locked,   ///< turns, span (length)
    ballast_after_thread, ///< -
    step_too_steep,   ///< tan of the slope, tan that holds, tan that slides (ratios), step (length)
    never_tied_off,   ///< turns wound
    never_wound,      ///< -
    never_tied_in,    ///< -
    trimmed_too_soon, ///< -
    tied_off_too_few, ///< turns, least turns
    rib_before_body,  ///< -
    rib_locks_nothing, ///< rib turns, crossings with the body (counts)
    rib_hard_to_catch, ///< -
    hard_end_standing, ///< thread turns that pass it
    butt_bump, ///< height (length), its share of the diameter (ratio), gap to ballast (length)
    fibre_too_short,      ///< needs, has (lengths), turns asked, turns that it reaches
    hackle_too_large,     ///< barb, target (lengths), ratio, the limit (ratio)
    hackle_too_small,     ///< the same
    head_used_up,         ///< left, zone (lengths)
    head_crowded,         ///< left, zone (lengths)
    thread_near_breaking, ///< pull, strength (forces), margin, least margin (ratios)
    not_finished,         ///< thread turns since the last knot
    cut_unfinished,       ///< thread turns since the last knot
    finish_too_few,       ///< turns, least turns
    wound_over_wet,       ///< time that the coat still needs
    thread_beyond_need,   ///< turns, turns that hold
    no_thread,            ///< -
    thread_already_on,    ///< -
    hook_not_clamped,     ///< -
    barb_after_dressing,  ///< -
    case_after_thorax,    ///< -
    spun_on_thread_base,  ///< thickness of thread below (length)
    part_never_used,      ///< -
    amount_is_a_word,     ///< the number that was used instead (count or length)
    off_the_wire,         ///< asked, last place (lengths)
    eye_coated,           ///< front of the coat (length)
    count_,
};

inline constexpr int rule_count = static_cast<int>(Rule::count_);

/// What a number of the evidence is, so that it can be written with its unit.
enum class Kind : unsigned char { unused, length, turns, count, force, ratio, angle, time, mass };

/// One number of the evidence; `name` is a word of the rule's own row in finding_text.cpp.
struct Evidence {
    Kind kind = Kind::unused;
    double si = 0.0;
};

/// One finding. It never stops the run: the person sees everything at once.
struct Finding {
    Level level = Level::note;
    Rule rule = Rule::part_never_used;
    int act = -1; ///< index into Tied::moments; -1: the whole fly
    int step = -1;
    int base = 0;
    int part = -1;
    int material = -1;
    Length at{}; ///< where on the wire
    std::array<Evidence, 4> evidence{};
};

} // namespace wrapwright
