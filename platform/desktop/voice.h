#pragma once
// The system's voice: speech-dispatcher's spd-say, where it is installed.

#include <string>
#include <sys/types.h>

namespace wrapwright {

/// Reads one text at a time, and is silent where there is no spd-say.
class Voice {
  public:
    Voice() = default;
    Voice(const Voice&) = delete;
    Voice& operator=(const Voice&) = delete;
    ~Voice();
    /// Starts reading, instead of what is being read; an empty text ends it. Does not wait.
    void say(const std::string& text);

  private:
    void hush();
    pid_t reader_ = 0;
};

} // namespace wrapwright
