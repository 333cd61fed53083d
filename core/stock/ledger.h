#pragma once
// What happened with the stock, entry by entry. Nothing is ever overwritten: what is on hand is the
// fold of the list, and an entry that was wrong is undone by a later one.

#include "core/tally/money.h"

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace wrapwright {

enum class EntryKind : unsigned char {
    bought,
    drawn,    ///< for a fly that was finished
    reserved, ///< for a line of an order
    released, ///< a reservation given back
    counted,  ///< what there really is: stands in place of all before it
    spoilt,   ///< lost with a fly, or otherwise
    finished, ///< no stock: a fly is done. amount = 1
    wasted,   ///< no stock: a fly was spoilt. amount = 1
};
[[nodiscard]] std::string_view name(EntryKind kind);

/// One thing that happened, in the order of `id`.
///
/// Valid   amount >= 0, in the unit of the item
struct Entry {
    std::int64_t id = 0;
    std::int64_t item = 0; ///< 0: no stock, a fly
    EntryKind kind = EntryKind::bought;
    double amount = 0.0;
    std::int64_t line = 0;    ///< of an order; 0: none
    std::int64_t sitting = 0; ///< 0: none
    int fly = 0;              ///< of the sitting, from 0
    std::int64_t undoes =
        0;         ///< id of the entry that does not hold any more; all else is empty then
    Money price{}; ///< of what was bought
    std::string note{};
    std::int64_t made = 0; ///< seconds since 1970
    friend bool operator==(const Entry&, const Entry&) = default;
};

/// How much there is of one item.
struct Holding {
    double on_hand = 0.0;
    double reserved = 0.0;
    [[nodiscard]] double free() const { return on_hand - reserved; }
    friend bool operator==(const Holding&, const Holding&) = default;
};

/// What the entries add up to.
class Holdings {
  public:
    [[nodiscard]] Holding of(std::int64_t item) const;
    /// Reserved of an item for a line.
    [[nodiscard]] double reserved(std::int64_t item, std::int64_t line) const;
    /// Flies finished for a line.
    [[nodiscard]] int finished(std::int64_t line) const;
    /// What one line holds: item and amount, by item.
    [[nodiscard]] std::vector<std::pair<std::int64_t, double>> held_by(std::int64_t line) const;

    /// Takes one entry that holds and undoes nothing.
    void take(const Entry& entry);

  private:
    std::unordered_map<std::int64_t, Holding> items_{};
    std::map<std::pair<std::int64_t, std::int64_t>, double> reserved_{}; // by line and item
    std::unordered_map<std::int64_t, int> finished_{};
};

/// For each entry whether it holds: nothing that holds undoes it, and it undoes nothing itself.
///
/// Valid   in the order of id; an undoing refers to an earlier entry
[[nodiscard]] std::vector<bool> holding_entries(std::span<const Entry> entries);

/// The fold of the list.
/// Cost    linear
[[nodiscard]] Holdings replay(std::span<const Entry> entries);

} // namespace wrapwright
