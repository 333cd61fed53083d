#include "tests/platform/cli/program.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <fstream>
#include <iterator>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace wrapwright::test {

namespace fs = std::filesystem;

namespace {

std::vector<fs::path> json_files(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace

nlohmann::json Ran::json() const {
    nlohmann::json parsed = nlohmann::json::parse(out, nullptr, false);
    REQUIRE_FALSE(parsed.is_discarded());
    return parsed;
}

Ran wrapwright(const std::vector<std::string>& arguments) {
    return run_program(WW_PROGRAM, arguments);
}

Ran run_program(const char* program, const std::vector<std::string>& arguments) {
    const Scratch scratch;
    const std::string out = (scratch.folder() / "out").string();
    const std::string err = (scratch.folder() / "err").string();
    std::vector<std::string> words{program};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<char*> argv;
    for (std::string& word : words) argv.push_back(word.data());
    argv.push_back(nullptr);

    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    constexpr int flags = O_WRONLY | O_CREAT | O_TRUNC;
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, out.c_str(), flags, 0600);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, err.c_str(), flags, 0600);
    pid_t child = 0;
    const int spawned = posix_spawn(&child, program, &actions, nullptr, argv.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    REQUIRE(spawned == 0);
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return {code, bytes_of(out), bytes_of(err)};
}

Scratch::Scratch() {
    std::string pattern = (fs::temp_directory_path() / "wrapwright-test-").string();
    pattern.append(6, 'X'); // as mkdtemp wants it
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    folder_ = pattern;
}

Scratch::~Scratch() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

std::string Scratch::file(const std::string& name_of_file, const std::string& bytes) const {
    const fs::path path = folder_ / name_of_file;
    std::ofstream(path, std::ios::binary) << bytes;
    return path.string();
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<fs::path> demo_recipes() {
    return json_files(fs::path(WW_SOURCE_DIR) / "assets" / "recipes");
}

std::vector<fs::path> wrong_recipes() {
    return json_files(fs::path(WW_SOURCE_DIR) / "assets" / "recipes" / "wrong");
}

} // namespace wrapwright::test
