#pragma once
// One photo of a fly, measured whole: what the window and the command line both show.

#include "core/check/faults.h"
#include "core/check/photo_marks.h"

namespace wrapwright {

struct PhotoFound {
    std::optional<PhotoScale> scale{};
    std::string no_scale{}; ///< why there is none, and what to do
    PhotoLengths lengths{};
    std::optional<RibMeasure> ribs{};
    std::string no_ribs{}; ///< why there are none, where a line is drawn
    Length rib_spacing{};  ///< what counts: both ways agree, or the person chose; 0: undecided
    std::vector<FaultSeen> faults{};
};

/// Measures what the marks allow, and holds it against the targets of one standard.
///
/// The doubt's scale_share is the hook's own where the scale is by the hook.
[[nodiscard]] PhotoFound find_on_photo(const GreyView& photo, const PhotoMarks& marks,
                                       const std::vector<PartTarget>& targets,
                                       const Pattern& pattern, const Tied& tied,
                                       PhotoDoubt doubt = {});

/// The targets of one standard alone.
[[nodiscard]] std::vector<PartTarget> only(const std::vector<PartTarget>& targets,
                                           std::string_view standard);

/// "7.2 mm (7.0 to 7.4)".
[[nodiscard]] std::string length_text(const Estimate<Length>& length, int decimals = 1);

} // namespace wrapwright
