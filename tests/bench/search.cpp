// Results as somebody types: each letter of a search in 10,000 recipes, against a LIKE scan of the same
// recipes that lists what it finds in the same order.
//
// An argument names the folder to write in. Interleaved in one run; medians of the clock.

#include "core/recipe/text.h"
#include "platform/store/store.h"
#include "tests/bench/disk.h"
#include "tests/bench/measure.h"

#include <array>
#include <cstdio>
#include <filesystem>

using namespace wrapwright;
using bench::clock_seconds;
using bench::must;

namespace {

constexpr int recipes = 10'000;
constexpr int rounds = 7;

constexpr std::array<const char*, 8> bodies{"hare",     "herl",  "floss",  "wool",
                                            "seal fur", "quill", "tinsel", "chenille"};
constexpr std::array<const char*, 7> hackles{"partridge", "grouse", "hen",   "cock",
                                             "starling",  "snipe",  "plover"};
constexpr std::array<const char*, 5> waters{"weir", "sluice", "millpool", "lock", "tailrace"};

/// A recipe of some twenty words of its own and two hundred that all of them share.
Recipe some_recipe(int i) {
    const auto n = static_cast<std::size_t>(i);
    Recipe r;
    r.id = "fly-" + std::to_string(i);
    r.name = std::string(waters[n % waters.size()]) + " fly " + std::to_string(i * 7919 % recipes);
    r.fly_class = i % 3 == 0 ? "dry" : "wet";
    r.sizes = "12-16";
    r.verbatim = std::string("body of ") + bodies[n % bodies.size()] + ", hackle of " +
                 hackles[n % hackles.size()] + ", card number " + std::to_string(i) + ". ";
    for (int k = 0; k < 12; ++k) {
        r.verbatim +=
            "wound in touching turns and tied off before the eye with care, then trimmed; ";
    }
    return r;
}

} // namespace

int main(int argc, char** argv) {
    const std::filesystem::path folder =
        std::filesystem::path(argc > 1 ? argv[1] : ".") / "bench-search";
    std::filesystem::remove_all(folder);
    {
        Store store = must(Store::open(folder, 0));
        for (int i = 0; i < recipes; ++i) {
            const Recipe recipe = some_recipe(i);
            (void)must(store.add_recipe(recipe, write_recipe(recipe), 0));
        }
        Database bare = must(Database::open(store.file(), true));
        const std::string typed = "partridge 4321";
        double worst = 0.0;
        std::printf("%-16s %8s %10s %10s %7s\n", "typed", "found", "search ms", "LIKE ms", "ratio");
        for (std::size_t letters = 1; letters <= typed.size(); ++letters) {
            const std::string words = typed.substr(0, letters);
            std::vector<double> searches, scans;
            std::size_t found = 0;
            for (int i = 0; i < rounds; ++i) {
                scans.push_back(clock_seconds([&] {
                    Query q = must(bare.query(
                        "SELECT id, recipe.name, class, sizes, tags, favourite FROM recipe JOIN "
                        "revision ON revision.recipe = recipe.id AND number = recipe.revision "
                        "WHERE text LIKE ? ORDER BY favourite DESC, recipe.name COLLATE NOCASE, "
                        "id"));
                    q.bind(std::string(words).insert(0, 1, '%').append("%"));
                    std::vector<StoredRow> rows;
                    while (must(q.step())) {
                        rows.push_back({q.text(0), q.text(1), q.text(2), q.text(3), q.text(4),
                                        q.whole(5) != 0});
                    }
                }));
                searches.push_back(
                    clock_seconds([&] { found = must(store.library(words)).size(); }));
            }
            const double ratio = bench::median(searches) / bench::median(scans);
            worst = std::max(worst, ratio);
            std::printf("%-16s %8zu %10.2f %10.2f %7.2f\n", words.c_str(), found,
                        1e3 * bench::median(searches), 1e3 * bench::median(scans), ratio);
        }
        bench::goal("a letter more, search to LIKE scan, the worst of them", worst, "at most", 1.0,
                    worst <= 1.0);
    }
    std::filesystem::remove_all(folder);
    return 0;
}
