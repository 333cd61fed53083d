#pragma once
// What a person sets once about orders: how careful, how quick, how dear.

#include "core/stock/order_work.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wrapwright {

/// Somebody in a swap.
struct Sender {
    std::string name;
    bool sent = false;
    friend bool operator==(const Sender&, const Sender&) = default;
};

struct BookSettings {
    double spoil = 0.05;   ///< 0 to 0.5
    double sure = 0.95;    ///< 0 to 0.999; 0: just the spoilt share on top
    double waste = 0.10;   ///< 0 to 0.9
    double learning = 1.0; ///< rate of the curve where none is fitted, 0.5 to 1
    bool wright = false;   ///< Wright's curve instead of Crawford's
    std::array<double, 7> minutes{120.0, 120.0, 120.0, 120.0, 120.0, 120.0, 120.0}; ///< Monday on
    Money hourly{}, packing{}, postage{};
    double fee = 0.0, tax = 0.0;  ///< shares of the price, 0 to 0.45; a tax of 0 is no column
    std::string currency{};       ///< a word
    std::vector<Sender> roster{}; ///< of the swap that is on
    bool letter = false;          ///< paper of letter size and 3 x 5 in cards; else A4 and A6
    std::string maker{};          ///< whose name tags and labels bear
    friend bool operator==(const BookSettings&, const BookSettings&) = default;
};

/// The roster as one text, names with ';' between and '+' before those who sent, and back. A name with
/// a ';' gets a comma for it; empty names and names said twice are left out.
[[nodiscard]] std::string text_of(const std::vector<Sender>& roster);
[[nodiscard]] std::vector<Sender> roster_of(std::string_view text);

/// What the settings mean for reckoning, on a day.
[[nodiscard]] WorkTerms terms_of(const BookSettings& settings, Day today);

/// Each setting as its key and its text.
void add_texts(const BookSettings& settings, std::vector<std::pair<std::string, std::string>>& out);

/// Takes a setting; whether there is such a key and the text can be meant.
[[nodiscard]] bool take_setting(BookSettings& settings, std::string_view key,
                                std::string_view text);

} // namespace wrapwright
