#pragma once
// A photo of a fly beside a card, made from the fly's record: perspective, blur and noise as a phone
// gives them, and the marks as a perfect hand would set them.

#include "core/check/photo_marks.h"
#include "gui/open_fly.h"

namespace wrapwright::test {

struct FlyPhoto {
    GreyPicture picture{};
    PhotoMarks truth{};
    PhotoScale scale = PhotoScale::card({{{0, 0}, {200, 0}, {200, 100}, {0, 100}}}).value();
};

/// About 15 pixels to the millimetre; the fly lies 14 mm above the card, in its plane.
[[nodiscard]] FlyPhoto photo_of(const OpenFly& fly, double noise = 0.02,
                                unsigned long long seed = 7);

} // namespace wrapwright::test
