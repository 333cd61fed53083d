#pragma once
// Lines along what is on the hook, for marks drawn over the fly.

#include "core/tying/record.h"

#include <glm/vec3.hpp>
#include <vector>

namespace wrapwright {

/// A place on a base's wire in model space, with its directions: unit vectors, but mm for `origin`.
struct WirePlace {
    glm::vec3 origin{}, along{}, up{}, out{};
};
[[nodiscard]] WirePlace wire_place(const Pattern& pattern, const Tied& tied, int moment, int base,
                                   Length at);

/// The middle of a winding's strand from one turn to another, as the fly's mesh has it, in mm.
///
/// Valid   0 <= winding < tied.windings.size(); 0 <= from <= to <= its turns; points >= 2
[[nodiscard]] std::vector<glm::vec3> strand_line(const Pattern& pattern, const Tied& tied,
                                                 int moment, int winding, double from, double to,
                                                 int points);

} // namespace wrapwright
