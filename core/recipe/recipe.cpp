#include "core/recipe/recipe.h"

#include <algorithm>

namespace wrapwright {

const Reading& Amount::at(HookSize size) const {
    for (const SizedText& row : by_size) {
        if (std::find(row.list.begin(), row.list.end(), size) != row.list.end()) return row.reading;
    }
    return reading;
}

} // namespace wrapwright
