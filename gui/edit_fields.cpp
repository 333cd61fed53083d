#include "gui/edit_form.h"

#include "core/material/material.h"
#include "core/units/hook_size.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) text.append(text.empty() ? "" : ", ").append(word);
    return text;
}

std::vector<Field> head_fields(const EditWork& work) {
    const Recipe& r = work.draft().recipe;
    Form form(work, {});
    form.words("name", "Name", r.name, "What the fly is called.");
    form.words(
        "class", "Class of fly", r.fly_class,
        "Such as dry, wet, nymph, jig nymph, streamer, sedge, midge. Standards of proportion "
        "go by it.");
    Field& sizes = form.words("sizes", "Hook sizes", r.sizes,
                              "A list or a range, as you write it: 10, 12, 14 or 12-18.");
    if (sizes.wrong.empty() && !r.size_list.empty()) {
        for (const HookSize size : r.size_list) {
            sizes.said.append(sizes.said.empty() ? "#" : ", #").append(write_hook_size(size));
        }
    }
    std::string hook_text, family;
    if (!r.bases.empty()) {
        hook_text = r.bases[0].text;
        if (r.bases[0].family) family = name(*r.bases[0].family);
        form.words(
            "bases[0].text", "Hook", hook_text,
            "The hook in your own words. Its numbers come from the kind below and the size, or "
            "from one that you measured.");
        std::vector<std::string> kinds = words_to(HookFamily::jig);
        kinds.insert(kinds.begin(), std::string());
        form.pick("bases[0].family", "Kind of hook", family, std::move(kinds),
                  "Which table of typical hooks the sizes are taken from.");
    }
    form.words("tags", "Tags", joined(r.tags), "Words to find it by, with commas between them.");
    form.words("aliases", "Also called", joined(r.aliases), "Other names, with commas.");
    form.text("fishing", "How it is fished", r.fishing, "Printed on the card.");
    form.words("imitates", "Imitates", r.imitates, "What it stands for in the water.");
    form.text("notes", "Notes", r.notes, "Whatever else belongs to it.");
    form.text("verbatim", "The original words", r.verbatim,
              "The text that it came from, word for word. It is kept, searched and printed, never "
              "changed by the program.");
    form.words("provenance.author", "Written by", r.provenance.author, "Who made or wrote it.");
    form.words("provenance.source", "Source", r.provenance.source, "Book, letter, shop, bench.");
    form.words("provenance.permission", "Permission", r.provenance.permission,
               "What may be done with it.");
    form.words("provenance.credit", "Credit line", r.provenance.credit,
               "Goes with it wherever it is shared.");
    return form.take();
}

std::vector<Field> material_fields(const EditWork& work, std::size_t i) {
    const RecipeMaterial& m = work.draft().recipe.materials[i];
    Form form(work, row_of("materials", static_cast<int>(i)));
    form.words("text", "Material", m.text, "As you would ask for it.");
    form.pick("kind", "Kind", name(m.kind), words_to(MaterialKind::other),
              "What it is for the run: how it winds, what it weighs.");
    form.words("colour", "Colour", m.colour, "A word; colour of choice is one too.");
    form.words("tint", "Colour in pictures", m.tint, "As #rrggbb, where the word is not enough.");
    std::vector<std::string> substances;
    for (int s = 0; s <= static_cast<int>(Substance::epoxy); ++s) {
        substances.emplace_back(substance_row(static_cast<Substance>(s)).word);
    }
    form.pick("substance", "Made of", substance_row(m.substance).word, std::move(substances),
              "Decides its weight; unknown takes what is usual for the kind.");
    const bool bead = m.kind == MaterialKind::bead || m.kind == MaterialKind::cone;
    const bool coat = m.kind == MaterialKind::coat;
    form.amount("size", bead ? "Diameter" : "Thickness across", m.size, nullptr,
                "2.8 mm, 7/64 in, .015 in, or a word such as fine.");
    if (m.kind == MaterialKind::thread || m.linear.given()) {
        form.amount("linear", "Thread weight", m.linear, nullptr, "70 den, 8 tex or 78 dtex.");
        form.flag("flat", "Spun flat", m.flat, "A thread that lies flat when it is spun open.");
    }
    if (bead) {
        form.pick("hole", "Hole", m.hole, {"", "drilled", "countersunk", "slotted"},
                  "Which bends the bead will pass.");
        form.amount("bore", "Bore", m.bore, nullptr, "Where you measured it.");
    }
    if (coat) {
        form.pick("coat", "Coat", name(m.coat),
                  {"none", "varnish", "quick glue", "light cured", "epoxy", "wax"},
                  "How it hardens; the caution at the step goes by it.");
        form.amount("cure", "Hardens in", m.cure, nullptr, "20 min, 30 s.");
    }
    if (!bead && !coat) {
        form.amount("fibre_length", "Length of one", m.fibre_length, nullptr,
                    "What one fibre, herl or feather is good for: 30 mm.");
        form.amount("barb_length", "Barb length", m.barb_length, nullptr,
                    "Of a hackle: half the shank, 1.5 gape, 9 mm.");
    }
    form.amount("weighed", "One weighs", m.weighed, nullptr, "On your scale: 4 mg.");
    form.words("instead", "Instead of it", m.instead, "What may be used where it is not at hand.");
    form.words("origin_note", "Origin", m.origin_note, "Lawful origin, where it needs a note.");
    return form.take();
}

std::vector<Field> part_fields(const EditWork& work, std::size_t i) {
    const Recipe& r = work.draft().recipe;
    const Part& p = r.parts[i];
    const PartNumbers* n =
        work.fly && i < work.fly->resolved.parts.size() ? &work.fly->resolved.parts[i] : nullptr;
    Form form(work, row_of("parts", static_cast<int>(i)));
    form.words("role", "Part", p.role, "Tail, body, rib, wing, hackle, thorax, head ...");
    form.words("text", "In your words", p.text, "As on a card.");
    if (p.made_of.size() <= 1) {
        form.pick("made_of", "Made of", p.made_of.empty() ? "" : p.made_of[0].material,
                  ids_with_nothing(r.materials), "One of the materials of this recipe.");
    } else {
        std::string list;
        for (const Ingredient& in : p.made_of) {
            list.append(list.empty() ? "" : ", ").append(in.material);
        }
        form.words("made_of", "Made of", list, "Materials of this recipe, with commas.");
    }
    form.amount("length", "Length", p.length, n ? &n->length : nullptr,
                "Half the shank, 1.5 gape, 12 mm, same as body.");
    form.amount("count", "How many", p.count, n ? &n->count : nullptr,
                "8 fibres, 10 or 12, sparse.");
    form.amount("turns", "Turns", p.turns, n ? &n->turns : nullptr, "5 turns, four or five.");
    form.amount("pitch", "From turn to turn", p.pitch, n ? &n->pitch : nullptr, "0.8 mm.");
    form.amount("diameter", "Thick", p.diameter, n ? &n->diameter : nullptr,
                "Diameter when it is wound: 2 mm, 0.6 bead.");
    if (r.bases.size() > 1 || !p.base.empty()) {
        form.pick("base", "On which", p.base, ids_with_nothing(r.bases),
                  "Of the hooks and shanks; none is the first.");
    }
    form.words("side", "Side", p.side, "Top, below, near, far, round.");
    form.number("copies", "Copies", p.copies == 1 ? std::string() : std::to_string(p.copies),
                "Pairs and repeats: 2.");
    form.words("only_sizes", "Only at sizes", p.only_sizes, "10-14; left out at the others.");
    form.flag("optional", "May be left out", p.optional, "The fly is complete without it.");
    form.words("either", "Alternatives", p.either,
               "Parts with the same word here stand in for each other.");
    form.words("choice", "Belongs to choice", p.choice, "Which of the alternatives.");
    form.words("condition", "Condition", p.condition, "If floss, then rib.");
    return form.take();
}

std::vector<Field> step_fields(const EditWork& work, std::size_t i) {
    const Step& s = work.draft().recipe.steps[i];
    Form form(work, row_of("steps", static_cast<int>(i)));
    form.text("text", "What is done", s.text,
              "As you would say it, for either hand: over the top, away from you.");
    form.text("landmark", "Look for", s.landmark, "How one sees that it is right.");
    form.text("tip", "Tip", s.tip, "Shown on request at the bench.");
    form.text("caution", "Caution", s.caution, "Your own, beside the usual ones.");
    form.words("picture", "Picture", s.picture,
               "The name of a photo of this step, as it lies beside the recipe.");
    static constexpr std::array<std::string_view, 3> stages{"each", "all first", "all last"};
    form.pick("batch", "In a batch", stages[static_cast<std::size_t>(s.batch)],
              {"each", "all first", "all last"},
              "Done for each fly in turn, or for all of them at once.");
    form.flag("restore_point", "Holds by itself", s.restore_point,
              "A thread that breaks later falls back to the end of this step.");
    return form.take();
}

const Act* act_at(const EditWork& work, std::size_t step, std::size_t action) {
    if (!work.fly) return nullptr;
    for (const Act& act : work.fly->resolved.acts) {
        if (act.step == static_cast<int>(step) && act.index == static_cast<int>(action)) {
            return &act;
        }
    }
    return nullptr;
}

/// Which fields an operation has a use for; what is written is shown in any case.
struct Uses {
    bool from = false, to = true, turns = false, count = false, thick = false, way = false;
};

Uses uses_of(Op op) {
    switch (op) {
    case Op::wind_ballast: return {true, true, true, false, false, true};
    case Op::lock_ballast: return {false, false, true, false, false, false};
    case Op::lay_base:
    case Op::bind_down: return {true, true, true, false, false, false};
    case Op::build_up: return {true, true, true, false, true, false};
    case Op::start_thread:
    case Op::half_hitch:
    case Op::whip_finish:
    case Op::tie_off: return {false, true, true, false, false, false};
    case Op::tie_in:
    case Op::pinch_in:
    case Op::loop_in:
    case Op::gather:
    case Op::spin_hair: return {false, true, true, true, false, false};
    case Op::dub:
    case Op::dubbing_loop: return {true, true, false, false, true, true};
    case Op::wind:
    case Op::rib:
    case Op::counter_rib:
    case Op::palmer:
    case Op::collar: return {true, true, true, false, false, true};
    case Op::wind_post: return {false, true, true, false, false, false};
    case Op::coat: return {true, true, false, true, false, false};
    case Op::travel:
    case Op::set_wing:
    case Op::pull_over:
    case Op::mark: return {};
    default: return {false, false, false, false, false, false};
    }
}

std::vector<Field> action_fields(const EditWork& work, std::size_t step, std::size_t index) {
    const Recipe& r = work.draft().recipe;
    const Action& a = r.steps[step].actions[index];
    const Act* n = act_at(work, step, index);
    const Uses uses = uses_of(a.op);
    Form form(work, row_of(row_of("steps", static_cast<int>(step)) + ".actions",
                           static_cast<int>(index)));
    form.pick("part", "Part", a.part, ids_with_nothing(r.parts), "The part that it is done for.");
    if (r.bases.size() > 1 || !a.base.empty()) {
        form.pick("base", "On which", a.base, ids_with_nothing(r.bases),
                  "Of the hooks and shanks; none is where the last action was.");
        std::vector<std::string> others = ids_with_nothing(r.parts);
        for (const Base& base : r.bases) others.push_back(base.id);
        form.pick("other", "Over, or joined to", a.other, std::move(others),
                  "A part that it goes over, or the hook that it joins.");
    }
    constexpr std::string_view place =
        "A landmark (eye, bead, middle, point, barb, bend), a share (0.3 shank), an end (front of "
        "body), or so much behind one of these. Or press it on the hook.";
    if (uses.from || a.from.given()) form.spot("from", "From", a.from, place);
    if (uses.to || a.to.given()) {
        form.spot("to", uses.from ? "To" : "At", a.to, place);
    }
    if (uses.turns || a.turns.given()) {
        form.amount("turns", "Turns", a.turns, n ? &n->turns : nullptr, "5 turns, four or five.");
    }
    if (uses.count || a.count.given()) {
        form.amount("count", "How many", a.count, n ? &n->count : nullptr, "8 fibres, 1 drop.");
    }
    if (a.length.given()) {
        form.amount("length", "Length", a.length, n ? &n->length : nullptr,
                    "Half the shank, 9 mm.");
    }
    if (uses.thick || a.diameter.given() || a.diameter_end.given()) {
        form.amount("diameter", "Thick at the start", a.diameter, n ? &n->diameter : nullptr,
                    "1.2 mm, 0.4 bead.");
        form.amount("diameter_end", "Thick at the end", a.diameter_end,
                    n ? &n->diameter_end : nullptr, "Where it tapers.");
    }
    if (uses.way || a.pitch.given() || a.sense || a.spacing != Spacing::unsaid) {
        form.amount("pitch", "From turn to turn", a.pitch, n ? &n->pitch : nullptr, "0.8 mm.");
        form.pick("spacing", "Spacing", name(a.spacing), {"unsaid", "touching", "open", "graded"},
                  "Touching, in equal gaps, or in gaps that grow with the body.");
        form.pick("sense", "Which way", a.sense ? name(*a.sense) : std::string_view{},
                  {"", "with thread", "against thread"},
                  "With the thread is over the top and away from you. Unsaid is the usual way.");
    }
    form.words("hold", "Held", a.hold, "On top, on the near side ...");
    form.words("note", "Note", a.note, "Whatever else there is to say.");
    return form.take();
}

} // namespace

std::vector<Field> fields_of(const EditWork& work) {
    const Recipe& r = work.draft().recipe;
    const RowPlace at = place_of(work.row);
    const auto i = static_cast<std::size_t>(std::max(0, at.index));
    if (at.list == "parts" && i < r.parts.size()) return part_fields(work, i);
    if (at.list == "materials" && i < r.materials.size()) return material_fields(work, i);
    if (at.list == "bases" && i < r.bases.size()) return base_fields(work, i);
    if (at.list == "joints" && i < r.joints.size()) return joint_fields(work, i);
    if (at.list == "targets" && i < r.targets.size()) return target_fields(work, i);
    const StepPlace place = step_of(work.row);
    if (place.step && *place.step < r.steps.size()) {
        if (!place.action) return step_fields(work, *place.step);
        if (*place.action < r.steps[*place.step].actions.size()) {
            return action_fields(work, *place.step, *place.action);
        }
    }
    return head_fields(work);
}

std::string row_title(const EditWork& work) {
    const Recipe& r = work.draft().recipe;
    const RowPlace at = place_of(work.row);
    const auto i = static_cast<std::size_t>(std::max(0, at.index));
    if (at.list == "parts" && i < r.parts.size()) return "Part: " + r.parts[i].role;
    if (at.list == "materials" && i < r.materials.size()) return "Material";
    if (at.list == "bases" && i < r.bases.size()) return "Tied on: " + r.bases[i].kind;
    if (at.list == "joints" && i < r.joints.size()) return "Joint";
    if (at.list == "targets" && i < r.targets.size()) return "Target: " + r.targets[i].part;
    const StepPlace place = step_of(work.row);
    if (place.step && *place.step < r.steps.size()) {
        std::string title = "Step " + std::to_string(*place.step + 1);
        const auto& actions = r.steps[*place.step].actions;
        if (place.action && *place.action < actions.size()) {
            title.append(": ").append(name(actions[*place.action].op));
        }
        return title;
    }
    return "The fly";
}

} // namespace wrapwright
