#pragma once
// A strip to hold a fly against: its targets as bars in true size, and its outline.

#include "core/card/page.h"
#include "core/check/proportions.h"
#include "core/recipe/pattern.h"

namespace wrapwright {

/// The strip on one page, with a bar that tells whether the printer kept the scale.
///
/// Valid   a record with a base; targets of one standard
[[nodiscard]] std::string gauge_page(const PageSize& size, const Pattern& pattern,
                                     const Resolved& resolved, const Tied& tied,
                                     const std::vector<PartTarget>& targets);

} // namespace wrapwright
