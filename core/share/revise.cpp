#include "core/share/revise.h"

#include "core/recipe/measure.h"

namespace wrapwright {

namespace {

void add_line(std::string& to, std::string_view line) {
    if (!to.empty()) to += '\n';
    to += line;
}

} // namespace

Recipe fork_recipe(const Recipe& recipe, std::string_view id, std::string_view name,
                   std::string_view author) {
    Recipe mine = recipe;
    mine.id = id;
    mine.name = name;
    Provenance& p = mine.provenance;
    p.version_of = recipe.name.empty() ? recipe.id : recipe.name;
    // Whose it was stays said, whatever the new author's name is.
    if (!p.author.empty() && p.author != author) {
        std::string credit = "after " + p.author;
        if (p.credit.find(credit) == std::string::npos) add_line(p.credit, credit);
    }
    p.author = author;
    return mine;
}

Recipe with_otherwise(Recipe recipe, const Resolved& numbers, const Tied& tied,
                      const std::vector<Otherwise>& otherwise) {
    for (const Otherwise& o : otherwise) {
        const auto moment = static_cast<std::size_t>(o.stop.moment);
        if (moment >= tied.moments.size()) continue;
        const auto act_at = static_cast<std::size_t>(tied.moments[moment].act);
        if (act_at >= numbers.acts.size()) continue;
        const Act& act = numbers.acts[act_at];
        const auto step = static_cast<std::size_t>(act.step);
        if (step >= recipe.steps.size()) continue;
        std::vector<Action>& actions = recipe.steps[step].actions;
        if (static_cast<std::size_t>(act.index) >= actions.size()) continue;
        Action& action = actions[static_cast<std::size_t>(act.index)];
        const Result<Reading> turns = read_measure(o.text, Measure::turns, {});
        const bool number = turns.ok() && turns.value().kind != AmountKind::word &&
                            turns.value().kind != AmountKind::none;
        if (number && action.turns.given()) {
            action.turns = {};
            action.turns.text = o.text;
            action.turns.reading = turns.value();
        } else if (action.note.find(o.text) == std::string::npos) {
            add_line(action.note, o.text);
        }
        std::string line = "step " + std::to_string(step + 1);
        line.append(", ").append(name(act.op)).append(": ").append(o.text);
        if (recipe.provenance.changes.find(line) == std::string::npos) {
            add_line(recipe.provenance.changes, line);
        }
    }
    return recipe;
}

} // namespace wrapwright
