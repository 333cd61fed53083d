#include "core/units/size_text.h"
#include "core/units/number_text.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <string>

using namespace wrapwright;
using wrapwright::test::within_share;

namespace {

WrittenLength length(std::string_view text) {
    const Result<WrittenLength> written = parse_length(text);
    CAPTURE(text);
    REQUIRE(written.ok());
    CHECK(written.value().text == text);
    return written.value();
}

double mm(std::string_view text) {
    const WrittenLength written = length(text);
    return convert(written.number, written.unit, LengthUnit::millimetre);
}

template <class T>
ErrorCode code(const Result<T>& result) {
    REQUIRE_FALSE(result.ok());
    CHECK_FALSE(result.error().message.empty());
    CHECK_FALSE(result.error().remedy.empty());
    return result.error().code;
}

constexpr LengthUnit length_units[] = {
    LengthUnit::millimetre, LengthUnit::centimetre, LengthUnit::metre, LengthUnit::inch,
    LengthUnit::thou,       LengthUnit::foot,       LengthUnit::yard,  LengthUnit::awg};
constexpr MassUnit mass_units[] = {MassUnit::milligram, MassUnit::gram, MassUnit::grain,
                                   MassUnit::ounce, MassUnit::pound};
constexpr LinearDensityUnit linear_units[] = {LinearDensityUnit::tex, LinearDensityUnit::decitex,
                                              LinearDensityUnit::denier};

} // namespace

TEST_CASE("the fractions of an inch are exact millimetres") {
    // Source     1 in = 25.4 mm exactly (1959), so n/64 in is n x 0.396875 mm
    // Tolerance  none: both sides are the double nearest to the true decimal
    CHECK(mm("7/64 in") == 2.778125);
    CHECK(mm("1/4 in") == 6.35);
    CHECK(mm("1/16 in") == 1.5875);
    CHECK(mm("5/32\"") == 3.96875);
    CHECK(mm("1 1/2 in") == 38.1);
    CHECK(mm(".015 in") == 0.381);
    CHECK(mm("15 thou") == 0.381);
    CHECK(mm("\u00bd inch") == 12.7);
    for (int n = 1; n <= 256; ++n) {
        const Result<double> exact = read_number(std::to_string(n * 396875) + "e-6");
        CHECK(mm(std::to_string(n) + "/64 in") == exact.value());
    }
    CHECK(within_share(length("7/64 in").quantity.si, 2.778125e-3, 3e-16)); // one rounding
}

TEST_CASE("units are read in any case, joined or apart") {
    for (const char* text : {"2.8 mm", "2.8mm", " 2.8  MM ", "2.8 Millimetres", "2.8 mm.",
                             "0.28 cm", "0.0028 m", "2.8\u00a0mm"}) {
        CAPTURE(text);
        CHECK(within_share(length(text).quantity.si, 2.8e-3, 3e-16)); // two roundings
    }
    for (const char* text : {"2 in", "2 in.", "2 inches", "2\"", "2 \u2033", "2\u201d", "2''"}) {
        CHECK(mm(text) == 50.8);
    }
    CHECK(mm("100 yd") == 91440.0);
    CHECK(mm("1 ft") == 304.8);
    CHECK(length("34 AWG").number == 34.0);
    CHECK(length("AWG 34").quantity == length("awg34").quantity);
    CHECK(length("34 awg").quantity == wire_gauge_diameter(34.0));
    CHECK(parse_mass("3.9 gr").value().unit == MassUnit::grain);
    CHECK(parse_mass("3.9 grains").value().unit == MassUnit::grain);
    CHECK(parse_mass("0.25 g").value().unit == MassUnit::gram);
    CHECK(parse_mass("1/80 oz").value().number == 1.0 / 80.0);
    CHECK(parse_linear_density("70d").value().unit == LinearDensityUnit::denier);
    CHECK(parse_linear_density("70 Denier").value().number == 70.0);
    CHECK(parse_linear_density("78 dtex").value().unit == LinearDensityUnit::decitex);
}

TEST_CASE("a bare number is refused unless a unit is given for it") {
    CHECK(code(parse_length("2.8")) == ErrorCode::unknown_unit);
    CHECK(code(parse_length(".015")) == ErrorCode::unknown_unit);
    CHECK(code(parse_mass("250")) == ErrorCode::unknown_unit);
    CHECK(code(parse_linear_density("70")) == ErrorCode::unknown_unit);
    CHECK(parse_length("2.8", LengthUnit::millimetre).value().quantity == millimetres(2.8));
    CHECK(parse_length("2 in", LengthUnit::millimetre).value().unit == LengthUnit::inch);
    CHECK(parse_linear_density("70", LinearDensityUnit::denier).value().number == 70.0);
    CHECK(parse_mass("250", MassUnit::milligram).value().unit == MassUnit::milligram);
}

TEST_CASE("what cannot be meant is refused with a remedy") {
    for (const char* text : {"", "mm", "about 2 mm", "nan mm", "inf mm", "1,5 mm", "1,000 mm"}) {
        CHECK(code(parse_length(text)) == ErrorCode::malformed);
    }
    for (const char* text :
         {"2 furlong", "2 mg", "2 mm mm", "3/0", "2 m m", "2.8.1 mm", "2 mm 3 mm", "AWG 34 mm",
          "70 den", "2..3 mm", "1 2 mm", "5 lea", "5 \xff"}) {
        CAPTURE(text);
        CHECK(code(parse_length(text)) == ErrorCode::unknown_unit);
    }
    for (const char* text :
         {"-2 mm", "-1 1/2 in", "1e10 mm", "1e-13 mm", "1e999 mm", "57 AWG", "AWG 56.5"}) {
        CAPTURE(text);
        CHECK(code(parse_length(text)) == ErrorCode::out_of_range);
    }
    CHECK(code(parse_mass("2 mm")) == ErrorCode::unknown_unit);
    CHECK(code(parse_mass("-2 mg")) == ErrorCode::out_of_range);
    CHECK(code(parse_linear_density("8/0")) == ErrorCode::unknown_unit);
    CHECK(parse_length("0 mm").ok());
}

template <class U, class Parse, std::size_t n>
static void check_written(const U (&units)[n], Parse parse) {
    std::mt19937_64 random(5);
    for (int i = 0; i < 2000; ++i) {
        const double number = static_cast<double>(random() >> 11) * 0x1p-53 * 50.0;
        for (const U unit : units) {
            const std::string text = write_size(number, unit);
            CAPTURE(text);
            const auto back = parse(text);
            REQUIRE(back.ok());
            REQUIRE(back.value().number == number);
            REQUIRE(back.value().unit == unit);
            REQUIRE(back.value().quantity == quantity(number, unit));
        }
    }
}

TEST_CASE("a size written and read is the same number in the same unit") {
    check_written(length_units, [](std::string_view t) { return parse_length(t); });
    check_written(mass_units, [](std::string_view t) { return parse_mass(t); });
    check_written(linear_units, [](std::string_view t) { return parse_linear_density(t); });
}

template <class U, std::size_t n>
static void check_no_drift(const U (&units)[n]) {
    std::mt19937_64 random(11);
    for (int i = 0; i < 500; ++i) {
        const double number = static_cast<double>(random() >> 11) * 0x1p-53 * 50.0 + 1e-3;
        for (const U a : units) {
            for (const U b : units) {
                // Tolerance  four roundings of 2^-53 each. There and back is checked, not a long
                //            walk: the number in its own unit is what is kept, so a display in
                //            another unit never feeds back.
                CHECK(within_share(convert(convert(number, a, b), b, a), number, 4.5e-16));
                CHECK(within_share(quantity(convert(number, a, b), b).si, quantity(number, a).si,
                                   7e-16)); // six roundings
            }
        }
    }
}

TEST_CASE("conversion to another unit and back does not drift") {
    check_no_drift<LengthUnit, 7>({LengthUnit::millimetre, LengthUnit::centimetre,
                                   LengthUnit::metre, LengthUnit::inch, LengthUnit::thou,
                                   LengthUnit::foot, LengthUnit::yard});
    check_no_drift(mass_units);
    check_no_drift(linear_units);
    // A thousand changes of the unit that is shown leave what is kept as it was.
    const WrittenLength kept = length("7/64 in");
    for (int i = 0; i < 1000; ++i) {
        const LengthUnit shown = length_units[i % 7];
        const double number = convert(kept.number, kept.unit, shown);
        CHECK(within_share(quantity(number, shown).si, kept.quantity.si, 7e-16));
    }
    CHECK(convert(kept.number, kept.unit, LengthUnit::inch) == 7.0 / 64.0);
}

TEST_CASE(
    "decimals of up to four places survive millimetres to inches and back to the last digit") {
    // Four decimals are more than any caliper shows; twelve are asked of the way back.
    for (int i = 0; i <= 20000; ++i) {
        const double there = convert(i / 1e4, LengthUnit::millimetre, LengthUnit::inch);
        const double back = convert(there, LengthUnit::inch, LengthUnit::millimetre);
        REQUIRE(write_rounded(back, 12) == write_rounded(i / 1e4, 12));
    }
}

TEST_CASE("the wire gauge and its inverse agree") {
    for (int n = 0; n <= 56; ++n) {
        // Tolerance  logarithm of a ratio: 1e-14 x 39 / ln 92 of a gauge, rounded up
        CHECK(std::abs(wire_gauge(wire_gauge_diameter(n)) - n) <= 1e-12);
        if (n > 0) CHECK(wire_gauge_diameter(n) < wire_gauge_diameter(n - 1));
    }
    const double inches = convert(36.0, LengthUnit::awg, LengthUnit::inch);
    CHECK(within_share(inches, 0.005, 1e-15)); // ASTM B258: AWG 36 is 0.005 in by definition
    CHECK(within_share(convert(0.005, LengthUnit::inch, LengthUnit::awg), 36.0, 1e-15));
}
