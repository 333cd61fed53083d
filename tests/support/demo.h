#pragma once
// The demo recipes of assets/recipes, read and tied.

#include "core/recipe/text.h"
#include "core/tying/tie.h"

#include <doctest/doctest.h>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace wrapwright::test {

/// The recipe of that file, such as "sill-dun", linked.
inline Pattern demo(std::string_view name) {
    std::ifstream file(WW_SOURCE_DIR "/assets/recipes/" + std::string(name) + ".json");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    Result<Recipe> recipe = read_recipe(text);
    REQUIRE(recipe.ok());
    Result<Pattern> pattern = link(std::move(recipe).value());
    REQUIRE(pattern.ok());
    return std::move(pattern).value();
}

inline Tied tied(const Pattern& pattern, HookSize size) {
    Result<Tied> run = tie_once(pattern, size);
    REQUIRE(run.ok());
    return std::move(run).value();
}

} // namespace wrapwright::test
