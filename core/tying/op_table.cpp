#include "core/tying/op_table.h"

#include "core/tying/run.h"

#include <array>

namespace wrapwright {

namespace {

constexpr Caution quiet = Caution::quiet;

// Source of the rows: common practice, no source; the hard order (bead and weight before thread,
// tail and rib before body, whip before cut) is that of the reference on operations.
constexpr std::array<OpRow, op_count> table{{
    {Op::flatten_barb, Need::bare_hook, Caution::point | Caution::eyes, do_flatten_barb,
     "the hook is bare, so that a broken one costs only a hook", "the barb is flat"},
    {Op::slide_on, Need::bare_hook, Caution::point, do_slide_on,
     "no thread and nothing dressed; the bore passes point, barb and bends",
     "it sits against the eye and moves the place where dressing starts"},
    {Op::clamp, Need::nothing, Caution::point, do_clamp, "the jaws hold the bend, not the point",
     "the hook is fixed with its shank level"},
    {Op::wind_ballast, Need::clamped, quiet, do_wind_ballast, "the shank is bare behind the bead",
     "weight and a step at each end"},
    {Op::lock_ballast, Need::thread, quiet, do_lock_ballast, "ballast and thread are on",
     "thread crosses the ballast and ramps its ends"},
    {Op::start_thread, Need::clamped, Caution::blade, do_start_thread, "no thread is on",
     "thread is jammed over its own end"},
    {Op::lay_base, Need::thread, quiet, do_lay_base, "thread is on",
     "close turns that others grip"},
    {Op::travel, Need::thread, quiet, do_travel, "thread is on", "thread hangs at another place"},
    {Op::build_up, Need::thread, quiet, do_build_up, "thread is on", "thread fills a shape"},
    {Op::tie_in, Need::thread, quiet, do_tie_in, "thread hangs where it goes",
     "one end is held, the rest is free"},
    {Op::pinch_in, Need::thread, quiet, do_tie_in, "held on top between finger and thumb",
     "it is held on top of the hook"},
    {Op::loop_in, Need::thread, quiet, do_tie_in, "a soft loop is drawn tight in line",
     "it is held without being rolled"},
    {Op::gather, Need::thread, quiet, do_tie_in, "the bundle is measured and cleaned",
     "loose turns, then tight ones, hold it together"},
    {Op::bind_down, Need::thread, quiet, do_bind_down,
     "it is tied in and its end lies along the shank", "the end is bound and the underbody grows"},
    {Op::stack_hair, Need::nothing, Caution::blade, do_stack_hair, "the hair is cut and combed",
     "its tips are even"},
    {Op::spin_hair, Need::thread, Caution::blade, do_spin_hair,
     "bare or slick shank, strong thread, hollow hair", "hair stands all round"},
    {Op::dub, Need::thread, quiet, do_dub, "thread hangs bare", "fibre is wound to a shape"},
    {Op::dubbing_loop, Need::thread, quiet, do_dub, "a loop is closed at the shank",
     "a spun rope is wound to a shape"},
    {Op::wind, Need::thread, quiet, do_wind, "it is tied in; the thread waits where it will end",
     "the stretch is covered"},
    {Op::rib, Need::thread, quiet, do_rib, "it was tied in before the body; the body is done",
     "open turns over the body"},
    {Op::counter_rib, Need::thread, quiet, do_rib,
     "it was tied in before the body; the body is done",
     "open turns that cross the body and lock it"},
    {Op::palmer, Need::thread, quiet, do_palmer, "the hackle is tied in and the body is done",
     "barbs stand along the body"},
    {Op::collar, Need::thread, quiet, do_collar, "the zone is free and the hackle sized",
     "barbs stand round the hook"},
    {Op::set_wing, Need::thread, quiet, do_set_wing, "the wing is tied in",
     "it stands up or apart"},
    {Op::wind_post, Need::thread, quiet, do_wind_post, "the post stands and the hackle is tied in",
     "barbs lie round the post"},
    {Op::pull_over, Need::thread, quiet, do_pull_over,
     "it was tied in behind what it covers, and that is done", "it lies over the back"},
    {Op::tie_off, Need::thread, quiet, do_tie_off, "the strand has reached the thread",
     "its end is held"},
    {Op::trim, Need::nothing, Caution::blade, do_trim, "it is tied off", "the waste is gone"},
    {Op::shape, Need::nothing, Caution::blade, do_shape, "it stands", "it has its outline"},
    {Op::half_hitch, Need::thread, quiet, do_half_hitch, "thread hangs where the knot goes",
     "what was wound before is locked for now"},
    {Op::whip_finish, Need::thread, quiet, do_whip_finish,
     "the zone is clear and every end trimmed", "the thread is locked for good"},
    {Op::cut_thread, Need::thread, Caution::blade, do_cut_thread, "a whip finish or three hitches",
     "the thread is off"},
    {Op::coat, Need::nothing, quiet, do_coat, "the place is dry and the knot done",
     "it is wet until it cures"},
    {Op::cure, Need::nothing, quiet, do_cure, "a coat is on", "it is hard"},
    {Op::clear_eye, Need::nothing, Caution::point, do_clear_eye, "the coat has not set",
     "the eye is open"},
    {Op::mark, Need::nothing, quiet, do_mark, "what is marked is there", "it shows"},
    {Op::turn_hook, Need::clamped, Caution::point, do_turn_hook, "the hook is in the vise",
     "another side is up"},
    {Op::join, Need::nothing, Caution::point, do_join, "both bases are at hand",
     "the two hang together"},
    {Op::unclamp, Need::nothing, Caution::point, do_unclamp,
     "the thread is cut, coats are dry or hung", "the fly is out of the vise"},
}};

constexpr bool in_order() {
    for (int i = 0; i < op_count; ++i) {
        if (table[static_cast<std::size_t>(i)].op != static_cast<Op>(i)) return false;
    }
    return true;
}
static_assert(in_order(), "the table has one row for each operation, in their order");

} // namespace

const OpRow& op_row(Op op) { return table[static_cast<std::size_t>(op)]; }

bool winds(Op op) {
    switch (op) {
    case Op::wind:
    case Op::rib:
    case Op::counter_rib:
    case Op::palmer:
    case Op::collar:
    case Op::wind_post:
    case Op::pull_over: return true;
    default: return false;
    }
}

Caution cautions_of(const Act& act, const Pattern& pattern, const Resolved& numbers) {
    Caution set = op_row(act.op).caution;
    if (act.material == none) return set;
    const Stuff& s = numbers.materials[static_cast<std::size_t>(act.material)];
    if (s.toxic) set = set | Caution::lead;
    if (act.op == Op::coat || act.op == Op::cure) {
        switch (s.coat) {
        case CoatKind::varnish: set = set | Caution::solvent; break;
        case CoatKind::quick_glue: set = set | Caution::quick_glue; break;
        case CoatKind::light_cured: set = set | Caution::resin; break;
        case CoatKind::epoxy: set = set | Caution::epoxy; break;
        case CoatKind::wax:
        case CoatKind::none: break;
        }
    }
    if (pattern.recipe.materials[static_cast<std::size_t>(act.material)].restricted) {
        set = set | Caution::protected_material;
    }
    return set;
}

} // namespace wrapwright
