#include "core/bench/otherwise.h"

#include "core/recipe/by_size.h"

#include <map>

namespace wrapwright {

namespace {

/// The first amount that a text says, in words: "7 turns" of "rib: 7 turns, 0.5 mm apart".
std::string_view first_amount(std::string_view text) {
    const std::size_t colon = text.find(": ");
    if (colon != std::string_view::npos) text.remove_prefix(colon + 2);
    return text.substr(0, text.find(','));
}

std::string entry(std::string_view list, int index) {
    return std::string(list).append("[").append(std::to_string(index)).append("]");
}

} // namespace

std::vector<Edit> otherwise_edits(const Pattern& pattern, const Resolved& numbers, const Tied& tied,
                                  const std::vector<Otherwise>& changes) {
    const Recipe& recipe = pattern.recipe;
    std::vector<Edit> edits;
    std::map<int, std::string> tips;
    for (const Otherwise& change : changes) {
        const Moment& moment = tied.moments[static_cast<std::size_t>(change.stop.moment)];
        const Act& act = numbers.acts[static_cast<std::size_t>(moment.act)];
        const Step& step = recipe.steps[static_cast<std::size_t>(act.step)];
        const Action& action = step.actions[static_cast<std::size_t>(act.index)];
        std::string& tip = tips.try_emplace(act.step, step.tip).first->second;
        tip.append(tip.empty() ? "Done otherwise: " : " Done otherwise: ").append(change.text);

        const std::string words(first_amount(change.text));
        const Result<Reading> read = read_amount(words, {});
        if (!read.ok() || read.value().kind != AmountKind::exact || read.value().bare) continue;
        const bool turns = read.value().unit == Unit::turns;
        if (!turns && read.value().unit != Unit::count) continue;
        const char* key = turns ? "turns" : "count";
        const Amount& own = turns ? action.turns : action.count;
        const std::string act_path =
            entry("steps", act.step) + "." + entry("actions", act.index) + "." + key;
        const Part* part =
            act.part == none ? nullptr : &recipe.parts[static_cast<std::size_t>(act.part)];
        const bool by_part =
            !own.given() && part != nullptr && (turns ? part->turns : part->count).given();
        const Amount& amount = by_part ? (turns ? part->turns : part->count) : own;
        const std::string path = by_part ? entry("parts", act.part) + "." + key : act_path;
        for (Edit& edit :
             sized_edits(recipe, path, amount, tied.size, SizeScope::this_size, words)) {
            edits.push_back(std::move(edit));
        }
    }
    for (auto& [step, tip] : tips) {
        edits.push_back({EditKind::set, entry("steps", step) + ".tip", std::move(tip), 0, 0});
    }
    return edits;
}

std::string otherwise_note(const std::vector<Otherwise>& changes) {
    std::string note;
    for (const Otherwise& change : changes) {
        note.append(note.empty() ? "" : "; ").append(change.text);
    }
    return note;
}

} // namespace wrapwright
