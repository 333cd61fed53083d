// What is kept comes back as it was.

#include "platform/store/migrations.h"
#include "tests/platform/store/scratch.h"
#include "tests/support/dice.h"

#include <fstream>
#include <sqlite3.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("a recipe comes back byte for byte, in every revision") {
    const Folder folder;
    Store store = opened(folder.path());
    Recipe recipe = demo("weirfoot-jig").recipe;
    const std::string first = write_recipe(recipe);
    CHECK(got(store.add_recipe(recipe, first, some_day)));
    CHECK_FALSE(got(store.add_recipe(recipe, "another text", some_day)));
    recipe.name = "Weirfoot Jig, heavier";
    const std::string second = write_recipe(recipe);
    CHECK(got(store.save_revision(recipe, second, "two turns more", some_day + 5)) == 2);
    CHECK(got(store.recipe_text(recipe.id)) == second);
    CHECK(got(store.recipe_text(recipe.id, 1)) == first);
    CHECK_FALSE(store.recipe_text(recipe.id, 3).ok());
    CHECK_FALSE(store.recipe_text("no such").ok());
    CHECK(got(store.library(""))[0].name == "Weirfoot Jig, heavier");
}

TEST_CASE("recipes are found by the beginnings of all their words, whatever is typed") {
    const Folder folder;
    Store store = opened(folder.path());
    for (const char* name : {"weirfoot-jig", "sill-dun", "tailrace-spider", "keepers-note"}) {
        add(store, demo(name).recipe);
    }
    const auto ids = [&](const char* words) {
        std::vector<std::string> list;
        for (const StoredRow& row : got(store.library(words))) list.push_back(row.id);
        return list;
    };
    CHECK(ids("").size() == 4);
    CHECK(ids("weirf") == std::vector<std::string>{"weirfoot-jig"});
    CHECK(ids("WEIRFOOT jig") == std::vector<std::string>{"weirfoot-jig"});
    CHECK(ids("purple silk waxed") == std::vector<std::string>{"keepers-note"});
    CHECK(ids("zzz").empty());
    for (const char* odd :
         {"\"", "*", "a OR", "NEAR(", "weir\" OR 1 --", "'; DROP TABLE recipe;"}) {
        CAPTURE(odd);
        CHECK(store.library(odd).ok());
    }
    CHECK(got(store.set_favourite("tailrace-spider", true)));
    CHECK(ids("").front() == "tailrace-spider");
}

TEST_CASE("hooks and settings come back") {
    const Folder folder;
    {
        Store store = opened(folder.path());
        CHECK(got(store.save_hook("{\"one\": 1}", some_day)) == 1);
        CHECK(got(store.save_hook("{\"two\": 2}", some_day)) == 2);
        CHECK(got(store.set_setting("theme", "dark")));
        CHECK(got(store.set_setting("theme", "paper")));
        CHECK(got(store.set_setting("pace", "0.5")));
    }
    Store store = opened(folder.path());
    CHECK(got(store.hooks()) == std::vector<std::string>{"{\"one\": 1}", "{\"two\": 2}"});
    const auto settings = got(store.settings());
    REQUIRE(settings.size() == 2);
    CHECK(settings[0] == std::pair<std::string, std::string>{"pace", "0.5"});
    CHECK(settings[1] == std::pair<std::string, std::string>{"theme", "paper"});
}

TEST_CASE("any events come back as they were and fold to the same state") {
    const Pattern pattern = demo("weirfoot-jig");
    const Tied run = tied(pattern, HookSize{14});
    Dice dice{77};
    for (int round = 0; round < 6; ++round) {
        const Folder folder;
        std::vector<Event> events{{EventKind::begin, seconds(1.5), 1 + dice.roll(4), {}}};
        std::int64_t sitting = 0;
        {
            Store store = opened(folder.path());
            add(store, pattern.recipe);
            sitting = got(store.begin_sitting("weirfoot-jig", "14", events[0], some_day));
            for (int i = 0; i < 60; ++i) {
                Event event;
                event.kind =
                    static_cast<EventKind>(1 + dice.roll(static_cast<int>(EventKind::undo)));
                event.at = seconds(events.back().at.si + 0.1 * dice.roll(50));
                event.number = dice.roll(30);
                if (dice.roll(3) == 0) event.text = "six barbs, \"not\" eight; ø ☃\n";
                CHECK(got(store.append(sitting, event)));
                events.push_back(event);
            }
        }
        Store store = opened(folder.path());
        const auto last = got(store.last_sitting());
        REQUIRE(last.has_value());
        CHECK(last->id == sitting);
        CHECK(last->size == "14");
        CHECK(last->recipe_text == write_recipe(pattern.recipe));
        CHECK(last->events == events);
        const SittingState a = fold(pattern, run, events);
        const SittingState b = fold(pattern, run, last->events);
        CHECK(a.at == b.at);
        CHECK(a.step_seconds == b.step_seconds);
        // A sitting goes on after the store was opened again.
        CHECK(got(store.append(sitting, {EventKind::next, seconds(1e6), 0, {}})));
        CHECK(got(store.last_sitting())->events.size() == events.size() + 1);
    }
}

TEST_CASE("a sitting keeps the revision that it began with") {
    const Folder folder;
    Store store = opened(folder.path());
    Recipe recipe = small_recipe("small", "Small");
    add(store, recipe);
    const std::string first = write_recipe(recipe);
    CHECK(store.begin_sitting("small", "14", {}, some_day).ok());
    recipe.notes = "changed";
    CHECK(store.save_revision(recipe, write_recipe(recipe), "", some_day).ok());
    CHECK(got(store.last_sitting())->recipe_text == first);
    CHECK_FALSE(store.begin_sitting("nobody", "14", {}, some_day).ok());
}

TEST_CASE("a sitting on a measured hook comes back on that hook") {
    const Folder folder;
    Store store = opened(folder.path());
    add(store, small_recipe("small", "Small"));
    CHECK(store.begin_sitting("small", "14", {}, some_day).ok());
    CHECK(got(store.last_sitting())->hook.empty());
    CHECK(store.begin_sitting("small", "14", {}, some_day, "{\"shank\": \"8.4 mm\"}").ok());
    CHECK(got(store.last_sitting())->hook == "{\"shank\": \"8.4 mm\"}");
}

TEST_CASE("a second window looks on, says so, and can write nothing") {
    const Folder folder;
    Store first = opened(folder.path());
    add(first, small_recipe("small", "Small"));
    const auto sitting = got(first.begin_sitting("small", "14", {}, some_day));
    {
        Store second = opened(folder.path());
        CHECK(second.read_only());
        CHECK_FALSE(second.note().empty());
        CHECK(got(second.library("")).size() == 1);
        CHECK(got(second.last_sitting())->id == sitting);
        CHECK_FALSE(second.append(sitting, {}).ok());
        CHECK_FALSE(second.set_setting("a", "b").ok());
        CHECK_FALSE(second.set_favourite("small", true).ok());
        CHECK_FALSE(second.add_recipe(small_recipe("x", "X"), "", some_day).ok());
        CHECK_FALSE(second.save_hook("", some_day).ok());
        CHECK_FALSE(second.begin_sitting("small", "14", {}, some_day).ok());
        CHECK_FALSE(second.restore("nothing.db", some_day).ok());
    }
    CHECK(first.append(sitting, {EventKind::next, {}, 0, {}}).ok());
    CHECK(got(first.count()).events == 2);
}

TEST_CASE("every table of the schema is strict, and a wrong kind of value is refused") {
    const Folder folder;
    Store store = opened(folder.path());
    Result<Database> db = Database::open(store.file(), true);
    REQUIRE(db.ok());
    CHECK(got(db.value().value("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND "
                               "type = 'table' AND name NOT LIKE 'sqlite%' AND NOT strict")) ==
          "0");
    CHECK(got(db.value().value("PRAGMA user_version")) == std::to_string(migrations().size()));
    CHECK(got(db.value().value("PRAGMA journal_mode")) == "wal");
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("a file of a newer program is refused by name and not touched") {
    const Folder folder;
    {
        Store store = opened(folder.path());
    }
    {
        Result<Database> db = Database::open(folder.path() / "wrapwright.db", false);
        CHECK(got(db.value().execute("PRAGMA user_version = 999")));
    }
    const auto before = std::filesystem::file_size(folder.path() / "wrapwright.db");
    const Result<Store> refused = Store::open(folder.path(), some_day);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::unknown_version);
    CHECK(std::filesystem::file_size(folder.path() / "wrapwright.db") == before);
}

TEST_CASE("the usual folder is the one that the desktop's rules name") {
    // Source  XDG Base Directory Specification 0.8 (from memory)
    CHECK(usual_data_folder("/data", "/home/tyer") == "/data/wrapwright");
    CHECK(usual_data_folder(nullptr, "/home/tyer") == "/home/tyer/.local/share/wrapwright");
    CHECK(usual_data_folder("relative", "/home/tyer") == "/home/tyer/.local/share/wrapwright");
}
