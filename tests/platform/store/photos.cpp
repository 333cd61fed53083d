// Photos, their marks and what was measured are kept with the fly that they are of.

#include "platform/store/store.h"
#include "tests/platform/store/scratch.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("a library of the second version opens, keeps its fall, and takes photos and readings") {
    const Folder folder;
    std::filesystem::copy_file(WW_SOURCE_DIR "/tests/golden/old/version-2.db",
                               folder.path() / "wrapwright.db");
    const std::string bytes("\x89PNG\0\xFF\x01 not text", 17);
    std::int64_t photo = 0;
    {
        Store store = opened(folder.path());
        CHECK(store.note().empty());
        CHECK(got(store.measures("weirfoot-jig", "14")).falls.size() == 1);
        const FlyPlace place{"weirfoot-jig", "14", 1, 4};
        photo = got(store.add_photo(place, "bench.png", bytes, some_day));
        CHECK(got(store.set_marks(photo, "eye=1,2")));
        CHECK(got(store.add_reading(place, {0, 1, 4, "tail", 0.0046, 0.0045, 0.0047, true},
                                    some_day)) > 0);
        const FlyPlace next{"weirfoot-jig", "14", 1, 5};
        CHECK(got(store.add_reading(next, {0, 1, 5, "mass", 2.15e-4, 2.1e-4, 2.2e-4, false},
                                    some_day)) > 0);
    }
    Store store = opened(folder.path()); // as after a restart
    const auto photos = got(store.photos("weirfoot-jig", "14"));
    REQUIRE(photos.size() == 1);
    CHECK(photos[0].id == photo);
    CHECK(photos[0].fly == 4);
    CHECK(photos[0].sitting == 1);
    CHECK(photos[0].name == "bench.png");
    CHECK(photos[0].marks == "eye=1,2");
    CHECK(got(store.photo_bytes(photo)) == bytes);
    CHECK_FALSE(store.photo_bytes(photo + 1).ok());
    const auto readings = got(store.readings("weirfoot-jig", "14"));
    REQUIRE(readings.size() == 2);
    CHECK(readings[0].part == "tail");
    CHECK(readings[0].value == 0.0046);
    CHECK(readings[0].by_photo);
    CHECK(readings[1].fly == 5);
    CHECK(got(store.drop_reading(readings[0].id)));
    CHECK(got(store.readings("weirfoot-jig", "14")).size() == 1);
    CHECK(got(store.readings("weirfoot-jig", "16")).empty());
    CHECK_FALSE(store.add_reading({"nobody", "14", 0, 1}, {}, some_day).ok());
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("all photos of a recipe go into a bundle and come out of it elsewhere, each once") {
    const Folder folder, other;
    Store store = opened(folder.path());
    add(store, small_recipe("sill", "Sill"));
    (void)got(store.add_photo({"sill", "14"}, "side view.jpg", "one", some_day));
    (void)got(store.add_photo({"sill", "14"}, "side view.jpg", "two", some_day));
    (void)got(
        store.add_photo({"sill", "2/0"}, "../../climbs.jpg", std::string("a\0b", 3), some_day));
    Bundle bundle;
    bundle.files = got(store.photo_files("sill"));
    REQUIRE(bundle.files.size() == 3);
    for (const BundleFile& file : bundle.files) {
        CAPTURE(file.path);
        CHECK(path_fault(file.path).empty());
    }
    const Bundle back = got(read_bundle(got(write_bundle(bundle))));
    Store there = opened(other.path());
    CHECK(got(there.take_photos(back.files, some_day)) == 0); // its recipe is not here
    add(there, small_recipe("sill", "Sill"));
    CHECK(got(there.take_photos(back.files, some_day)) == 3);
    CHECK(got(there.take_photos(back.files, some_day)) == 0);
    CHECK(got(there.photos("sill", "14")).size() == 2);
    const auto large = got(there.photos("sill", "2/0"));
    REQUIRE(large.size() == 1);
    CHECK(got(there.photo_bytes(large[0].id)) == std::string("a\0b", 3));
}
