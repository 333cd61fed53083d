#include "core/stock/ledger.h"

#include "tests/support/close.h"
#include "tests/support/dice.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Entry entry(std::int64_t id, EntryKind kind, std::int64_t item, double amount,
            std::int64_t line = 0) {
    Entry e;
    e.id = id;
    e.kind = kind;
    e.item = item;
    e.amount = amount;
    e.line = line;
    return e;
}

Entry undoing(std::int64_t id, std::int64_t of) {
    Entry e;
    e.id = id;
    e.undoes = of;
    return e;
}

/// A list of everything that happens, with whole amounts so that sums are exact.
std::vector<Entry> some_entries(Dice& dice, int count) {
    std::vector<Entry> out;
    for (int i = 1; i <= count; ++i) {
        if (i > 1 && dice.roll(5) == 0) {
            out.push_back(undoing(i, 1 + dice.roll(i - 1)));
            continue;
        }
        const auto kind = static_cast<EntryKind>(dice.roll(8));
        const bool fly = kind == EntryKind::finished || kind == EntryKind::wasted;
        out.push_back(entry(i, kind, fly ? 0 : 1 + dice.roll(4), fly ? 1 : dice.roll(50),
                            kind == EntryKind::bought ? 0 : dice.roll(3)));
    }
    return out;
}

bool same(const Holdings& a, const Holdings& b) {
    for (std::int64_t item = 0; item < 6; ++item) {
        if (!(a.of(item) == b.of(item))) return false;
        for (std::int64_t line = 0; line < 4; ++line) {
            if (a.reserved(item, line) != b.reserved(item, line)) return false;
        }
    }
    for (std::int64_t line = 0; line < 4; ++line) {
        if (a.finished(line) != b.finished(line)) return false;
    }
    return true;
}

} // namespace

TEST_CASE(
    "what is on hand is what was bought less what was drawn and spoilt, from the last count on") {
    // Source  worked by hand
    const std::vector<Entry> entries{
        entry(1, EntryKind::bought, 7, 50), entry(2, EntryKind::drawn, 7, 3),
        entry(3, EntryKind::counted, 7, 44), entry(4, EntryKind::bought, 7, 25),
        entry(5, EntryKind::spoilt, 7, 2)};
    const Holdings h = replay(entries);
    CHECK(h.of(7).on_hand == 67.0);
    CHECK(h.of(7).free() == 67.0);
    CHECK(h.of(8) == Holding{});
}

TEST_CASE(
    "a reservation lowers what is free, drawing for its line uses it up, and releasing restores") {
    // Source  worked by hand
    std::vector<Entry> entries{entry(1, EntryKind::bought, 1, 100),
                               entry(2, EntryKind::reserved, 1, 63, 5)};
    CHECK(replay(entries).of(1).free() == 37.0);
    entries.push_back(entry(3, EntryKind::drawn, 1, 3, 5));
    CHECK(replay(entries).of(1).on_hand == 97.0);
    CHECK(replay(entries).of(1).reserved == 60.0);
    CHECK(replay(entries).of(1).free() == 37.0);
    entries.push_back(entry(4, EntryKind::released, 1, 1000, 5)); // no more than it holds
    CHECK(replay(entries).of(1).free() == 97.0);
    CHECK(replay(entries).held_by(5).empty());
}

TEST_CASE("an entry that is undone never was, and undoing the undoing brings it back") {
    std::vector<Entry> entries{entry(1, EntryKind::bought, 1, 20), entry(2, EntryKind::drawn, 1, 6),
                               undoing(3, 2)};
    CHECK(replay(entries).of(1).on_hand == 20.0);
    entries.push_back(undoing(4, 3));
    CHECK(replay(entries).of(1).on_hand == 14.0);
    entries.push_back(undoing(5, 99)); // of nothing
    CHECK(replay(entries).of(1).on_hand == 14.0);
}

TEST_CASE("the ledger's sum equals its replay in any order that keeps each item's own order") {
    Dice dice{11};
    for (int run = 0; run < 200; ++run) {
        const std::vector<Entry> entries = some_entries(dice, 60);
        const std::vector<bool> holds = holding_entries(entries);
        // Deal the entries that hold out by item, then draw from the piles at random.
        std::vector<std::vector<const Entry*>> piles(6);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (holds[i]) piles[static_cast<std::size_t>(entries[i].item)].push_back(&entries[i]);
        }
        std::vector<std::size_t> at(6, 0);
        Holdings mixed;
        for (;;) {
            std::vector<std::size_t> left;
            for (std::size_t p = 0; p < 6; ++p) {
                if (at[p] < piles[p].size()) left.push_back(p);
            }
            if (left.empty()) break;
            const std::size_t p =
                left[static_cast<std::size_t>(dice.roll(static_cast<int>(left.size())))];
            mixed.take(*piles[p][at[p]++]);
        }
        CHECK(same(mixed, replay(entries)));
    }
}

TEST_CASE("reserving and then giving all of it back restores free stock, whatever went before") {
    Dice dice{12};
    for (int run = 0; run < 200; ++run) {
        std::vector<Entry> entries = some_entries(dice, 40);
        const double free = replay(entries).of(2).free();
        const double more =
            dice.between(0.01, 70.0); // no whole amount: rounding may not stay behind
        entries.push_back(entry(41, EntryKind::reserved, 2, more, 9));
        CHECK(within(replay(entries).of(2).free(), free - more, 1e-9)); // last digits of the sums
        entries.push_back(entry(42, EntryKind::released, 2, more, 9));
        CHECK(within(replay(entries).of(2).free(), free, 1e-9));
        CHECK(replay(entries).reserved(2, 9) == 0.0);
        entries.pop_back();
        entries.push_back(undoing(42, 41));
        CHECK(replay(entries).of(2).free() == free);
    }
}
