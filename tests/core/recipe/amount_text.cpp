// What is understood of amounts and places as people write them.

#include "core/recipe/amount.h"
#include "core/result.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within_share;

namespace {

const std::vector<std::string> parts{"body", "tail", "hot-spot"};

Reading reading(const std::string& text) {
    const Result<Reading> r = read_amount(text, parts);
    REQUIRE_MESSAGE(r.ok(), text);
    return r.value();
}

Spot spot(const std::string& text) {
    const Result<Spot> s = read_spot(text, parts);
    REQUIRE_MESSAGE(s.ok(), text);
    CHECK(s.value().text == text);
    return s.value();
}

} // namespace

TEST_CASE("numbers, ranges and abouts are numbers of their unit") {
    CHECK(reading("6").kind == AmountKind::exact);
    CHECK(reading("6 turns").unit == Unit::turns);
    CHECK(reading("6 turns").value == 6.0);
    CHECK(reading("2-3").kind == AmountKind::range);
    CHECK(reading("2-3").low == 2.0);
    CHECK(reading("2-3").high == 3.0);
    CHECK(reading("10 or 12").low == 10.0);
    CHECK(reading("10 or 12").high == 12.0);
    CHECK(reading("about 12").kind == AmountKind::about);
    CHECK(reading("about 12").low < 12.0);
    CHECK(reading("4 fibres").value == 4.0);
}

TEST_CASE("lengths, masses and threads are read in every unit of the trade") {
    // Source     exact definitions: 1 in = 25.4 mm (1959 agreement), den = g per 9,000 m (ISO 1144),
    //            AWG by ASTM B258
    // Tolerance  rounding
    CHECK(within_share(reading("2.8 mm").value, 2.8e-3, 1e-12));
    CHECK(within_share(reading("7/64 in").value, 2.778125e-3, 1e-12));
    CHECK(within_share(reading(".015 in").value, 0.381e-3, 1e-12));
    CHECK(within_share(reading("4 mg").value, 4e-6, 1e-12));
    CHECK(reading("70 den").unit == Unit::linear_density);
    CHECK(within_share(reading("70 den").value, 70.0 / 9e6, 1e-12));
    CHECK(within_share(reading("34 AWG").value, 0.160144e-3, 1e-5));
    CHECK(within_share(reading("20 min").value, 1200.0, 1e-12));
    CHECK(within_share(reading("60 deg").value, 1.0471975511965976, 1e-12));
}

TEST_CASE("shares of the hook and of other parts are relative") {
    const Reading half = reading("half the shank");
    CHECK(half.kind == AmountKind::relative);
    CHECK(half.basis == Basis::shank);
    CHECK(half.value == 0.5);
    CHECK(reading("1.5 gape").basis == Basis::gape);
    CHECK(reading("1.5 gape").value == 1.5);
    CHECK(within_share(reading("2/3 of the shank").value, 2.0 / 3.0, 1e-12));
    CHECK(reading("same as body").part == "body");
    CHECK(reading("as long as the tail").part == "tail");
    CHECK(reading("twice the body").value == 2.0);
}

TEST_CASE("a word is a legal amount and stays one") {
    for (const char* word :
         {"sparse", "to taste", "a few", "match the hatch", "more than you think"}) {
        CAPTURE(word);
        CHECK(reading(word).kind == AmountKind::word);
    }
    CHECK(reading("").kind == AmountKind::none);
}

TEST_CASE("a number that cannot be meant is refused") {
    for (const char* bad : {"-3 turns", "4 parsecs", "1e999 mm", "7/0 mm"}) {
        CAPTURE(bad);
        CHECK_FALSE(read_amount(bad, parts).ok());
    }
}

TEST_CASE("places are landmarks with a distance") {
    CHECK(spot("bend").landmark == Landmark::bend);
    CHECK(spot("behind bead").landmark == Landmark::bead);
    CHECK(spot("rear of body").landmark == Landmark::part_rear);
    CHECK(spot("rear of body").part == "body");
    CHECK(spot("front of hot-spot").part == "hot-spot");
    const Spot behind = spot("1 mm behind bead");
    CHECK(behind.landmark == Landmark::bead);
    CHECK(within_share(behind.offset.value, 1e-3, 1e-12));
    CHECK(spot("2 mm ahead of bend").offset.value < 0.0);
    CHECK(spot("0.3 shank").landmark == Landmark::front);
    CHECK(spot("0.3 shank").offset.basis == Basis::shank);
    CHECK_FALSE(read_spot("the moon", parts).ok());
}
