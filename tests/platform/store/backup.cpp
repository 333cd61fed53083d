// A backup holds everything, shows what it would bring, and comes back whole.

#include "tests/platform/store/scratch.h"

#include <fstream>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

void fill(Store& store) {
    add(store, demo("weirfoot-jig").recipe);
    add(store, demo("sill-dun").recipe);
    const auto sitting = got(store.begin_sitting("sill-dun", "14", {}, some_day));
    CHECK(store.append(sitting, {EventKind::next, seconds(5.0), 0, "word"}).ok());
    CHECK(store.set_setting("theme", "dark").ok());
}

} // namespace

TEST_CASE("a backup is one file that holds everything") {
    const Folder folder;
    const Folder other;
    Store store = opened(folder.path());
    fill(store);
    const auto file = other.path() / "kept.db";
    CHECK(got(store.back_up(file)));
    CHECK(std::distance(std::filesystem::directory_iterator(other.path()), {}) == 1);
    const RestorePreview same = got(store.look_into(file));
    CHECK(same.here == same.there);
    CHECK(same.only_here.empty());
    CHECK(same.only_there.empty());
}

TEST_CASE("a restore shows what it would bring, keeps what was here, and brings all of it") {
    const Folder folder;
    const Folder other;
    const auto file = other.path() / "kept.db";
    {
        Store store = opened(other.path() / "library");
        fill(store);
        CHECK(got(store.back_up(file)));
    }
    Store store = opened(folder.path());
    add(store, demo("lockgate-sedge").recipe);
    const RestorePreview preview = got(store.look_into(file));
    CHECK(preview.here.recipes == 1);
    CHECK(preview.there.recipes == 2);
    CHECK(preview.only_here.size() == 1);
    CHECK(preview.only_there.size() == 2);
    CHECK(got(store.count()).recipes == 1); // looking changes nothing
    const auto before = got(store.restore(file, some_day));
    CHECK(got(store.count()) == preview.there);
    CHECK(got(store.last_sitting())->events.back().text == "word");
    CHECK(got(store.library("")).size() == 2);
    CHECK(got(store.look_into(before)).there == preview.here);
    // And back again.
    CHECK(store.restore(before, some_day + 1).ok());
    CHECK(got(store.library(""))[0].id == "lockgate-sedge");
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("what is no backup is refused, and the library stays as it is") {
    const Folder folder;
    Store store = opened(folder.path());
    fill(store);
    const auto before = got(store.count());
    const auto junk = folder.path() / "junk.db";
    {
        std::ofstream(junk) << "this is no database at all, not even nearly so, whatever it says";
    }
    const auto empty = folder.path() / "empty.db";
    {
        std::ofstream touch(empty);
    }
    for (const auto& file : {junk, empty, folder.path() / "none.db", folder.path()}) {
        CAPTURE(file.string());
        CHECK_FALSE(store.look_into(file).ok());
        const auto refused = store.restore(file, some_day);
        REQUIRE_FALSE(refused.ok());
        CHECK_FALSE(refused.error().remedy.empty());
    }
    CHECK(got(store.count()) == before);
}

TEST_CASE("a backup that cannot be written says so and leaves nothing behind") {
    const Folder folder;
    Store store = opened(folder.path());
    fill(store);
    for (const std::filesystem::path& to :
         {std::filesystem::path("/proc/none/kept.db"), folder.path(), store.file()}) {
        CAPTURE(to.string());
        CHECK_FALSE(store.back_up(to).ok());
    }
    CHECK(got(store.count()).recipes == 2);
}
