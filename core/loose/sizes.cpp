#include "core/loose/reader.h"
#include "core/units/hook_size.h"
#include "core/units/scan.h"

#include <algorithm>
#include <initializer_list>

namespace wrapwright::detail {

namespace {

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> list) {
    return std::find(list.begin(), list.end(), key) != list.end();
}

bool is_size(std::string_view key) {
    if (key.ends_with("/0")) key.remove_suffix(2);
    return !key.empty() && key.size() <= 3 && std::all_of(key.begin(), key.end(), is_digit);
}

/// "2xl", "1x": what packets add to a size.
bool is_extra(std::string_view key) {
    std::size_t n = 0;
    while (n < key.size() && is_digit(key[n])) ++n;
    return n > 0 && n <= 2 && n < key.size() && key[n] == 'x' && key.size() <= n + 2;
}

/// Whether what lies between two sizes may lie there.
bool joins(std::string_view gap) {
    while (!gap.empty()) {
        if (const std::size_t blanks = blanks_at(gap, 0)) {
            gap.remove_prefix(blanks);
        } else if (gap.front() == ',' || gap.front() == '-' || gap.front() == '#' ||
                   gap.front() == '&') {
            gap.remove_prefix(1);
        } else if (gap.starts_with("\u2013") || gap.starts_with("\u2014")) {
            gap.remove_prefix(3);
        } else {
            return false;
        }
    }
    return true;
}

} // namespace

bool read_sizes(Reader& r, int of, Span within, bool bare) {
    const std::vector<Token> tokens = tokens_of(r.text, within);
    bool any = false, tried = false;
    for (std::size_t i = 0; i < tokens.size() && !r.full();) {
        const std::size_t before = i == 0 ? within.begin : tokens[i - 1].span.end;
        const std::string_view gap = r.text.substr(before, tokens[i].span.begin - before);
        const bool marked =
            gap.ends_with('#') ||
            (i > 0 && is_one_of(tokens[i - 1].key, {"size", "sizes", "sz", "no", "nos", "number"}));
        if (!is_size(tokens[i].key) || !(marked || (bare && !tried))) {
            ++i;
            continue;
        }
        tried = true;
        std::size_t end = i + 1;
        while (end < tokens.size() && joins(between(r.text, tokens[end - 1], tokens[end])) &&
               (is_size(tokens[end].key) || is_extra(tokens[end].key) ||
                is_one_of(tokens[end].key, {"to", "and", "or", "through", "long", "short", "heavy",
                                            "strong", "stout", "fine", "light", "wide"}))) {
            ++end;
        }
        const auto ends_well = [&](std::size_t e) {
            return is_size(tokens[e - 1].key) || is_extra(tokens[e - 1].key) ||
                   (e >= i + 3 && is_extra(tokens[e - 2].key));
        };
        while (end > i + 1 && !ends_well(end)) --end;
        const Span span{marked && gap.ends_with('#') ? tokens[i].span.begin - 1
                                                     : tokens[i].span.begin,
                        tokens[end - 1].span.end};
        const std::string_view after = r.text.substr(span.end, 2);
        const bool typo = after.size() == 2 && after[0] == '=' && is_digit(after[1]);
        const Result<WrittenHookSizes> sizes = parse_hook_sizes(span.of(r.text));
        if (typo || !sizes.ok()) {
            std::string note = typo ? "not clear: " : sizes.error().message + ": ";
            note.append(quoted(span.of(r.text).substr(0, 40)));
            r.out.notes.push_back(std::move(note));
        }
        Piece piece;
        piece.kind = PieceKind::sizes;
        piece.span = piece.value = span;
        piece.in = of;
        piece.sure = marked && sizes.ok() && !typo;
        if (!typo && sizes.ok()) {
            r.add(std::move(piece));
            any = true;
        }
        i = end;
    }
    return any;
}

} // namespace wrapwright::detail
