#include "core/stock/needs.h"

#include "core/stock/kit.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

StockItem item(std::int64_t id, const char* what, StockUnit unit, double pack, std::int64_t minor) {
    StockItem out;
    out.id = id;
    out.what = what;
    out.unit = unit;
    out.pack = pack;
    out.price = {minor};
    return out;
}

OrderLine line(std::int64_t id, int flies, int due) {
    OrderLine out;
    out.id = id;
    out.flies = flies;
    out.due = {due};
    return out;
}

Holdings on_hand(std::initializer_list<std::pair<std::int64_t, double>> amounts) {
    Holdings out;
    for (const auto& [id, amount] : amounts) {
        Entry e;
        e.item = id;
        e.amount = amount;
        out.take(e);
    }
    return out;
}

StockUse use(const char* what, double count, double metres = 0.0) {
    return {what, count, metres, 0.0};
}

} // namespace

TEST_CASE("five dozen with five in a hundred spoilt need the hooks and beads worked by hand") {
    // Source  worked by hand: 60 flies and 5 % on top are 63; 33 hooks short are 2 packs of 25,
    //         41 beads short are 3 packs of 20; 14.3 mm of wire a fly are 0.90 m
    const std::vector<StockItem> stock{item(1, "Jig hook  #14", StockUnit::pieces, 25, 650),
                                       item(2, "bead 2.8 mm", StockUnit::pieces, 20, 480),
                                       item(3, "lead wire", StockUnit::metres, 3.0, 210)};
    const OrderLine five = line(1, 60, 100);
    const NeedTerms plain{0.05, 0.0, 0.0};
    const Needs needs = needs_of(
        {{&five, {use("jig hook #14", 1), use("bead 2.8 mm", 1), use("lead wire", 0, 0.0143)}}},
        stock, on_hand({{1, 30}, {2, 22}}), plain);
    REQUIRE(needs.lines.size() == 1);
    CHECK(needs.lines[0].starts == 63);
    REQUIRE(needs.items.size() == 3);
    CHECK(needs.items[0].short_of == 33.0);
    CHECK(needs.items[0].packs == 2);
    CHECK(needs.items[1].short_of == 41.0);
    CHECK(needs.items[1].packs == 3);
    CHECK(within(needs.items[2].need, 0.9009, 1e-12)); // 63 * 14.3 mm, rounding alone
    CHECK(needs.items[2].packs == 1);
    CHECK(needs.cash.minor == 2 * 650 + 3 * 480 + 210);
}

TEST_CASE("two orders that share beads: the later one is short, and says which line ate them") {
    // Source  worked by hand: 40 beads; 24 for the one that is due first, 16 of 24 for the other
    const std::vector<StockItem> stock{item(1, "bead", StockUnit::pieces, 20, 400)};
    const OrderLine late = line(1, 24, 30), soon = line(2, 24, 10);
    const NeedTerms sure{0.0, 0.95, 0.0};
    const Holdings held = on_hand({{1, 40}});
    const Needs needs =
        needs_of({{&late, {use("bead", 1)}}, {&soon, {use("bead", 1)}}}, stock, held, sure);
    REQUIRE(needs.lines.size() == 2);
    CHECK(needs.lines[0].line == 2);
    CHECK_FALSE(needs.lines[0].short_of_something());
    CHECK(needs.lines[1].uses[0].short_of == 8.0);
    CHECK(needs.lines[1].uses[0].eaten_by == std::vector<std::int64_t>{2});
    CHECK(needs.items[0].packs == 1);
}

TEST_CASE("what a line has reserved is its own, even for one that is due before it") {
    const std::vector<StockItem> stock{item(1, "bead", StockUnit::pieces, 20, 400)};
    const OrderLine late = line(1, 24, 30), soon = line(2, 24, 10);
    const NeedTerms sure{0.0, 0.95, 0.0};
    Holdings held = on_hand({{1, 40}});
    const Needs alone = needs_of({{&late, {use("bead", 1)}}}, stock, held, sure);
    for (const Entry& e : reserve(alone.lines[0], alone, held, 0)) held.take(e);
    CHECK(held.of(1).free() == 16.0);
    const Needs needs =
        needs_of({{&late, {use("bead", 1)}}, {&soon, {use("bead", 1)}}}, stock, held, sure);
    CHECK(needs.lines[0].uses[0].short_of == 8.0); // the one that is due first
    CHECK_FALSE(needs.lines[1].short_of_something());
    CHECK(reserve(needs.lines[1], needs, held, 0).empty()); // nothing more to reserve
    for (const Entry& e : release(1, held, 0)) held.take(e);
    CHECK(held.of(1).free() == 40.0);
    CHECK(release(1, held, 0).empty());
}

TEST_CASE("two names of one item are one row, and a line that is closed needs nothing") {
    std::vector<StockItem> stock{item(1, "gold bead", StockUnit::pieces, 20, 400)};
    stock[0].also = "bead, gold; slotted bead";
    OrderLine one = line(1, 10, 0), two = line(2, 10, 0), sent = line(3, 500, 0);
    sent.status = LineStatus::sent;
    const NeedTerms sure{0.0, 0.95, 0.0};
    const Needs needs = needs_of({{&one, {use("BEAD, gold", 1), use("slotted bead", 2)}},
                                  {&two, {use("gold bead", 1)}},
                                  {&sent, {use("gold bead", 1)}}},
                                 stock, on_hand({{1, 5}}), sure);
    REQUIRE(needs.items.size() == 1);
    CHECK(needs.items[0].need == 40.0);
    CHECK(needs.items[0].short_of == 35.0);
    CHECK(needs.lines.size() == 2);
}

TEST_CASE("what the stock does not know, or counts otherwise, is said and not guessed") {
    const std::vector<StockItem> stock{item(1, "varnish", StockUnit::metres, 1, 0)};
    const OrderLine one = line(1, 12, 0), lost = line(2, 12, 0);
    const Needs needs =
        needs_of({{&one, {use("varnish", 1), use("fur", 0, 0)}}, {&lost, {}}}, stock, {}, {});
    CHECK(needs.items[0].other_unit);
    CHECK(needs.items[0].short_of == 0.0);
    CHECK(needs.lines[1].unknown);
    CHECK(needs.items[1].item == 0);
    CHECK(needs.items[1].packs == 0); // nobody said how large a pack is
}

TEST_CASE("packs never leave too few, whatever the orders") {
    Dice dice{31};
    for (int run = 0; run < 300; ++run) {
        std::vector<StockItem> stock{item(1, "a", StockUnit::pieces, 1 + dice.roll(30), 100),
                                     item(2, "b", StockUnit::metres, dice.between(0.5, 100), 100)};
        std::vector<OrderLine> lines;
        lines.reserve(4);
        std::vector<LineAsk> asks;
        for (int i = 1; i <= 4; ++i) {
            lines.push_back(line(i, 1 + dice.roll(90), dice.roll(4)));
            asks.push_back({&lines.back(),
                            {use("a", 1 + dice.roll(3)), use("b", 0, dice.between(0.01, 2.0))}});
        }
        const NeedTerms terms{dice.between(0, 0.3), dice.between(0.1, 0.99), dice.between(0, 0.5)};
        const double have_a = dice.roll(100), have_b = dice.between(0, 50);
        const Holdings held = on_hand({{1, have_a}, {2, have_b}});
        const Needs needs = needs_of(asks, stock, held, terms);
        double starts = 0.0;
        for (const LineNeed& l : needs.lines) starts += l.starts;
        CHECK(starts >= 4);
        for (const ItemNeed& row : needs.items) {
            const StockItem& of = stock[static_cast<std::size_t>(row.item - 1)];
            CHECK(row.on_hand + row.packs * of.pack >= row.need * (1 - 1e-8));
            if (row.packs > 0) {
                CHECK(row.on_hand + (row.packs - 1) * of.pack < row.need);
            }
        }
    }
}

TEST_CASE("the demo nymph takes of the stock what its tally says, under names with their sizes") {
    const Pattern pattern = demo("weirfoot-jig");
    const Result<Rig> rig = make_rig(pattern, HookSize{14});
    REQUIRE(rig.ok());
    Resolved resolved;
    REQUIRE(resolve(pattern, rig.value(), resolved).ok());
    const Tied fly = tied(pattern, HookSize{14});
    const std::vector<StockUse> uses = stock_uses(pattern, resolved, fly);
    REQUIRE(uses.size() >= 3);
    CHECK(uses[0].what == "jig hook #14");
    CHECK(uses[0].count == 1.0);
    double thread = 0.0, grams = 0.0;
    for (const StockUse& use : uses) {
        if (use.what.starts_with("flat nylon thread")) thread = use.metres;
        if (use.what == "slotted tungsten bead, copper 2.8 mm") CHECK(use.count == 1.0);
        grams += use.grams;
    }
    CHECK(thread > 0.2);
    CHECK(within_share(grams, fly.mass.value.si * 1e3, 1e-9)); // the same sum in another order
    const std::vector<StockUse> begun = stock_uses(pattern, resolved, fly, 0);
    CHECK(begun.size() < uses.size());
    CHECK(begun[0].what == "jig hook #14");
}

TEST_CASE("a class has its bags and the teacher the spares worked by hand") {
    // Source  worked by hand: six students, three flies: 18 beads and 4 spare (a fifth of 18, up);
    //         two students, one fly: 2 beads and 2 spare, never fewer
    const std::vector<StockUse> uses{use("bead", 1), use("thread", 0, 0.5)};
    const std::vector<KitRow> six = class_kit(uses, 6, 3);
    CHECK(six[0].each == 3.0);
    CHECK(six[0].bags == 18.0);
    CHECK(six[0].spare == 4.0);
    CHECK(six[0].total == 22.0);
    CHECK(within(six[1].total, 6 * 3 * 0.5 * 1.2, 1e-12)); // rounding alone
    CHECK(class_kit(uses, 2, 1)[0].spare == 2.0);
}

TEST_CASE("a swap of twenty-five is twenty-five flies each, and as many back") {
    // Source  common practice, no source: tie 25, expect 24 others and your own
    const SwapCount swap = swap_count(25, 0);
    CHECK(swap.each == 25);
    CHECK(swap.back == 25);
    CHECK(swap.all == 625);
    CHECK(swap_count(25, 1).each == 26);
}
