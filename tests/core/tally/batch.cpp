// How many to begin, how long it takes, what it costs.

#include "core/tally/cost.h"
#include "core/tally/learning.h"
#include "core/tally/starts.h"
#include "tests/support/close.h"
#include "tests/support/dice.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// P(Binomial(n, 1 - spoil) >= good), each term from logarithms of factorials: another way.
double chance(int n, int good, double spoil) {
    double sum = 0.0;
    for (int k = good; k <= n; ++k) {
        sum += std::exp(std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0) +
                        k * std::log1p(-spoil) + (n - k) * std::log(spoil));
    }
    return sum;
}

} // namespace

TEST_CASE("flies to begin are those of the published binomial sizes") {
    // Source  independent computation by the binomial and the negative binomial quantile
    CHECK(starts_for(12, 0.05, 0.95).value() == 14);
    CHECK(starts_for(24, 0.08, 0.95).value() == 29);
    CHECK(starts_for(50, 0.10, 0.99).value() == 62);
    CHECK(starts_for(100, 0.02, 0.95).value() == 105);
    CHECK(starts_for(12, 0.0, 0.95).value() == 12);
    CHECK(starts_for(0, 0.5, 0.95).value() == 0);
}

TEST_CASE("one fly fewer would be too few, and that many are enough, whatever the batch") {
    Dice dice{8};
    for (int i = 0; i < 300; ++i) {
        const int good = 1 + dice.roll(400);
        const double spoil = dice.between(0.005, 0.4), sure = dice.between(0.5, 0.995);
        const int n = starts_for(good, spoil, sure).value();
        CAPTURE(good);
        CAPTURE(spoil);
        CAPTURE(sure);
        CHECK(chance(n, good, spoil) >= sure - 1e-9);
        if (n > good) CHECK(chance(n - 1, good, spoil) < sure + 1e-9);
    }
    CHECK(starts_for(100'000, 0.5, 0.9).value() > 200'000);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double odd : {nan, -0.1, 0.9, 2.0}) CHECK_FALSE(starts_for(12, odd, 0.95).ok());
    for (const double odd : {nan, 0.0, 1.0}) CHECK_FALSE(starts_for(12, 0.05, odd).ok());
    CHECK_FALSE(starts_for(-1, 0.05, 0.95).ok());
}

TEST_CASE("packs are rounded up and never buy too few") {
    // Source  worked by hand: 63 flies, 30 hooks on hand in packs of 25, 22 beads in packs of 20
    CHECK(packs_for(63, 30, 25) == 2);
    CHECK(packs_for(63, 22, 20) == 3);
    CHECK(packs_for(50, 0, 25) == 2); // no third pack for a rounding error
    CHECK(packs_for(0.1 + 0.2, 0, 0.3) == 1);
    CHECK(packs_for(10, 30, 25) == 0);
    Dice dice{4};
    for (int i = 0; i < 500; ++i) {
        const double need = dice.between(0, 1000), have = dice.between(0, 500);
        const double pack = dice.between(0.1, 50);
        const int packs = packs_for(need, have, pack);
        CHECK(have + packs * pack >= need - 1e-6);
        if (packs > 0) CHECK(have + (packs - 1) * pack < need);
    }
}

TEST_CASE("learning curves have the published values, by either model") {
    // Source  Wright 1936, Crawford; a published appendix: at 80 % the second unit takes 60 % and the
    //         fourth average is 64 %; independent computation for the rest
    Learning wright{LearningModel::wright, seconds(100), 0.8, {}};
    CHECK(within(wright.total(1, 2).si / 2.0, 80.0, 1e-9));
    CHECK(within(wright.total(1, 4).si / 4.0, 64.0, 1e-9));
    CHECK(within(wright.total(1, 8).si, 409.6, 1e-9));
    CHECK(within(wright.unit(2).si, 60.0, 1e-9));
    CHECK(within(wright.unit(4).si, 45.3689, 5e-5));
    Learning crawford{LearningModel::crawford, seconds(1), 0.8, {}};
    CHECK(within(crawford.unit(10).si, 0.4765, 5e-5));
    CHECK(within(crawford.total(1, 10).si, 6.3154, 5e-5));
    CHECK(within(crawford.total(1, 20).si, 10.4849, 5e-5));
    crawford.first = seconds(10);
    CHECK(within(crawford.total(1, 20).si, 104.85, 5e-3)); // a lecture's example, 10 h the first
    crawford.rate = 1.0;
    CHECK(within(crawford.total(5, 9).si, 50.0, 1e-9));
    crawford.rate = 0.8;
    crawford.best = seconds(6);
    CHECK(crawford.unit(1000) == seconds(6));
}

TEST_CASE("a curve through eight timings has the rate of an independent fit") {
    // Source  least squares of log2 by another program: rate 0.8184, first 11.983 min
    const double minutes_each[] = {12, 9.8, 8.7, 8.1, 7.4, 7.2, 6.8, 6.6};
    double each[8];
    for (int i = 0; i < 8; ++i) each[i] = 60.0 * minutes_each[i];
    const Result<Learning> fit = fit_learning(each);
    REQUIRE(fit.ok());
    CHECK(within(fit.value().rate, 0.8184, 5e-5));
    CHECK(within(fit.value().first.si / 60.0, 11.983, 5e-4));
    CHECK_FALSE(fit_learning(std::span(each, 1)).ok());
    each[3] = 0.0;
    CHECK_FALSE(fit_learning(each).ok());
}

TEST_CASE("money is read as people write it and written back to the minor unit") {
    CHECK(read_money("4.50").value().minor == 450);
    CHECK(read_money("4,5").value().minor == 450);
    CHECK(read_money("4").value().minor == 400);
    CHECK(read_money("-0.05").value().minor == -5);
    for (const char* odd : {"", "4.", ".5", "4.505", "4.5.0", "a", "1e3", "--4", "4 50", "-"}) {
        CAPTURE(odd);
        CHECK_FALSE(read_money(odd).ok());
    }
    CHECK_FALSE(read_money("99999999999999999999").ok());
    Dice dice{6};
    for (int i = 0; i < 500; ++i) {
        const Money m{dice.roll(2'000'000) - 1'000'000};
        CHECK(read_money(write_money(m)).value() == m);
    }
    CHECK(write_money({std::numeric_limits<std::int64_t>::min()}).starts_with("-9223372036854775"));
}

TEST_CASE("a spool shared over flies costs what it does worked by hand") {
    // Source  worked by hand: a 100 yd spool at 4.50, 0.85 m a fly, 10 % waste: 0.04648 a fly, 96 flies
    CostItem spool{"wire", {450}, 91.44, 0.85, 0.10, 0.0};
    CostTerms terms;
    terms.good = terms.starts = 96;
    const CostSheet sheet = cost_of({spool}, terms);
    CHECK(within(sheet.lines[0].used / 96.0 * 450.0 / 91.44, 4.648, 5e-4));
    CHECK(sheet.lines[0].packs == 1);
    terms.good = terms.starts = 97;
    CHECK(cost_of({spool}, terms).lines[0].packs == 2);
}

TEST_CASE("the sheet adds up to the minor unit, labour at nothing is shown, and the price covers "
          "fee and tax") {
    Dice dice{9};
    for (int i = 0; i < 200; ++i) {
        std::vector<CostItem> items;
        for (int k = dice.roll(6); k >= 0; --k) {
            items.push_back({"it",
                             {dice.roll(3000)},
                             dice.between(1, 100),
                             dice.between(0, 3),
                             dice.between(0, 0.5),
                             dice.between(0, 40)});
        }
        CostTerms terms;
        terms.good = 1 + dice.roll(100);
        terms.starts = terms.good + dice.roll(10);
        terms.hourly = {dice.roll(3000)};
        terms.each = seconds(dice.between(60, 900));
        terms.postage = {dice.roll(900)};
        terms.fee = dice.between(0, 0.3);
        const CostSheet sheet = cost_of(items, terms);
        Money consumed{}, cash{};
        for (const CostLine& line : sheet.lines) {
            consumed += line.consumed;
            cash += line.cash;
        }
        CHECK(consumed == sheet.consumed);
        CHECK(cash == sheet.cash);
        const auto price = static_cast<double>(sheet.price.minor);
        CHECK(price * (1.0 - terms.fee) >= static_cast<double>(sheet.consumed.minor) - 1e-6);
        CHECK((price - 1.0) * (1.0 - terms.fee) < static_cast<double>(sheet.consumed.minor));
    }
    const CostSheet free = cost_of({}, {});
    CHECK(free.lines[0].what == "labour");
    CHECK(free.consumed.minor == 0);
}
