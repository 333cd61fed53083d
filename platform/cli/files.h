#pragma once
// Files in and out: read whole up to a limit, written whole or not at all; the one asset lookup.

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace wrapwright::cli {

/// The largest file that is read, above the text form's own limit of 4 MiB.
inline constexpr std::size_t most_bytes = std::size_t{8} << 20;

/// The bytes of a file.
///
/// Fails   bad_input when it is missing, a folder, unreadable, or larger than most_bytes; a larger
///         file is refused by its size, unread
[[nodiscard]] std::string read_file(const std::filesystem::path& file);

/// Writes a file whole: beside it first, then renamed over it, so that nobody sees half of it.
///
/// Fails   outside, leaving what was there before as it was
void write_file(const std::filesystem::path& file, std::string_view bytes);

/// The folder of recipes, hooks and icons that came with the program.
///
/// Looks beside the program, one folder up, in share/wrapwright, and where it was built from.
/// Fails   outside when none of these exists
[[nodiscard]] std::filesystem::path assets_folder();

/// The recipe file that was meant: a path, or the bare name of one that came with the program.
///
/// Fails   bad_input, listing the names, when it is neither
[[nodiscard]] std::filesystem::path find_recipe(const std::string& said);

} // namespace wrapwright::cli
