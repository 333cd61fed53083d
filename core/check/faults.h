#pragma once
// From what is measured to the usual causes and cures, tied to the step that makes them.

#include "core/check/proportions.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// What is seen on a finished fly.
enum class FaultKind : unsigned char {
    tail_long,
    tail_short,
    body_long,
    body_short,
    thorax_long,
    thorax_short,
    wing_long,
    wing_short,
    hackle_long,
    hackle_short,
    eye_crowded,
    rib_wide,
    rib_close,
    rib_uneven,
    heavy,
    light,
};

/// A fault in words.
/// Source  what teachers and a 1940 manual list as the usual errors; signs and cures partly common
///         practice, no source
struct FaultWords {
    FaultKind kind{};
    std::string_view sign, cause, cure;
};
[[nodiscard]] const FaultWords& words_of(FaultKind kind);

/// The fault of a part that is longer or shorter than its target.
[[nodiscard]] FaultKind length_fault(Measured part, bool is_long);

/// A fault that was seen on a fly, and where it comes from.
struct FaultSeen {
    FaultKind kind{};
    int step = none;  ///< that makes it
    int until = none; ///< the last step in which it can be mended
};

/// Unevenness of a rib, as a share of its spacing, from which on it is seen.
/// Source  common practice, no source
inline constexpr double seen_unevenness = 0.10;

/// What a photo or a caliper says of one fly.
struct SeenOnFly {
    std::array<std::optional<Length>, 5> parts{}; ///< by Measured
    std::optional<Length> rib_spacing{};
    std::optional<double> rib_unevenness{};
    std::optional<Length> bare_head{}; ///< between the eye and the body
};

/// The faults, by those targets; in the order of the steps that make them.
///
/// A rib is held against the recipe's own spacing, within a tenth.
[[nodiscard]] std::vector<FaultSeen> faults_of(const SeenOnFly& seen,
                                               const std::vector<PartTarget>& targets,
                                               const Pattern& pattern, const Tied& tied);

/// The recipe's own spacing of its first open rib, and the step that winds it.
[[nodiscard]] std::optional<OwnMeasure> own_rib(const Pattern& pattern, const Tied& tied);

/// "step 4; mend it before step 7 is begun": how late it is.
[[nodiscard]] std::string mend_words(int step, int until);

} // namespace wrapwright
