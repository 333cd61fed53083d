#include "platform/stock_finder.h"

#include "core/recipe/text.h"
#include "core/stock/enough.h"
#include "gui/open_fly.h"

#include <algorithm>

namespace wrapwright {

int StockFinder::want(const std::vector<std::string>& ids) {
    queue_.clear();
    for (auto id = ids.rbegin(); id != ids.rend(); ++id) {
        if (!known_.contains(*id)) queue_.push_back(*id);
    }
    return static_cast<int>(queue_.size());
}

std::vector<StockFinder::AtSize> StockFinder::find(Store& store, const std::string& id) {
    const Result<std::string> text = store.recipe_text(id);
    if (!text.ok()) return {};
    const Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return {};
    std::vector<AtSize> all;
    for (const HookSize size : recipe.value().size_list) {
        const auto fly = open_fly(id, recipe.value(), &size);
        if (!fly.ok() || fly.value()->tied.moments.empty()) continue;
        const OpenFly& of = *fly.value();
        all.push_back({size, stock_uses(of.pattern, of.resolved, of.tied)});
    }
    return all;
}

int StockFinder::work(Store& store, std::chrono::steady_clock::time_point until) {
    while (!queue_.empty() && std::chrono::steady_clock::now() < until) {
        known_.emplace(queue_.back(), find(store, queue_.back()));
        queue_.pop_back();
    }
    return static_cast<int>(queue_.size());
}

std::string StockFinder::words(const std::string& id, std::optional<HookSize> size,
                               const Book& book, const StockNames& names) const {
    std::string words;
    const auto known = known_.find(id);
    if (known == known_.end()) return words;
    for (const AtSize& at : known->second) {
        if (size && at.size != *size) continue;
        const int flies = flies_from_stock(at.uses, names, book.items, book.holdings);
        if (flies == 0) continue;
        if (!words.empty()) words += ", ";
        words.append(std::to_string(flies)).append(" #").append(write_hook_size(at.size));
    }
    return words;
}

} // namespace wrapwright
