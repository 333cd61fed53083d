// What a new recipe starts from: one skeleton for each class of fly, tied at each of its sizes.
#include "core/recipe/text.h"
#include "core/tying/tie.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

using namespace wrapwright;

TEST_CASE("every skeleton is tied at all its sizes, and nothing stops it or is likely to fail") {
    int skeletons = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(WW_SOURCE_DIR "/assets/skeletons")) {
        CAPTURE(entry.path().string());
        ++skeletons;
        std::ifstream file(entry.path());
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        const Result<Recipe> recipe = read_recipe(text);
        REQUIRE(recipe.ok());
        CHECK(write_recipe(recipe.value()) == text);
        CHECK_FALSE(recipe.value().size_list.empty());
        Result<Pattern> pattern = link(recipe.value());
        REQUIRE(pattern.ok());
        for (const HookSize size : recipe.value().size_list) {
            CAPTURE(size.number);
            const Result<Tied> tied = tie_once(pattern.value(), size);
            REQUIRE(tied.ok());
            for (const Finding& f : tied.value().findings) {
                CAPTURE(static_cast<int>(f.rule));
                CHECK((f.level == Level::note));
            }
        }
    }
    // Source  the classes that a new recipe may start from: jig nymph, dry, wet, streamer, sedge,
    //         midge, scud, and one with nothing in it
    CHECK(skeletons == 8);
}
