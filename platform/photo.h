#pragma once
// Photos from files: PNG and JPEG, turned as the camera was held, in grey.

#include "core/check/rib_measure.h"

#include <cstdint>
#include <filesystem>
#include <string_view>
#include <vector>

namespace wrapwright {

inline constexpr long most_photo_pixels = 50'000'000;
inline constexpr int most_photo_side = 30'000;

/// A photo in grey, 0 dark to 1 light, the right way up; and its colours, for the screen.
struct Photo : GreyPicture {
    int shown_width = 0, shown_height = 0;
    std::vector<std::uint8_t> shown{}; ///< RGBA, at most most_shown_side a side
};

/// Every second, third ... pixel of a larger photo is shown.
inline constexpr int most_shown_side = 4096;

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
