// `merge`: what somebody sent, looked at beside the library, and taken in where that was said.

#include "core/recipe/text.h"
#include "core/share/fork.h"
#include "platform/cli/json.h"
#include "platform/cli/shared.h"
#include "platform/cli/terminal.h"
#include "platform/cli/writing.h"
#include "platform/store/store.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <memory>

namespace wrapwright::cli {

namespace {

struct MergeOptions {
    std::string file, data;
    std::vector<std::string> newest, both;
    bool take = false, json = false;
};

template <class T>
T or_give_up(Result<T> result) {
    if (!result.ok()) {
        throw Failure{ExitCode::outside,
                      printable(result.error().message + "; " + result.error().remedy)};
    }
    return std::move(result).value();
}

bool is_among(const std::vector<std::string>& list, const std::string& id) {
    return std::find(list.begin(), list.end(), id) != list.end();
}

std::optional<Recipe> here(Store& store, const std::string& id) {
    const Result<std::string> text = store.recipe_text(id);
    if (!text.ok()) return std::nullopt;
    Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return std::nullopt;
    return std::move(recipe).value();
}

/// Takes one in as far as it was said; what was done, in words.
std::string take(Store& store, const SharedRecipe& one, const MergeRow& row,
                 const MergeOptions& options) {
    const std::int64_t now = std::time(nullptr);
    if (row.kind == MergeKind::fresh) {
        or_give_up(store.add_recipe(one.recipe, one.text, now));
        return "taken";
    }
    if (row.kind != MergeKind::differs) return "left";
    if (is_among(options.newest, row.id)) {
        const std::int64_t number =
            or_give_up(store.save_revision(one.recipe, one.text, "from " + options.file, now));
        return fmt::format("taken as revision {}; the ones before stay", number);
    }
    if (is_among(options.both, row.id)) {
        const std::string id = free_id(
            row.id, [&](const std::string& wanted) { return here(store, wanted).has_value(); });
        Recipe mine = one.recipe;
        mine.id = id;
        or_give_up(store.add_recipe(mine, write_recipe(mine), now));
        return "taken beside it as " + id;
    }
    return "left: say --newest or --both for it";
}

ExitCode run_merge(const MergeOptions& options) {
    const Shared shared = open_file(options.file);
    const std::filesystem::path folder =
        options.data.empty() ? usual_data_folder(std::getenv("XDG_DATA_HOME"), std::getenv("HOME"))
                             : std::filesystem::path(options.data);
    Store store = or_give_up(Store::open(folder, std::time(nullptr)));
    Json rows = Json::array();
    for (const SharedRecipe& one : shared.recipes) {
        const MergeRow row = merge_row(one, here(store, one.recipe.id));
        const std::string done = options.take ? take(store, one, row, options) : "";
        Json changes = Json::array();
        for (const Change& c : row.changes) changes.push_back(change_words(c));
        rows.push_back({{"id", row.id},
                        {"name", row.name},
                        {"kind", name(row.kind)},
                        {"changes", std::move(changes)},
                        {"done", done}});
        if (options.json) continue;
        fmt::print("{:8} {} ({}){}{}\n", name(row.kind), printable(row.name), printable(row.id),
                   done.empty() ? "" : ": ", printable(done));
        for (const Change& c : row.changes) {
            fmt::print("    {}\n", wrapped(printable(change_words(c)), terminal().width, 6));
        }
    }
    const int photos =
        options.take ? or_give_up(store.take_photos(shared.photos, std::time(nullptr))) : 0;
    if (options.json) {
        print(Json{{"recipes", std::move(rows)},
                   {"photos", shared.photos.size()},
                   {"photos_taken", photos},
                   {"refused", shared.refused}});
        return ExitCode::fine;
    }
    if (!shared.photos.empty()) {
        fmt::print("{} photos came, {} taken\n", shared.photos.size(), photos);
    }
    if (!options.take) fmt::print("nothing was changed; --take takes what is new\n");
    return ExitCode::fine;
}

} // namespace

void add_merge(const Command& program, Job& job) {
    auto options = std::make_shared<MergeOptions>();
    const Command command = program.command(
        "merge", "What a recipe, letter or bundle would bring to the library, and take it in");
    command.option("FILE", options->file, "recipe file, letter or bundle").required();
    command.option("--data", options->data, "the library's folder; else the usual one");
    command.flag("--take", options->take, "take in what is new");
    command.option("--newest", options->newest, "IDs that differ: take as their newest revision");
    command.option("--both", options->both, "IDs that differ: take beside, under another id");
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_merge);
}

} // namespace wrapwright::cli
