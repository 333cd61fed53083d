#pragma once
// What somebody looks for in the library.

#include "core/units/hook_size.h"
#include "core/units/quantity.h"

#include <cstdint>
#include <optional>
#include <string>

namespace wrapwright {

enum class LibrarySort : unsigned char { name, fly_class, newest };

/// A search: everything that is said has to hold.
struct LibrarySearch {
    std::string words{};    ///< each in the recipe's texts, or the beginning of a word there
    std::string material{}; ///< words of one of its materials, or of what may replace it
    std::string tag{}, fly_class{};            ///< exactly, in any case
    std::optional<HookSize> size{};            ///< among the recipe's sizes
    std::optional<Mass> at_least{}, at_most{}; ///< of the whole fly, at `size` or at any
    bool favourites = false;                   ///< nothing else
    LibrarySort sort = LibrarySort::name;
    int most = 20'000;
};

/// One revision of a recipe.
struct StoredRevision {
    std::int64_t number = 0, made = 0; ///< seconds since 1970
    std::string name{}, note{};        ///< given by the person; how it came about
};

} // namespace wrapwright
