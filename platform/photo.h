#pragma once
// Photos from files: PNG and JPEG, turned as the camera was held, in grey.

#include "core/check/rib_measure.h"

#include <filesystem>
#include <string_view>
#include <vector>

namespace wrapwright {

inline constexpr long most_photo_pixels = 50'000'000;
inline constexpr int most_photo_side = 30'000;

/// A photo in grey, 0 dark to 1 light, the right way up.
struct Photo {
    int width = 0, height = 0;
    std::vector<float> grey{};

    [[nodiscard]] GreyView view() const { return {width, height, grey}; }
};

/// The photo that these bytes of a PNG or JPEG file are, turned as its Exif orientation says.
///
/// Grey is the mean of the colours as they are stored. 16 bits are read as 8; CMYK is converted.
/// Fails   malformed for what is no such image or is cut short; too_large above 50 megapixels or
///         30,000 pixels a side, before anything is unpacked
/// Source  orientation: Exif 2.32, tag 0x0112
[[nodiscard]] Result<Photo> read_photo(std::string_view bytes);

/// The same from a file of at most 200 MB.
[[nodiscard]] Result<Photo> open_photo(const std::filesystem::path& file);

/// The Exif orientation of a JPEG, 1 to 8; 1 where it says none.
[[nodiscard]] int exif_orientation(std::string_view bytes);

} // namespace wrapwright
