#pragma once
// A finished picture in memory, and as a PNG.

#include "gui/camera.h"
#include "platform/gl/api.h"

#include <cstdint>
#include <vector>

namespace wrapwright {

/// 8-bit RGBA, rows from the top.
struct Image {
    PixelSize size{};
    std::vector<std::uint8_t> rgba{};
};

/// What the bound framebuffer holds, turned the right way up.
[[nodiscard]] Image read_pixels(const Gl& gl, PixelSize size);

/// The picture as the bytes of a PNG file. The same picture gives the same bytes.
[[nodiscard]] std::vector<std::uint8_t> png_of(const Image& image);

} // namespace wrapwright
