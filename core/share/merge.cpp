#include "core/share/merge.h"

#include "core/recipe/text.h"
#include "core/share/letter.h"

#include <array>

namespace wrapwright {

namespace {

Result<SharedRecipe> open_one(std::string text) {
    Result<OpenedRecipe> opened = open_recipe(text);
    if (!opened.ok()) return opened.error();
    if (opened.value().recipe.id.empty()) {
        return Error{ErrorCode::malformed, "a recipe without an id", "give it one", {0, "id"}};
    }
    return SharedRecipe{std::move(opened.value().recipe), std::move(text),
                        std::move(opened.value().newer)};
}

constexpr std::array<std::string_view, 4> kind_names{"new", "same", "differs", "newer"};

} // namespace

Result<Shared> open_shared(std::string_view text) {
    Shared shared;
    if (is_bundle(text)) {
        Result<Bundle> bundle = read_bundle(text);
        if (!bundle.ok()) return bundle.error();
        shared.note = bundle.value().note;
        for (BundleFile& file : bundle.value().files) {
            if (file.path.starts_with("photos/")) {
                shared.photos.push_back(std::move(file));
                continue;
            }
            Result<SharedRecipe> one = open_one(std::move(file.bytes));
            if (one.ok()) {
                shared.recipes.push_back(std::move(one).value());
            } else {
                shared.refused.push_back(file.path + ": " + one.error().message);
            }
        }
        return shared;
    }
    std::string exact(text);
    if (is_letter(text)) {
        Result<std::string> read = read_letter(text);
        if (!read.ok()) return read.error();
        exact = std::move(read).value();
    }
    Result<SharedRecipe> one = open_one(std::move(exact));
    if (!one.ok()) return one.error();
    shared.recipes.push_back(std::move(one).value());
    return shared;
}

std::string_view name(MergeKind kind) { return kind_names[static_cast<std::size_t>(kind)]; }

MergeRow merge_row(const SharedRecipe& there, const std::optional<Recipe>& here) {
    MergeRow row;
    row.id = there.recipe.id;
    row.name = there.recipe.name;
    if (here) row.changes = compare(*here, there.recipe);
    row.kind = !there.newer.empty()  ? MergeKind::newer
               : !here               ? MergeKind::fresh
               : row.changes.empty() ? MergeKind::same
                                     : MergeKind::differs;
    return row;
}

} // namespace wrapwright
