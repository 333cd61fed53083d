#pragma once
// A finished picture in memory, and as a PNG.

#include "gui/camera.h"

#include <cstdint>
#include <vector>

namespace wrapwright {

/// 8-bit RGBA, rows from the top.
struct Image {
    PixelSize size{};
    std::vector<std::uint8_t> rgba{};
};

/// The picture as the bytes of a PNG file. The same picture gives the same bytes.
[[nodiscard]] std::vector<std::uint8_t> png_of(const Image& image);

} // namespace wrapwright
