// Sharing: what came in, looked at before anything is taken; recipes handed out.

#include "core/recipe/text.h"
#include "core/share/fork.h"
#include "gui/loose_work.h"
#include "platform/app.h"
#include "platform/files.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// "photos" of a number, or one photo.
std::string counted(int count, const char* one, const char* more) {
    return std::to_string(count) + " " + (count == 1 ? one : more);
}

} // namespace

Result<bool> App::preview_shared(Model& next) {
    if (!next.edit.loose || !next.edit.loose->shared) return true;
    auto work = std::make_shared<LooseWork>(*next.edit.loose);
    work->rows.clear();
    work->takes.clear();
    for (const SharedRecipe& there : work->shared->recipes) {
        std::optional<Recipe> here;
        if (const auto text = store_.recipe_text(there.recipe.id); text.ok()) {
            Result<Recipe> read = read_recipe(text.value());
            if (read.ok()) here = std::move(read).value();
        }
        work->rows.push_back(merge_row(there, here));
        work->takes.push_back(next_choice(work->rows.back().kind, TakeAs::left));
    }
    next.edit.loose = std::move(work);
    return true;
}

Result<bool> App::take_shared(Model& next) {
    const std::shared_ptr<const LooseWork> work = next.edit.loose;
    int fresh = 0, revised = 0;
    std::string open;
    for (std::size_t i = 0; i < work->rows.size(); ++i) {
        const SharedRecipe& there = work->shared->recipes[i];
        const TakeAs as = i < work->takes.size() ? work->takes[i] : TakeAs::left;
        if (as == TakeAs::left) continue;
        open = there.recipe.id;
        if (as == TakeAs::beside) {
            Recipe own = there.recipe;
            own.id = open =
                free_id(open, [&](const std::string& id) { return store_.recipe_text(id).ok(); });
            const auto added = store_.add_recipe(own, write_recipe(own), today());
            if (!added.ok()) return added.error();
            ++fresh;
        } else if (work->rows[i].kind == MergeKind::fresh) {
            const auto added = store_.add_recipe(there.recipe, there.text, today());
            if (!added.ok()) return added.error();
            ++fresh;
        } else {
            const auto saved =
                store_.save_revision(there.recipe, there.text, "as it came", today());
            if (!saved.ok()) return saved.error();
            stock_finder_.forget(open);
            ++revised;
        }
    }
    const Result<int> photos = store_.take_photos(work->shared->photos, today());
    if (!photos.ok()) return photos.error();
    if (!open.empty()) {
        if (const Result<bool> opened = open_recipe(open, next); !opened.ok()) return opened;
        next.edit = {};
    } else if (const Result<bool> seen = preview_shared(next); !seen.ok()) {
        return seen;
    }
    say(next, std::to_string(fresh) + " new, " + std::to_string(revised) + " as a revision, " +
                  counted(photos.value(), "photo", "photos"));
    return true;
}

std::filesystem::path App::shared_folder(const Model& model) {
    return std::filesystem::path(model.data_folder) / "shared";
}

Result<bool> App::hand_out(const std::filesystem::path& file, std::string_view bytes, Model& next,
                           std::string_view more) {
    std::error_code ignored;
    std::filesystem::create_directories(file.parent_path(), ignored);
    const Result<bool> written = write_file(file, bytes);
    if (!written.ok()) return in_file(file.string(), written.error());
    say(next, ("Saved as " + told_as(next, file)).append(more), seconds(6.0));
    backend_->give(file);
    return true;
}

Result<bool> App::share_file(bool with_photos, Model& next) {
    const Recipe& recipe = next.edit.draft().recipe;
    const std::string stem = file_stem(next.edit.id);
    std::string text = write_recipe(recipe);
    std::string words;
    if (with_photos) {
        Bundle bundle;
        bundle.files.push_back({"recipes/" + stem + ".json", std::move(text)});
        Result<std::vector<BundleFile>> photos = store_.photo_files(next.edit.id);
        if (!photos.ok()) return photos.error();
        words = ", with " + counted(static_cast<int>(photos.value().size()), "photo", "photos");
        std::move(photos.value().begin(), photos.value().end(), std::back_inserter(bundle.files));
        Result<std::string> written = write_bundle(bundle);
        if (!written.ok()) return written.error();
        text = std::move(written).value();
    }
    const char* const kind = with_photos ? "-bundle.json" : ".json";
    return hand_out(shared_folder(next) / (stem + kind), text, next, words);
}

} // namespace wrapwright
