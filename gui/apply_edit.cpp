// A recipe while it is written: every change one step of its history, kept at once.

#include "gui/answer.h"

#include "core/recipe/by_size.h"
#include "core/recipe/card_line.h"
#include "core/recipe/measure.h"
#include "core/recipe/text_json.h"
#include "gui/sizes_work.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

/// The row that is picked after an entry moved within its list.
std::string moved_row(const std::string& row, const std::string& list, int from, int to) {
    const std::string was = row_of(list, from);
    if (row == was || row.starts_with(was + ".")) return row_of(list, to) + row.substr(was.size());
    return row;
}

AmountOf measure_of(std::string_view key) {
    if (key == "turns") return AmountOf::turns;
    if (key == "count") return AmountOf::count;
    if (key == "linear") return AmountOf::linear_density;
    if (key == "weighed") return AmountOf::mass;
    if (key == "cure") return AmountOf::duration;
    return AmountOf::length;
}

/// What typing into a field changes: its words, and the number that goes with a bare .015 or 7/64 as
/// long as the person has not put another one there.
std::vector<Edit> typed_edits(const Recipe& recipe, const std::string& path,
                              const std::string& text) {
    std::vector<Edit> edits{{EditKind::set, path, text, 0, 0}};
    // A hook that is measured stays of its kind: a jig is not filled in as a wet hook.
    const std::size_t measured = path.find(".measured.");
    if (measured != std::string::npos && !text.empty()) {
        const RowPlace at = place_of(path.substr(0, measured));
        const auto i = static_cast<std::size_t>(at.index);
        if (at.list == "bases" && i < recipe.bases.size() && recipe.bases[i].family &&
            !recipe.bases[i].measured) {
            edits.push_back({EditKind::set, path.substr(0, measured) + ".measured.family",
                             std::string(name(*recipe.bases[i].family)), 0, 0});
        }
        return edits;
    }
    const Amount* now = amount_at(recipe, path);
    if (now == nullptr) return edits;
    std::vector<std::string> ids;
    ids.reserve(recipe.parts.size());
    for (const Part& part : recipe.parts) ids.push_back(part.id);
    const AmountOf measure = measure_of(std::string_view(path).substr(path.rfind('.') + 1));
    const std::string before = type_amount(now->text, measure, ids).amount.is;
    const std::string after = type_amount(text, measure, ids).amount.is;
    if (now->is == before && before != after) {
        edits.push_back({EditKind::set, path + ".is", after, 0, 0});
    }
    return edits;
}

} // namespace

/// Opens what is being written of the fly that is open; whoever keeps drafts puts a kept one there.
void Answer::write() {
    Model& m = model();
    if (!m.fly || m.edit.id == m.fly->id) return;
    const Recipe& recipe = m.fly->pattern.recipe;
    m.edit = begin_writing(m.fly->id, {recipe, {}}, recipe, m.fly->size);
    effect(EffectKind::open_draft);
}

/// The draft is another: the fly follows, and the store has it before it is shown.
void Answer::edit_changed() {
    run_draft(model().edit);
    effect(EffectKind::keep_draft);
}

void Answer::edit_all(const std::vector<Edit>& edits, std::string_view joins, std::string row) {
    EditWork& work = model().edit;
    if (!may_write()) return;
    Result<Draft> next = edited(work.draft(), edits);
    if (!next.ok()) return say(next.error().message + "; " + next.error().remedy);
    work.history->did(std::move(next).value(), joins);
    work.row = std::move(row);
    edit_changed();
}

void Answer::edit_add(const std::string& list, const std::string& line) {
    const EditWork& work = model().edit;
    const int end = entries_of(work.draft().recipe, list);
    const Result<std::vector<Edit>> edits = line_edits(work.draft().recipe, list, end, line);
    if (!edits.ok()) return;
    edit_all(edits.value(), {}, row_of(list, end));
}

/// Opens the list of what can be done at the end of a list of actions; no list closes it.
void Answer::edit_pick(const std::string& list) {
    EditWork& work = model().edit;
    const StepPlace at = step_of(list);
    work.picking = at.step.has_value();
    work.next.clear();
    if (!work.picking) return;
    work.pick_step = *at.step;
    work.pick_action = static_cast<std::size_t>(entries_of(work.draft().recipe, list));
    run_draft(work);
}

void Answer::edit_op(int index, const std::string& said) {
    EditWork& work = model().edit;
    if (!work.picking || index < 0 || static_cast<std::size_t>(index) >= work.next.size()) return;
    const NextOp picked = work.next[static_cast<std::size_t>(index)];
    if (!picked.possible) return say(picked.why);
    const auto quoted = [](std::string_view text) {
        return json::one_line({json::Kind::text, 0, {}, std::string(text), {}});
    };
    std::string json = "{\"do\": " + quoted(name(picked.op));
    if (picked.part != none) {
        const auto& parts = work.draft().recipe.parts;
        json += ", \"part\": " + quoted(parts[static_cast<std::size_t>(picked.part)].id);
    }
    json += said_of_operation(work.draft().recipe, said);
    const std::string list = row_of("steps", static_cast<int>(work.pick_step)) + ".actions";
    const int at = static_cast<int>(work.pick_action);
    ++work.pick_action; // the next one follows it
    edit_all({{EditKind::add, list, json + "}", at, 0}}, {}, row_of(list, at));
}

void Answer::edit_drop(const std::string& row) {
    const RowPlace at = place_of(row);
    if (at.list.empty()) return;
    const int left = entries_of(model().edit.draft().recipe, at.list) - 1;
    std::string next = row_of(at.list, std::min(at.index, left - 1));
    if (left < 1) next = step_of(at.list).step ? at.list.substr(0, at.list.rfind('.')) : "";
    edit_all({{EditKind::remove, at.list, {}, at.index, 0}}, {}, std::move(next));
}

void Answer::edit_move(const std::string& row, int to) {
    const RowPlace at = place_of(row);
    if (at.list.empty() || to == at.index) return;
    if (to < 0 || to >= entries_of(model().edit.draft().recipe, at.list)) return;
    std::string picked = moved_row(model().edit.row, at.list, at.index, to);
    edit_all({{EditKind::move, at.list, {}, at.index, to}}, {}, std::move(picked));
}

void Answer::edit_size(int by) {
    EditWork& work = model().edit;
    std::vector<HookSize> sizes = work.draft().recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    const auto it = std::find(sizes.begin(), sizes.end(), work.size);
    if (sizes.empty()) return say("Write the hook sizes first");
    const auto last = static_cast<int>(sizes.size()) - 1;
    const int at = it == sizes.end() ? last / 2 : static_cast<int>(it - sizes.begin()) + by;
    work.size = sizes[static_cast<std::size_t>(std::clamp(at, 0, last))];
    run_draft(work);
}

void Answer::edit_sized(const Wish& wish) {
    const EditWork& work = model().edit;
    const Amount* amount = amount_at(work.draft().recipe, wish.key);
    if (amount == nullptr || wish.number < 0 || wish.number > 2) return;
    const auto scope = static_cast<SizeScope>(wish.number);
    edit_all(sized_edits(work.draft().recipe, wish.key, *amount, work.size, scope, wish.text), {},
             work.row);
    if (const Unread* unread = model().edit.draft().unread_at(wish.key)) say(unread->why);
}

void Answer::edit(const Wish& wish) {
    EditWork& work = model().edit;
    if (wish.kind == WishKind::edit_new) {
        if (may_write()) effect(EffectKind::new_recipe, wish.text);
        return;
    }
    if (!work.history) return;
    switch (wish.kind) {
    case WishKind::edit_view:
        work.view = static_cast<EditView>(wish.number);
        work.picking = false;
        run_draft(work);
        if (work.view == EditView::versions) effect(EffectKind::versions);
        break;
    case WishKind::edit_sized: edit_sized(wish); break;
    case WishKind::edit_loose: edit_loose(wish); break;
    case WishKind::edit_version: edit_version(wish); break;
    case WishKind::edit_row:
        if (work.row != wish.text) work.history->settle();
        work.row = wish.text;
        work.picking = false;
        break;
    case WishKind::edit_set:
        edit_all(typed_edits(work.draft().recipe, wish.key, wish.text), wish.key, work.row);
        break;
    case WishKind::edit_add: edit_add(wish.key, wish.text); break;
    case WishKind::edit_pick: edit_pick(wish.key); break;
    case WishKind::edit_op: edit_op(wish.number, wish.text); break;
    case WishKind::edit_drop: edit_drop(wish.text); break;
    case WishKind::edit_move: edit_move(wish.text, wish.number); break;
    case WishKind::edit_undo:
    case WishKind::edit_redo: {
        if (!may_write()) break;
        const bool done =
            wish.kind == WishKind::edit_undo ? work.history->undo() : work.history->redo();
        if (!done) {
            say(wish.kind == WishKind::edit_undo ? "Nothing to take back" : "Nothing to do again");
            break;
        }
        work.picking = false;
        if (place_of(work.row).index >= entries_of(work.draft().recipe, place_of(work.row).list)) {
            work.row.clear();
        }
        edit_changed();
        break;
    }
    case WishKind::edit_size: edit_size(wish.number); break;
    case WishKind::edit_save:
        if (!may_write()) break;
        if (!work.halted.empty()) {
            say("It is kept as a draft; a revision has to run: " + work.halted);
            break;
        }
        effect(EffectKind::save_recipe, wish.text);
        break;
    case WishKind::edit_back:
        if (!may_write()) break;
        work.history->did({*work.saved, {}});
        work.row.clear();
        work.picking = false;
        edit_changed();
        say("Back to the revision that was saved last; undo brings the draft again");
        break;
    default: break;
    }
}

} // namespace wrapwright::detail
