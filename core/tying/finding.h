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

enum class Rule : unsigned char {
    bead_after_thread,
    bead_will_not_pass,
    bead_tight,
    bead_falls_off,
    gape_left_small,
    ballast_does_not_fit,
    ballast_crowds_eye,
    ballast_not_locked,
    ballast_after_thread,
    step_too_steep,
    never_tied_off,
    never_wound,
    never_tied_in,
    trimmed_too_soon,
    tied_off_too_few,
    rib_before_body,
    rib_locks_nothing,
    rib_hard_to_catch,
    hard_end_standing,
    butt_bump,
    fibre_too_short,
    hackle_too_large,
    hackle_too_small,
    head_used_up,
    head_crowded,
    thread_near_breaking,
    not_finished,
    cut_unfinished,
    finish_too_few,
    wound_over_wet,
    thread_beyond_need,
    no_thread,
    thread_already_on,
    hook_not_clamped,
    barb_after_dressing,
    case_after_thorax,
    spun_on_thread_base,
    part_never_used,
    amount_is_a_word,
    off_the_wire,
    eye_coated,
    count_,
};

inline constexpr int rule_count = static_cast<int>(Rule::count_);

/// What a number of the evidence is, so that it can be written with its unit.
enum class Kind : unsigned char { none, length, turns, count, force, ratio, angle, time, mass };

/// One number of the evidence; `name` is a word of the rule's own row in finding_text.cpp.
struct Evidence {
    Kind kind = Kind::none;
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
