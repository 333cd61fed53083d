// The fly in the water: what is measured of it, and what follows.

#include "gui/answer.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

void dip(Model& model) {
    model.dipped.reset();
    model.not_dipped.clear();
    if (!model.fly || model.fly->tied.moments.empty()) {
        model.not_dipped = "This recipe is words alone: there is no fly to put into the water.";
        return;
    }
    const OpenFly& fly = *model.fly;
    Result<InWater> water = in_water(fly.pattern, fly.resolved, fly.tied, fishing_of(model));
    if (water.ok()) {
        model.dipped = std::make_shared<const InWater>(std::move(water).value());
    } else {
        model.not_dipped = water.error().message;
        model.not_dipped.append("; ").append(water.error().remedy);
    }
}

namespace detail {

void Answer::time_fall(const std::string& height, const std::string& time) {
    Model& m = model();
    if (!m.fly || !may_write()) return;
    const Result<double> metres_said = read_number(height), seconds_said = read_number(time);
    if (!metres_said.ok() || !seconds_said.ok()) {
        return say("Write the height in metres and the time in seconds, such as 0.5 and 1.3");
    }
    Fall fall;
    fall.height = metres(metres_said.value());
    fall.time = seconds(seconds_said.value());
    fall.temperature = celsius(m.settings.river_c);
    Model with = m;
    with.falls.push_back(fall);
    dip(with);
    if (!with.dipped) return say(with.not_dipped);
    m = std::move(with);
    effect(EffectKind::keep_fall);
    say("Kept: sink rate and depth go by it from now on");
}

void Answer::drop_fall(int index) {
    Model& m = model();
    const auto i = static_cast<std::size_t>(index);
    if (index < 0 || i >= m.falls.size() || !may_write()) return;
    m.falls.erase(m.falls.begin() + index);
    effect(EffectKind::drop_fall).number = index;
    dip(m);
}

void Answer::weigh(const std::string& mg) {
    Model& m = model();
    if (!m.fly || !may_write()) return;
    Model with = m;
    with.weighed = {};
    if (!mg.empty()) {
        const Result<double> said = read_number(mg);
        if (!said.ok() || !(said.value() > 0.0)) {
            return say("Write the milligrams of one whole fly, such as 215");
        }
        // Nobody says the scale's digit here: one in a hundred, as of a scale that reads it.
        with.weighed = about(milligrams(said.value()), 0.01, Origin::measured);
    }
    dip(with);
    if (!with.dipped) return say(with.not_dipped);
    m = std::move(with);
    effect(EffectKind::keep_weighing);
}

void Answer::next_rules() {
    const auto& sets = model().rule_sets;
    if (sets.empty()) return;
    const RuleSet* now = rules_of(model());
    const auto next = static_cast<std::size_t>(now - sets.data() + 1) % sets.size();
    set("rules", sets[next].id);
}

} // namespace detail

} // namespace wrapwright
