#pragma once
// The fly box: how many of each pattern and size there are, and how many there should be.

#include "core/result.h"
#include "core/units/hook_size.h"

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wrapwright {

/// One thing that was said of the box, in the order in which it was said.
struct BoxEntry {
    std::string recipe, size; ///< id; as write_hook_size has it
    bool want = false;        ///< how many there should be; else how many there are
    int flies = 0;
    std::int64_t after = 0; ///< id of the ledger's last entry by then
    friend bool operator==(const BoxEntry&, const BoxEntry&) = default;
};

/// A fly that was finished at the bench for nobody's order: it lies in the box.
struct BoxFly {
    std::string recipe, size;
    std::int64_t entry = 0; ///< id in the ledger
};

struct BoxCount {
    int have = 0, want = 0;
    friend bool operator==(const BoxCount&, const BoxCount&) = default;
};
using BoxCounts = std::map<std::pair<std::string, std::string>, BoxCount>; ///< by recipe and size

/// What is in the box: what was counted last, and what was finished since.
[[nodiscard]] BoxCounts count_box(std::span<const BoxEntry> said, std::span<const BoxFly> finished);

/// What a cell of the box says: "7", "7/12", "/12"; nothing of what it does not say. An empty one says 0/0.
struct BoxCell {
    std::optional<int> have{}, want{};
    friend bool operator==(const BoxCell&, const BoxCell&) = default;
};
/// Fails   malformed for anything else; out_of_range over 9,999 flies
[[nodiscard]] Result<BoxCell> read_box_cell(std::string_view text);

/// "7/12"; "7" where none are wanted.
[[nodiscard]] std::string write_box_cell(const BoxCount& count);

/// One recipe that the box is laid out for.
struct BoxPattern {
    std::string id{}, name{};
    std::string sizes{}; ///< as its recipe writes them
    int ordered = 0;     ///< flies that open orders still want of it
};

/// Patterns by sizes, with what is there and what is wanted.
struct BoxGrid {
    struct Row {
        BoxPattern pattern{};
        std::vector<BoxCount> counts{}; ///< one for each size
        std::vector<bool> written{};    ///< whether the recipe is written for that size
        BoxCount all{};
        int missing =
            0; ///< wanted and not there, size by size: what is over of one is none of another
    };
    std::vector<HookSize> sizes{}; ///< large hooks first
    std::vector<Row> rows{};
    std::vector<BoxCount> sums{}; ///< one for each size
    BoxCount all{};
    int missing = 0, ordered = 0;
};

/// The box for these patterns, in their order: columns for every size that one of them is written for
/// or that the box has of it.
/// Cost    linear in patterns and sizes
[[nodiscard]] BoxGrid box_grid(std::vector<BoxPattern> patterns, const BoxCounts& counts);

} // namespace wrapwright
