#include "platform/files.h"

#include <algorithm>
#include <cstdio>
#include <memory>

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

// A file that is closed at the end. Not a stream, which for the web brings all of its locales along.
struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using Handle = std::unique_ptr<std::FILE, Close>;

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
    const Handle in(std::fopen(file.c_str(), "rb"));
    if (!in) {
        return refused(ErrorCode::not_found, "cannot be opened", "check that you may read it");
    }
    // A pipe has no size to ask for: read at most one byte more than is allowed.
    std::string bytes(std::min(size, most) + 1, '\0');
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), in.get()));
    if (std::ferror(in.get()) != 0) {
        return refused(ErrorCode::malformed, "cannot be read", "check the disk");
    }
    if (bytes.size() > std::min(size, most)) return too_large(most);
    return bytes;
}

Result<bool> write_file(const fs::path& file, std::string_view bytes) {
    std::error_code error;
    if (fs::is_directory(file, error)) {
        return refused(ErrorCode::malformed, "a folder, not a file", "name a file in it");
    }
    const fs::path part = file.string() + ".part" + std::to_string(getpid());
    Handle out(std::fopen(part.c_str(), "wb"));
    const bool whole = out && std::fwrite(bytes.data(), 1, bytes.size(), out.get()) == bytes.size();
    if (const bool closed = out && std::fclose(out.release()) == 0; !whole || !closed) {
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
