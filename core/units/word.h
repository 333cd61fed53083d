#pragma once
// Words of a closed list, as files write them.

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace wrapwright {

/// Whether two words are the same; an underscore reads as a space.
constexpr bool same_word(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const char x = a[i] == '_' ? ' ' : a[i], y = b[i] == '_' ? ' ' : b[i];
        if (x != y) return false;
    }
    return true;
}

/// Which of the words it is.
constexpr std::optional<std::size_t> find_word(std::span<const std::string_view> words,
                                               std::string_view word) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!word.empty() && same_word(words[i], word)) return i;
    }
    return std::nullopt;
}

} // namespace wrapwright
