#include "platform/gl/image.h"

#include <doctest/doctest.h>
#include <stb/stb_image.h>

using namespace wrapwright;

TEST_CASE("a picture written as a PNG reads back pixel for pixel") {
    Image image{{7, 5}, {}};
    for (int i = 0; i < 7 * 5; ++i) {
        for (const int v : {3 * i, 255 - 5 * i, i * i % 256, 255}) {
            image.rgba.push_back(static_cast<std::uint8_t>(v));
        }
    }
    const std::vector<std::uint8_t> png = png_of(image);
    int width = 0;
    int height = 0;
    int channels = 0;
    stbi_uc* read = stbi_load_from_memory(png.data(), static_cast<int>(png.size()), &width, &height,
                                          &channels, 4);
    REQUIRE(read != nullptr);
    CHECK(PixelSize{width, height} == image.size);
    CHECK(channels == 3);
    CHECK(std::vector<std::uint8_t>(read, read + image.rgba.size()) == image.rgba);
    stbi_image_free(read);
}
