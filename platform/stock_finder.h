#pragma once
// What the stock makes of the library: which recipes, at which sizes, how many flies.

#include "core/stock/uses.h"
#include "platform/store/store.h"

#include <chrono>
#include <map>
#include <string>
#include <vector>

namespace wrapwright {

/// Finds what the recipes' flies take, a few recipes at a time, and keeps it as long as nobody changes them.
class StockFinder {
  public:
    /// These are wanted next, instead of those before; how many of them are not known yet.
    int want(const std::vector<std::string>& ids);
    /// Finds some until that moment; how many are left.
    int work(Store& store, std::chrono::steady_clock::time_point until);
    /// A recipe was changed; or all of them were.
    void forget(const std::string& id) { known_.erase(id); }
    void forget_all() { known_.clear(); }

    /// "9 #14, 4 #16": what the free stock makes of a recipe, at that size alone where one is said; empty
    /// where it makes none, or where nothing is known yet.
    [[nodiscard]] std::string words(const std::string& id, std::optional<HookSize> size,
                                    const Book& book, const StockNames& names) const;

  private:
    struct AtSize {
        HookSize size{};
        std::vector<StockUse> uses{};
    };
    [[nodiscard]] static std::vector<AtSize> find(Store& store, const std::string& id);
    std::map<std::string, std::vector<AtSize>> known_{};
    std::vector<std::string> queue_{}; ///< last first
};

} // namespace wrapwright
