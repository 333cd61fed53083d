// The fly box is kept as it was said, follows the flies that are finished, and forgets nothing.

#include "core/stock/settle.h"
#include "tests/platform/store/scratch.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

void finish(Store& store, std::int64_t sitting, std::int64_t line = 0) {
    BookChange change;
    Entry done;
    done.kind = EntryKind::finished;
    done.amount = 1.0;
    done.sitting = sitting;
    done.line = line;
    change.entries.push_back(done);
    REQUIRE(got(store.keep(change, some_day)));
}

const std::pair<std::string, std::string> sill_14{"sill", "14"};

} // namespace

TEST_CASE("a library of the fifth version opens, keeps its sitting, and has an empty box") {
    const Folder folder;
    std::filesystem::copy_file(WW_SOURCE_DIR "/tests/golden/old/version-5.db",
                               folder.path() / "wrapwright.db");
    Store store = opened(folder.path());
    CHECK(store.note().empty());
    const auto sitting = got(store.last_sitting());
    REQUIRE(sitting);
    CHECK(sitting->events.size() == 5);
    CHECK(got(store.box()).empty());
    CHECK(got(store.keep_box(sitting->recipe, "14", {3, 12}, some_day)));
    CHECK(got(store.box()).at({sitting->recipe, "14"}) == BoxCount{3, 12});
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("flies finished after the count lie in the box, those of an order do not") {
    const Folder folder;
    Store store = opened(folder.path());
    add(store, small_recipe("sill", "Sill"));
    const Event begin{EventKind::begin, {}, 4, {}};
    const std::int64_t own = got(store.begin_sitting("sill", "14", begin, some_day));
    finish(store, own);
    CHECK(got(store.box()).at(sill_14) == BoxCount{1, 0});
    CHECK(got(store.keep_box("sill", "14", {7, {}}, some_day)));
    CHECK(got(store.keep_box("sill", "14", {{}, 12}, some_day)));
    finish(store, own);
    const std::int64_t ordered = got(store.begin_sitting("sill", "14", begin, some_day, {}, 5));
    finish(store, ordered, 5);
    CHECK(got(store.box()).at(sill_14) == BoxCount{8, 12});
    // The last one turned out not to be finished.
    BookChange back;
    Entry undo;
    undo.undoes = got(store.entries_of_sitting(own)).back().id;
    undo.sitting = own;
    back.entries.push_back(undo);
    REQUIRE(got(store.keep(back, some_day)));
    CHECK(got(store.box()).at(sill_14) == BoxCount{7, 12});
}

TEST_CASE("a second window sees the box and cannot count it") {
    const Folder folder;
    Store first = opened(folder.path());
    add(first, small_recipe("sill", "Sill"));
    REQUIRE(got(first.keep_box("sill", "14", {2, 6}, some_day)));
    Store second = opened(folder.path());
    CHECK(got(second.box()).at(sill_14) == BoxCount{2, 6});
    CHECK_FALSE(second.keep_box("sill", "14", {9, {}}, some_day).ok());
    CHECK_FALSE(first.keep_box("nobody", "14", {1, {}}, some_day).ok());
    CHECK(got(first.box()).size() == 1);
}
