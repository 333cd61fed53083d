#include "core/units/thread_size.h"

#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright {

Result<ThreadSize> parse_thread_size(std::string_view text) {
    std::string_view rest = detail::trimmed(text);
    for (const std::string_view word : {"thread", "size", "no.", "#"}) {
        detail::take_word(rest, word);
    }
    ThreadSize out{std::string(text)};
    std::size_t aughts = 0;
    if (rest.size() == 1 && detail::lower(rest[0]) >= 'a' && detail::lower(rest[0]) <= 'g') {
        return out;
    }
    if (!rest.empty() && rest.find_first_not_of('0') == std::string_view::npos) {
        aughts = rest.size();
    } else if (rest.size() >= 3 && rest.size() <= 5 && rest.ends_with("/0") && rest[0] != '0' &&
               std::all_of(rest.begin(), rest.end() - 2, detail::is_digit)) {
        for (const char c : rest.substr(0, rest.size() - 2)) {
            aughts = aughts * 10 + static_cast<std::size_t>(c - '0');
        }
    } else {
        return Error{ErrorCode::malformed, detail::quoted(text) + " is no thread label",
                     "write it as on the spool: 8/0, 000, size A, or its weight: 70 den"};
    }
    if (aughts > 20) {
        return Error{ErrorCode::out_of_range, detail::quoted(text) + " is finer than any thread",
                     "check the label, or write the weight: 70 den"};
    }
    out.aughts = static_cast<int>(aughts);
    return out;
}

ThreadOrder compare(const ThreadSize& a, const ThreadSize& b) {
    if (!a.aughts || !b.aughts) return ThreadOrder::unknown;
    if (*a.aughts == *b.aughts) return ThreadOrder::same_label;
    return *a.aughts < *b.aughts ? ThreadOrder::thicker : ThreadOrder::finer;
}

} // namespace wrapwright
