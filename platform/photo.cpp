#include "platform/photo.h"

#include "platform/files.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <stb/stb_image.h>

namespace wrapwright {

namespace {

constexpr std::size_t most_photo_bytes = std::size_t{200} << 20;

Error no_photo(std::string message) {
    return {ErrorCode::malformed, std::move(message), "give a PNG or a JPEG file", {}};
}

/// Whole numbers out of bytes, in either order; nothing beyond their end.
class Bytes {
  public:
    explicit Bytes(std::string_view all) : all_(all) {}

    [[nodiscard]] std::optional<unsigned> at(std::size_t i, std::size_t count, bool little) const {
        if (i > all_.size() || all_.size() - i < count) return std::nullopt;
        unsigned value = 0;
        for (std::size_t k = 0; k < count; ++k) {
            const std::size_t from = little ? count - 1 - k : k;
            value = value << 8U | static_cast<std::uint8_t>(all_[i + from]);
        }
        return value;
    }

  private:
    std::string_view all_;
};

/// The orientation in a TIFF block, as Exif keeps it.
int tiff_orientation(std::string_view tiff) {
    if (tiff.size() < 8) return 1;
    const bool little = tiff.starts_with("II");
    if (!little && !tiff.starts_with("MM")) return 1;
    const Bytes bytes(tiff);
    const auto first = bytes.at(4, 4, little);
    if (!first) return 1;
    const auto entries = bytes.at(*first, 2, little);
    for (unsigned i = 0; entries && i < *entries; ++i) {
        const std::size_t entry = *first + 2U + 12U * static_cast<std::size_t>(i);
        const auto tag = bytes.at(entry, 2, little);
        if (!tag) return 1;
        if (*tag != 0x0112) continue;
        const auto value = bytes.at(entry + 8, 2, little);
        return value && *value >= 1 && *value <= 8 ? static_cast<int>(*value) : 1;
    }
    return 1;
}

/// Where a pixel of the turned picture is in the stored one.
struct Turn {
    bool swap, flip_x, flip_y;
};
Turn turn_of(int orientation) {
    constexpr std::array<Turn, 8> turns{{{false, false, false},
                                         {false, true, false},
                                         {false, true, true},
                                         {false, false, true},
                                         {true, false, false},
                                         {true, false, true},
                                         {true, true, true},
                                         {true, true, false}}};
    return turns[static_cast<std::size_t>(orientation - 1)];
}

} // namespace

int exif_orientation(std::string_view jpeg) {
    const Bytes bytes(jpeg);
    if (bytes.at(0, 2, false) != 0xFFD8U) return 1;
    for (std::size_t i = 2;;) {
        const auto marker = bytes.at(i, 2, false);
        const auto length = bytes.at(i + 2, 2, false);
        if (!marker || !length || (*marker >> 8U) != 0xFFU || *length < 2) return 1;
        if (*marker == 0xFFDAU) return 1; // the picture itself begins
        const std::string_view block = jpeg.substr(std::min(jpeg.size(), i + 4), *length - 2);
        constexpr std::string_view exif("Exif\0\0", 6);
        if (*marker == 0xFFE1U && block.starts_with(exif)) {
            return tiff_orientation(block.substr(exif.size()));
        }
        i += 2U + *length;
    }
}

Result<Photo> read_photo(std::string_view bytes) {
    const auto* data = reinterpret_cast<const stbi_uc*>(bytes.data());
    if (bytes.size() > most_photo_bytes) {
        return Error{ErrorCode::too_large, "a photo of more than 200 MB", "save it smaller", {}};
    }
    const bool known = bytes.starts_with("\x89PNG") || bytes.starts_with("\xFF\xD8");
    const auto size = static_cast<int>(bytes.size());
    int width = 0, height = 0, channels = 0;
    if (!known || stbi_info_from_memory(data, size, &width, &height, &channels) == 0) {
        return no_photo("this is no PNG and no JPEG image");
    }
    if (width < 1 || height < 1) return no_photo("this image has no pixels");
    if (width > most_photo_side || height > most_photo_side ||
        static_cast<long>(width) * height > most_photo_pixels) {
        std::string message = "a photo of ";
        message.append(std::to_string(width)).append(" x ").append(std::to_string(height));
        return Error{ErrorCode::too_large,
                     message.append(" pixels"),
                     "save it with at most 50 megapixels and 30,000 a side",
                     {}};
    }
    const std::unique_ptr<stbi_uc, void (*)(void*)> rgb(
        stbi_load_from_memory(data, size, &width, &height, &channels, 3), stbi_image_free);
    if (rgb == nullptr) return no_photo("this image is cut short or damaged");
    const Turn turn = turn_of(exif_orientation(bytes));
    Photo photo;
    photo.width = turn.swap ? height : width;
    photo.height = turn.swap ? width : height;
    photo.grey.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    const int side = std::max(photo.width, photo.height);
    const int every = (side + most_shown_side - 1) / most_shown_side;
    photo.shown_width = (photo.width + every - 1) / every;
    photo.shown_height = (photo.height + every - 1) / every;
    photo.shown.reserve(4 * static_cast<std::size_t>(photo.shown_width) *
                        static_cast<std::size_t>(photo.shown_height));
    std::size_t out = 0;
    for (int y = 0; y < photo.height; ++y) {
        for (int x = 0; x < photo.width; ++x) {
            int sx = turn.swap ? y : x, sy = turn.swap ? x : y;
            if (turn.flip_x) sx = width - 1 - sx;
            if (turn.flip_y) sy = height - 1 - sy;
            const std::size_t i =
                3 * (static_cast<std::size_t>(sy) * static_cast<std::size_t>(width) +
                     static_cast<std::size_t>(sx));
            const stbi_uc* p = rgb.get() + i;
            photo.grey[out++] = static_cast<float>(p[0] + p[1] + p[2]) / 765.0F;
            if (x % every == 0 && y % every == 0) {
                photo.shown.insert(photo.shown.end(), {p[0], p[1], p[2], 255});
            }
        }
    }
    return photo;
}

Result<Photo> open_photo(const std::filesystem::path& file) {
    const Result<std::string> bytes = read_file(file, most_photo_bytes);
    if (!bytes.ok()) return bytes.error();
    return read_photo(bytes.value());
}

} // namespace wrapwright
