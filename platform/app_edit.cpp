// What is being written: drafts as they are typed, revisions when they are saved.

#include "core/recipe/text.h"
#include "platform/app.h"
#include "platform/files.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// A draft lies among the settings, under the id of its recipe; no text where there is none.
std::string draft_key(const std::string& id) { return "draft " + id; }

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
    const EditView view = work.view;
    auto loose = work.loose; // a text that was dropped on the window opens this screen
    work = begin_writing(work.id, std::move(draft), saved.value(), size);
    work.view = view;
    work.loose = std::move(loose);
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
    stock_finder_.forget(work.id);
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
        std::shared_ptr<const OpenFly> fly = work.fly; // first: it moves with the model
        next = with_fly(std::move(next), std::move(fly));
        next.screen = screen;
        if (const Result<bool> told = recall_measures(next); !told.ok()) return told;
    }
    say(next, std::move(words));
    return true;
}

Result<bool> App::new_recipe(const std::string& fly_class, Model& next) {
    std::string name = fly_class.empty() ? "empty" : fly_class;
    std::replace(name.begin(), name.end(), ' ', '-');
    const auto file = assets_ / "skeletons" / (name + ".json");
    const Result<std::string> text = read_file(file);
    if (!text.ok()) return text.error();
    Result<Recipe> read = read_recipe(text.value());
    if (!read.ok()) return read.error();
    read.value().id = "my-" + name;
    return add_and_write(std::move(read).value(), next);
}

/// Keeps a recipe that is new here, under an id that is free, and opens it to be written.
Result<bool> App::add_and_write(Recipe recipe, Model& next) {
    const std::string id = recipe.id.empty() ? "new-fly" : recipe.id;
    for (int n = 1; n < 10'000; ++n) {
        recipe.id = n == 1 ? id : id + "-" + std::to_string(n);
        const Result<bool> added = store_.add_recipe(recipe, write_recipe(recipe), today());
        if (!added.ok()) return added;
        if (!added.value()) continue; // that one is taken
        if (const Result<bool> opened = open_recipe(recipe.id, next); !opened.ok()) return opened;
        next.screen = Screen::edit;
        const HookSize size = next.fly->size;
        next.edit = begin_writing(recipe.id, {recipe, {}}, recipe, size);
        return true;
    }
    return Error{
        ErrorCode::duplicate, "there are ten thousand of '" + id + "'", "name another", {}};
}

} // namespace wrapwright
