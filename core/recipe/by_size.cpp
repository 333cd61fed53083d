#include "core/recipe/by_size.h"

#include <algorithm>
#include <utility>

namespace wrapwright {

namespace {

const SizedText* row_of(const Amount& amount, HookSize size) {
    for (const SizedText& row : amount.by_size) {
        if (std::find(row.list.begin(), row.list.end(), size) != row.list.end()) return &row;
    }
    return nullptr;
}

/// "14", "10-14" where a range means just these, else "10, 11, 14".
std::string sizes_words(const std::vector<HookSize>& sizes) {
    std::string words = write_hook_size(sizes.front());
    if (sizes.size() == 1) return words;
    std::string range = words + "-" + write_hook_size(sizes.back());
    const Result<WrittenHookSizes> read = parse_hook_sizes(range);
    if (read.ok() && read.value().sizes == sizes) return range;
    for (std::size_t i = 1; i < sizes.size(); ++i) words += ", " + write_hook_size(sizes[i]);
    return words;
}

} // namespace

const std::string& words_at(const Amount& amount, HookSize size) {
    const SizedText* row = row_of(amount, size);
    return row == nullptr ? amount.text : row->text;
}

std::vector<Edit> sized_edits(const Recipe& recipe, const std::string& path, const Amount& amount,
                              HookSize size, SizeScope scope, const std::string& words) {
    std::vector<Edit> edits;
    std::vector<HookSize> sizes = recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    const auto is_ours = [&](HookSize s) {
        return std::find(sizes.begin(), sizes.end(), s) != sizes.end();
    };
    const auto set = [&](const std::string& at, std::string text) {
        edits.push_back({EditKind::set, at, std::move(text), 0, 0});
    };
    // The rows that are written anew go first, so that no size is in two of them.
    for (const SizedText& row : amount.by_size) {
        if (std::any_of(row.list.begin(), row.list.end(), is_ours)) {
            set(path + ".by_size." + row.sizes, {});
        }
    }
    if (scope == SizeScope::all) {
        set(path, words);
        return edits;
    }
    std::vector<std::pair<std::string, std::vector<HookSize>>> rows;
    bool joins = false;
    for (const HookSize one : sizes) {
        const SizedText* row = row_of(amount, one);
        const bool changed = one == size || (scope == SizeScope::from_here_down && size < one);
        const std::string text = changed ? words : row == nullptr ? std::string() : row->text;
        if (text.empty() || (changed && text == amount.text)) {
            joins = false; // what holds everywhere needs no row
            continue;
        }
        if (!joins || rows.back().first != text) rows.push_back({text, {}});
        rows.back().second.push_back(one);
        joins = true;
    }
    for (const auto& [text, of] : rows) set(path + ".by_size." + sizes_words(of), text);
    return edits;
}

} // namespace wrapwright
