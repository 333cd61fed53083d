// Loose text at work: read, taken piece by piece, made into a recipe.

#include "gui/answer.h"

#include "core/recipe/text.h"
#include "gui/loose_work.h"

#include <algorithm>

namespace wrapwright::detail {

void Answer::edit_loose(const Wish& wish) {
    Model& m = model();
    if (!m.trade_words) return;
    const auto what = static_cast<LooseAsk>(wish.number);
    if (what == LooseAsk::text) {
        m.edit.loose = read_pasted(wish.text, *m.trade_words);
        if (m.edit.loose->shared) effect(EffectKind::share); // what is here already is the store's
        return;
    }
    if (what == LooseAsk::away) {
        m.edit.loose.reset();
        return;
    }
    if (!m.edit.loose) return;
    auto work = std::make_shared<LooseWork>(*m.edit.loose);
    work->trouble.clear();
    const int of = static_cast<int>(wish.x);
    switch (what) {
    case LooseAsk::text:
    case LooseAsk::away: break;
    case LooseAsk::choose:
        if (of >= 0 && static_cast<std::size_t>(of) < work->takes.size()) {
            const auto i = static_cast<std::size_t>(of);
            work->takes[i] = next_choice(work->rows[i].kind, work->takes[i]);
        }
        break;
    case LooseAsk::take:
        if (of >= 0 && static_cast<std::size_t>(of) < work->accepted.size()) {
            const auto i = static_cast<std::size_t>(of);
            work->accepted[i] = !work->accepted[i];
        }
        break;
    case LooseAsk::sure: work->accepted = accept_sure(work->loose); break;
    case LooseAsk::all: work->accepted = accept_all(work->loose); break;
    case LooseAsk::fly:
        work->fly = std::clamp(work->fly + of, 0, std::max(0, work->loose.flies - 1));
        break;
    case LooseAsk::merge:
        if (work->shared && may_write()) effect(EffectKind::share).number = 1;
        break;
    case LooseAsk::recipe: {
        if (!may_write()) return;
        const Result<Recipe> made = make_recipe(work->text, work->loose, work->accepted, work->fly);
        if (made.ok()) {
            effect(EffectKind::new_recipe, {}).key = write_recipe(made.value());
        } else {
            work->trouble = made.error().message + "; " + made.error().remedy;
        }
        break;
    }
    }
    m.edit.loose = std::move(work);
}

void Answer::open_text(const std::string& text) {
    Model& m = model();
    show(Screen::edit);
    if (!m.edit.history) return;
    m.edit.picking = false;
    m.edit.view = EditView::loose;
    edit_loose(wish(WishKind::edit_loose, static_cast<int>(LooseAsk::text), text));
}

} // namespace wrapwright::detail
