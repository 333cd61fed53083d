#include "platform/gl/image.h"

#include "core/assert.h"

#include <algorithm>
#include <stb/stb_image_write.h>

namespace wrapwright {

Image read_pixels(const Gl& gl, PixelSize size) {
    Image image{size, {}};
    const std::size_t row = 4 * static_cast<std::size_t>(size.width);
    image.rgba.resize(row * static_cast<std::size_t>(size.height));
    gl.PixelStorei(GL_PACK_ALIGNMENT, 4);
    gl.ReadPixels(0, 0, size.width, size.height, GL_RGBA, GL_UNSIGNED_BYTE, image.rgba.data());
    // GL's rows start at the bottom.
    const auto rows = static_cast<std::size_t>(size.height);
    for (std::size_t y = 0; y < rows / 2; ++y) {
        const auto upper = image.rgba.begin() + static_cast<std::ptrdiff_t>(y * row);
        std::swap_ranges(upper, upper + static_cast<std::ptrdiff_t>(row),
                         image.rgba.begin() + static_cast<std::ptrdiff_t>((rows - 1 - y) * row));
    }
    return image;
}

std::vector<std::uint8_t> png_of(const Image& image) {
    // Without alpha: a picture covers its whole area.
    const std::size_t pixels = image.rgba.size() / 4;
    std::vector<std::uint8_t> rgb(3 * pixels);
    for (std::size_t i = 0; i < pixels; ++i) {
        for (std::size_t k = 0; k < 3; ++k) rgb[3 * i + k] = image.rgba[4 * i + k];
    }
    std::vector<std::uint8_t> bytes;
    const auto append = [](void* out, void* data, int size) {
        const auto* first = static_cast<const std::uint8_t*>(data);
        auto& to = *static_cast<std::vector<std::uint8_t>*>(out);
        to.insert(to.end(), first, first + size);
    };
    const int written = stbi_write_png_to_func(append, &bytes, image.size.width, image.size.height,
                                               3, rgb.data(), 3 * image.size.width);
    WW_ASSERT(written != 0); // fails only where memory ends
    return bytes;
}

} // namespace wrapwright
