#include "core/units/decimal.h"

#include "core/assert.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <utility>

namespace wrapwright::detail {

namespace {

/// A whole number of up to 4,096 bits, little end first; no limb above `used` counts.
///
/// The longest that is needed: 400 digits (1,329 bits) down to 1e-300, which is a division by
/// 10^699 after a shift by 2,385 bits: 3,714 bits.
class Whole {
  public:
    void multiply_add(std::uint32_t factor, std::uint32_t addend) {
        std::uint64_t carry = addend;
        for (std::size_t i = 0; i < used_; ++i) {
            carry += std::uint64_t{limb_[i]} * factor;
            limb_[i] = static_cast<std::uint32_t>(carry);
            carry >>= 32;
        }
        if (carry != 0) append(static_cast<std::uint32_t>(carry));
    }

    /// Divides, rounding down, and gives what was left over.
    std::uint32_t divide(std::uint32_t divisor) {
        std::uint64_t rest = 0;
        for (std::size_t i = used_; i-- > 0;) {
            rest = (rest << 32) | limb_[i];
            limb_[i] = static_cast<std::uint32_t>(rest / divisor);
            rest %= divisor;
        }
        while (used_ > 0 && limb_[used_ - 1] == 0) --used_;
        return static_cast<std::uint32_t>(rest);
    }

    /// Times 2^32, so many times.
    void shift_limbs(std::size_t count) {
        WW_ASSERT(used_ + count <= limb_.size());
        for (std::size_t i = used_; i-- > 0;) limb_[i + count] = limb_[i];
        for (std::size_t i = 0; i < count; ++i) limb_[i] = 0;
        used_ += count;
    }

    [[nodiscard]] int bits() const {
        return used_ == 0 ? 0 : static_cast<int>(32 * used_) - std::countl_zero(limb_[used_ - 1]);
    }

    [[nodiscard]] bool bit(int i) const {
        return (limb_[static_cast<std::size_t>(i / 32)] >> (i % 32) & 1U) != 0;
    }

    [[nodiscard]] bool any_below(int i) const {
        for (int k = 0; k < i; ++k) {
            if (bit(k)) return true;
        }
        return false;
    }

  private:
    void append(std::uint32_t limb) {
        WW_ASSERT(used_ < limb_.size());
        limb_[used_++] = limb;
    }

    std::array<std::uint32_t, 128> limb_{};
    std::size_t used_ = 0;
};

/// The double nearest to (whole + something below 1 if `more`) x 2^power.
double rounded(const Whole& whole, bool more, int power) {
    const int bits = whole.bits();
    const int dropped = bits > 53 ? bits - 53 : 0;
    std::uint64_t kept = 0;
    for (int i = bits; i-- > dropped;) kept = kept << 1 | (whole.bit(i) ? 1U : 0U);
    if (dropped > 0 && whole.bit(dropped - 1)) {
        const bool above_half = more || whole.any_below(dropped - 1);
        if (above_half || (kept & 1U) != 0) ++kept; // 2^53 is a double too
    }
    return std::ldexp(static_cast<double>(kept), power + dropped);
}

/// Without the zeros at the end.
Decimal trimmed(Decimal decimal) {
    while (!decimal.digits.empty() && decimal.digits.back() == '0') {
        decimal.digits.pop_back();
        ++decimal.exponent;
    }
    return decimal.digits.empty() ? Decimal{} : decimal;
}

} // namespace

double nearest_double(std::string_view digits, int exponent) {
    constexpr double tens[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                               1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                               1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    if (digits.size() <= 15 && exponent >= -22 && exponent <= 22) {
        std::uint64_t whole = 0; // below 2^53, and 10^22 is a double: one rounding in all
        for (const char c : digits) whole = whole * 10 + static_cast<std::uint64_t>(c - '0');
        const auto exact = static_cast<double>(whole);
        return exponent < 0 ? exact / tens[-exponent] : exact * tens[exponent];
    }
    WW_ASSERT(digits.size() <= max_digits);
    WW_ASSERT(exponent + static_cast<int>(digits.size()) <= max_power + 1); // value < 1e301
    WW_ASSERT(exponent + static_cast<int>(digits.size()) > -max_power);     // value >= 1e-300

    Whole whole;
    for (const char c : digits) whole.multiply_add(10, static_cast<std::uint32_t>(c - '0'));
    for (int i = 0; i < exponent; ++i) whole.multiply_add(10, 0);
    if (exponent >= 0) return rounded(whole, false, 0);

    // Room below the point: log2(10) < 10/3 bits for each division by ten, 55 for the answer and
    // the bit that rounds it.
    const int room = -exponent * 10 / 3 + 55;
    whole.multiply_add(1U << (room % 32), 0);
    whole.shift_limbs(static_cast<std::size_t>(room / 32));
    bool more = false;
    for (int i = exponent; i < 0; ++i) more |= whole.divide(10) != 0;
    return rounded(whole, more, -room);
}

Decimal exact_decimal(double value) {
    WW_ASSERT(value >= 0.0 && std::isfinite(value));
    if (value == 0.0) return {}; // exact
    int power = 0;
    auto bits = static_cast<std::uint64_t>(std::ldexp(std::frexp(value, &power), 53));
    power -= 53;
    const int even = std::countr_zero(bits);
    bits >>= even;
    power += even;

    Whole whole;
    whole.multiply_add(1, static_cast<std::uint32_t>(bits >> 32));
    whole.shift_limbs(1);
    whole.multiply_add(1, static_cast<std::uint32_t>(bits));
    for (int i = 0; i < power; ++i) whole.multiply_add(2, 0);
    int fives = std::max(-power, 0);
    for (; fives >= 13; fives -= 13) whole.multiply_add(1'220'703'125, 0); // 5^13
    for (; fives > 0; --fives) whole.multiply_add(5, 0);

    Decimal decimal{{}, std::min(power, 0)};
    while (whole.bits() > 0) {
        std::uint32_t nine = whole.divide(1'000'000'000);
        for (int i = 0; i < 9; ++i, nine /= 10)
            decimal.digits += static_cast<char>('0' + nine % 10);
    }
    std::reverse(decimal.digits.begin(), decimal.digits.end());
    decimal.digits.erase(0, decimal.digits.find_first_not_of('0'));
    return trimmed(std::move(decimal));
}

Decimal rounded_to(Decimal value, int exponent) {
    const int drop = exponent - value.exponent;
    const int kept = static_cast<int>(value.digits.size()) - drop;
    if (drop <= 0) return value;
    if (kept < 0) return {};
    const std::string gone = value.digits.substr(static_cast<std::size_t>(kept));
    value.digits.resize(static_cast<std::size_t>(kept));
    value.exponent = exponent;
    const bool odd = kept > 0 && (value.digits.back() - '0') % 2 == 1;
    if (gone > "5" || (gone == "5" && odd)) { // the last digit is no 0, so that "50" cannot be
        while (!value.digits.empty() && value.digits.back() == '9') {
            value.digits.pop_back();
            ++value.exponent;
        }
        if (value.digits.empty()) value.digits.push_back('0');
        ++value.digits.back();
    }
    return trimmed(std::move(value));
}

} // namespace wrapwright::detail
