// What is being written: drafts as they are typed, revisions when they are saved.

#include "core/recipe/text.h"
#include "platform/app.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// A draft lies among the settings, under the id of its recipe; no text where there is none.
std::string draft_key(const std::string& id) { return "draft " + id; }

void say(Model& model, std::string words) {
    model.notice = std::move(words);
    model.notice_until = model.now + seconds(4.0);
}

/// A recipe to begin with: a hook, a thread, and the hook in the vise.
constexpr std::string_view empty_recipe = R"({
  "format": "wrapwright recipe", "version": 1, "id": "new-fly", "name": "New fly", "sizes": "12-16",
  "bases": [{"id": "hook", "kind": "hook", "family": "wet"}],
  "materials": [{"id": "thread", "kind": "thread", "text": "tying thread", "linear": "70 den"}],
  "parts": [{"id": "thread", "role": "tying thread", "made_of": ["thread"]}],
  "steps": [{"text": "Clamp the hook by its bend, with the shank level.", "actions": [{"do": "clamp"}]}]
})";

} // namespace

Result<bool> App::open_draft(Model& next) {
    EditWork& work = next.edit;
    // A sitting may go on with an older revision than the newest one.
    const Result<std::string> newest = store_.recipe_text(work.id);
    if (!newest.ok()) return newest.error();
    const Result<Recipe> saved = read_recipe(newest.value());
    if (!saved.ok()) return saved.error();
    Draft draft{saved.value(), {}};
    const auto settings = store_.settings();
    if (!settings.ok()) return settings.error();
    for (const auto& [key, text] : settings.value()) {
        if (key != draft_key(work.id) || text.empty()) continue;
        Result<Draft> kept = read_draft(text);
        if (!kept.ok()) return kept.error();
        draft = std::move(kept).value();
    }
    if (draft.recipe != saved.value() || !draft.unread.empty()) {
        say(next, "Here is what you were writing; it is not saved as a revision yet");
    }
    const HookSize size = work.size;
    work = begin_writing(work.id, std::move(draft), saved.value(), size);
    return true;
}

Result<bool> App::keep_draft(const Model& next) {
    const EditWork& work = next.edit;
    return store_.set_setting(draft_key(work.id),
                              work.changed() ? write_draft(work.draft()) : std::string());
}

Result<bool> App::save_recipe(const std::string& note, Model& next) {
    EditWork& work = next.edit;
    const Recipe& recipe = work.draft().recipe;
    const auto saved = store_.save_revision(recipe, write_recipe(recipe), note, today());
    if (!saved.ok()) return saved.error();
    work.saved = std::make_shared<const Recipe>(recipe);
    work.history->settle();
    if (const Result<bool> kept = keep_draft(next); !kept.ok()) return kept;
    std::string words = "Saved as revision " + std::to_string(saved.value());
    if (!work.draft().unread.empty()) {
        words += "; what does not read yet waits in the draft";
    }
    if (at_work(next) && next.fly->id == work.id) {
        words += "; this sitting goes on as it began";
    } else if (next.fly && next.fly->id == work.id) {
        const Screen screen = next.screen;
        next = with_fly(std::move(next), work.fly);
        next.screen = screen;
        if (const Result<bool> told = recall_measures(next); !told.ok()) return told;
    }
    say(next, std::move(words));
    return true;
}

Result<bool> App::new_recipe(const std::string&, Model& next) {
    Result<Recipe> read = read_recipe(empty_recipe);
    if (!read.ok()) return read.error();
    Recipe recipe = std::move(read).value();
    for (int n = 1; n < 10'000; ++n) {
        recipe.id = n == 1 ? "new-fly" : "new-fly-" + std::to_string(n);
        const Result<bool> added = store_.add_recipe(recipe, write_recipe(recipe), today());
        if (!added.ok()) return added;
        if (!added.value()) continue; // that one is taken
        if (const Result<bool> opened = open_recipe(recipe.id, next); !opened.ok()) return opened;
        next.screen = Screen::edit;
        next.edit = begin_writing(recipe.id, {recipe, {}}, recipe, next.fly->size);
        return true;
    }
    return Error{ErrorCode::duplicate, "there are ten thousand new flies", "give one a name", {}};
}

} // namespace wrapwright
