// What keeping one event costs, against the floor of this disk; and the library against bare SQL.
//
// In alternating blocks of one run, because a disk's speed changes by the minute. An argument names
// the folder to write in.

#include "platform/store/store.h"
#include "core/recipe/text.h"
#include "tests/bench/disk.h"
#include "tests/bench/measure.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include <fcntl.h>
#include <unistd.h>

using namespace wrapwright;
using bench::clock_seconds;
using bench::must;

namespace {

constexpr int block = 40;
constexpr int blocks = 14;
constexpr int warm_up = 5; ///< of each block, left out
constexpr int recipes = 10'000;

/// The least that a durable write can be: 4 KiB over what is there, and a sync.
class Floor {
  public:
    explicit Floor(const std::filesystem::path& file)
        : file_(::open(file.c_str(), O_CREAT | O_RDWR, 0644)), bytes_(4120, 'x') {
        for (int i = 0; i < 1000; ++i) write_at(i);
        ::fsync(file_);
    }
    ~Floor() { ::close(file_); }
    void write() {
        write_at(next_++ % 1000);
        ::fdatasync(file_);
    }

  private:
    void write_at(int i) {
        const auto size = static_cast<off_t>(bytes_.size());
        if (::pwrite(file_, bytes_.data(), bytes_.size(), size * i) != size) std::abort();
    }
    int file_;
    std::string bytes_;
    int next_ = 0;
};

void fill(Store& store) {
    Recipe recipe;
    recipe.fly_class = "wet";
    recipe.sizes = "12-16";
    for (int i = 0; i < recipes; ++i) {
        recipe.id = "fly-" + std::to_string(i);
        recipe.name = "Fly number " + std::to_string(i * 7919 % recipes);
        recipe.verbatim = "silk, hare's ear and two turns of hackle number " + std::to_string(i);
        (void)must(store.add_recipe(recipe, write_recipe(recipe), 0));
    }
}

} // namespace

int main(int argc, char** argv) {
    const std::filesystem::path folder =
        std::filesystem::path(argc > 1 ? argv[1] : ".") / "bench-store";
    std::filesystem::remove_all(folder);
    {
        Store store = must(Store::open(folder, 0));
        Recipe recipe;
        recipe.id = "fly";
        (void)must(store.add_recipe(recipe, write_recipe(recipe), 0));
        const std::int64_t sitting =
            must(store.begin_sitting("fly", "14", {EventKind::begin, {}, 1, {}}, 0));
        Floor floor(folder / "floor");
        const Event event{EventKind::next, seconds(5.0), 0, {}};
        std::vector<double> floors;
        std::vector<double> events;
        for (int b = 0; b < blocks; ++b) {
            for (int i = 0; i < block; ++i) {
                const double t = clock_seconds([&] { floor.write(); });
                if (i >= warm_up) floors.push_back(t);
            }
            for (int i = 0; i < block; ++i) {
                const double t = clock_seconds([&] { (void)must(store.append(sitting, event)); });
                if (i >= warm_up) events.push_back(t);
            }
        }
        std::printf(
            "one event kept: %.0f us; overwrite + fdatasync: %.0f us; ratio %.2f (goal 1.3)\n",
            1e6 * bench::median(events), 1e6 * bench::median(floors),
            bench::median(events) / bench::median(floors));
        fill(store);
        Database bare = must(Database::open(store.file(), true));
        std::vector<double> lists, bare_lists, searches, scans;
        for (int i = 0; i < 15; ++i) {
            bare_lists.push_back(clock_seconds([&] {
                Query q = must(bare.query("SELECT id, name, class, sizes, tags, favourite FROM "
                                          "recipe ORDER BY favourite DESC, name COLLATE NOCASE"));
                while (must(q.step())) {
                }
            }));
            lists.push_back(clock_seconds([&] { (void)must(store.library("")); }));
            scans.push_back(clock_seconds([&] {
                Query q = must(bare.query("SELECT recipe, text FROM revision WHERE text LIKE ?"));
                q.bind("%number 4321%");
                while (must(q.step())) {
                }
            }));
            searches.push_back(clock_seconds([&] { (void)must(store.library("number 4321")); }));
        }
        std::printf("list of %d recipes: %.1f ms; bare SELECT: %.1f ms; ratio %.2f\n", recipes,
                    1e3 * bench::median(lists), 1e3 * bench::median(bare_lists),
                    bench::median(lists) / bench::median(bare_lists));
        std::printf("search: %.2f ms; LIKE scan: %.2f ms; ratio %.2f\n",
                    1e3 * bench::median(searches), 1e3 * bench::median(scans),
                    bench::median(searches) / bench::median(scans));
    }
    std::filesystem::remove_all(folder);
    return 0;
}
