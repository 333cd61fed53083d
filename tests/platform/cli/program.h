#pragma once
// The built program as a person runs it: arguments in, exit code and both streams out.

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace wrapwright::test {

/// What one run left behind.
struct Ran {
    int code = -1; ///< 128 + signal where a signal ended it
    std::string out, err;

    /// Standard output as JSON; a test fails where it is none.
    [[nodiscard]] nlohmann::json json() const;
};

/// Runs the program with these arguments and waits for it; its output goes to files, not a
/// terminal.
[[nodiscard]] Ran wrapwright(const std::vector<std::string>& arguments);
/// The same with another program.
[[nodiscard]] Ran run_program(const char* program, const std::vector<std::string>& arguments);

/// A folder of its own for the files of one test, gone when the test ends.
class Scratch {
  public:
    Scratch();
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    /// Writes a file into it and returns its path.
    [[nodiscard]] std::string file(const std::string& name_of_file, const std::string& bytes) const;

  private:
    std::filesystem::path folder_;
};

[[nodiscard]] std::string bytes_of(const std::filesystem::path& file);

/// The recipes that came along, without the wrong ones; and the wrong ones.
[[nodiscard]] std::vector<std::filesystem::path> demo_recipes();
[[nodiscard]] std::vector<std::filesystem::path> wrong_recipes();

} // namespace wrapwright::test
