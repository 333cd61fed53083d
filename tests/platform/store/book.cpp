// Stock, orders and the ledger are kept in versions, and nothing of them is overwritten.

#include "platform/store/store.h"
#include "tests/platform/store/scratch.h"

#include <doctest/doctest.h>
#include <limits>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

StockItem bead() {
    StockItem item;
    item.what = "bead 2.8 mm";
    item.pack = 20;
    item.price = {480};
    item.low = 10;
    item.place = "drawer 1";
    item.also = "slotted bead";
    item.opened = "2026-10-01";
    item.lot = "7";
    item.supplier = "the shop by the bridge";
    item.origin = "none needed";
    item.note = "copper";
    return item;
}

OrderLine five_dozen() {
    OrderLine line;
    line.who = "Slate Weir anglers";
    line.taken = day_of(2026, 11, 29);
    line.due = day_of(2026, 12, 24);
    line.recipe = "weirfoot-jig";
    line.name = "Weirfoot Jig";
    line.size = "14";
    line.colour = "olive";
    line.weight = "250 mg";
    line.flies = 60;
    line.dozen = {2400};
    line.status = LineStatus::finishing;
    line.model = "photo 3";
    line.minutes = 4.5;
    line.note = "barbless";
    return line;
}

Entry entry(EntryKind kind, std::int64_t item, double amount) {
    Entry out;
    out.kind = kind;
    out.item = item;
    out.amount = amount;
    out.made = some_day;
    return out;
}

} // namespace

TEST_CASE("a library of the third version opens, keeps its sitting, and takes stock and orders") {
    const Folder folder;
    std::filesystem::copy_file(WW_SOURCE_DIR "/tests/golden/old/version-3.db",
                               folder.path() / "wrapwright.db");
    BookChange change;
    change.items = {bead()};
    change.lines = {five_dozen()};
    change.entries = {entry(EntryKind::bought, -1, 40)};
    change.entries[0].price = {960};
    change.entries[0].note = "two packs";
    {
        Store store = opened(folder.path());
        CHECK(store.note().empty());
        const auto sitting = got(store.last_sitting());
        REQUIRE(sitting);
        CHECK(sitting->events.size() == 5);
        CHECK(sitting->line == 0);
        CHECK(got(store.keep(change, some_day)));
    }
    CHECK(change.items[0].id == 1);
    CHECK(change.entries[0].item == 1);
    Store store = opened(folder.path()); // as after a restart
    const Book book = got(store.book());
    CHECK(book.items == change.items);
    CHECK(book.lines == change.lines);
    CHECK(book.holdings.of(1).on_hand == 40.0);
    CHECK(got(store.entries_of_item(1, 10)) == change.entries);
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("an edit is a further version, and its inverse brings back what was") {
    const Folder folder;
    Store store = opened(folder.path());
    BookChange made;
    made.items = {bead()};
    made.lines = {five_dozen()};
    made.entries = {entry(EntryKind::bought, -1, 40)};
    REQUIRE(got(store.keep(made, some_day)));
    const Book before = got(store.book());

    BookChange edit;
    edit.items = {before.items[0]};
    edit.items[0].place = "tin";
    edit.lines = {before.lines[0], five_dozen()};
    edit.lines[0].flies = 12;
    edit.entries = {entry(EntryKind::drawn, 1, 3), entry(EntryKind::counted, 1, 30)};
    REQUIRE(got(store.keep(edit, some_day)));
    const Book after = got(store.book());
    CHECK(after.items[0].place == "tin");
    CHECK(after.lines.size() == 2);
    CHECK(after.lines[1].id == 2);
    CHECK(after.holdings.of(1).on_hand == 30.0);

    BookChange back = inverse(edit, before);
    REQUIRE(got(store.keep(back, some_day)));
    Book again = got(store.book());
    CHECK(again.lines[1].gone); // a row that was new is put away, for its history stays
    again.lines.pop_back();
    CHECK(again.items == before.items);
    CHECK(again.lines == before.lines);
    CHECK(again.holdings.of(1) == before.holdings.of(1));
}

TEST_CASE("a change is kept whole or not at all") {
    const Folder folder;
    Store store = opened(folder.path());
    BookChange change;
    change.items = {bead()};
    change.entries = {entry(EntryKind::bought, -1, 0)}; // the column takes no NaN
    change.entries[0].amount = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(store.keep(change, some_day).ok());
    CHECK(got(store.book()).items.empty());
}

TEST_CASE("a second window sees the book and changes nothing of it") {
    const Folder folder;
    Store first = opened(folder.path());
    BookChange change;
    change.items = {bead()};
    REQUIRE(got(first.keep(change, some_day)));
    Store second = opened(folder.path());
    CHECK(second.read_only());
    CHECK(got(second.book()).items.size() == 1);
    CHECK_FALSE(second.keep(change, some_day).ok());
    CHECK(got(first.book()).items.size() == 1);
}

TEST_CASE("the sitting of an order's line is found with its entries") {
    const Folder folder;
    Store store = opened(folder.path());
    add(store, small_recipe("sill", "Sill"));
    const std::int64_t id =
        got(store.begin_sitting("sill", "14", {EventKind::begin, {}, 2, {}}, some_day, {}, 7));
    REQUIRE(got(store.append(id, {EventKind::next, seconds(4.0), 0, {}})));
    CHECK(got(store.last_sitting())->line == 7);
    const auto with = got(store.sittings_with("sill", "14", 5));
    REQUIRE(with.size() == 1);
    CHECK(with[0].events.size() == 2);
    CHECK(got(store.sittings_with("sill", "16", 5)).empty());
    BookChange change;
    change.entries = {entry(EntryKind::finished, 0, 1), entry(EntryKind::drawn, 0, 1)};
    change.entries[0].sitting = id;
    change.entries[0].line = 7;
    REQUIRE(got(store.keep(change, some_day)));
    CHECK(got(store.entries_of_sitting(id)).size() == 1);
    CHECK(got(store.book()).holdings.finished(7) == 1);
}
