#include "core/tying/next_ops.h"

#include "core/tying/finding_text.h"
#include "core/tying/op_table.h"
#include "core/tying/tie.h"
#include "core/tying/words.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// A run of the recipe up to where something is added.
struct Trial {
    Pattern pattern{};
    Resolved numbers{};
    Tied tied{};
};

Result<Trial> run(Recipe recipe, HookSize size, const Hook* own) {
    Trial trial;
    Result<Pattern> pattern = link(std::move(recipe));
    if (!pattern.ok()) return pattern.error();
    trial.pattern = std::move(pattern).value();
    const Result<Rig> rig = make_rig(trial.pattern, size, own);
    if (!rig.ok()) return rig.error();
    const Result<bool> resolved = resolve(trial.pattern, rig.value(), trial.numbers);
    if (!resolved.ok()) return resolved.error();
    tie(trial.pattern, rig.value(), trial.numbers, Limits{}, trial.tied);
    return trial;
}

/// Findings about the order of things: those about amounts are mended by other amounts, and what is
/// only missing at the end may still come. Winding over a wet coat may be meant.
bool is_about_order(const Finding& f) {
    switch (f.rule) {
    case Rule::bead_after_thread:
    case Rule::never_tied_in:
    case Rule::trimmed_too_soon:
    case Rule::rib_before_body:
    case Rule::not_finished:
    case Rule::cut_unfinished:
    case Rule::no_thread:
    case Rule::thread_already_on:
    case Rule::barb_after_dressing:
    case Rule::case_after_thorax: return true;
    default: return false;
    }
}

bool ties_in(Op op) {
    return op == Op::tie_in || op == Op::pinch_in || op == Op::loop_in || op == Op::gather;
}

std::string_view what_it_needs(Op op) {
    switch (op) {
    case Op::slide_on: return "a part made of a bead, a cone or a tube";
    case Op::wind_ballast:
    case Op::lock_ballast: return "a part made of weighting wire";
    case Op::start_thread: return "a part made of thread";
    case Op::dub:
    case Op::dubbing_loop: return "a part made of dubbing";
    case Op::coat:
    case Op::cure: return "a part made of varnish, glue or resin";
    case Op::gather:
    case Op::stack_hair:
    case Op::spin_hair: return "a part made of hair";
    case Op::palmer:
    case Op::collar:
    case Op::wind_post: return "a part made of a hackle feather";
    default: return "a part made of something that can be used so";
    }
}

class Chooser {
  public:
    Chooser(const Recipe& cut, HookSize size, const Hook* own, const Trial& before)
        : cut_(cut), size_(size), own_(own), before_(before) {
        if (!before.tied.moments.empty()) state_ = before.tied.moments.back().state;
    }

    std::vector<NextOp> all() {
        std::vector<NextOp> later;
        for (int i = 0; i < op_count; ++i) {
            const auto op = static_cast<Op>(i);
            std::string why = refused(op);
            if (why.empty() && wants_part(op)) {
                why = each_part(op);
            } else if (why.empty()) {
                why = tried(op, none);
                if (why.empty()) rows_.push_back({op, none, true, {}});
            }
            if (!why.empty()) later.push_back({op, none, false, std::move(why)});
        }
        rows_.insert(rows_.end(), std::make_move_iterator(later.begin()),
                     std::make_move_iterator(later.end()));
        return std::move(rows_);
    }

  private:
    /// What the hook's and the thread's state say against it, whatever the part.
    std::string refused(Op op) const {
        switch (op_row(op).need) {
        case Need::bare_hook:
            if (state_.thread.on) return "thread is on: it is done on the bare hook";
            if (state_.dressed) return "something is tied on: it is done on the bare hook";
            break;
        case Need::clamped:
            if (!state_.clamped) return "the hook is not in the vise: clamp it first";
            break;
        case Need::thread:
            if (!state_.thread.on) return "no thread is on: start it first";
            break;
        case Need::nothing: break;
        }
        if (op == Op::clamp && state_.clamped) return "the hook is in the vise";
        if (op == Op::unclamp && !state_.clamped) return "the hook is not in the vise";
        if (op == Op::cure && state_.coat_act == none) return "no coat is wet";
        if (op == Op::join && cut_.bases.size() < 2) return "there is only one hook to tie on";
        return {};
    }

    const Strand* strand_of(int part) const {
        const auto& all = before_.tied.strands;
        for (auto it = all.rbegin(); it != all.rend(); ++it) {
            if (it->part == part && it->trimmed == none) return &*it;
        }
        return nullptr;
    }

    int material_of(std::size_t part) const {
        const auto first = static_cast<std::size_t>(before_.pattern.parts[part].first_ingredient);
        return before_.pattern.ingredients[first].material;
    }

    bool is_tying_thread(int part) const {
        const int material = material_of(static_cast<std::size_t>(part));
        return std::any_of(
            before_.numbers.acts.begin(), before_.numbers.acts.end(),
            [&](const Act& act) { return act.op == Op::start_thread && act.material == material; });
    }

    /// Whether something of that part stands on the hook.
    bool stands(int part) const {
        const auto& all = before_.tied.placed;
        return std::any_of(all.begin(), all.end(),
                           [&](const Placed& placed) { return placed.part == part; });
    }

    /// Whether something is wound that a rib could cross: more than ballast and the thread's base.
    bool has_body() const {
        const auto& all = before_.tied.windings;
        return std::any_of(all.begin(), all.end(), [&](const Winding& w) {
            return w.part != none && !was_done(Op::start_thread, w.part) &&
                   !was_done(Op::wind_ballast, w.part);
        });
    }

    bool was_done(Op op, int part) const {
        return std::any_of(before_.numbers.acts.begin(), before_.numbers.acts.end(),
                           [&](const Act& act) { return act.op == op && act.part == part; });
    }

    /// What this part's own strand says against it.
    std::string refused(Op op, int part) const {
        const std::string name = part_words(before_.pattern.recipe, part);
        const Strand* strand = strand_of(part);
        const bool once = op == Op::slide_on || op == Op::wind_ballast || op == Op::lock_ballast ||
                          op == Op::stack_hair;
        if (once && was_done(op, part)) return "done for the " + name;
        if (op == Op::lock_ballast && !was_done(Op::wind_ballast, part)) {
            return "wind the " + name + " first";
        }
        if (op == Op::cure && !was_done(Op::coat, part)) return "the " + name + " is not on";
        const bool holds = op == Op::bind_down || op == Op::tie_off || op == Op::trim || winds(op);
        if (holds && strand == nullptr) return "tie the " + name + " in first";
        if (ties_in(op) && strand != nullptr) return "the " + name + " is tied in";
        if (winds(op) && strand->wound != none) return "the " + name + " is wound";
        if (op == Op::tie_off && strand->wound == none) return "wind the " + name + " first";
        if (op == Op::tie_off && strand->tied_off != none) return "the " + name + " is tied off";
        if (op == Op::shape && !stands(part)) return "the " + name + " is not on";
        if ((op == Op::rib || op == Op::counter_rib) && !has_body()) {
            return "there is no body to rib yet: wind or dub it first";
        }
        return {};
    }

    std::string each_part(Op op) {
        std::string why;
        bool any = false;
        const std::size_t parts = cut_.parts.size();
        for (std::size_t p = 0; p < parts; ++p) {
            const int part = static_cast<int>(p);
            const PartNumbers& numbers = before_.numbers.parts[p];
            if (!numbers.present || numbers.ingredients == 0) continue;
            const int material = material_of(p);
            if (material == none ||
                !suits(op, cut_.materials[static_cast<std::size_t>(material)].kind)) {
                continue;
            }
            // What was started as the thread is tied in, wound and cut by its own operations.
            if (op != Op::start_thread && is_tying_thread(part)) continue;
            std::string against = refused(op, part);
            if (against.empty()) against = tried(op, part);
            if (against.empty()) {
                rows_.push_back({op, part, true, {}});
                any = true;
            } else if (why.empty()) {
                why = std::move(against);
            }
        }
        if (any) return {};
        return why.empty() ? "it needs " + std::string(what_it_needs(op)) : why;
    }

    /// What the run itself finds against it.
    std::string tried(Op op, int part) {
        Recipe recipe = cut_;
        Action action;
        action.op = op;
        if (part != none) action.part = cut_.parts[static_cast<std::size_t>(part)].id;
        recipe.steps.back().actions.push_back(std::move(action));
        const Result<Trial> trial = run(std::move(recipe), size_, own_);
        if (!trial.ok()) return trial.error().message + "; " + trial.error().remedy;
        const int last = static_cast<int>(trial.value().tied.moments.size()) - 1;
        for (const Finding& finding : trial.value().tied.findings) {
            if (finding.act != last || !is_about_order(finding)) continue;
            const FindingText text = describe(trial.value().pattern, finding);
            return text.message + "; " + text.remedy;
        }
        return {};
    }

    const Recipe& cut_;
    HookSize size_;
    const Hook* own_;
    const Trial& before_;
    BaseState state_{};
    std::vector<NextOp> rows_{};
};

} // namespace

bool wants_part(Op op) {
    switch (op) {
    case Op::flatten_barb:
    case Op::clamp:
    case Op::lay_base:
    case Op::travel:
    case Op::build_up:
    case Op::half_hitch:
    case Op::whip_finish:
    case Op::cut_thread:
    case Op::clear_eye:
    case Op::mark:
    case Op::turn_hook:
    case Op::join:
    case Op::unclamp: return false;
    default: return true;
    }
}

bool suits(Op op, MaterialKind kind) {
    using K = MaterialKind;
    const auto is = [&](std::initializer_list<K> kinds) {
        return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
    };
    switch (op) {
    case Op::slide_on: return is({K::bead, K::cone, K::tube});
    case Op::wind_ballast:
    case Op::lock_ballast: return is({K::ballast});
    case Op::start_thread:
    case Op::build_up: return is({K::thread});
    case Op::dub: return is({K::dubbing});
    case Op::dubbing_loop: return is({K::dubbing, K::cdc, K::hair, K::marabou});
    case Op::coat:
    case Op::cure: return is({K::coat});
    case Op::gather: return is({K::hair, K::fibres, K::cdc, K::marabou});
    case Op::stack_hair:
    case Op::spin_hair: return is({K::hair});
    case Op::palmer:
    case Op::wind_post: return is({K::hackle, K::soft_hackle});
    case Op::collar: return is({K::hackle, K::soft_hackle, K::marabou, K::cdc});
    case Op::rib:
    case Op::counter_rib:
        return is({K::wire, K::tinsel, K::oval, K::floss, K::yarn, K::flash, K::herl, K::quill,
                   K::film, K::thread});
    case Op::wind:
        return is({K::wire, K::tinsel, K::oval, K::floss, K::yarn, K::chenille, K::herl, K::quill,
                   K::biot, K::fibres, K::marabou, K::cdc, K::film, K::flash, K::thread});
    case Op::pull_over:
        return is({K::slip, K::film, K::fibres, K::foam, K::biot, K::flash, K::yarn, K::quill,
                   K::tinsel, K::herl, K::hair});
    case Op::set_wing:
        return is({K::hair, K::fibres, K::slip, K::cdc, K::marabou, K::hackle, K::soft_hackle,
                   K::foam, K::film, K::yarn, K::flash, K::biot, K::chenille});
    case Op::tie_in:
    case Op::pinch_in:
    case Op::loop_in:
    case Op::bind_down:
    case Op::tie_off:
    case Op::trim:
    case Op::shape: return !is({K::ballast, K::bead, K::cone, K::tube, K::coat, K::dubbing});
    default: return true;
    }
}

Result<std::vector<NextOp>> next_ops(const Recipe& recipe, HookSize size, const Hook* own,
                                     std::size_t step, std::size_t action) {
    Recipe cut = recipe;
    if (cut.steps.empty() || step >= cut.steps.size()) {
        cut.steps.emplace_back(); // after the last step
    } else {
        cut.steps.resize(step + 1);
        std::vector<Action>& actions = cut.steps.back().actions;
        if (action < actions.size()) actions.resize(action);
    }
    const Result<Trial> before = run(cut, size, own);
    if (!before.ok()) return before.error();
    return Chooser(cut, size, own, before.value()).all();
}

} // namespace wrapwright
