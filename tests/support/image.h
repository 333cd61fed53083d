#pragma once
// Reading pictures in tests, and comparing them.

#include "platform/gl/image.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace wrapwright::test {

/// Red, green and blue of a pixel, 0 to 255; x and y from the upper left.
inline std::array<int, 3> pixel(const Image& image, int x, int y) {
    const auto at = 4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(image.size.width) +
                         static_cast<std::size_t>(x));
    return {image.rgba[at], image.rgba[at + 1], image.rgba[at + 2]};
}

/// How two pictures differ: the share of pixels of which a channel is further off than allowed.
struct ImageDiff {
    double share = 1.0;
    Image shown{}; ///< the first picture, paled, those pixels red
};

/// Pictures of different sizes differ everywhere.
inline ImageDiff compare(const Image& a, const Image& b, int allowed) {
    if (a.size != b.size) return {1.0, a};
    ImageDiff diff{0.0, a};
    std::size_t off = 0;
    const std::size_t pixels = a.rgba.size() / 4;
    for (std::size_t i = 0; i < pixels; ++i) {
        int worst = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            worst = std::max(worst, std::abs(a.rgba[4 * i + k] - b.rgba[4 * i + k]));
            diff.shown.rgba[4 * i + k] = static_cast<std::uint8_t>(192 + a.rgba[4 * i + k] / 4);
        }
        if (worst <= allowed) continue;
        ++off;
        diff.shown.rgba[4 * i] = 230;
        diff.shown.rgba[4 * i + 1] = diff.shown.rgba[4 * i + 2] = 0;
    }
    diff.share = static_cast<double>(off) / static_cast<double>(pixels);
    return diff;
}

} // namespace wrapwright::test
