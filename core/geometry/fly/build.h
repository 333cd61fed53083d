#pragma once
// The fly as it is after one moment of its tying, as meshes to look at.

#include "core/geometry/fly/model.h"
#include "core/tying/record.h"

namespace wrapwright {

/// How finely to draw, and what to draw beside the fly.
struct FlyDetail {
    double pixels_per_mm = 60.0; ///< of the picture: curves keep within a quarter of a pixel
    bool vise = true;            ///< jaws that hold the base being dressed
    bool hanging_thread = true;  ///< the thread to the bobbin, and ends still to be wound
};

/// Draws all that is on the fly after that moment.
///
/// Reads the record alone: what was not tied is not drawn, what was trimmed away is gone. Equal
/// inputs give equal bytes. For the left-handed the picture is mirrored, not the model.
/// Valid   0 <= moment < tied.moments.size(), or any value with no moments: the bare bases
/// Cost    reuses the buffers that `out` holds; linear in what is drawn at that detail
void build_fly(const Pattern& pattern, const Tied& tied, int moment, const FlyDetail& detail,
               FlyModel& out);

} // namespace wrapwright
