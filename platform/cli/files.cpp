#include "platform/cli/files.h"

#include "platform/cli/failure.h"

#include <algorithm>
#include <fstream>
#include <vector>

#include <unistd.h>

namespace wrapwright::cli {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void refuse_file(const fs::path& file, ErrorCode code, const std::string& message,
                              const std::string& remedy) {
    refuse(file, {code, message, remedy});
}

[[noreturn]] void refuse_large(const fs::path& file) {
    refuse_file(file, ErrorCode::too_large, "larger than 8 MiB and not read",
                "give a recipe or hook file; the largest ones have a few hundred lines");
}

std::string recipe_names(const fs::path& folder) {
    std::vector<std::string> names;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(folder, ignored)) {
        if (entry.path().extension() == ".json") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    std::string list;
    for (const std::string& name : names) list += (list.empty() ? "" : ", ") + name;
    return list;
}

} // namespace

std::string read_file(const fs::path& file) {
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    if (!fs::exists(status)) {
        refuse_file(file, ErrorCode::not_found, "no such file", "check the name and the folder");
    }
    if (fs::is_directory(status)) {
        refuse_file(file, ErrorCode::malformed, "a folder, not a file", "name a file in it");
    }
    if (fs::is_regular_file(status) && fs::file_size(file, error) > most_bytes) refuse_large(file);
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        refuse_file(file, ErrorCode::not_found, "cannot be opened", "check that you may read it");
    }
    // A pipe has no size to ask for: read at most one byte more than is allowed.
    std::string bytes(most_bytes + 1, '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (in.bad()) refuse_file(file, ErrorCode::malformed, "cannot be read", "check the disk");
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    if (bytes.size() > most_bytes) refuse_large(file);
    return bytes;
}

void write_file(const fs::path& file, std::string_view bytes) {
    std::error_code error;
    if (fs::is_directory(file, error)) give_up(file, "a folder, not a file", "name a file in it");
    const fs::path part = file.string() + ".part" + std::to_string(getpid());
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    out.close();
    if (out.fail()) {
        fs::remove(part, error);
        give_up(file, "cannot be written", "check the folder, the rights and the room on the disk");
    }
    fs::rename(part, file, error);
    if (error) {
        const std::string why = error.message();
        fs::remove(part, error);
        give_up(file, "cannot be replaced: " + why, "check the rights, or write elsewhere");
    }
}

fs::path assets_folder() {
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error).parent_path();
    for (const fs::path& folder :
         {program / "assets", program.parent_path() / "assets",
          program.parent_path() / "share" / "wrapwright", fs::path(WW_SOURCE_DIR) / "assets"}) {
        if (fs::is_directory(folder / "recipes", error)) return folder;
    }
    give_up(program, "the folder 'assets' is missing", "keep it beside the program");
}

fs::path find_recipe(const std::string& said) {
    std::error_code error;
    const fs::path path(said);
    const bool bare = !path.has_extension() && !path.has_parent_path();
    if (!bare || fs::is_regular_file(path, error)) return path;
    const fs::path folder = assets_folder() / "recipes";
    for (const fs::path& file : {folder / (said + ".json"), folder / "wrong" / (said + ".json")}) {
        if (fs::exists(file, error)) return file;
    }
    refuse(path, {ErrorCode::not_found, "no such file, and no recipe of that name came along",
                  "give a file, or one of " + recipe_names(folder)});
}

} // namespace wrapwright::cli
