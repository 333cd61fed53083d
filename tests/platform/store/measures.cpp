// What was measured with a fly is kept, comes back in order, and a library of the version before loads.

#include "tests/platform/store/scratch.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Fall some_fall() {
    Fall fall;
    fall.height = metres(0.5);
    fall.time = seconds(1.25);
    fall.temperature = celsius(12.0);
    fall.kind = WaterKind::sea;
    fall.jar = millimetres(90.0);
    fall.from_rest = true;
    return fall;
}

} // namespace

TEST_CASE("falls and weighings come back as they were kept, for their own recipe and size alone") {
    const Folder folder;
    {
        Store store = opened(folder.path());
        add(store, demo("sill-dun").recipe);
        CHECK(got(store.add_fall("sill-dun", "14", some_fall(), some_day)));
        Fall second = some_fall();
        second.time = seconds(1.5);
        second.from_rest = false;
        CHECK(got(store.add_fall("sill-dun", "14", second, some_day)));
        const Estimate<Mass> mass{milligrams(32.0), milligrams(31.0), milligrams(33.0),
                                  Origin::measured};
        CHECK(got(store.add_weighing("sill-dun", "14", exactly(milligrams(9.0)), some_day)));
        CHECK(got(store.add_weighing("sill-dun", "14", mass, some_day)));
    }
    Store store = opened(folder.path());
    const StoredMeasures kept = got(store.measures("sill-dun", "14"));
    REQUIRE(kept.falls.size() == 2);
    CHECK(kept.falls[0] == some_fall());
    CHECK(kept.falls[1].time == seconds(1.5));
    CHECK(kept.weighed.value == milligrams(32.0)); // the newest
    CHECK(kept.weighed.origin == Origin::measured);
    CHECK(got(store.measures("sill-dun", "16")).falls.empty());
    CHECK(got(store.drop_fall(kept.fall_ids[0])));
    CHECK(got(store.drop_weighings("sill-dun", "14")));
    const StoredMeasures left = got(store.measures("sill-dun", "14"));
    CHECK(left.falls.size() == 1);
    CHECK(left.weighed.value.si == 0.0);
    CHECK_FALSE(store.add_fall("nobody", "14", some_fall(), some_day).ok());
}

TEST_CASE(
    "a library that the first version wrote opens with its sitting, and keeps falls from then on") {
    const Folder folder;
    std::filesystem::copy_file(WW_SOURCE_DIR "/tests/golden/old/version-1.db",
                               folder.path() / "wrapwright.db");
    Store store = opened(folder.path());
    CHECK(store.note().empty());
    CHECK(got(store.count()).recipes == 6);
    const auto sitting = got(store.last_sitting());
    REQUIRE(sitting.has_value());
    CHECK(sitting->recipe == "weirfoot-jig");
    CHECK_FALSE(sitting->events.empty());
    CHECK(got(store.add_fall("weirfoot-jig", "14", some_fall(), some_day)));
    CHECK(got(store.measures("weirfoot-jig", "14")).falls.size() == 1);
    CHECK(got(store.check()) == "ok");
}
