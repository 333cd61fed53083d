#include "core/recipe/pattern.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

/// What the amounts of one recipe are shares of, on one rig.
struct Scale {
    const Pattern& pattern;
    const Rig& rig;
    const std::vector<Stuff>* materials = nullptr;

    [[nodiscard]] const Hook& hook(int base) const {
        return rig.hooks[static_cast<std::size_t>(base)];
    }

    [[nodiscard]] Estimate<Length> basis(Basis of, int base) const {
        const Hook& h = hook(base);
        switch (of) {
        case Basis::shank: return h.shank;
        case Basis::gape: return h.gape;
        case Basis::eye: return h.eye_length;
        case Basis::wire: return h.wire;
        case Basis::hook:
            return add_independent(add_independent(h.eye_length, h.shank),
                                   Estimate<Length>{h.gape.value / 2.0, h.gape.low / 2.0,
                                                    h.gape.high / 2.0, h.gape.origin});
        case Basis::bead:
            if (materials != nullptr) {
                for (const Stuff& stuff : *materials) {
                    if (stuff.kind == MaterialKind::bead || stuff.kind == MaterialKind::cone) {
                        return stuff.bead.diameter;
                    }
                }
            }
            return {};
        case Basis::part:
        case Basis::none: break;
        }
        return {};
    }

    /// An amount in numbers where it does not lean on another part.
    [[nodiscard]] Number number(const Reading& reading, int base) const {
        Number n;
        n.unit = reading.unit;
        if (reading.kind == AmountKind::none) return n;
        if (reading.kind == AmountKind::word) {
            n.word = true;
            return n;
        }
        n.given = true;
        n.value = reading.value;
        n.low = reading.low;
        n.high = reading.high;
        if (reading.kind == AmountKind::relative && reading.basis != Basis::part) {
            const Estimate<Length> scale = basis(reading.basis, base);
            n = {reading.value * scale.value.si,
                 reading.low * scale.low.si,
                 reading.high * scale.high.si,
                 scale.origin,
                 Unit::length,
                 true,
                 false};
            if (scale.value.si <= 0.0) n.given = false; // "of the bead" where there is none
        }
        return n;
    }
};

using AmountOf = Amount Part::*;
using LeanOf = int Pattern::LinkedPart::*;

/// The same amount of the part that a relative amount leans on, followed to its end.
///
/// link() has refused cycles, so the walk ends.
Number leaning(const Scale& scale, AmountOf amount, LeanOf lean, int part, const Reading& reading) {
    Number n;
    double factor = reading.value, low = reading.low, high = reading.high;
    while (part != none) {
        const auto i = static_cast<std::size_t>(part);
        const Reading& next = (scale.pattern.recipe.parts[i].*amount).at(scale.rig.size);
        const int on = scale.pattern.parts[i].*lean;
        if (next.kind == AmountKind::relative && next.basis == Basis::part) {
            factor *= next.value;
            low *= next.low;
            high *= next.high;
            part = on;
            continue;
        }
        n = scale.number(next, scale.pattern.parts[i].base);
        n.value *= factor;
        n.low *= low;
        n.high *= high;
        if (n.given) n.origin = std::max(n.origin, Origin::derived);
        return n;
    }
    return n;
}

Number part_number(const Scale& scale, AmountOf amount, LeanOf lean, int part, int base) {
    const auto i = static_cast<std::size_t>(part);
    const Reading& reading = (scale.pattern.recipe.parts[i].*amount).at(scale.rig.size);
    if (reading.kind == AmountKind::relative && reading.basis == Basis::part) {
        return leaning(scale, amount, lean, scale.pattern.parts[i].*lean, reading);
    }
    return scale.number(reading, base);
}

std::optional<Length> length_of(const Scale& scale, const Amount& amount) {
    const Number n = scale.number(amount.at(scale.rig.size), 0);
    if (!n.given || n.unit != Unit::length) return std::nullopt;
    return metres(n.value);
}

MaterialFacts facts_of(const Scale& scale, const RecipeMaterial& m) {
    MaterialFacts facts;
    facts.kind = m.kind;
    facts.substance = m.substance;
    facts.coat = m.coat;
    facts.flat = m.flat;
    facts.diameter = length_of(scale, m.size);
    facts.size_word = m.size.text;
    facts.width = length_of(scale, m.width);
    facts.thickness = length_of(scale, m.thickness);
    facts.usable_length = length_of(scale, m.fibre_length);
    facts.barb_length = length_of(scale, m.barb_length);
    facts.bore = length_of(scale, m.bore);
    facts.slot = length_of(scale, m.slot);
    if (m.hole == "drilled") facts.hole = BeadHole::drilled;
    if (m.hole == "countersunk") facts.hole = BeadHole::countersunk;
    if (m.hole == "slotted") facts.hole = BeadHole::slotted;
    const Number linear = scale.number(m.linear.at(scale.rig.size), 0);
    if (linear.given && linear.unit == Unit::linear_density) {
        facts.linear = LinearDensity{linear.value};
    }
    const Number weighed = scale.number(m.weighed.at(scale.rig.size), 0);
    if (weighed.given && weighed.unit == Unit::mass) facts.weighed = Mass{weighed.value};
    const Number cure = scale.number(m.cure.at(scale.rig.size), 0);
    if (cure.given && cure.unit == Unit::duration) facts.cure = Duration{cure.value};
    return facts;
}

/// Whether a part is on the fly at that size: by its sizes, and as the first of paired
/// alternatives.
bool is_present(const Recipe& recipe, std::size_t i, HookSize size) {
    const Part& part = recipe.parts[i];
    if (!part.only.empty() &&
        std::find(part.only.begin(), part.only.end(), size) == part.only.end()) {
        return false;
    }
    if (part.either.empty()) return true;
    for (const Part& other : recipe.parts) {
        if (other.either == part.either) return other.choice == part.choice;
    }
    return true;
}

Anchor anchor_of(const Scale& scale, const Spot& spot, int part, int base) {
    Anchor anchor;
    anchor.landmark = spot.landmark;
    anchor.part = part;
    anchor.given = spot.landmark != Landmark::none;
    anchor.offset = scale.number(spot.offset, base).value;
    return anchor;
}

/// An action's own amount, or the part's where the action says nothing.
Number own_or_part(const Scale& scale, const Amount& own, int own_leans, AmountOf amount,
                   LeanOf lean, const Number& of_part, int base) {
    const Reading& reading = own.at(scale.rig.size);
    if (reading.kind == AmountKind::none) return of_part;
    if (reading.kind == AmountKind::relative && reading.basis == Basis::part) {
        return leaning(scale, amount, lean, own_leans, reading);
    }
    return scale.number(reading, base);
}

void resolve_parts(const Scale& scale, Resolved& out) {
    const Pattern& pattern = scale.pattern;
    for (std::size_t i = 0; i < pattern.parts.size(); ++i) {
        const auto& linked = pattern.parts[i];
        const int p = static_cast<int>(i);
        const int base = linked.base;
        PartNumbers part;
        part.present = is_present(pattern.recipe, i, scale.rig.size);
        part.base = base;
        part.first_ingredient = linked.first_ingredient;
        part.ingredients = linked.ingredients;
        part.copies = std::max(1, pattern.recipe.parts[i].copies);
        part.turns = part_number(scale, &Part::turns, &Pattern::LinkedPart::turns_of, p, base);
        part.count = part_number(scale, &Part::count, &Pattern::LinkedPart::count_of, p, base);
        part.length = part_number(scale, &Part::length, &Pattern::LinkedPart::length_of, p, base);
        part.diameter =
            part_number(scale, &Part::diameter, &Pattern::LinkedPart::diameter_of, p, base);
        part.pitch = part_number(scale, &Part::pitch, &Pattern::LinkedPart::pitch_of, p, base);
        out.parts.push_back(part);
    }
}

Act act_of(const Scale& scale, const Pattern::LinkedAction& linked, const Resolved& out) {
    using P = Pattern::LinkedPart;
    const Pattern& pattern = scale.pattern;
    const Action& action = pattern.recipe.steps[static_cast<std::size_t>(linked.step)]
                               .actions[static_cast<std::size_t>(linked.index)];
    const int base = linked.base;
    Act act;
    act.op = action.op;
    act.step = linked.step;
    act.index = linked.index;
    act.part = linked.part;
    act.base = base;
    act.other_part = linked.other_part;
    act.other_base = linked.other_base;
    const PartNumbers nothing{};
    const PartNumbers& part =
        linked.part == none ? nothing : out.parts[static_cast<std::size_t>(linked.part)];
    act.material = linked.material;
    if (act.material == none && part.ingredients > 0) {
        act.material =
            pattern.ingredients[static_cast<std::size_t>(part.first_ingredient)].material;
    }
    act.from = anchor_of(scale, action.from, linked.from_part, base);
    act.to = anchor_of(scale, action.to, linked.to_part, base);
    // The turns of a part are those of its winding, not of the thread that ties it in.
    const bool winds = action.op == Op::wind || action.op == Op::rib ||
                       action.op == Op::counter_rib || action.op == Op::palmer ||
                       action.op == Op::collar || action.op == Op::wind_post ||
                       action.op == Op::wind_ballast || action.op == Op::dub ||
                       action.op == Op::dubbing_loop || action.op == Op::build_up;
    const Number nothing_said{};
    act.turns = own_or_part(scale, action.turns, linked.turns_of, &Part::turns, &P::turns_of,
                            winds ? part.turns : nothing_said, base);
    act.count = own_or_part(scale, action.count, linked.count_of, &Part::count, &P::count_of,
                            part.count, base);
    act.length = own_or_part(scale, action.length, linked.length_of, &Part::length, &P::length_of,
                             part.length, base);
    act.diameter = own_or_part(scale, action.diameter, linked.diameter_of, &Part::diameter,
                               &P::diameter_of, part.diameter, base);
    act.diameter_end = own_or_part(scale, action.diameter_end, linked.diameter_end_of,
                                   &Part::diameter, &P::diameter_of, nothing_said, base);
    act.pitch = own_or_part(scale, action.pitch, linked.pitch_of, &Part::pitch, &P::pitch_of,
                            part.pitch, base);
    act.spacing = action.spacing;
    act.over_wet = action.over_wet;
    act.sense_said = action.sense.has_value();
    act.sense = action.sense.value_or(Sense::with_thread);
    return act;
}

/// What is asked of an action's material: nothing, a strand, or a thread that holds others.
enum class Asked : unsigned char { nothing, strand, thread };

Asked asked_of(Op op) {
    switch (op) {
    case Op::start_thread: return Asked::thread;
    case Op::wind_ballast:
    case Op::wind:
    case Op::rib:
    case Op::counter_rib:
    case Op::palmer:
    case Op::collar:
    case Op::wind_post: return Asked::strand;
    default: return Asked::nothing;
    }
}

/// An action whose material cannot be what the operation makes of it, as an error that names it.
std::optional<Error> check_material(const Act& act, const Resolved& out) {
    const Asked asked = asked_of(act.op);
    if (act.material == none || asked == Asked::nothing) return std::nullopt;
    const Stuff& s = out.materials[static_cast<std::size_t>(act.material)];
    const bool is_strand = s.width.value.si > 0.0 && s.height.value.si > 0.0;
    const bool is_thread = is_strand && s.solid_area.value.si > 0.0 && s.packing > 0.0;
    if (asked == Asked::thread ? is_thread : is_strand) return std::nullopt;
    return Error{ErrorCode::out_of_range,
                 std::string("'") + std::string(name(act.op)) + "' with a " +
                     std::string(name(s.kind)) + ", which is no " +
                     (asked == Asked::thread ? "thread" : "strand"),
                 "name a part or a material that can be wound",
                 {0, "steps[" + std::to_string(act.step) + "].actions[" +
                         std::to_string(act.index) + "].material"}};
}

/// The first number that its use cannot mean, as an error that names the action.
std::optional<Error> check_act(const Act& act) {
    const auto refuse = [&](std::string_view member, std::string_view why) {
        return Error{ErrorCode::out_of_range,
                     std::string(why),
                     "write an amount of the right kind and size, or a word",
                     {0, "steps[" + std::to_string(act.step) + "].actions[" +
                             std::to_string(act.index) + "]." + std::string(member)}};
    };
    const auto bad = [](const Number& n, double most) {
        return n.given && (!std::isfinite(n.value) || n.value < 0.0 || n.value > most);
    };
    if (bad(act.turns, 5000.0)) return refuse("turns", "more than 5,000 turns, or fewer than none");
    if (bad(act.count, 5000.0))
        return refuse("count", "more than 5,000 pieces, or fewer than none");
    if (bad(act.length, 1.0)) return refuse("length", "a length over a metre, or below nothing");
    if (bad(act.diameter, 0.05))
        return refuse("diameter", "a diameter over 50 mm, or below nothing");
    if (bad(act.diameter_end, 0.05)) {
        return refuse("diameter_end", "a diameter over 50 mm, or below nothing");
    }
    if (bad(act.pitch, 0.05)) return refuse("pitch", "a pitch over 50 mm, or below nothing");
    if (act.diameter.given && act.diameter.unit != Unit::length) {
        return refuse("diameter", "a diameter that is no length");
    }
    if (act.pitch.given && act.pitch.unit != Unit::length) {
        return refuse("pitch", "a pitch that is no length");
    }
    return std::nullopt;
}

} // namespace

Result<bool> resolve(const Pattern& pattern, const Rig& rig, Resolved& out) {
    out.materials.clear();
    out.parts.clear();
    out.acts.clear();
    WW_ASSERT(rig.hooks.size() == pattern.recipe.bases.size());

    Scale scale{pattern, rig, &out.materials};
    const Length gape = rig.hooks.front().gape.value;
    for (std::size_t i = 0; i < pattern.recipe.materials.size(); ++i) {
        const Result<Stuff> stuff =
            complete_material(facts_of(scale, pattern.recipe.materials[i]), gape);
        if (!stuff.ok()) {
            Error error = stuff.error();
            error.place.key = "materials[" + std::to_string(i) + "]." + error.place.key;
            return error;
        }
        out.materials.push_back(stuff.value());
    }
    resolve_parts(scale, out);
    for (const auto& linked : pattern.actions) {
        const auto part = static_cast<std::size_t>(linked.part);
        if (linked.part != none && !out.parts[part].present) continue;
        Act act = act_of(scale, linked, out);
        if (auto error = check_act(act)) return *error;
        if (auto error = check_material(act, out)) return *error;
        if (act.other_part != none &&
            !out.parts[static_cast<std::size_t>(act.other_part)].present) {
            act.other_part = none;
        }
        out.acts.push_back(act);
    }
    return true;
}

} // namespace wrapwright
