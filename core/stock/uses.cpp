#include "core/stock/uses.h"

#include "core/tally/tally.h"
#include "core/tying/words.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"

namespace wrapwright {

namespace {

/// "jig hook": what the recipe says up to the first comma, for the rest is advice.
std::string hook_name(const Recipe& recipe, int base) {
    const Base& of = recipe.bases[static_cast<std::size_t>(base)];
    std::string words = of.text.substr(0, of.text.find_first_of(",;("));
    while (!words.empty() && words.back() == ' ') words.pop_back();
    if (words.empty() && of.family) words.append(name(*of.family)).append(" hook");
    return words.empty() ? base_words(recipe, base) : words;
}

/// A cape is bought whole, whatever the length of the barbs that are taken from it.
bool sold_by_size(const Pattern& pattern, int material) {
    const MaterialKind kind = pattern.recipe.materials[static_cast<std::size_t>(material)].kind;
    return kind != MaterialKind::hackle && kind != MaterialKind::soft_hackle;
}

std::string name_of(const Pattern& pattern, const Draw& draw) {
    if (draw.material == none) {
        return hook_name(pattern.recipe, draw.base).append(" #").append(write_hook_size(draw.hook));
    }
    std::string words = material_words(pattern.recipe, draw.material);
    if (draw.measure.si > 0.0 && sold_by_size(pattern, draw.material)) {
        words.append(1, ' ').append(write_rounded(in_millimetres(draw.measure), 2)).append(" mm");
    }
    return words;
}

} // namespace

std::vector<StockUse> stock_uses(const Pattern& pattern, const Resolved& resolved, const Tied& tied,
                                 int until_step) {
    Tied part;
    const Tied* of = &tied;
    if (until_step != none) {
        part.size = tied.size;
        for (const PartTake& take : tied.takes) {
            if (take.step <= until_step) part.takes.push_back(take);
        }
        of = &part;
    }
    std::vector<StockUse> out;
    for (const Draw& draw : tally_batch({{&resolved, of, 1}})) {
        StockUse use;
        use.what = name_of(pattern, draw);
        use.count = draw.count;
        use.metres = draw.wound || draw.count <= 0.0 ? draw.length.si : draw.length.si * draw.count;
        use.grams = in_grams(draw.mass.value);
        out.push_back(std::move(use));
    }
    return out;
}

std::optional<double> use_in(StockUnit unit, const StockUse& use) {
    double amount = 0.0;
    switch (unit) {
    case StockUnit::pieces: amount = use.count; break;
    case StockUnit::metres: amount = use.metres; break;
    case StockUnit::grams: amount = use.grams; break;
    case StockUnit::flies: amount = 1.0; break;
    }
    if (amount > 0.0) return amount;
    return std::nullopt;
}

StockUnit usual_unit(const StockUse& use) {
    if (use.count > 0.0) return StockUnit::pieces;
    return use.metres > 0.0 ? StockUnit::metres : StockUnit::grams;
}

} // namespace wrapwright
