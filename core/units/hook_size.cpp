#include "core/units/hook_size.h"

#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright {

namespace {

using detail::is_digit;
using detail::is_letter;
using detail::quoted;
using detail::take_word;

constexpr std::string_view remedy =
    "write one size (14, 2/0), a list (10, 12, 14) or a range (12-18); the text itself is kept";

Error not_understood(std::string_view text, std::string_view at) {
    return {ErrorCode::malformed,
            at.empty() ? quoted(text) + " is no hook size"
                       : quoted(text) + " is no hook size: not understood at " + quoted(at),
            std::string(remedy)};
}

std::string_view take_digits(std::string_view& text) {
    std::size_t n = 0;
    while (n < text.size() && is_digit(text[n])) ++n;
    const std::string_view digits = text.substr(0, n);
    text.remove_prefix(n);
    return digits;
}

void skip_blanks(std::string_view& text) { text.remove_prefix(detail::blanks_at(text, 0)); }

void skip_prefix(std::string_view& text) {
    skip_blanks(text);
    for (const std::string_view word : {"hooks", "hook", "sizes", "size", "sz.", "sz", "no."}) {
        take_word(text, word);
    }
    take_word(text, "#");
}

/// Takes one size off the front of the rest of `whole`.
Result<HookSize> take_size(std::string_view whole, std::string_view& rest) {
    skip_prefix(rest);
    const std::string_view at = rest;
    const std::string_view digits = take_digits(rest);
    if (digits.empty()) return not_understood(whole, at);
    const bool aught = rest.starts_with("/0") && !(rest.size() > 2 && is_digit(rest[2]));
    if (digits.find_first_not_of('0') == std::string_view::npos && !rest.starts_with('/')) {
        return Error{ErrorCode::ambiguous,
                     quoted(digits) + " is an old small hook, or a thread, but not " +
                         std::to_string(digits.size()) + "/0: only the person can tell",
                     "for a hook write its era in words and its measures in mm; for a thread write "
                     "it as the thread's size; for the large hook write " +
                         std::to_string(digits.size()) + "/0"};
    }
    if (digits.front() == '0' || (rest.starts_with('/') && !aught)) {
        return not_understood(whole, at);
    }
    const int number = digits.size() > 2 ? 1000 : std::stoi(std::string(digits));
    const HookSize size{aught ? 1 - number : number};
    if (size > smallest_hook || size < largest_hook) {
        return Error{ErrorCode::out_of_range,
                     quoted(at.substr(0, digits.size() + (aught ? 2 : 0))) +
                         " is outside the hook sizes 32 (smallest) to 20/0 (largest)",
                     "check the number; what is measured goes in mm"};
    }
    if (aught) rest.remove_prefix(2);
    return size;
}

/// Takes words of the X convention off the front, such as "2XL 1X heavy"; empty when there is none.
std::string_view take_extra(std::string_view& rest) {
    constexpr std::string_view words[] = {"long", "short", "heavy", "strong", "stout",
                                          "fine", "light", "wide",  "l",      "s",
                                          "h",    "f",     "w"};
    const std::string_view start = rest;
    std::size_t taken = 0;
    for (;;) {
        std::string_view next = start.substr(taken);
        skip_blanks(next);
        const std::string_view digits = take_digits(next);
        if (digits.empty() || digits.size() > 2) break;
        if (next.empty() || detail::lower(next.front()) != 'x') break;
        next.remove_prefix(1);
        std::string_view after = next;
        if (after.starts_with('-')) after.remove_prefix(1);
        skip_blanks(after);
        bool word = false;
        for (const std::string_view w : words) {
            if (!word) word = take_word(after, w);
        }
        if (!word && !next.empty() && is_letter(next.front())) break;
        if (word) next = after;
        taken = start.size() - next.size();
    }
    rest = start.substr(taken);
    return detail::trimmed(start.substr(0, taken));
}

bool take_range_mark(std::string_view& rest) {
    for (const std::string_view mark : {"through", "to", "-", "\u2013", "\u2014"}) {
        if (take_word(rest, mark)) return true;
    }
    return false;
}

bool take_separator(std::string_view& rest) {
    bool any = false;
    for (const std::string_view mark : {",", ";", "and", "or", "&"}) any |= take_word(rest, mark);
    return any;
}

void add(std::vector<HookSize>& sizes, HookSize size) {
    if (std::find(sizes.begin(), sizes.end(), size) == sizes.end()) sizes.push_back(size);
}

void add_range(WrittenHookSizes& out, HookSize a, HookSize b) {
    const bool even = on_even_ladder(a) && on_even_ladder(b);
    out.step = std::max(out.step, even ? RangeStep::even : RangeStep::every);
    const HookSize end = std::max(a, b);
    for (HookSize size = std::min(a, b); size <= end; ++size.number) {
        if (!even || on_even_ladder(size)) add(out.sizes, size);
    }
}

} // namespace

std::optional<HookSize> next_smaller(HookSize size) {
    HookSize next{size.number + 1};
    while (!on_even_ladder(next)) ++next.number;
    if (next > smallest_hook) return std::nullopt;
    return next;
}

std::optional<HookSize> next_larger(HookSize size) {
    HookSize next{size.number - 1};
    while (!on_even_ladder(next)) --next.number;
    if (next < largest_hook) return std::nullopt;
    return next;
}

Result<WrittenHookSize> parse_hook_size(std::string_view text) {
    std::string_view rest = text;
    const Result<HookSize> size = take_size(text, rest);
    if (!size.ok()) return size.error();
    const std::string_view extra = take_extra(rest);
    rest = detail::trimmed(rest);
    if (!rest.empty()) return not_understood(text, rest);
    return WrittenHookSize{std::string(text), size.value(), std::string(extra)};
}

Result<WrittenHookSizes> parse_hook_sizes(std::string_view text) {
    WrittenHookSizes out{std::string(text)};
    std::string_view rest = text;
    do {
        const Result<HookSize> first = take_size(text, rest);
        if (!first.ok()) return first.error();
        std::string_view extra = take_extra(rest);
        skip_blanks(rest);
        if (take_range_mark(rest)) {
            const Result<HookSize> last = take_size(text, rest);
            if (!last.ok()) return last.error();
            add_range(out, first.value(), last.value());
            const std::string_view more = take_extra(rest);
            if (!more.empty()) extra = more;
            skip_blanks(rest);
        } else {
            add(out.sizes, first.value());
        }
        if (!extra.empty()) {
            if (!out.extra.empty()) out.extra += ", ";
            out.extra += extra;
        }
    } while (take_separator(rest));
    if (!rest.empty()) return not_understood(text, rest);
    return out;
}

std::string write_hook_size(HookSize size) {
    if (size.number > 0) return std::to_string(size.number);
    return std::to_string(1 - size.number) + "/0";
}

} // namespace wrapwright
