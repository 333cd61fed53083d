#include "core/tying/step_text.h"

#include "core/tying/words.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

struct CautionRow {
    Caution caution;
    std::string_view word;
    std::string_view text;
};

constexpr std::array<CautionRow, 9> caution_rows{{
    {Caution::point, "point",
     "Hook points: hold the hook by its bend, and count the hooks in and out."},
    {Caution::eyes, "eyes", "A point can snap off when its barb is pressed: protect your eyes."},
    {Caution::blade, "blade", "Blades: cut away from the thread and from your fingers."},
    {Caution::lead, "lead",
     "Lead: never in the mouth; wash your hands before you eat; keep it from children. Check the "
     "rules where you fish and sell."},
    {Caution::solvent, "solvent", "Solvent: fresh air, no flame, no food at the bench."},
    {Caution::quick_glue, "quick glue",
     "Quick glue bonds skin and eyes in seconds: apply it on a needle; do not pull apart what is "
     "stuck; eyes need a doctor."},
    {Caution::resin, "resin",
     "Uncured resin can make you allergic for good: nitrile gloves, nothing on the skin, and do "
     "not look into the lamp."},
    {Caution::epoxy, "epoxy",
     "Uncured epoxy can make you allergic for good: gloves, nothing on the skin, fresh air."},
    {Caution::protected_material, "protected",
     "This feather or fur may be protected: keep proof of lawful origin or take a substitute, and "
     "check your rules."},
}};

const CautionRow& row(Caution one) {
    const auto* const it = std::find_if(caution_rows.begin(), caution_rows.end(),
                                        [&](const CautionRow& r) { return r.caution == one; });
    WW_ASSERT(it != caution_rows.end());
    return *it;
}

struct Phrase {
    Op op;
    std::string_view text;
};

/// What the hands do; {} is what they do it to.
constexpr std::array<Phrase, op_count> phrases{{
    {Op::flatten_barb, "press the barb of {} flat"},
    {Op::slide_on, "slide on {}"},
    {Op::clamp, "clamp {}"},
    {Op::wind_ballast, "wind {}"},
    {Op::lock_ballast, "lock {} with thread"},
    {Op::start_thread, "start the thread"},
    {Op::lay_base, "lay a thread base"},
    {Op::travel, "take the thread along"},
    {Op::build_up, "build up {}"},
    {Op::tie_in, "tie in {}"},
    {Op::pinch_in, "pinch in {}"},
    {Op::loop_in, "loop in {}"},
    {Op::gather, "gather {}"},
    {Op::bind_down, "bind down {}"},
    {Op::stack_hair, "stack {}"},
    {Op::spin_hair, "spin {}"},
    {Op::dub, "dub {}"},
    {Op::dubbing_loop, "dub {} from a loop"},
    {Op::wind, "wind {}"},
    {Op::rib, "wind {} over the body"},
    {Op::counter_rib, "wind {} across the body"},
    {Op::palmer, "palmer {}"},
    {Op::collar, "wind {} in close turns"},
    {Op::set_wing, "set {}"},
    {Op::wind_post, "wind {} round the post"},
    {Op::pull_over, "pull {} over"},
    {Op::tie_off, "tie off {}"},
    {Op::trim, "trim {}"},
    {Op::shape, "trim {} to shape"},
    {Op::half_hitch, "half hitch"},
    {Op::whip_finish, "whip finish"},
    {Op::cut_thread, "cut the thread"},
    {Op::coat, "put on {}"},
    {Op::cure, "let {} harden"},
    {Op::clear_eye, "clear the eye"},
    {Op::mark, "mark {}"},
    {Op::turn_hook, "turn {}"},
    {Op::join, "join {}"},
    {Op::unclamp, "take {} out of the vise"},
}};

constexpr bool phrases_in_order() {
    for (std::size_t i = 0; i < phrases.size(); ++i) {
        if (static_cast<std::size_t>(phrases[i].op) != i) return false;
    }
    return true;
}
static_assert(phrases_in_order());

/// What an action is done to, with its article.
std::string object_of(const Pattern& pattern, const Act& act) {
    const Recipe& recipe = pattern.recipe;
    switch (act.op) {
    case Op::flatten_barb:
    case Op::clamp:
    case Op::turn_hook:
    case Op::unclamp: return "the " + base_words(recipe, act.base);
    case Op::join:
        if (act.other_base == none) return "the next hook";
        return "the " + base_words(recipe, act.other_base);
    default: break;
    }
    if (act.part != none) return "the " + part_words(recipe, act.part);
    return act.op == Op::build_up ? "thread" : "what is there";
}

std::string stretch_words(Length from, Length to) {
    if (std::abs((to - from).si) < 5e-6) return "at " + mm_words(from); // closer than it prints
    return write_rounded(in_millimetres(from), 2) + " to " + mm_words(to);
}

/// Thread always goes over the top and away, so that its turns are told by number and place.
std::string winding_words(const Winding& winding, bool is_thread) {
    std::string text = counted(winding.turns, "turn", "turns");
    if (is_thread) text += " of thread";
    switch (winding.spacing) {
    case Spacing::open: text += ", " + mm_words(winding.pitch) + " apart"; break;
    case Spacing::graded: text += ", widening, " + mm_words(winding.pitch) + " on average"; break;
    case Spacing::touching:
        if (!is_thread) text += ", touching";
        break;
    case Spacing::unsaid: break;
    }
    if (!is_thread) text += ", " + std::string(sense_words(winding.sense));
    return text + ", " + stretch_words(winding.from, winding.to);
}

std::string placed_words(const Placed& placed) {
    switch (placed.kind) {
    case PlacedKind::bead:
    case PlacedKind::cone:
        return mm_words(placed.reach) + " across, " + write_rounded(in_milligrams(placed.mass), 0) +
               " mg";
    case PlacedKind::bundle:
    case PlacedKind::clump:
        return write_rounded(placed.count, 0) + " fibres, " + mm_words(placed.reach) +
               " long, at " + mm_words(placed.at);
    case PlacedKind::butt: return stretch_words(placed.at, placed.to);
    case PlacedKind::barbs: return "barbs " + mm_words(placed.reach) + " long";
    default: return stretch_words(placed.at, placed.to);
    }
}

} // namespace

std::vector<Caution> each_of(Caution set) {
    std::vector<Caution> list;
    for (const CautionRow& r : caution_rows) {
        if (has(set, r.caution)) list.push_back(r.caution);
    }
    return list;
}

std::string_view caution_word(Caution one) { return row(one).word; }

std::string_view caution_text(Caution one) { return row(one).text; }

Caution step_cautions(const Pattern& pattern, const Resolved& numbers, int step) {
    Caution set = Caution::quiet;
    for (const Act& act : numbers.acts) {
        if (act.step == step) set = set | cautions_of(act, pattern, numbers);
    }
    return set;
}

std::string action_text(const Pattern& pattern, const Resolved& numbers, const Tied& tied,
                        int moment) {
    const Act& act = numbers.acts[static_cast<std::size_t>(moment)];
    std::string text(phrases[static_cast<std::size_t>(act.op)].text);
    if (const auto at = text.find("{}"); at != std::string::npos) {
        text.replace(at, 2, object_of(pattern, act));
    }
    const auto add = [&](const std::string& detail) {
        text += text.find(':') == std::string::npos ? ": " : "; ";
        text += detail;
    };
    for (const Placed& placed : tied.placed) {
        if (placed.act == moment) add(placed_words(placed));
    }
    for (const Winding& winding : tied.windings) {
        if (winding.act != moment) continue;
        const auto material = static_cast<std::size_t>(winding.material);
        add(winding_words(winding, numbers.materials[material].kind == MaterialKind::thread));
    }
    return text;
}

} // namespace wrapwright
