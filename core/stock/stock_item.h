#pragma once
// One line of the stock: what it is, how it is bought, where it lies. How much of it there is stands
// in the ledger and nowhere else.

#include "core/stock/table_column.h"
#include "core/tally/money.h"

#include <cstdint>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

namespace wrapwright {

/// What a material is counted in.
enum class StockUnit : unsigned char {
    pieces,
    metres,
    grams,
    flies, ///< a cape, a skin: by how many flies it makes
};
[[nodiscard]] std::string_view name(StockUnit unit);

struct StockItem {
    std::int64_t id = 0;
    std::string what;
    std::string also; ///< other names that recipes have for it, with ';' between
    StockUnit unit = StockUnit::pieces;
    double pack = 1.0; ///< units in one pack, above 0
    Money price{};     ///< of a pack
    double low = 0.0;  ///< less than this free: buy
    std::string place, opened, lot, supplier, origin, note;
    bool gone = false; ///< put away; what happened with it stays
    friend bool operator==(const StockItem&, const StockItem&) = default;
};

/// The columns of the stock, for tables and files alike.
[[nodiscard]] std::span<const TableColumn<StockItem>> stock_fields();

/// A name as it is compared: small letters, one blank between words.
[[nodiscard]] std::string plain_name(std::string_view text);

/// Finds the line of the stock that stands for a name.
class StockNames {
  public:
    explicit StockNames(std::span<const StockItem> items);
    /// Index into the items; -1 where none is called that.
    [[nodiscard]] int find(std::string_view what) const;

  private:
    std::unordered_map<std::string, int> names_{};
};

} // namespace wrapwright
