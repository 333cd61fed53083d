#include "platform/gl/image.h"

#include "core/assert.h"

#include <stb/stb_image_write.h>

namespace wrapwright {

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
