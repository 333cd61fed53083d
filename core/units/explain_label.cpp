// What hook sizes and aught labels say, and what they do not.

#include "core/units/explain_parts.h"
#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

std::string joined(const std::vector<HookSize>& sizes) {
    std::string text;
    for (const HookSize size : sizes) {
        if (!text.empty()) text += ", ";
        text += write_hook_size(size);
    }
    return text;
}

void add_neighbours(SizeMeaning& meaning, HookSize size) {
    if (const auto next = next_larger(size)) {
        meaning.facts.push_back({"next larger", write_hook_size(*next)});
    }
    if (const auto next = next_smaller(size)) {
        meaning.facts.push_back({"next smaller", write_hook_size(*next)});
    }
}

/// The n of "nXL" or "nX long" where that is all there is; one or two digits, as they were let in.
std::optional<int> steps_long(std::string_view extra) {
    const std::size_t x = extra.find_first_of("xX");
    std::string_view word = extra.substr(x + 1);
    if (word.starts_with('-')) word.remove_prefix(1);
    const std::string low = lowered(trimmed(word));
    if (low != "l" && low != "long") return std::nullopt;
    return std::stoi(std::string(extra.substr(0, x)));
}

/// The two readings of "nX long" that are in print, neither of which is computed with.
std::string shank_conventions(HookSize size, int steps) {
    const HookSize every_number{size.number - steps};
    std::optional<HookSize> even = size;
    for (int i = 0; i < steps && even; ++i) even = next_larger(*even);
    if (!even || every_number < largest_hook) {
        return "unknown until measured; the conventions lead beyond the largest hook";
    }
    return "unknown until measured; counting every number, that of a " +
           write_hook_size(every_number) + "; counting even numbers, that of a " +
           write_hook_size(*even);
}

void add_extra(SizeExplanation& out, SizeMeaning& meaning, const WrittenHookSizes& hooks) {
    meaning.facts.push_back({"in the maker's words", hooks.extra + ", kept as text"});
    const std::optional<int> steps = steps_long(hooks.extra);
    if (hooks.sizes.size() == 1 && steps) {
        meaning.facts.push_back({"shank", shank_conventions(hooks.sizes.front(), *steps)});
    }
    out.warnings.push_back(hooks.extra + " has no common base: nothing is computed from it, only "
                                         "from measured millimetres");
}

} // namespace

void explain_hooks(SizeExplanation& out, const WrittenHookSizes& hooks) {
    SizeMeaning meaning{hooks.sizes.size() == 1 ? "hook size" : "hook sizes"};
    meaning.facts.push_back({"as hook", joined(hooks.sizes)});
    if (hooks.sizes.size() == 1) add_neighbours(meaning, hooks.sizes.front());
    const auto [large, small] = std::minmax_element(hooks.sizes.begin(), hooks.sizes.end());
    const bool aught = large->number <= 0;
    if (hooks.step == RangeStep::every) {
        meaning.facts.push_back({"steps", "every number, since an end of the range is odd"});
    } else if (hooks.step == RangeStep::even) {
        const bool leaves_out_1 = aught && small->number > 1;
        meaning.facts.push_back({"steps", std::string("the even ladder, as most hooks are sold") +
                                              (leaves_out_1 ? "; 1 is left out" : "")});
    }
    meaning.facts.push_back({"order", aught ? "above 1 the order turns: 1/0, 2/0, 3/0 grow larger"
                                            : "a larger number is a smaller hook"});
    if (!hooks.extra.empty()) add_extra(out, meaning, hooks);
    out.warnings.push_back("a hook size is a label that differs between makers by about one "
                           "number; measure gape, shank and wire in mm");
    out.meanings.push_back(std::move(meaning));
}

void explain_aught(SizeExplanation& out, int aughts) {
    SizeMeaning thread{"thread label"};
    thread.facts.push_back({"as thread", std::to_string(aughts) + "/0, kept as a label"});
    thread.facts.push_back({"order", "more zeros are finer thread: 3/0 is thicker than 8/0, within "
                                     "one maker's line; not comparable between makers"});
    thread.facts.push_back({"weight", "none can be computed: look for den or tex on the spool"});
    out.warnings.push_back("aught numbers of thread have no common base: one line's 8/0 is 72 den, "
                           "another's 6/0 is 70 den");
    out.meanings.push_back(std::move(thread));

    struct SeedBead {
        int aughts;
        double mm;
    };
    // Source  usual outside diameters, from memory; they vary between makers by 0.2 mm
    constexpr SeedBead seed_beads[] = {{6, 4.0}, {8, 3.0}, {11, 2.1}, {15, 1.5}};
    for (const SeedBead& bead : seed_beads) {
        if (bead.aughts != aughts) continue;
        out.meanings.push_back(
            {"glass bead",
             {{"usual diameter", "about " + shown(bead.mm) + " mm, from memory; measure it",
               bead.mm}}});
    }
}

void explain_old_hook(SizeExplanation& out, std::string_view zeros) {
    const std::string label = std::to_string(zeros.size()) + "/0";
    SizeMeaning meaning{"old hook size"};
    meaning.facts.push_back({"as old hook",
                             "a small hook for dry flies, as in a British list of the 1880s; very "
                             "roughly today's 15 to 17 (common practice, no source)"});
    meaning.facts.push_back({"never", label + ", which is a large hook"});
    out.meanings.push_back(std::move(meaning));
    std::string warning = quoted(zeros);
    warning += " needs its era, or the word thread; it is never the hook " + label;
    out.warnings.push_back(std::move(warning));
}

} // namespace wrapwright::detail
