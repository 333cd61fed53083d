#pragma once
// What the library knows of the flies that orders ask for: what they take, and how long they took.

#include "core/stock/order_work.h"
#include "gui/open_fly.h"
#include "platform/store/store.h"

#include <map>
#include <string>

namespace wrapwright {

/// Adds what sittings with a fly say of its times to `facts`.
///
/// Steps that were done with the whole batch, last, are finishing; a fly is timed whole when each of
/// its own steps was.
void add_times(LineFacts& facts, const Pattern& pattern, const Tied& tied,
               const std::vector<SittingState>& sittings);

/// Gives each line the id and the name of the recipe that its words mean; a line whose words mean none
/// keeps them.
[[nodiscard]] Result<bool> find_recipes(Store& store, std::vector<OrderLine>& lines);

/// Finds facts, and keeps them as long as neither recipe nor sittings change.
class FactFinder {
  public:
    /// The facts of every open line of a book.
    [[nodiscard]] std::vector<LineFacts> of(Store& store, const Book& book);
    /// A sitting went on, or a recipe was saved.
    void forget() { known_.clear(); }

  private:
    [[nodiscard]] LineFacts find(Store& store, const OrderLine& line) const;
    std::map<std::pair<std::string, std::string>, LineFacts> known_{}; // by recipe and size
};

} // namespace wrapwright
