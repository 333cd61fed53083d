// Revisions and sharing: what the store and the clipboard are asked for.

#include "core/recipe/text.h"
#include "core/share/fork.h"
#include "core/share/letter.h"
#include "gui/loose_work.h"
#include "gui/versions_work.h"
#include "platform/app.h"
#include "platform/files.h"

#include <ctime>
#include <imgui.h>

namespace wrapwright {

namespace {

/// The day of a moment, as 2026-11-29.
std::string day_of(std::int64_t seconds) {
    const std::time_t time = static_cast<std::time_t>(seconds);
    std::tm utc{};
    if (gmtime_r(&time, &utc) == nullptr) return {};
    char text[16];
    const std::size_t length = std::strftime(text, sizeof text, "%Y-%m-%d", &utc);
    return {text, length};
}

void say(Model& model, std::string words) {
    model.notice = std::move(words);
    model.notice_until = model.now + seconds(4.0);
}

} // namespace

Result<bool> App::list_versions(Model& next) {
    EditWork& work = next.edit;
    const auto rows = store_.revisions(work.id);
    if (!rows.ok()) return rows.error();
    auto versions = work.versions ? std::make_shared<VersionsWork>(*work.versions)
                                  : std::make_shared<VersionsWork>();
    versions->rows.clear();
    for (const StoredRevision& row : rows.value()) {
        versions->rows.push_back({static_cast<int>(row.number),
                                  row.name.empty() ? row.note : row.name, day_of(row.made)});
    }
    if (versions->recipe) versions->changes = compare(*versions->recipe, work.draft().recipe);
    work.versions = std::move(versions);
    return true;
}

Result<bool> App::pick_version(int number, Model& next) {
    EditWork& work = next.edit;
    const Result<std::string> text = store_.recipe_text(work.id, number);
    if (!text.ok()) return text.error();
    Result<Recipe> read = read_recipe(text.value());
    if (!read.ok()) return read.error();
    auto versions = std::make_shared<VersionsWork>(*work.versions);
    versions->picked = number;
    versions->recipe = std::make_shared<const Recipe>(std::move(read).value());
    auto fly = open_fly(work.id, *versions->recipe, &work.size);
    versions->fly = fly.ok() ? std::move(fly).value() : nullptr;
    versions->changes = compare(*versions->recipe, work.draft().recipe);
    work.versions = std::move(versions);
    return true;
}

Result<bool> App::preview_shared(Model& next) {
    if (!next.edit.loose || !next.edit.loose->shared) return true;
    auto work = std::make_shared<LooseWork>(*next.edit.loose);
    work->rows.clear();
    for (const SharedRecipe& there : work->shared->recipes) {
        std::optional<Recipe> here;
        if (const auto text = store_.recipe_text(there.recipe.id); text.ok()) {
            Result<Recipe> read = read_recipe(text.value());
            if (read.ok()) here = std::move(read).value();
        }
        work->rows.push_back(merge_row(there, here));
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
        if (work->rows[i].kind == MergeKind::newer) continue;
        open = there.recipe.id;
        if (work->rows[i].kind == MergeKind::fresh) {
            const auto added = store_.add_recipe(there.recipe, there.text, today());
            if (!added.ok()) return added.error();
            ++fresh;
        } else if (work->rows[i].kind == MergeKind::differs) {
            const auto saved =
                store_.save_revision(there.recipe, there.text, "as it came", today());
            if (!saved.ok()) return saved.error();
            ++revised;
        }
    }
    if (open.empty()) return true;
    if (const Result<bool> opened = open_recipe(open, next); !opened.ok()) return opened;
    next.edit = {};
    say(next, std::to_string(fresh) + " new, " + std::to_string(revised) + " as a revision");
    return true;
}

Result<bool> App::version(const Effect& effect, Model& next) {
    const EditWork& work = next.edit;
    switch (static_cast<VersionAsk>(effect.number)) {
    case VersionAsk::pick: return pick_version(effect.event.number, next);
    case VersionAsk::name: {
        const Result<bool> named = store_.name_revision(work.id, effect.event.number, effect.text);
        return named.ok() ? list_versions(next) : named;
    }
    case VersionAsk::fork: {
        const Recipe& recipe = work.draft().recipe;
        return add_and_write(
            fork_recipe(recipe, work.id, recipe.name + " (my version)", std::string()), next);
    }
    case VersionAsk::copy: {
        const Result<std::string> letter = write_letter(work.draft().recipe);
        if (!letter.ok()) return letter.error();
        ImGui::SetClipboardText(letter.value().c_str());
        say(next, "Copied: paste it into a letter or a post; Text reads it back exactly");
        return true;
    }
    case VersionAsk::file: {
        const auto folder = std::filesystem::path(next.data_folder) / "shared";
        std::error_code ignored;
        std::filesystem::create_directories(folder, ignored);
        const auto file = folder / (work.id + ".json");
        const Result<bool> written = write_file(file, write_recipe(work.draft().recipe));
        if (written.ok()) {
            say(next, "Saved as " + told_as(next, file));
            backend_->give(file);
        }
        return written;
    }
    case VersionAsk::back:
    case VersionAsk::sitting: break; // the model's own
    }
    return true;
}

} // namespace wrapwright
