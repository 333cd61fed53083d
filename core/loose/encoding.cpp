#include "core/loose/loose.h"

namespace wrapwright {

namespace {

/// How many bytes the code point at the front takes in UTF-8; 0 where it is none.
std::size_t code_point(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const unsigned first = byte(0);
    if (first < 0x80) return 1;
    const std::size_t n = first >= 0xc2 && first < 0xe0   ? 2
                          : first >= 0xe0 && first < 0xf0 ? 3
                          : first >= 0xf0 && first < 0xf5 ? 4
                                                          : 0;
    for (std::size_t i = 1; i < n; ++i) {
        if ((byte(i) & 0xc0U) != 0x80) return 0;
    }
    const bool overlong = (first == 0xe0 && byte(1) < 0xa0) || (first == 0xf0 && byte(1) < 0x90);
    const bool outside = (first == 0xed && byte(1) > 0x9f) || (first == 0xf4 && byte(1) > 0x8f);
    return overlong || outside ? 0 : n;
}

void append_utf8(std::string& out, unsigned code) {
    if (code < 0x80) {
        out += static_cast<char>(code);
    } else if (code < 0x800) {
        out += static_cast<char>(0xc0U | (code >> 6U));
        out += static_cast<char>(0x80U | (code & 0x3fU));
    } else {
        out += static_cast<char>(0xe0U | (code >> 12U));
        out += static_cast<char>(0x80U | ((code >> 6U) & 0x3fU));
        out += static_cast<char>(0x80U | (code & 0x3fU));
    }
}

} // namespace

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        const std::size_t n = code_point(text);
        if (n == 0) return false;
        text.remove_prefix(n);
    }
    return true;
}

std::string from_windows_1252(std::string_view text) {
    // Source  the Encoding Standard's index windows-1252, rows 0x80 to 0x9f, from memory
    constexpr unsigned upper[] = {0x20ac, 0x81,   0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021,
                                  0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0x8d,   0x017d, 0x8f,
                                  0x90,   0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014,
                                  0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0x9d,   0x017e, 0x0178};
    std::string out;
    out.reserve(text.size() + text.size() / 8);
    for (const char c : text) {
        const unsigned byte = static_cast<unsigned char>(c);
        append_utf8(out, byte >= 0x80 && byte < 0xa0 ? upper[byte - 0x80] : byte);
    }
    return out;
}

} // namespace wrapwright
