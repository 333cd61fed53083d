#pragma once
// The part of the model for the library: the list, what is asked of it, and the fly box.

#include "core/stock/box.h"
#include "core/units/quantity.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// One recipe of the library, as its list shows it.
struct LibraryRow {
    std::string id, name, fly_class, sizes, tags;
    bool favourite = false;
    std::string
        from_stock{}; ///< "9 #14, 4 #16" that the stock makes; empty where that was not asked
    friend bool operator==(const LibraryRow&, const LibraryRow&) = default;
};

/// What the list of recipes is sorted by.
enum class RecipeOrder : unsigned char { name, fly_class, newest };

/// What is asked of the list of recipes beside the words of a search.
struct LibraryAsk {
    RecipeOrder order = RecipeOrder::name;
    bool favourites = false;               ///< alone
    std::string size{}, tag{}, material{}; ///< empty: any
    std::string from{}, to{};              ///< weight of the fly, as typed; empty: any
    bool stock = false;                    ///< what the stock makes alone
    bool box = false;                      ///< shown as the fly box
    friend bool operator==(const LibraryAsk&, const LibraryAsk&) = default;
};

/// A weight that was typed; bare numbers are grains beside inches, else milligrams. Nothing where it cannot
/// be read.
[[nodiscard]] std::optional<Mass> asked_weight(std::string_view text, bool inches);

struct LibraryWork {
    std::vector<LibraryRow> rows{};
    LibraryAsk ask{};
    std::shared_ptr<const BoxGrid> box{}; ///< nothing until the box was looked into
    std::string refused{};                ///< what was typed into the box and not taken, and why
    std::string waiting{}; ///< what is still being found out, in words; empty: nothing
};

} // namespace wrapwright
