// Exact definitions and published tables, each from outside the program.

#include "core/units/size_text.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

#include <string>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

double metres_of(std::string_view text) { return parse_length(text).value().quantity.si; }
double kilograms_of(std::string_view text) { return parse_mass(text).value().quantity.si; }
double kg_per_m_of(std::string_view text) { return parse_linear_density(text).value().quantity.si; }

constexpr double two_roundings = 3e-16; // 2^-53 each, relative

} // namespace

TEST_CASE("lengths follow the international yard") {
    // Source     international yard and pound agreement of 1959: 1 yd = 0.9144 m exactly;
    //            a foot is a third, an inch a thirty-sixth of it; a thou is 0.001 in
    // Tolerance  two roundings
    CHECK(within_share(metres_of("1 yd"), 0.9144, two_roundings));
    CHECK(within_share(metres_of("1 ft"), 0.3048, two_roundings));
    CHECK(within_share(metres_of("1 in"), 0.0254, two_roundings));
    CHECK(within_share(metres_of("1 thou"), 0.0000254, two_roundings));
    CHECK(within_share(metres_of("7/64 in"), 0.002778125, two_roundings));
    CHECK(within_share(metres_of("1/4 in"), 0.00635, two_roundings));
}

TEST_CASE("masses follow the international pound") {
    // Source     the same agreement: 1 lb = 0.45359237 kg exactly, 16 oz or 7,000 gr
    // Tolerance  two roundings
    CHECK(within_share(kilograms_of("1 lb"), 0.45359237, two_roundings));
    CHECK(within_share(kilograms_of("1 oz"), 0.028349523125, two_roundings));
    CHECK(within_share(kilograms_of("1 gr"), 0.00006479891, two_roundings));
    CHECK(within_share(kilograms_of("7000 gr"), 0.45359237, two_roundings));
    CHECK(within_share(kilograms_of("16 oz"), 0.45359237, two_roundings));
}

TEST_CASE("tex and denier are grams per kilometre and per nine") {
    // Source     ISO 1144: 1 tex = 1 g/km = 1e-6 kg/m; 1 dtex = 0.1 tex; 1 den = 1 g / 9 km
    // Tolerance  two roundings
    CHECK(within_share(kg_per_m_of("1 tex"), 1e-6, two_roundings));
    CHECK(within_share(kg_per_m_of("10 dtex"), 1e-6, two_roundings));
    CHECK(within_share(kg_per_m_of("9 den"), 1e-6, two_roundings));
    CHECK(within_share(kg_per_m_of("70 den") * 9000.0, 0.070, 2 * two_roundings));
}

TEST_CASE("the American wire gauge is the table of ASTM B258") {
    // Source     ASTM B258, the table of diameters at 20 C, in mils to one decimal
    // Tolerance  half of its last digit
    struct Row {
        int gauge;
        double mils;
    };
    constexpr Row table[] = {{0, 324.9}, {10, 101.9}, {16, 50.8}, {18, 40.3}, {20, 32.0},
                             {21, 28.5}, {22, 25.3},  {23, 22.6}, {24, 20.1}, {25, 17.9},
                             {26, 15.9}, {27, 14.2},  {28, 12.6}, {29, 11.3}, {30, 10.0},
                             {31, 8.9},  {32, 8.0},   {33, 7.1},  {34, 6.3},  {35, 5.6},
                             {36, 5.0},  {37, 4.5},   {38, 4.0},  {39, 3.5},  {40, 3.1},
                             {41, 2.8},  {42, 2.5},   {43, 2.2},  {44, 2.0}};
    for (const Row& row : table) {
        CAPTURE(row.gauge);
        const double mils = convert(row.gauge, LengthUnit::awg, LengthUnit::thou);
        CHECK(within(mils, row.mils, 0.05));
        const std::string text = "AWG " + std::to_string(row.gauge);
        CHECK(within(metres_of(text) * 1e3, row.mils * 0.0254, 0.05 * 0.0254));
    }
}

TEST_CASE("the gauge is fixed by two diameters and a constant ratio") {
    // Source     ASTM B258: AWG 36 is 0.0050 in and AWG 0000 (-3) 0.4600 in, 39 equal ratios apart
    // Tolerance  std::pow and the conversion: 10 units in the last place
    CHECK(within_share(convert(36, LengthUnit::awg, LengthUnit::inch), 0.005, 2e-15));
    CHECK(within_share(convert(-3, LengthUnit::awg, LengthUnit::inch), 0.46, 2e-15));
    for (int n = 1; n <= 56; ++n) {
        const double ratio = wire_gauge_diameter(n - 1) / wire_gauge_diameter(n);
        CHECK(within_share(ratio, 1.1229322, 1e-7)); // 92^(1/39), to the digits of the standard
    }
}

TEST_CASE("ballast wire's thousandths are the millimetres of the trade's tables") {
    // Source     1 in = 25.4 mm; .010 to .035 in = .254 to .889 mm, as wire tables print
    // Tolerance  none: the nearest double on both sides
    constexpr double mm[] = {0.254, 0.381, 0.508, 0.635, 0.762, 0.889};
    for (int i = 0; i < 6; ++i) {
        const std::string text = ".0" + std::to_string(10 + 5 * i) + " in";
        const WrittenLength wire = parse_length(text).value();
        CHECK(convert(wire.number, wire.unit, LengthUnit::millimetre) == mm[i]);
    }
}
