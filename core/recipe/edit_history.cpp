#include "core/recipe/edit.h"
#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright {

std::string fresh_id(std::string_view words, const std::vector<std::string>& taken) {
    constexpr std::size_t longest = 16;
    std::string id;
    for (const char c : detail::lowered(words)) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (c == ',' || c == '(' || c == ';') break;
        if (plain) id += c;
        if (!plain && !id.empty() && id.back() != '-') {
            if (id.size() >= longest) break; // whole words
            id += '-';
        }
    }
    if (id.size() > 2 * longest) id.resize(2 * longest);
    while (!id.empty() && id.back() == '-') id.pop_back();
    if (id.empty()) id = "new";
    const auto is_taken = [&](const std::string& one) {
        return std::find(taken.begin(), taken.end(), one) != taken.end();
    };
    if (!is_taken(id)) return id;
    for (int n = 2;; ++n) {
        const std::string numbered = id + "-" + std::to_string(n);
        if (!is_taken(numbered)) return numbered;
    }
}

void History::did(Draft next, std::string_view joins) {
    if (next == *now_) return;
    const bool same_step = !joins.empty() && joins == joins_ && !past_.empty();
    if (!same_step) past_.push_back(now_);
    if (past_.size() > most) past_.erase(past_.begin());
    joins_ = joins;
    future_.clear();
    now_ = std::make_shared<const Draft>(std::move(next));
}

bool History::undo() {
    if (past_.empty()) return false;
    future_.push_back(now_);
    now_ = past_.back();
    past_.pop_back();
    settle();
    return true;
}

bool History::redo() {
    if (future_.empty()) return false;
    past_.push_back(now_);
    now_ = future_.back();
    future_.pop_back();
    settle();
    return true;
}

} // namespace wrapwright
