#include "gui/tally_rows.h"

#include "core/tally/tally.h"
#include "core/tying/words.h"
#include "core/units/number_words.h"

#include <algorithm>

namespace wrapwright {

namespace {

void add(Drawn& sum, const PartTake& take, double flies = 1.0) {
    sum.turns += flies * take.turns;
    sum.count += flies * take.count;
    sum.length += flies * take.length;
    sum.mass += flies * take.mass.value;
}

} // namespace

std::vector<TallyRow> tally_rows(const Model& model) {
    std::vector<TallyRow> rows;
    const int moment = model.fly ? moment_of(model) : none;
    if (moment == none) return rows;
    const OpenFly& fly = *model.fly;
    const Recipe& recipe = fly.pattern.recipe;
    const bool working = at_work(model);
    const int step = working ? fly.tied.moments[static_cast<std::size_t>(moment)].step
                     : model.events.empty() ? -1
                                            : static_cast<int>(recipe.steps.size());
    const double waiting =
        model.events.empty()
            ? model.flies - 1
            : static_cast<double>(std::count(model.state.fly_state.begin(),
                                             model.state.fly_state.end(), FlyState::waiting));
    std::vector<std::pair<int, int>> keys;
    for (const PartTake& take : fly.tied.takes) {
        if (take.material == none) continue;
        const std::pair<int, int> key{take.part, take.material};
        const auto at = std::find(keys.begin(), keys.end(), key);
        const auto i = static_cast<std::size_t>(at - keys.begin());
        if (at == keys.end()) {
            keys.push_back(key);
            TallyRow row;
            row.part = take.part == none ? "joint" : part_words(recipe, take.part);
            row.material = material_words(recipe, take.material);
            row.by_length = comes_by_length(
                fly.resolved.materials[static_cast<std::size_t>(take.material)].kind);
            rows.push_back(std::move(row));
        }
        TallyRow& row = rows[i];
        const int when = take.step == none ? 0 : take.step;
        add(when < step ? row.used : when == step ? row.now : row.to_come, take);
        add(row.batch_to_come, take, waiting + (when >= step ? 1.0 : 0.0));
    }
    return rows;
}

std::string drawn_words(const TallyRow& row, const Drawn& drawn, bool inches) {
    std::string words;
    const auto join = [&](const std::string& more) {
        if (!words.empty()) words += ", ";
        words += more;
    };
    if (drawn.turns > 0.0) {
        join(turn_words(drawn.turns) + (drawn.turns == 1.0 ? " turn" : " turns"));
    } else if (!row.by_length && drawn.count > 0.0) {
        join(turn_words(drawn.count));
    }
    if (row.by_length && drawn.length.si > 0.0) join(length_words(drawn.length, inches));
    if (drawn.mass.si > 0.0) join(mass_words(drawn.mass));
    return words.empty() ? "-" : words;
}

} // namespace wrapwright
