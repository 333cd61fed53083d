#pragma once
// What the check of a fly shows: targets, what was measured, the photo that is open.

#include "core/check/photo_found.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

enum class CheckView : unsigned char { targets, photo, true_size, batch };

/// One measurement of one fly.
struct FlyReading {
    std::int64_t id = 0; ///< in the store
    int fly = 1;
    std::string part;                          ///< tail, body, thorax, wing, hackle, rib; or mass
    double value = 0.0, low = 0.0, high = 0.0; ///< m, or kg
    bool by_photo = false;
};

/// A photo that was kept with this recipe and size.
struct KeptPhoto {
    std::int64_t id = 0;
    std::string name;
    int fly = 1;
};

struct PhotoOpen {
    std::shared_ptr<const GreyPicture> picture{};
    std::int64_t id = 0; ///< in the store; 0: it is not kept
    std::string name{};
    PhotoMarks marks{};
    PhotoFound found{};
};

struct CheckWork {
    CheckView view = CheckView::targets;
    std::vector<PartTarget> targets{}; ///< of every standard, for the fly that is open
    int fly = 1;                       ///< whose measures are entered
    std::vector<FlyReading> readings{};
    std::vector<KeptPhoto> photos{};
    PhotoOpen photo{};
    int fold = 1;             ///< how many times life size the silhouette is
    bool calibrating = false; ///< a card is held to the screen
};

} // namespace wrapwright
