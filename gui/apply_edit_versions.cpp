// Revisions at work: what a sitting did differently becomes one, and what the store is asked for.

#include "gui/answer.h"

#include "core/bench/otherwise.h"
#include "gui/versions_work.h"

namespace wrapwright::detail {

void Answer::edit_version(const Wish& wish) {
    Model& m = model();
    const auto what = static_cast<VersionAsk>(wish.number);
    const int of = static_cast<int>(wish.x);
    const bool reads = what == VersionAsk::pick || what == VersionAsk::copy;
    if (!reads && !may_write()) return;
    switch (what) {
    case VersionAsk::sitting: {
        if (!m.fly || m.fly->id != m.edit.id || m.state.otherwise.empty()) return;
        const OpenFly& fly = *m.fly;
        const Result<Draft> next =
            edited({fly.pattern.recipe, {}},
                   otherwise_edits(fly.pattern, fly.resolved, fly.tied, m.state.otherwise));
        if (!next.ok()) return say(next.error().message + "; " + next.error().remedy);
        m.edit.history->did(next.value());
        edit_changed();
        if (!m.edit.halted.empty()) return say("It cannot be run so: " + m.edit.halted);
        effect(EffectKind::save_recipe, otherwise_note(m.state.otherwise));
        effect(EffectKind::versions);
        break;
    }
    case VersionAsk::back: {
        if (!m.edit.versions || !m.edit.versions->recipe) return say("Pick a revision first");
        m.edit.history->did({*m.edit.versions->recipe, {}});
        m.edit.row.clear();
        edit_changed();
        say("Written on from revision " + std::to_string(m.edit.versions->picked) +
            "; save makes it the newest, undo leaves it");
        auto work = std::make_shared<VersionsWork>(*m.edit.versions);
        work->changes.clear();
        m.edit.versions = std::move(work);
        break;
    }
    case VersionAsk::pick:
    case VersionAsk::name:
    case VersionAsk::fork:
    case VersionAsk::copy:
    case VersionAsk::file:
    case VersionAsk::bundle: {
        Effect& e = effect(EffectKind::version, wish.text);
        e.number = wish.number;
        e.event.number = of;
        break;
    }
    }
}

} // namespace wrapwright::detail
