#pragma once
// The first tour: a few screens, each with one thing to see and to try.

#include "gui/model.h"

#include <span>
#include <string_view>

namespace wrapwright {

struct TourStop {
    Screen screen;
    std::string_view title, words;
};

[[nodiscard]] std::span<const TourStop> tour_stops();

} // namespace wrapwright
