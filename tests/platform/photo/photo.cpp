#include "platform/photo.h"

#include "tests/platform/photo/images.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// 48 x 32 with its upper left quarter light.
std::vector<std::uint8_t> quarter() {
    std::vector<std::uint8_t> grey(48U * 32U, 40);
    for (std::size_t y = 0; y < 16; ++y) {
        for (std::size_t x = 0; x < 24; ++x) grey[y * 48 + x] = 220;
    }
    return grey;
}

/// A JPEG with an Exif block that says an orientation, its numbers in either order.
std::string turned(int orientation, bool little) {
    const std::string plain = jpeg_bytes(quarter(), 48, 32, 95);
    std::string exif("Exif\0\0", 6);
    const auto put = [&](unsigned value, int bytes) {
        for (int i = 0; i < bytes; ++i) {
            const int shift = 8 * (little ? i : bytes - 1 - i);
            exif.push_back(static_cast<char>(value >> static_cast<unsigned>(shift) & 0xFFU));
        }
    };
    exif += little ? "II" : "MM";
    put(42, 2);
    put(8, 4);
    put(1, 2);
    put(0x0112, 2);
    put(3, 2);
    put(1, 4);
    put(static_cast<unsigned>(orientation), 2);
    put(0, 2);
    put(0, 4);
    std::string block("\xFF\xE1");
    block.push_back(static_cast<char>((exif.size() + 2) >> 8U));
    block.push_back(static_cast<char>((exif.size() + 2) & 0xFFU));
    return plain.substr(0, 2) + block + exif + plain.substr(2);
}

/// Which quarter is light: 0 upper left, 1 upper right, 2 lower left, 3 lower right.
int light_quarter(const Photo& photo) {
    int best = -1;
    float most = -1.0F;
    for (int q = 0; q < 4; ++q) {
        const int x = (q % 2 == 0 ? 1 : 3) * photo.width / 4;
        const int y = (q < 2 ? 1 : 3) * photo.height / 4;
        const float g = photo.grey[static_cast<std::size_t>(y * photo.width + x)];
        if (g > most) {
            most = g;
            best = q;
        }
    }
    return best;
}

std::string be32(unsigned v) {
    std::string s;
    for (const unsigned shift : {24U, 16U, 8U, 0U})
        s.push_back(static_cast<char>(v >> shift & 0xFFU));
    return s;
}

std::string chunk(const std::string& kind, const std::string& data) {
    return be32(static_cast<unsigned>(data.size())) + kind + data + be32(0);
}

} // namespace

TEST_CASE("a photo is turned as the camera was held") {
    // Source     Exif 2.32, tag 0x0112: where the first row and column of the stored picture are
    constexpr int quarters[] = {0, 1, 3, 2, 0, 1, 3, 2};
    for (int o = 1; o <= 8; ++o) {
        for (const bool little : {true, false}) {
            CAPTURE(o);
            const std::string bytes = turned(o, little);
            CHECK(exif_orientation(bytes) == o);
            const Result<Photo> photo = read_photo(bytes);
            REQUIRE(photo.ok());
            CHECK(photo.value().width == (o <= 4 ? 48 : 32));
            CHECK(photo.value().height == (o <= 4 ? 32 : 48));
            CHECK(light_quarter(photo.value()) == quarters[o - 1]);
        }
    }
    CHECK(exif_orientation(turned(9, true)) == 1);
    CHECK(exif_orientation("") == 1);
}

TEST_CASE("PNG and JPEG read alike, and 16 bits as 8") {
    const Result<Photo> png = read_photo(png_bytes(quarter(), 48, 32));
    const Result<Photo> jpeg = read_photo(jpeg_bytes(quarter(), 48, 32, 95));
    REQUIRE(png.ok());
    REQUIRE(jpeg.ok());
    // Tolerance: what JPEG loses at quality 95, away from the edge.
    CHECK(within(png.value().grey[5], 220.0 / 255.0, 1e-6));
    CHECK(within(jpeg.value().grey[5], 220.0 / 255.0, 0.02));
    // Two by one pixel of 16 bits: 0xFFFF and 0x8000, in a stored block of deflate.
    const std::string rows("\0\xFF\xFF\x80\0", 5);
    const std::string wide =
        std::string("\x89PNG\r\n\x1A\n", 8) +
        chunk("IHDR", be32(2) + be32(1) + std::string("\x10\0\0\0\0", 5)) +
        chunk("IDAT", std::string("\x78\x01\x01\x05\0\xFA\xFF", 7) + rows + be32(0)) +
        chunk("IEND", "");
    const Result<Photo> deep = read_photo(wide);
    REQUIRE(deep.ok());
    CHECK(within(deep.value().grey[0], 1.0, 1e-6));
    CHECK(within(deep.value().grey[1], 0.5, 0.01));
}

TEST_CASE("a JPEG in four printing colours is read as what it shows: dark above, light below") {
    // Source  tests/data/cmyk.jpg: a ramp from black to white, twelve by eight, saved as CMYK
    const Result<Photo> photo = open_photo(WW_SOURCE_DIR "/tests/data/cmyk.jpg");
    REQUIRE(photo.ok());
    REQUIRE(photo.value().width == 12);
    REQUIRE(photo.value().height == 8);
    const GreyView view = photo.value().view();
    CHECK(view.at({6.0, 0.0}) < 0.15);
    CHECK(view.at({6.0, 7.0}) > 0.85);
    for (int y = 1; y < 8; ++y) CHECK(view.at({6.0, y - 0.0}) > view.at({6.0, y - 1.0}));
}

TEST_CASE("what is no photo is said plainly, and nothing is unpacked of one that is too large") {
    CHECK_FALSE(read_photo("").ok());
    CHECK_FALSE(read_photo("GIF89a and so on").ok());
    CHECK_FALSE(read_photo("\x89PNG but no more").ok());
    const std::string png = png_bytes(quarter(), 48, 32);
    CHECK_FALSE(read_photo(png.substr(0, png.size() / 2)).ok());
    const std::string huge =
        std::string("\x89PNG\r\n\x1A\n", 8) +
        chunk("IHDR", be32(100000) + be32(10) + std::string("\x08\0\0\0\0", 5)) +
        chunk("IDAT", "x");
    const Result<Photo> wide = read_photo(huge);
    REQUIRE_FALSE(wide.ok());
    CHECK(wide.error().code == ErrorCode::too_large);
    CHECK(wide.error().message.find("100000 x 10") != std::string::npos);
    const Result<Photo> none = open_photo("/nowhere/fly.jpg");
    REQUIRE_FALSE(none.ok());
    CHECK(none.error().code == ErrorCode::not_found);
}
