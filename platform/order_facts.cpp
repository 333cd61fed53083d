#include "platform/order_facts.h"

#include "core/recipe/text.h"
#include "core/units/hook_size.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// The newest sittings that times are taken from; older hands were other hands.
constexpr int sittings_looked_at = 12;

bool is_finishing(const Pattern& pattern, std::size_t step) {
    return pattern.recipe.steps[step].batch == BatchStage::all_last;
}

} // namespace

void add_times(LineFacts& facts, const Pattern& pattern, const Tied& tied,
               const std::vector<SittingState>& sittings) {
    const std::size_t steps = pattern.recipe.steps.size();
    std::vector<bool> worked(steps, false); // a step without an action takes no time
    for (const Moment& moment : tied.moments) worked[static_cast<std::size_t>(moment.step)] = true;
    std::vector<std::vector<double>> times(steps);
    for (const SittingState& state : sittings) {
        std::size_t whole = SIZE_MAX;
        for (std::size_t s = 0; s < steps && s < state.step_seconds.size(); ++s) {
            const std::vector<double>& of = state.step_seconds[s];
            times[s].insert(times[s].end(), of.begin(), of.end());
            if (worked[s] && !is_finishing(pattern, s)) whole = std::min(whole, of.size());
        }
        for (std::size_t fly = 0; whole != SIZE_MAX && fly < whole; ++fly) {
            double sum = 0.0;
            for (std::size_t s = 0; s < steps; ++s) {
                if (worked[s] && !is_finishing(pattern, s)) sum += state.step_seconds[s][fly];
            }
            if (sum > 0.0) facts.fly_seconds.push_back(sum);
        }
    }
    facts.step_seconds.assign(steps, 0.0);
    for (std::size_t s = 0; s < steps; ++s) {
        facts.step_seconds[s] = median_of(times[s]);
        if (is_finishing(pattern, s)) facts.finishing_seconds += facts.step_seconds[s];
    }
}

Result<bool> find_recipes(Store& store, std::vector<OrderLine>& lines) {
    for (OrderLine& line : lines) {
        if (line.name != line.recipe) continue; // it is an id already, with its name
        auto found = store.find_recipe(line.recipe);
        if (!found.ok()) return found.error();
        if (!found.value()) continue;
        line.recipe = std::move(found.value()->first);
        line.name = std::move(found.value()->second);
    }
    return true;
}

LineFacts FactFinder::find(Store& store, const OrderLine& line) const {
    LineFacts facts;
    const auto give_up = [&](const Error& error) {
        facts.why_not = error.message + "; " + error.remedy;
        return facts;
    };
    const Result<std::string> text = store.recipe_text(line.recipe);
    if (!text.ok()) return give_up(text.error());
    Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return give_up(recipe.error());
    const Result<WrittenHookSize> size =
        line.size.empty() ? Result<WrittenHookSize>(WrittenHookSize{}) : parse_hook_size(line.size);
    if (!size.ok()) return give_up(size.error());
    const auto fly = open_fly(line.recipe, std::move(recipe).value(),
                              line.size.empty() ? nullptr : &size.value().size);
    if (!fly.ok()) return give_up(fly.error());
    const OpenFly& of = *fly.value();
    if (of.tied.moments.empty()) {
        facts.why_not = "its recipe has no steps that can be reckoned with";
        return facts;
    }
    facts.uses = stock_uses(of.pattern, of.resolved, of.tied);
    const auto sittings =
        store.sittings_with(line.recipe, write_hook_size(of.size), sittings_looked_at);
    if (!sittings.ok()) return give_up(sittings.error());
    std::vector<SittingState> states;
    for (auto at = sittings.value().rbegin(); at != sittings.value().rend(); ++at) {
        // Another revision has other steps.
        if (at->recipe_text != text.value() || at->events.empty()) continue;
        states.push_back(fold(of.pattern, of.tied, at->events));
    }
    add_times(facts, of.pattern, of.tied, states);
    return facts;
}

std::vector<LineFacts> FactFinder::of(Store& store, const Book& book) {
    std::vector<LineFacts> out;
    for (const OrderLine& line : book.lines) {
        if (line.gone || !open(line.status)) continue;
        const std::pair key(line.recipe, line.size);
        auto known = known_.find(key);
        if (known == known_.end()) known = known_.emplace(key, find(store, line)).first;
        out.push_back(known->second);
        out.back().line = line.id;
    }
    return out;
}

} // namespace wrapwright
