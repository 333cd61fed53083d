// Revisions: what the store and the clipboard are asked for.

#include "core/recipe/text.h"
#include "core/share/fork.h"
#include "core/share/letter.h"
#include "gui/versions_work.h"
#include "platform/app.h"

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
    case VersionAsk::file: return share_file(false, next);
    case VersionAsk::bundle: return share_file(true, next);
    case VersionAsk::back:
    case VersionAsk::sitting: break; // the model's own
    }
    return true;
}

} // namespace wrapwright
