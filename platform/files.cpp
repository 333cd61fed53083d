#include "platform/files.h"

#include <algorithm>
#include <fstream>

#include <unistd.h>

namespace wrapwright {

namespace fs = std::filesystem;

namespace {

Error too_large(std::size_t most) {
    std::string message = "larger than ";
    message.append(std::to_string(most >> 20U)).append(" MiB and not read");
    return {ErrorCode::too_large,
            std::move(message),
            most > most_file_bytes
                ? "save it smaller"
                : "give a recipe or hook file; the largest ones have a few hundred lines",
            {}};
}

Error refused(ErrorCode code, std::string message, std::string remedy) {
    return {code, std::move(message), std::move(remedy), {}};
}

} // namespace

Error in_file(const std::string& file, Error error) {
    error.message = file + ": " + error.message;
    return error;
}

Result<std::string> read_file(const fs::path& file, std::size_t most) {
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    if (!fs::exists(status)) {
        return refused(ErrorCode::not_found, "no such file", "check the name and the folder");
    }
    if (fs::is_directory(status)) {
        return refused(ErrorCode::malformed, "a folder, not a file", "name a file in it");
    }
    const bool regular = fs::is_regular_file(status);
    const std::uintmax_t told = regular ? fs::file_size(file, error) : most;
    if (regular && told > most) return too_large(most);
    const auto size = static_cast<std::size_t>(told);
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        return refused(ErrorCode::not_found, "cannot be opened", "check that you may read it");
    }
    // A pipe has no size to ask for: read at most one byte more than is allowed.
    std::string bytes(std::min(size, most) + 1, '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (in.bad()) return refused(ErrorCode::malformed, "cannot be read", "check the disk");
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    if (bytes.size() > std::min(size, most)) return too_large(most);
    return bytes;
}

Result<bool> write_file(const fs::path& file, std::string_view bytes) {
    std::error_code error;
    if (fs::is_directory(file, error)) {
        return refused(ErrorCode::malformed, "a folder, not a file", "name a file in it");
    }
    const fs::path part = file.string() + ".part" + std::to_string(getpid());
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    out.close();
    if (out.fail()) {
        fs::remove(part, error);
        return refused(ErrorCode::malformed, "cannot be written",
                       "check the folder, the rights and the room on the disk");
    }
    fs::rename(part, file, error);
    if (error) {
        const std::string why = error.message();
        fs::remove(part, error);
        return refused(ErrorCode::malformed, "cannot be replaced: " + why,
                       "check the rights, or write elsewhere");
    }
    return true;
}

std::string file_stem(std::string name) {
    for (char& c : name) {
        const bool plain =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
        if (!plain) c = '_';
    }
    return name;
}

Result<fs::path> assets_folder() {
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error).parent_path();
    for (const fs::path& folder :
         {program / "assets", program.parent_path() / "assets",
          program.parent_path() / "share" / "wrapwright", fs::path(WW_SOURCE_DIR) / "assets"}) {
        if (fs::is_directory(folder / "recipes", error)) return folder;
    }
    return refused(ErrorCode::not_found, "the folder 'assets' is missing",
                   "keep it beside the program");
}

std::vector<fs::path> recipe_files(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(folder, ignored)) {
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace wrapwright
