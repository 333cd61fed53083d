#include "platform/desktop/voice.h"

#include <array>

#include <spawn.h>
#include <sys/wait.h>

extern char** environ;

namespace wrapwright {

namespace {

/// Starts spd-say with these arguments; 0 where there is none.
template <std::size_t n>
pid_t start(std::array<const char*, n> words) {
    std::array<char*, n + 1> argv{};
    for (std::size_t i = 0; i < n; ++i) argv[i] = const_cast<char*>(words[i]); // it only reads them
    pid_t child = 0;
    return posix_spawnp(&child, argv[0], nullptr, nullptr, argv.data(), environ) == 0 ? child : 0;
}

} // namespace

Voice::~Voice() { hush(); }

void Voice::hush() {
    if (reader_ == 0) return;
    const pid_t ended = start(std::array{"spd-say", "--cancel"});
    if (ended != 0) waitpid(ended, nullptr, 0);
    waitpid(reader_, nullptr, WNOHANG);
    reader_ = 0;
}

void Voice::say(const std::string& text) {
    hush();
    if (text.empty()) return;
    // What follows "--" is text, whatever it begins with.
    reader_ = start(std::array{"spd-say", "--language", "en", "--", text.c_str()});
}

} // namespace wrapwright
