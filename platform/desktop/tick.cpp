#include "platform/desktop/tick.h"

#include <alsa/asoundlib.h>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace wrapwright {

namespace {

constexpr unsigned rate = 48'000;       // 1/s
constexpr unsigned latency_us = 40'000; // the device may hold this much before it sounds
constexpr double pitch = 1'900.0;       // 1/s
constexpr double decay_seconds = 0.0025;
constexpr double loudness = 0.25; // of the largest

using Samples = std::array<std::int16_t, rate / 50>; // 20 ms

Samples click() {
    Samples samples{};
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double t = static_cast<double>(i) / rate;
        const double wave = std::sin(2.0 * std::numbers::pi * pitch * t);
        samples[i] =
            static_cast<std::int16_t>(32'767.0 * loudness * wave * std::exp(-t / decay_seconds));
    }
    return samples;
}

// Without a sound device ALSA would write its complaints to the terminal.
void keep_quiet(const char*, int, const char*, int, const char*, ...) {}

} // namespace

void Tick::Close::operator()(_snd_pcm* device) const { snd_pcm_close(device); }

void Tick::play() {
    if (!tried_) {
        tried_ = true;
        snd_lib_error_set_handler(keep_quiet);
        snd_pcm_t* device = nullptr;
        if (snd_pcm_open(&device, "default", SND_PCM_STREAM_PLAYBACK, SND_PCM_NONBLOCK) == 0) {
            device_.reset(device);
            if (snd_pcm_set_params(device, SND_PCM_FORMAT_S16, SND_PCM_ACCESS_RW_INTERLEAVED, 1,
                                   rate, 1, latency_us) != 0) {
                device_.reset();
            }
        }
    }
    if (!device_) return;
    static const Samples samples = click();
    snd_pcm_prepare(device_.get()); // after a silence the device has run dry
    snd_pcm_writei(device_.get(), samples.data(), samples.size());
}

} // namespace wrapwright
