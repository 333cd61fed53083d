#include "platform/cli/failure.h"

namespace wrapwright::cli {

std::string printable(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        const auto code = static_cast<unsigned char>(c);
        if (code < 0x20 || code == 0x7F) c = code == '\n' || code == '\t' ? ' ' : '?';
    }
    return out;
}

void refuse(const std::filesystem::path& file, const Error& error) {
    std::string line = file.string() + ":";
    if (error.place.line > 0) line += std::to_string(error.place.line) + ":";
    if (!error.place.key.empty()) line += " " + error.place.key + ":";
    line += " " + error.message + "; " + error.remedy;
    throw Failure{ExitCode::bad_input, printable(line)};
}

void refuse_usage(const std::string& message, const std::string& remedy) {
    throw Failure{ExitCode::bad_input, printable("wrapwright: " + message + "; " + remedy)};
}

void give_up(const std::filesystem::path& file, const std::string& message,
             const std::string& remedy) {
    throw Failure{ExitCode::outside, printable(file.string() + ": " + message + "; " + remedy)};
}

} // namespace wrapwright::cli
