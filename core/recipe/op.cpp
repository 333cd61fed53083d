#include "core/recipe/op.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// In the order of the enumerators.
constexpr std::array<std::string_view, op_count> op_names{
    "flatten barb", "slide on",   "clamp",       "wind ballast", "lock ballast", "start thread",
    "lay base",     "travel",     "build up",    "tie in",       "pinch in",     "loop in",
    "gather",       "bind down",  "stack hair",  "spin hair",    "dub",          "dubbing loop",
    "wind",         "rib",        "counter rib", "palmer",       "collar",       "set wing",
    "wind post",    "pull over",  "tie off",     "trim",         "shape",        "half hitch",
    "whip finish",  "cut thread", "coat",        "cure",         "clear eye",    "mark",
    "turn hook",    "join",       "unclamp",
};
static_assert(op_names.back() == "unclamp", "a name is missing");

constexpr std::array<std::string_view, 2> sense_names{"with thread", "against thread"};
constexpr std::array<std::string_view, 4> spacing_names{"unsaid", "touching", "open", "graded"};

} // namespace

std::string_view name(Op op) { return op_names[static_cast<std::size_t>(op)]; }
std::string_view name(Sense sense) { return sense_names[static_cast<std::size_t>(sense)]; }
std::string_view name(Spacing spacing) { return spacing_names[static_cast<std::size_t>(spacing)]; }

std::optional<Op> op(std::string_view word) {
    const auto* found = std::find(op_names.begin(), op_names.end(), word);
    if (found == op_names.end()) return std::nullopt;
    return static_cast<Op>(found - op_names.begin());
}

} // namespace wrapwright
