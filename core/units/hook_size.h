#pragma once
// Hook sizes as numbers on packets: labels that order hooks of one family, never millimetres.

#include "core/result.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// A hook size: 14 is #14, 1 is #1, and above it 0 is 1/0, -1 is 2/0, -2 is 3/0.
///
/// A larger number is a smaller hook all the way, so plain integers order the whole ladder.
struct HookSize {
    int number = 14;
    friend constexpr auto operator<=>(HookSize, HookSize) = default;
};

inline constexpr HookSize smallest_hook{32};
inline constexpr HookSize largest_hook{-19}; ///< 20/0

/// Whether hook a is larger than hook b, as their labels say.
constexpr bool larger(HookSize a, HookSize b) { return a.number < b.number; }

/// Whether the size is on the ladder that hooks are mostly sold in: 2, 4, 6 ... and 1/0, 2/0 ...
constexpr bool on_even_ladder(HookSize s) { return s.number <= 0 || s.number % 2 == 0; }

/// The next size of the even ladder towards the small hooks: 14 and 15 give 16, 1/0 gives 2.
[[nodiscard]] std::optional<HookSize> next_smaller(HookSize size);

/// The next size of the even ladder towards the large hooks: 16 and 15 give 14, 2 gives 1/0.
[[nodiscard]] std::optional<HookSize> next_larger(HookSize size);

/// One hook size as written: "#14", "14", "size 14 1XL", "2/0".
struct WrittenHookSize {
    std::string text; ///< verbatim
    HookSize size;
    std::string extra; ///< "1XL", "2X heavy": kept as text, never computed from
};

/// What a range was filled in by.
enum class RangeStep : unsigned char {
    no_range,
    even,  ///< both ends on the even ladder
    every, ///< an end is odd
};

/// Several hook sizes as written: "10, 12, 14", "12-18", "16 to 12", "8 and 10-14 2XL".
struct WrittenHookSizes {
    std::string text;              ///< verbatim
    std::vector<HookSize> sizes{}; ///< a list in its own order, a range from large to small hook
    std::string extra{};           ///< the X words among them, such as "2XL"
    RangeStep step = RangeStep::no_range;
};

/// What a hook size's text says.
///
/// Fails   ambiguous for the old 0, 00, 000, which are small hooks of another era or thread and
///         never 1/0, 2/0, 3/0; out_of_range outside 32 to 20/0; malformed for anything else
[[nodiscard]] Result<WrittenHookSize> parse_hook_size(std::string_view text);

/// What a list or range of hook sizes says, each size once.
///
/// A range steps along the even ladder when both its ends are on it, else through every number.
/// Fails   as parse_hook_size does, naming the text, which the caller keeps
[[nodiscard]] Result<WrittenHookSizes> parse_hook_sizes(std::string_view text);

/// "14" or "2/0".
[[nodiscard]] std::string write_hook_size(HookSize size);

} // namespace wrapwright
