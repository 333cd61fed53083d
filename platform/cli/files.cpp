#include "platform/cli/files.h"

#include "platform/cli/failure.h"
#include "platform/files.h"

#include <initializer_list>

namespace wrapwright::cli {

namespace fs = std::filesystem;

std::string read_file(const fs::path& file) {
    Result<std::string> bytes = wrapwright::read_file(file);
    if (!bytes.ok()) refuse(file, bytes.error());
    return std::move(bytes).value();
}

void write_file(const fs::path& file, std::string_view bytes) {
    const Result<bool> written = wrapwright::write_file(file, bytes);
    if (!written.ok()) give_up(file, written.error().message, written.error().remedy);
}

namespace {

/// A path, or the bare name of a file that came along in one of these folders of the assets.
fs::path find_asset(const std::string& said, std::initializer_list<const char*> folders,
                    const char* what) {
    std::error_code error;
    const fs::path path(said);
    const bool bare = !path.has_extension() && !path.has_parent_path();
    if (!bare || fs::is_regular_file(path, error)) return path;
    const Result<fs::path> assets = assets_folder();
    if (!assets.ok()) give_up("wrapwright", assets.error().message, assets.error().remedy);
    std::string names;
    for (const char* folder : folders) {
        const fs::path file = assets.value() / folder / (said + ".json");
        if (fs::exists(file, error)) return file;
    }
    for (const fs::path& file : recipe_files(assets.value() / *folders.begin())) {
        if (!names.empty()) names.append(", ");
        names.append(file.stem().string());
    }
    std::string message = "no such file, and no ";
    message.append(what).append(" of that name came along");
    refuse(path, {ErrorCode::not_found, std::move(message), "give a file, or one of " + names});
}

} // namespace

fs::path find_recipe(const std::string& said) {
    return find_asset(said, {"recipes", "recipes/wrong"}, "recipe");
}

fs::path find_set(const std::string& said) { return find_asset(said, {"sets"}, "set"); }

fs::path find_rules(const std::string& said) { return find_asset(said, {"rules"}, "rule set"); }

} // namespace wrapwright::cli
