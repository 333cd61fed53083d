#pragma once
// Marks over the wraps: where a winding runs, how far apart, which way. Read from the record.

#include "gui/model.h"
#include "gui/scene.h"

namespace wrapwright {

/// Adds the marks that the settings ask for, for what the moment winds.
///
/// Valid   a scene with camera, size and text_px set; a record with moments
void add_overlays(const Model& model, const OpenFly& fly, int moment, Scene& scene);

} // namespace wrapwright
