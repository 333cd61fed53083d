#pragma once
// The thresholds of the findings: common practice in one table, named, editable.

#include "core/units/quantity.h"

namespace wrapwright {

/// What counts as trouble. Each default is common practice without a source unless it says more.
struct Limits {
    Length bead_clearance =
        millimetres(0.05);              ///< bends are not perfect arcs (derived, +-20 % of R)
    double gape_left_share = 0.60;      ///< of the bare gape, below which a bead is too large
    double head_eye_lengths = 1.0;      ///< no-go behind the eye, where no bead is the head
    double ballast_clear_eyes = 1.5;    ///< ballast to eye, in eye lengths, where there is no bead
    double slope_safe = 0.15;           ///< tan: holds on any finish (friction reviews)
    double slope_slides = 0.40;         ///< tan: slides on any finish (friction reviews)
    double tie_off_turns = 2.0;         ///< least over a wound end
    double tie_off_turns_springy = 3.0; ///< least over wire and oval tinsel
    double tie_in_turns = 2.0;
    double thread_turns_spare = 3.0; ///< a tie-in with more turns than the least times this is bulk
    double finish_turns = 3.0;       ///< of a whip finish
    double half_hitches_as_finish = 3.0;
    double work_load_share = 0.60; ///< of the breaking load, at which a tier pulls
    double load_margin = 1.5;      ///< below it the thread is near its strength
    // Pulls of the operations, N. Common practice, no source: what a steady hand gives.
    Force pull_plain = newtons(1.0);
    Force pull_finish = newtons(1.2);
    Force pull_gather = newtons(3.0);
    Force pull_spin = newtons(5.0);
    double bent_strand_share = 0.8; ///< strength left where thread bends over an edge (memory)
    double ramp_slope = 0.30;       ///< tan of the ramps that lock ballast, where turns are unsaid
    double travel_widths = 4.0;     ///< spacing of travelling thread, in thread widths
    double hackle_high = 1.25;      ///< barb length over 1.5 gape, above which it is large
    double hackle_low = 0.75;       ///< and below which it is small
    Length butt_gap = millimetres(0.3);    ///< between a butt's end and the ballast
    Length least_step = millimetres(0.40); ///< of diameter: strands bridge a smaller one
    Length held_end = millimetres(0.6); ///< at its ends a strand is held by thread and cannot slide
    Length flat_window = millimetres(0.3); ///< the stretch over which a slope is taken
    double butt_step = 0.20;               ///< share of the diameter that shows as a bump
    double waste_tag = 0.0;                ///< left for the issue on stock: waste and packs
};

} // namespace wrapwright
