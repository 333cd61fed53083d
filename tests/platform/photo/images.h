#pragma once
// Pictures made in the tests, as the bytes of files.

#include <cstdint>
#include <stb/stb_image_write.h>
#include <string>
#include <vector>

namespace wrapwright::test {

inline void append_bytes(void* out, void* data, int size) {
    static_cast<std::string*>(out)->append(static_cast<const char*>(data),
                                           static_cast<std::size_t>(size));
}

inline std::string png_bytes(const std::vector<std::uint8_t>& grey, int width, int height) {
    std::string bytes;
    stbi_write_png_to_func(append_bytes, &bytes, width, height, 1, grey.data(), width);
    return bytes;
}

inline std::string jpeg_bytes(const std::vector<std::uint8_t>& grey, int width, int height,
                              int quality) {
    std::string bytes;
    stbi_write_jpg_to_func(append_bytes, &bytes, width, height, 1, grey.data(), quality);
    return bytes;
}

} // namespace wrapwright::test
