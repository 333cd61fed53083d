#pragma once
// Aught numbers of thread: labels without a common base, so nothing is ever converted from them.

#include "core/result.h"

#include <optional>
#include <string>
#include <string_view>

namespace wrapwright {

/// A thread's size as its label says it.
struct ThreadSize {
    std::string text;            ///< verbatim
    std::optional<int> aughts{}; ///< how many zeros: 8 for "8/0", 2 for "00"; none for "A"
};

/// What two labels say of two threads, if both are of one maker's line.
enum class ThreadOrder : unsigned char {
    thicker, ///< the first is the thicker one
    finer,
    same_label, ///< which still is not the same thickness between makers
    unknown,    ///< a letter among them
};

/// What a thread label says: "8/0", "3/0", "00", "000", "size A".
///
/// Fails   malformed for what is no thread label; out_of_range over 20 aughts
[[nodiscard]] Result<ThreadSize> parse_thread_size(std::string_view text);

/// How thread a compares with thread b by their labels alone.
///
/// Holds within one maker's line only: the count of zeros has no common base.
[[nodiscard]] ThreadOrder compare(const ThreadSize& a, const ThreadSize& b);

} // namespace wrapwright
