#pragma once
// Files for a command: platform/files.h, with every refusal ending the command.

#include <filesystem>
#include <string>
#include <string_view>

namespace wrapwright::cli {

/// The bytes of a file; bad_input where it cannot be read.
[[nodiscard]] std::string read_file(const std::filesystem::path& file);

/// Writes a file whole or not at all; outside where it cannot be written.
void write_file(const std::filesystem::path& file, std::string_view bytes);

/// The recipe file that was meant: a path, or the bare name of one that came with the program.
///
/// Fails   bad_input, listing the names, when it is neither
[[nodiscard]] std::filesystem::path find_recipe(const std::string& said);

/// The same for a set of beads and ballast, and for a set of rules.
[[nodiscard]] std::filesystem::path find_set(const std::string& said);
[[nodiscard]] std::filesystem::path find_rules(const std::string& said);

} // namespace wrapwright::cli
