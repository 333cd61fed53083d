#pragma once
// The recipe over all its sizes: what scales, what steps, what drops out, and what is found at each.

#include "gui/edit_work.h"

namespace wrapwright {

/// How an amount goes with the hook.
enum class SizeWay : unsigned char { scales, steps, stays, a_word };
[[nodiscard]] std::string_view words(SizeWay way);

struct SizesWork {
    struct Column {
        HookSize size{};
        std::shared_ptr<const OpenFly> fly{}; ///< nothing where it cannot be run
        std::string halted{};
        int stops = 0, likely = 0; ///< findings
    };
    struct Row {
        std::string path{}; ///< of the amount: "parts[2].turns"
        std::string label{};
        SizeWay way = SizeWay::stays;
        std::vector<std::string> cells{}; ///< what it comes to at each size; empty: left out there
    };
    std::vector<Column> columns{};
    std::vector<Row> rows{};
};

/// Cost    a run of the recipe for each of its sizes
[[nodiscard]] std::shared_ptr<const SizesWork> sizes_of(const EditWork& work);

/// The amount of a row; nothing for a path that is none.
[[nodiscard]] const Amount* amount_at(const Recipe& recipe, const std::string& path);

} // namespace wrapwright
