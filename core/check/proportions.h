#pragma once
// How long each part should be on this very hook, by named standards that do not agree, and how a fly
// stands to them.

#include "core/tying/record.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

enum class FlyKind : unsigned char {
    dry,
    parachute,
    wet,
    soft_hackle,
    nymph,
    jig_nymph,
    streamer,
    woolly,
    sedge,
    midge,
    scud,
    emerger,
};
[[nodiscard]] std::string_view name(FlyKind kind);

/// The kind that the words of a recipe's class mean; nothing where none does.
[[nodiscard]] std::optional<FlyKind> fly_kind(std::string_view words);

enum class Measured : unsigned char { tail, body, thorax, wing, hackle };
[[nodiscard]] std::string_view name(Measured part);
[[nodiscard]] std::optional<Measured> measured_part(std::string_view word);

/// One row of a standard: so many shanks, gapes, body lengths and eye lengths, summed.
struct ProportionRow {
    std::string_view standard; ///< "club course", "chart", "classical", "manual 1940" ...
    FlyKind kind{};
    Measured part{};
    double shanks = 0.0, gapes = 0.0, bodies = 0.0, eyes = 0.0;
    double less = 0.10, more = 0.10; ///< tolerance, as shares of the target
    std::string_view source{};
};

/// Every row of every standard.
/// Source  beside each row; published charts contradict each other, and each keeps its own words
[[nodiscard]] std::span<const ProportionRow> proportion_rows();

/// The names of the standards that say anything of that kind, each once.
[[nodiscard]] std::vector<std::string_view> standards_for(FlyKind kind);

/// What the fly of a record measures of a part; nothing where it has none.
struct OwnMeasure {
    Length length{};
    int step = none; ///< that makes it
};
[[nodiscard]] std::optional<OwnMeasure> own_measure(const Pattern& pattern, const Tied& tied,
                                                    Measured part);

/// The name of the standard that a recipe's own targets make.
inline constexpr std::string_view own_standard = "this recipe";

/// How long a part should be on the first hook of a record, by one standard.
struct PartTarget {
    Measured part{};
    std::string standard, words; ///< "1.5 gape": what it is a share of
    std::string source;
    Estimate<Length> length{}; ///< low and high are the tolerance
};

/// A target in mm on the first hook of the record.
///
/// A share of the body goes by the record's own body, else by two thirds of the shank.
[[nodiscard]] Estimate<Length> target_of(const ProportionRow& row, const Pattern& pattern,
                                         const Tied& tied);

/// Every target of every standard that says anything of such a fly, the recipe's own ones first.
/// Empty for a class that no standard knows and a recipe without targets.
[[nodiscard]] std::vector<PartTarget> targets_of(const Pattern& pattern, const Tied& tied);

/// The names of the standards among targets, each once, in order.
[[nodiscard]] std::vector<std::string> standards_of(const std::vector<PartTarget>& targets);

/// The last step in which a part can still be mended: afterwards something is wound over where it is
/// held, or it is finished. none where it is not on the fly.
[[nodiscard]] int mend_until(const Pattern& pattern, const Tied& tied, Measured part);

enum class Fit : unsigned char { right, a_little, too };

/// How a length stands to a target: within its tolerance, within twice it, or beyond.
struct FitCheck {
    Fit fit = Fit::right;
    Length off{}; ///< over the target; below 0: short of it
};
[[nodiscard]] FitCheck fit_of(const Estimate<Length>& target, Length length);
/// "right", "a little long by 0.6 mm", "too short by 2.1 mm".
[[nodiscard]] std::string fit_words(const FitCheck& check);

/// A batch of one measure.
struct BatchSpread {
    double mean = 0.0, sd = 0.0, low = 0.0, high = 0.0;
    int worst = none;       ///< index of the one farthest from the mean
    double worst_off = 0.0; ///< its distance, as a share of the mean
    bool twins = false;     ///< all within the limit of the mean
};

/// The spread of a batch, twins where every one is within `limit` (a share) of the mean.
///
/// Valid   values > 0, limit > 0; an empty batch gives zeros
/// Source  sample standard deviation, n - 1
[[nodiscard]] BatchSpread batch_spread(const std::vector<double>& values, double limit);

} // namespace wrapwright
