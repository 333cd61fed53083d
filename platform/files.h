#pragma once
// Files in and out: read whole up to a limit, written whole or not at all; the one asset lookup.

#include "core/result.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// The largest file that is read, above the text form's own limit of 4 MiB.
inline constexpr std::size_t most_file_bytes = std::size_t{8} << 20;

/// The bytes of a file.
///
/// Fails   not_found when it is missing or may not be opened, malformed when it is a folder or
///         cannot be read, too_large above `most`: by its size, unread
[[nodiscard]] Result<std::string> read_file(const std::filesystem::path& file,
                                            std::size_t most = most_file_bytes);

/// The error with the name of its file before it.
[[nodiscard]] Error in_file(const std::string& file, Error error);

/// Writes a file whole: beside it first, then renamed over it, so that nobody sees half of it.
///
/// Fails   malformed when it cannot be written; what was there before stays as it was
[[nodiscard]] Result<bool> write_file(const std::filesystem::path& file, std::string_view bytes);

/// A name for a file, with nothing in it that a folder could mean otherwise.
[[nodiscard]] std::string file_stem(std::string name);

/// The folder of recipes, hooks and icons that came with the program.
///
/// Looks beside the program, one folder up, in share/wrapwright, and where it was built from.
/// Fails   not_found when none of these exists
[[nodiscard]] Result<std::filesystem::path> assets_folder();

/// The recipe files in a folder, by name; none where it cannot be read.
[[nodiscard]] std::vector<std::filesystem::path> recipe_files(const std::filesystem::path& folder);

} // namespace wrapwright
