#pragma once
// The one window of the page, for what the page tells it.

#include "platform/backend.h"
#include "platform/web/touch.h"

#include <string>
#include <vector>

namespace wrapwright {

/// What comes in from the page between two turns of the loop. One page has one of it.
struct WebInput {
    PixelSize dots{};
    float scale = 1.0F; ///< dots for each unit
    Touch touch{};
    std::vector<std::string> files{};
    double wall_ms = 0.0; ///< stands still for one turn
    bool touched = true;
};
[[nodiscard]] WebInput& web_input();

} // namespace wrapwright
