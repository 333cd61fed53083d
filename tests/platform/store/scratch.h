#pragma once
// A folder for one test's store, and recipes to put into it.

#include "core/recipe/text.h"
#include "platform/store/store.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <string>

#include <stdlib.h>

namespace wrapwright::test {

class Folder {
  public:
    Folder() {
        std::string pattern = std::filesystem::temp_directory_path() / "wrapwright-test-";
        pattern.append(6, 'X'); // as mkdtemp wants it
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        path_ = pattern;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

inline constexpr std::int64_t some_day = 1'777'593'600; // 2026-05-01 UTC

inline Store opened(const std::filesystem::path& folder) {
    Result<Store> store = Store::open(folder, some_day);
    REQUIRE(store.ok());
    return std::move(store).value();
}

template <class T>
T got(Result<T> result) {
    if (!result.ok()) FAIL(result.error().message);
    return std::move(result).value();
}

inline Recipe small_recipe(const std::string& id, const std::string& name) {
    Recipe recipe;
    recipe.id = id;
    recipe.name = name;
    recipe.fly_class = "wet";
    recipe.sizes = "12-16";
    return recipe;
}

inline void add(Store& store, const Recipe& recipe) {
    CHECK(got(store.add_recipe(recipe, write_recipe(recipe), some_day)));
}

} // namespace wrapwright::test
