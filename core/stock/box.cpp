#include "core/stock/box.h"

#include "core/units/scan.h"

#include <algorithm>
#include <set>

namespace wrapwright {

namespace {

constexpr int most_flies = 9'999;

Result<int> whole_number(std::string_view text) {
    int value = 0;
    if (text.empty()) value = -1;
    for (const char c : text) {
        if (!detail::is_digit(c)) value = -1;
        if (value < 0) break;
        value = 10 * value + (c - '0');
        if (value > most_flies) {
            return Error{ErrorCode::out_of_range,
                         "a box holds no more than 9,999 of one fly",
                         "write how many there are",
                         {}};
        }
    }
    if (value >= 0) return value;
    return Error{ErrorCode::malformed,
                 std::string(text).insert(0, 1, '\'').append("' is no count of flies"),
                 "write 7, or 7/12 for seven there and twelve wanted",
                 {}};
}

} // namespace

BoxCounts count_box(std::span<const BoxEntry> said, std::span<const BoxFly> finished) {
    BoxCounts counts;
    std::map<std::pair<std::string, std::string>, std::int64_t> counted; // the ledger by then
    for (const BoxEntry& entry : said) {
        const std::pair key(entry.recipe, entry.size);
        BoxCount& count = counts[key];
        (entry.want ? count.want : count.have) = entry.flies;
        if (!entry.want) counted[key] = entry.after;
    }
    for (const BoxFly& fly : finished) {
        const std::pair key(fly.recipe, fly.size);
        const auto since = counted.find(key);
        if (since == counted.end() || fly.entry > since->second) ++counts[key].have;
    }
    return counts;
}

Result<BoxCell> read_box_cell(std::string_view text) {
    text = detail::trimmed(text);
    if (text.empty()) return BoxCell{0, 0};
    BoxCell cell;
    const std::size_t stroke = text.find('/');
    const std::string_view have = detail::trimmed(text.substr(0, stroke));
    if (!have.empty()) {
        const Result<int> read = whole_number(have);
        if (!read.ok()) return read.error();
        cell.have = read.value();
    }
    if (stroke == std::string_view::npos) return cell;
    const Result<int> want = whole_number(detail::trimmed(text.substr(stroke + 1)));
    if (!want.ok()) return want.error();
    cell.want = want.value();
    return cell;
}

std::string write_box_cell(const BoxCount& count) {
    std::string text = std::to_string(count.have);
    if (count.want > 0) text.append("/").append(std::to_string(count.want));
    return text;
}

BoxGrid box_grid(std::vector<BoxPattern> patterns, const BoxCounts& counts) {
    BoxGrid grid;
    std::vector<std::vector<HookSize>> written;
    std::set<HookSize> sizes;
    for (const BoxPattern& pattern : patterns) {
        const Result<WrittenHookSizes> read = parse_hook_sizes(pattern.sizes);
        written.push_back(read.ok() ? read.value().sizes : std::vector<HookSize>{});
        sizes.insert(written.back().begin(), written.back().end());
        const auto first = counts.lower_bound({pattern.id, {}});
        for (auto at = first; at != counts.end() && at->first.first == pattern.id; ++at) {
            const Result<WrittenHookSize> size = parse_hook_size(at->first.second);
            if (size.ok() && at->second != BoxCount{}) sizes.insert(size.value().size);
        }
    }
    grid.sizes.assign(sizes.begin(), sizes.end());
    std::vector<std::string> names;
    names.reserve(grid.sizes.size());
    for (const HookSize size : grid.sizes) names.push_back(write_hook_size(size));
    grid.sums.resize(grid.sizes.size());
    for (std::size_t p = 0; p < patterns.size(); ++p) {
        BoxGrid::Row row;
        row.pattern = std::move(patterns[p]);
        for (std::size_t s = 0; s < grid.sizes.size(); ++s) {
            const auto at = counts.find({row.pattern.id, names[s]});
            const BoxCount count = at == counts.end() ? BoxCount{} : at->second;
            const auto& own = written[p];
            row.counts.push_back(count);
            row.written.push_back(std::find(own.begin(), own.end(), grid.sizes[s]) != own.end());
            row.missing += std::max(0, count.want - count.have);
            for (BoxCount* sum : {&row.all, &grid.sums[s], &grid.all}) {
                sum->have += count.have;
                sum->want += count.want;
            }
        }
        grid.missing += row.missing;
        grid.ordered += row.pattern.ordered;
        grid.rows.push_back(std::move(row));
    }
    return grid;
}

} // namespace wrapwright
