#include "platform/cli/files.h"

#include "platform/cli/failure.h"
#include "platform/files.h"

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

fs::path find_recipe(const std::string& said) {
    std::error_code error;
    const fs::path path(said);
    const bool bare = !path.has_extension() && !path.has_parent_path();
    if (!bare || fs::is_regular_file(path, error)) return path;
    const Result<fs::path> assets = assets_folder();
    if (!assets.ok()) give_up("wrapwright", assets.error().message, assets.error().remedy);
    const fs::path folder = assets.value() / "recipes";
    for (const fs::path& file : {folder / (said + ".json"), folder / "wrong" / (said + ".json")}) {
        if (fs::exists(file, error)) return file;
    }
    std::string names;
    for (const fs::path& file : recipe_files(folder)) {
        names += (names.empty() ? "" : ", ") + file.stem().string();
    }
    refuse(path, {ErrorCode::not_found, "no such file, and no recipe of that name came along",
                  "give a file, or one of " + names});
}

} // namespace wrapwright::cli
