#pragma once
// The tick of the turn counter, through the system's sound.

#include <memory>

struct _snd_pcm;

namespace wrapwright {

/// Ticks where there is a sound device, and is silent where there is none.
class Tick {
  public:
    /// Starts a tick and does not wait for its end.
    void play();

  private:
    struct Close {
        void operator()(_snd_pcm* device) const;
    };
    std::unique_ptr<_snd_pcm, Close> device_{};
    bool tried_ = false;
};

} // namespace wrapwright
