#pragma once
// How a command ends: its exit codes, and the one line that says why it could not go on.

#include "core/result.h"

#include <filesystem>
#include <string>

namespace wrapwright::cli {

/// The exit codes of the program, as --help and the README state them.
enum class ExitCode : int {
    fine = 0,
    stops = 1,     ///< a finding stops the fly
    bad_input = 2, ///< a file or an option that cannot be used
    outside = 3,   ///< the outside world refused: cannot write, no picture without a driver
};

/// Thrown to end a command; main prints the line on stderr and leaves with the code.
struct Failure {
    ExitCode code = ExitCode::bad_input;
    std::string line;
};

/// Ends the command with "FILE:LINE: KEY: message; remedy".
[[noreturn]] void refuse(const std::filesystem::path& file, const Error& error);

/// Ends the command with "wrapwright: message; remedy": an option or argument that cannot be used.
[[noreturn]] void refuse_usage(const std::string& message, const std::string& remedy);

/// Ends the command because the outside world did not play along.
[[noreturn]] void give_up(const std::filesystem::path& file, const std::string& message,
                          const std::string& remedy);

/// The text with every control character replaced, so that a file cannot drive the terminal.
[[nodiscard]] std::string printable(std::string_view text);

} // namespace wrapwright::cli
