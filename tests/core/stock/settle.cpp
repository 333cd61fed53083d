#include "core/stock/settle.h"

#include "tests/support/close.h"
#include "tests/support/dice.h"
#include "tests/support/fly_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// The test nymph with a stock for its hook, bead and thread, and a ledger that its sittings fill.
struct Shop {
    Run1 fly = run(good_nymph());
    Resolved resolved{};
    std::vector<StockItem> items{};
    std::vector<Entry> entries{};
    std::vector<Event> events{{EventKind::begin, {}, 3, {}}};

    Shop() {
        const Hook hook = test_hook();
        const Result<Rig> rig = make_rig(fly.pattern, HookSize{14}, &hook);
        REQUIRE(rig.ok());
        REQUIRE(resolve(fly.pattern, rig.value(), resolved).ok());
        std::int64_t id = 1;
        for (const StockUse& use : stock_uses(fly.pattern, resolved, fly.tied)) {
            StockItem item;
            item.id = id++;
            item.what = use.what;
            item.unit = usual_unit(use);
            items.push_back(item);
            Entry bought;
            bought.id = static_cast<std::int64_t>(entries.size()) + 1;
            bought.item = item.id;
            bought.amount = 100.0;
            entries.push_back(bought);
        }
    }
    [[nodiscard]] SittingState state() const { return fold(fly.pattern, fly.tied, events); }
    /// Brings the ledger to the sitting; how many entries that took.
    std::size_t settled() {
        const SittingState now = state();
        std::vector<Entry> own;
        for (const Entry& e : entries) {
            if (e.sitting == 4) own.push_back(e);
        }
        const std::vector<Entry> more =
            settle({4, 9, &fly.pattern, &resolved, &fly.tied, &now}, own, items, 0);
        for (Entry e : more) {
            e.id = static_cast<std::int64_t>(entries.size()) + 1;
            entries.push_back(e);
        }
        return more.size();
    }
    void press(EventKind kind, int times = 1) {
        for (int i = 0; i < times; ++i) {
            events.push_back({kind, seconds(10.0 * static_cast<double>(events.size())), 0, {}});
        }
    }
    [[nodiscard]] double on_hand(std::size_t item) const {
        return replay(entries).of(items[item].id).on_hand;
    }
    [[nodiscard]] int stops() const { return static_cast<int>(fly.tied.moments.size()); }
};

} // namespace

TEST_CASE("a finished fly draws what its record says, once, however often the ledger is settled") {
    Shop shop;
    CHECK(shop.settled() == 0);
    shop.press(EventKind::next, shop.stops());
    CHECK(shop.settled() == 1 + shop.items.size());
    CHECK(shop.settled() == 0);
    const std::vector<StockUse> uses = stock_uses(shop.fly.pattern, shop.resolved, shop.fly.tied);
    for (std::size_t i = 0; i < uses.size(); ++i) {
        const double each = use_in(shop.items[i].unit, uses[i]).value_or(0.0);
        CHECK(each > 0.0);
        CHECK(shop.on_hand(i) == 100.0 - each);
    }
    CHECK(replay(shop.entries).finished(9) == 1);
    shop.press(EventKind::undo);
    shop.settled();
    for (std::size_t i = 0; i < uses.size(); ++i) CHECK(shop.on_hand(i) == 100.0);
    CHECK(replay(shop.entries).finished(9) == 0);
}

TEST_CASE("a spoilt fly takes what was on it by then, and nothing that came after") {
    Shop shop;
    shop.press(EventKind::next, 1); // a step in which hook and bead are on
    shop.press(EventKind::fly_spoilt);
    CHECK(shop.settled() > 1);
    CHECK(shop.on_hand(0) == 99.0); // the hook
    const std::vector<StockUse> uses = stock_uses(shop.fly.pattern, shop.resolved, shop.fly.tied);
    std::size_t untouched = 0;
    for (std::size_t i = 0; i < uses.size(); ++i) untouched += shop.on_hand(i) == 100.0 ? 1 : 0;
    CHECK(untouched >= 3);
    CHECK(replay(shop.entries).finished(9) == 0);
}

TEST_CASE(
    "nothing is drawn twice and nothing stays drawn, whatever is done and undone in a sitting") {
    Dice dice{5};
    for (int run = 0; run < 40; ++run) {
        Shop shop;
        for (int i = 0; i < 60; ++i) {
            const int what = dice.roll(10);
            if (what < 4)
                shop.press(EventKind::next, 1 + dice.roll(shop.stops()));
            else if (what < 7)
                shop.press(EventKind::undo, 1 + dice.roll(5));
            else if (what < 8)
                shop.press(EventKind::back, 1 + dice.roll(4));
            else if (what < 9)
                shop.press(EventKind::fly_spoilt);
            else
                shop.press(EventKind::strip);
            if (dice.roll(2) == 0) shop.settled(); // not each time, as after a kill
        }
        shop.settled();
        const SittingState state = shop.state();
        double done = 0.0, spoilt = 0.0;
        for (const FlyState f : state.fly_state) {
            done += f == FlyState::done ? 1.0 : 0.0;
            spoilt += f == FlyState::spoilt ? 1.0 : 0.0;
        }
        CHECK(replay(shop.entries).finished(9) == static_cast<int>(done));
        CHECK(shop.on_hand(0) == 100.0 - done - spoilt); // hooks: each fly has one from its start
    }
}

TEST_CASE(
    "a material that the stock does not know draws nothing, and the fly is finished all the same") {
    Shop shop;
    shop.items.resize(1);
    shop.press(EventKind::next, shop.stops());
    CHECK(shop.settled() == 2);
    CHECK(replay(shop.entries).finished(9) == 1);
}
