#include "core/bench/course.h"

#include "core/assert.h"

namespace wrapwright {

namespace {

void add_stage(const Pattern& pattern, const Tied& tied, int flies, BatchStage stage,
               std::vector<Stop>& out) {
    const int moments = static_cast<int>(tied.moments.size());
    for (int first = 0; first < moments;) {
        const int step = tied.moments[static_cast<std::size_t>(first)].step;
        int end = first;
        while (end < moments && tied.moments[static_cast<std::size_t>(end)].step == step) ++end;
        if (pattern.recipe.steps[static_cast<std::size_t>(step)].batch == stage) {
            for (int fly = 0; fly < flies; ++fly) {
                for (int m = first; m < end; ++m) out.push_back({fly, m});
            }
        }
        first = end;
    }
}

void add_each(const Pattern& pattern, const Tied& tied, int flies, std::vector<Stop>& out) {
    for (int fly = 0; fly < flies; ++fly) {
        for (std::size_t m = 0; m < tied.moments.size(); ++m) {
            const auto step = static_cast<std::size_t>(tied.moments[m].step);
            if (pattern.recipe.steps[step].batch == BatchStage::each) {
                out.push_back({fly, static_cast<int>(m)});
            }
        }
    }
}

} // namespace

std::vector<Stop> course_of(const Pattern& pattern, const Tied& tied, int flies) {
    WW_ASSERT(flies >= 1);
    std::vector<Stop> out;
    out.reserve(tied.moments.size() * static_cast<std::size_t>(flies));
    add_stage(pattern, tied, flies, BatchStage::all_first, out);
    add_each(pattern, tied, flies, out);
    add_stage(pattern, tied, flies, BatchStage::all_last, out);
    return out;
}

} // namespace wrapwright
