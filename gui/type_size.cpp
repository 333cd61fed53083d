#include "gui/type_size.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

// What is laid out with these sizes: a column for the step, beside the wraps or below them.
constexpr float column_share = 0.5F;  // of the width, where the window is wide
constexpr float letter_width = 0.46F; // of the size, a letter of text on average (measured)
constexpr float line_height = 1.25F;  // of the size
constexpr float letters_in_line = 24.0F;
constexpr float lines_wide = 14.0F; // in a wide window's height
constexpr float lines_tall = 20.0F;

} // namespace

Length letter_height(Length distance, Angle angle) {
    return 2.0 * std::tan(0.5 * angle.si) * distance;
}

TypeSizes type_sizes(Length distance, double dots_per_mm, PixelSize window) {
    const double capital = in_millimetres(letter_height(distance, least_letter)) * dots_per_mm;
    TypeSizes sizes;
    const auto width = static_cast<float>(window.width);
    const auto height = static_cast<float>(window.height);
    const bool wide = window.width >= window.height;
    const float column = wide ? column_share * width : width;
    const auto least = static_cast<float>(std::ceil(capital / capital_share));
    const float spare = std::min(column / (2.0F * letters_in_line * letter_width),
                                 height / (2.0F * (wide ? lines_wide : lines_tall) * line_height));
    sizes.small = std::floor(std::clamp(spare, least, 1.6F * least));
    const float room = std::min(column / (letters_in_line * letter_width),
                                height / ((wide ? lines_wide : lines_tall) * line_height));
    sizes.main = std::floor(std::clamp(room, sizes.small, 2.0F * sizes.small));
    sizes.huge = std::floor(std::max(sizes.main, std::min(0.2F * height, 0.25F * column)));
    return sizes;
}

} // namespace wrapwright
