#pragma once
// The fractions of an inch that beads are sold by, and the rounded millimetres sellers print.

#include <array>
#include <string_view>

namespace wrapwright {

/// One bead size of the trade: the fraction is the reference, the millimetres are labels.
struct BeadLabel {
    int numerator = 1;
    int denominator = 1;
    std::string_view sold_as; ///< millimetres seen on packets; never computed from

    [[nodiscard]] constexpr double inches() const { return double(numerator) / denominator; }
    [[nodiscard]] constexpr double millimetres() const {
        return numerator * 127.0 / 5 / denominator;
    }
};

/// From small to large.
///
/// Source  bead charts of two retailers; 3/32, 1/8, 9/64, 1/4: common practice, no source
inline constexpr std::array<BeadLabel, 10> bead_labels{{{1, 16, "1.5, 1.6"},
                                                        {5, 64, "2.0"},
                                                        {3, 32, "2.3, 2.4, 2.5"},
                                                        {7, 64, "2.7, 2.8"},
                                                        {1, 8, "3.0, 3.2, 3.3"},
                                                        {9, 64, "3.5, 3.6"},
                                                        {5, 32, "3.8, 4.0"},
                                                        {3, 16, "4.6, 4.8"},
                                                        {7, 32, "5.5"},
                                                        {1, 4, "6.0, 6.4"}}};

} // namespace wrapwright
