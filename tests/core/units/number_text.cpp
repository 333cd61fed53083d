#include "core/units/number_text.h"

#include <doctest/doctest.h>

#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>

using namespace wrapwright;

namespace {

double read(std::string_view text) {
    const Result<double> number = read_number(text);
    CAPTURE(text);
    REQUIRE(number.ok());
    return number.value();
}

ErrorCode refusal(std::string_view text) {
    const Result<double> number = read_number(text);
    CAPTURE(text);
    REQUIRE_FALSE(number.ok());
    CHECK_FALSE(number.error().message.empty());
    CHECK_FALSE(number.error().remedy.empty());
    return number.error().code;
}

// The compiler's own literals judge the reader: it rounds them correctly (IEEE 754, [lex.fcon]).
#define CHECK_READS_AS(literal) CHECK(read(#literal) == literal)

} // namespace

TEST_CASE("plain decimals read as the compiler reads them") {
    CHECK_READS_AS(0.0);
    CHECK_READS_AS(2.8);
    CHECK_READS_AS(.015);
    CHECK_READS_AS(25.4);
    CHECK_READS_AS(1e-7);
    CHECK_READS_AS(1.5E+3);
    CHECK_READS_AS(123456789012345.);
    CHECK(read("2.") == 2.0);
    CHECK(read("  7 \t") == 7.0);
    CHECK(read("\u00a07\u00a0") == 7.0);
    CHECK(read("007.50") == 7.5);
    CHECK(read("-2.5") == -2.5);
    CHECK(read("\u22122.5") == -2.5);
    CHECK(read("+.5") == 0.5);
}

TEST_CASE("long decimals round to the nearest double, ties to even") {
    CHECK_READS_AS(0.1000000000000000055511151231257827);
    CHECK_READS_AS(3.14159265358979323846264338327950288419716939937510582097494459230781640629);
    CHECK_READS_AS(9007199254740993.0);                 // half way between two doubles: to even
    CHECK_READS_AS(9007199254740993.00000000000000001); // just above half way
    CHECK_READS_AS(9007199254740992.99999999999999999); // just below it
    CHECK_READS_AS(9007199254740995.0);
    CHECK_READS_AS(18014398509481985.0e-40);
    CHECK_READS_AS(1.7976931348623157e299);
    CHECK_READS_AS(123456789123456789e-250);
    CHECK_READS_AS(1e23); // a well-known hard case: lies almost half way
    CHECK_READS_AS(8.41e21);
    CHECK_READS_AS(9.5367431640625e-7);
    CHECK_READS_AS(6.0221407600000000000001e23);
    CHECK_READS_AS(1e300);
    CHECK_READS_AS(1e-300);
}

TEST_CASE("the reader agrees with the C library's on decimals of every length and power") {
    // Against    strtod, which rounds correctly in glibc and musl; without a point, so that the
    //            locale of the run is the same to it
    // Tolerance  none. Among the short ones with a negative power are a few whose rounding is
    //            decided by a rest that only the last division shows
    const auto agrees = [](const std::string& text) {
        const Result<double> ours = read_number(text);
        return !ours.ok() || ours.value() == std::strtod(text.c_str(), nullptr); // beyond 1e300
    };
    for (int power = -299; power < -22; ++power) {
        for (int digits = 1; digits < 1000; ++digits) {
            const std::string text = std::to_string(digits) + 'e' + std::to_string(power);
            CAPTURE(text);
            REQUIRE(agrees(text));
        }
    }
    std::mt19937_64 random(53);
    for (int i = 0; i < 100000; ++i) {
        std::string text = std::to_string(random() >> random() % 64);
        if (i % 5 == 0) text += std::to_string(random()) + std::to_string(random());
        text += 'e' + std::to_string(static_cast<int>(random() % 570) - 299);
        CAPTURE(text);
        REQUIRE(agrees(text));
    }
}

TEST_CASE("fractions and mixed numbers read as one rounded division") {
    CHECK(read("7/64") == 7.0 / 64.0);
    CHECK(read("1/3") == 1.0 / 3.0);
    CHECK(read("1 1/2") == 1.5);
    CHECK(read("1-1/2") == 1.5);
    CHECK(read("10 3/4") == 10.75);
    CHECK(read("-1 1/2") == -1.5);
    CHECK(read("12/14") == 12.0 / 14.0);
    CHECK(read("\u00bd") == 0.5);
    CHECK(read("1\u00bd") == 1.5);
    CHECK(read("1 \u215e") == 1.875);
    CHECK(read("7\u204464") == 7.0 / 64.0);
}

TEST_CASE("the longest number is taken and the rest is left") {
    const auto length = [](std::string_view text) { return leading_number(text).value().length; };
    CHECK(length("7/64 in") == 4);
    CHECK(length(" 1 1/2 in") == 6);
    CHECK(length("2-3 turns") == 1); // a range: 2-3 is no mixed number
    CHECK(length("1-3/2") == 1);     // nor is 1-3/2
    CHECK(length("3/0") == 1);       // a label
    CHECK(length("1 1/0") == 1);
    CHECK(length("2 eye") == 1); // no exponent
    CHECK(length("2e") == 1);
    CHECK(length("2e-") == 1);
    CHECK(length("2e3mm") == 3);
    CHECK(length("1,5") == 1);
    CHECK(length("1.2.3") == 3);
    CHECK(length("11/2") == 4);
}

TEST_CASE("what is no number is refused with a remedy") {
    for (const char* text : {"", " ", "turns", "-", "+", ".", "/64", "nan", "inf", "-inf", "NaN"}) {
        CHECK(refusal(text) == ErrorCode::not_found);
    }
    for (const char* text : {"1,5", "1 2", "3/0", "1.2.3", "7/64/2", "0x10", "1e", "1_000"}) {
        CHECK(refusal(text) == ErrorCode::malformed);
    }
    for (const char* text : {"1e999", "1e-999", "1e301", "9e-301", "1e99999999999999",
                             "1.0000000000000003e300", "11e299", "-9.99e300"}) {
        CHECK(refusal(text) == ErrorCode::out_of_range);
    }
    CHECK(refusal(std::string(401, '7')) == ErrorCode::too_large);
    CHECK(refusal(std::string(400, '7')) == ErrorCode::out_of_range);
    CHECK(read("0." + std::string(290, '0') + std::string(400, '7')) ==
          7.77777777777777777777777777e-291);
    CHECK(read("0e999999") == 0.0);
}

TEST_CASE("a number written and read is the same double") {
    // Against  nothing but itself: the round trip is the claim. 40,000 doubles of every size.
    std::mt19937_64 random(20261125);
    int checked = 0;
    while (checked < 20000) {
        const double v = std::bit_cast<double>(random());
        if (!(std::abs(v) >= 1e-300 && std::abs(v) <= 1e300)) continue;
        CAPTURE(v);
        REQUIRE(read(write_number(v)) == v);
        ++checked;
    }
    for (int i = 0; i < 20000; ++i) {
        const double v = static_cast<double>(random() >> 11) * 0x1p-53 * 100.0; // as sizes go
        CAPTURE(v);
        REQUIRE(read(write_number(v)) == v);
    }
}

TEST_CASE("a number is refused or can be written, around the largest and the smallest") {
    // The largest that is written: 1e300. A text that is nearer to it than to any other double is it.
    CHECK(read("1.00000000000000000000001e300") == 1e300);
    for (const double tiny : {1e-301, 5e-324, 0x1p-1022, -1e-305, 9.99e-301}) {
        CHECK(write_number(tiny) == "0"); // as a product of two that were read may be
    }
    std::mt19937_64 random(11);
    int refused = 0;
    for (int i = 0; i < 2000; ++i) {
        const std::string power = std::to_string(297 + static_cast<int>(random() % 6));
        for (const char* sign : {"e", "e-"}) {
            std::string text = std::to_string(random()) + sign;
            text.insert(1 + random() % 2, 1, '.');
            text += power;
            CAPTURE(text);
            const Result<double> number = read_number(text);
            if (!number.ok()) {
                ++refused;
                REQUIRE(number.error().code == ErrorCode::out_of_range);
                continue;
            }
            REQUIRE(read(write_number(number.value())) == number.value());
            REQUIRE(!write_rounded(number.value(), 30).empty());
        }
    }
    CHECK(refused > 1000);
    CHECK(refused < 3000);
}

TEST_CASE("a decimal of up to 15 digits comes back as it was written") {
    // Source  IEEE 754: 15 digits survive the way through a double
    std::mt19937_64 random(7);
    for (int i = 0; i < 5000; ++i) {
        std::string digits = std::to_string(random() % 900000000000000 + 100000000000000);
        while (digits.back() == '0') digits.pop_back();
        const std::string text = "0." + digits;
        REQUIRE(write_number(read(text)) == text);
    }
}

TEST_CASE("a number is rounded as the C++ library rounds it") {
    // Against  std::to_chars with a precision, which is exact and takes ties to the even digit; zeros at
    //          its end and the sign of a zero aside
    const auto theirs = [](double v, int decimals) {
        std::array<char, 400> buffer{};
        std::string text(buffer.data(), std::to_chars(buffer.data(), buffer.data() + buffer.size(),
                                                      v, std::chars_format::fixed, decimals)
                                            .ptr);
        if (decimals > 0) text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
        return text == "-0" ? std::string("0") : text;
    };
    std::mt19937_64 random(20261130);
    for (int i = 0; i < 20000; ++i) {
        const double size = std::pow(10.0, static_cast<double>(random() % 400) / 10.0 - 20.0);
        const double v = (static_cast<double>(random() >> 11) * 0x1p-52 - 1.0) * size;
        const double tie = static_cast<double>(random() % 4096) / 64.0; // half of them end in 5
        const int decimals = static_cast<int>(random() % 31);
        CAPTURE(v);
        CAPTURE(tie);
        CAPTURE(decimals);
        REQUIRE(write_rounded(v, decimals) == theirs(v, decimals));
        REQUIRE(write_rounded(tie, decimals % 7) == theirs(tie, decimals % 7));
    }
    for (const double v :
         {1e300, 9.5, 0.5, 1.5, 0.05, 99.95, 999999.5, 5e-324, 0x1p-1022, 0x1p60}) {
        for (int decimals = 0; decimals <= 30; ++decimals) {
            CAPTURE(v);
            CAPTURE(decimals);
            REQUIRE(write_rounded(v, decimals) == theirs(v, decimals));
        }
    }
}

TEST_CASE("a number is written as the C++ library writes it, or as long") {
    // Against  std::to_chars, which gives the shortest that comes back, and of several the closest. A power
    //          of two has neighbours at unequal distances, and may then get another last digit here.
    const auto theirs = [](double v) {
        std::array<char, 64> buffer{};
        const bool plain = std::abs(v) >= 1e-9 && std::abs(v) < 1e15;
        return std::string(
            buffer.data(),
            std::to_chars(buffer.data(), buffer.data() + buffer.size(), v,
                          plain ? std::chars_format::fixed : std::chars_format::scientific)
                .ptr);
    };
    std::mt19937_64 random(11);
    for (int i = 0; i < 20000; ++i) {
        const double any = std::bit_cast<double>(random());
        const double usual = static_cast<double>(random() >> 11) * 0x1p-53 * 100.0;
        const double rounded = static_cast<double>(random() % 100000) / 1000.0;
        CAPTURE(any);
        CAPTURE(usual);
        CAPTURE(rounded);
        if (std::abs(any) >= 1e-300 && std::abs(any) <= 1e300)
            REQUIRE(write_number(any) == theirs(any));
        REQUIRE(write_number(-usual) == theirs(-usual));
        REQUIRE(write_number(rounded) == (rounded == 0.0 ? "0" : theirs(rounded)));
    }
    for (int power = -996; power <= 996; ++power) {
        const double v = std::ldexp(1.0, power);
        CAPTURE(power);
        CHECK(read(write_number(v)) == v);
        CHECK(write_number(v).size() <= theirs(v).size() + 1);
    }
}

TEST_CASE("numbers are written short, without a locale") {
    CHECK(write_number(0.0) == "0");
    CHECK(write_number(-0.0) == "0");
    CHECK(write_number(2.778125) == "2.778125");
    CHECK(write_number(0.015) == "0.015");
    CHECK(write_number(0.0001) == "0.0001");
    CHECK(write_number(-25.4) == "-25.4");
    CHECK(write_number(1234567.0) == "1234567");
    CHECK(write_number(1e-12) == "1e-12");
    CHECK(write_rounded(2.778125, 3) == "2.778");
    CHECK(write_rounded(2.5, 3) == "2.5");
    CHECK(write_rounded(120.0, 0) == "120");
    CHECK(write_rounded(-0.0004, 3) == "0");
    CHECK(write_rounded(0.1 + 0.2, 6) == "0.3");
}
