#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

constexpr std::string_view no_break_space = "\u00a0";

constexpr bool is_blank(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

} // namespace

std::size_t blanks_at(std::string_view text, std::size_t at) {
    const std::size_t start = at;
    while (at < text.size()) {
        if (is_blank(text[at])) {
            ++at;
        } else if (text.substr(at).starts_with(no_break_space)) {
            at += no_break_space.size();
        } else {
            break;
        }
    }
    return at - start;
}

std::string_view trimmed(std::string_view text) {
    text.remove_prefix(blanks_at(text, 0));
    while (!text.empty()) {
        if (is_blank(text.back())) {
            text.remove_suffix(1);
        } else if (text.ends_with(no_break_space)) {
            text.remove_suffix(no_break_space.size());
        } else {
            break;
        }
    }
    return text;
}

std::string lowered(std::string_view text) {
    std::string low(text);
    std::transform(low.begin(), low.end(), low.begin(), lower);
    return low;
}

bool take_word(std::string_view& text, std::string_view word) {
    if (lowered(text.substr(0, word.size())) != word) return false;
    if (is_letter(word.back()) && text.size() > word.size() && is_letter(text[word.size()])) {
        return false;
    }
    text.remove_prefix(word.size());
    text.remove_prefix(blanks_at(text, 0));
    return true;
}

std::string quoted(std::string_view text) {
    constexpr std::size_t most = 40;
    std::string out = "\"";
    std::size_t end = std::min(text.size(), most);
    // Not in the middle of a character of UTF-8: bytes 10xxxxxx continue one.
    while (end < text.size() && end > most - 4 && (text[end] & 0xC0) == 0x80) --end;
    for (const char c : text.substr(0, end)) {
        const auto byte = static_cast<unsigned char>(c);
        out += byte < 32 || byte == 127 ? '?' : c;
    }
    if (end < text.size()) out += "...";
    return out + '"';
}

Error decimal_comma(std::string_view text) {
    return {ErrorCode::malformed, "a comma inside the number " + quoted(text),
            "write the decimals after a point, such as 2.8, and thousands without a mark"};
}

} // namespace wrapwright::detail
