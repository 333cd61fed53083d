#include "platform/cli/load.h"

#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/units/hook_size.h"
#include "platform/cli/failure.h"
#include "platform/cli/files.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

namespace wrapwright::cli {

namespace {

/// The value of a result, or the end of the command with its error under the file's name. An error
/// that knows only its key gets the line where that stands in the file's text.
template <class T>
T or_refuse(const std::filesystem::path& file, const std::string& text, Result<T> result) {
    if (!result.ok()) {
        Error error = result.error();
        if (error.place.line == 0) error.place.line = line_at(text, error.place.key);
        refuse(file, error);
    }
    return std::move(result).value();
}

} // namespace

Loaded load(const std::string& recipe, const std::string& hook_file) {
    Loaded loaded;
    loaded.file = find_recipe(recipe);
    loaded.text = read_file(loaded.file);
    Recipe read = or_refuse(loaded.file, loaded.text, read_recipe(loaded.text));
    loaded.pattern = or_refuse(loaded.file, loaded.text, link(std::move(read)));
    if (!hook_file.empty()) {
        const std::string hook = read_file(hook_file);
        loaded.own = or_refuse(hook_file, hook, read_hook(hook));
    }
    return loaded;
}

HookSize size_of(const Loaded& loaded, const std::string& said) {
    if (!said.empty()) {
        const Result<WrittenHookSize> size = parse_hook_size(said);
        if (!size.ok()) refuse_usage("--size: " + size.error().message, size.error().remedy);
        return size.value().size;
    }
    if (loaded.own && loaded.own->size) return *loaded.own->size;
    const std::vector<HookSize> sizes = sizes_of(loaded);
    return sizes[sizes.size() / 2];
}

std::vector<HookSize> sizes_of(const Loaded& loaded) {
    std::vector<HookSize> sizes = loaded.pattern.recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    if (sizes.empty()) sizes.push_back(HookSize{});
    return sizes;
}

Fly run(const Loaded& loaded, HookSize size) {
    Fly fly;
    fly.rig = or_refuse(loaded.file, loaded.text,
                        make_rig(loaded.pattern, size, loaded.own ? &*loaded.own : nullptr));
    or_refuse(loaded.file, loaded.text, resolve(loaded.pattern, fly.rig, fly.resolved));
    tie(loaded.pattern, fly.rig, fly.resolved, Limits{}, fly.tied);
    return fly;
}

bool is_stopped(const Tied& tied) {
    return std::any_of(tied.findings.begin(), tied.findings.end(),
                       [](const Finding& f) { return f.level == Level::stops; });
}

std::string size_words(HookSize size) { return fmt::format("#{}", write_hook_size(size)); }

} // namespace wrapwright::cli
