// The fly in the water: what is measured of it, and what follows.

#include "gui/answer.h"

#include "core/tying/tie.h"
#include "core/tying/words.h"
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

std::string way_words(const ReachStock& stock, const ReachWay& way) {
    std::string words;
    if (way.bead != none) words = stock.beads[static_cast<std::size_t>(way.bead)].text;
    if (way.turns > 0 && way.strand != none) {
        if (!words.empty()) words.append(", ");
        words.append(counted(way.turns, "turn", "turns")).append(" of ");
        words.append(stock.strands[static_cast<std::size_t>(way.strand)].text);
    }
    return words.empty() ? "without ballast" : words;
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

void Answer::reach_for(int aim, double value) {
    Model& m = model();
    if (!m.dipped || aim < 0 || aim > static_cast<int>(Aim::depth)) return;
    m.ask.aim = static_cast<Aim>(aim);
    switch (m.ask.aim) {
    case Aim::mass: m.ask.mg = std::clamp(value, 1.0, 5000.0); break;
    case Aim::sink: m.ask.m_s = std::clamp(value, 0.01, 3.0); break;
    case Aim::depth: m.ask.deep_m = std::clamp(value, 0.05, m.settings.river_deep_m); break;
    }
    look_for_ways();
}

void Answer::look_for_ways() {
    Model& m = model();
    m.reached.reset();
    if (!m.dipped) return;
    ReachGoal goal;
    goal.lead_free_first = m.ask.lead_free;
    if (m.ask.aim == Aim::mass) goal.mass = milligrams(m.ask.mg);
    if (m.ask.aim == Aim::sink) goal.sink = metres_per_second(m.ask.m_s);
    if (m.ask.aim == Aim::depth) {
        goal.depth = metres(std::min(m.ask.deep_m, m.settings.river_deep_m));
    }
    Result<ReachFound> found = reach(m.fly->pattern, m.fly->rig, m.stock, goal, fishing_of(m), 6);
    if (!found.ok()) return say(found.error().message);
    m.reached = std::make_shared<const ReachFound>(std::move(found).value());
}

void Answer::take_way(int index) {
    Model& m = model();
    const auto i = static_cast<std::size_t>(index);
    if (!m.reached || index < 0 || i >= m.reached->ways.size()) return;
    const ReachWay& way = m.reached->ways[i];
    auto fly = std::make_shared<OpenFly>(*m.fly);
    fly->pattern = with_way(m.fly->pattern, m.stock, way);
    if (!resolve(fly->pattern, fly->rig, fly->resolved).ok()) return;
    tie(fly->pattern, fly->rig, fly->resolved, Limits{}, fly->tied);
    if (at_work(m)) {
        // The actions of a sitting are counted: one that is left out would shift all that follow.
        if (fly->resolved.acts.size() != m.fly->resolved.acts.size()) {
            return say("Finish this fly first: that way leaves out an action");
        }
        if (!may_write()) return;
        happen(EventKind::done_otherwise, 0, way_words(m.stock, way));
    }
    m.fly = std::move(fly);
    m.reached.reset();
    dip(m);
    say("On the bench from now on; the recipe in the library stays as it is");
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
