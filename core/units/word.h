#pragma once
// Words of a closed list, as files write them.

#include <cstddef>
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

} // namespace wrapwright
