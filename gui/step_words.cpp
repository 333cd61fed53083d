#include "gui/step_words.h"

#include "core/tying/finding_text.h"
#include "core/tying/step_text.h"
#include "core/tying/words.h"
#include "core/units/hook_size.h"
#include "core/units/number_words.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace wrapwright {

namespace {

std::string number(int n) { return std::to_string(n); }

std::string capitalised(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
        break; // the first alone
    }
    return out;
}

std::string_view before_numbers(std::string_view text) { return text.substr(0, text.find(": ")); }

/// "8.66 mm, rear of body": where, and the author's word for it where there is one.
std::string place_words(Length at, const Spot& said, bool inches) {
    std::string words = length_words(at, inches);
    if (said.landmark != Landmark::none && !said.text.empty()) words += " (" + said.text + ")";
    return words;
}

/// The lines of what is wound at a moment, its own strand first.
std::string spacing_words(const Winding& w, bool inches) {
    switch (w.spacing) {
    case Spacing::touching: return "touching";
    case Spacing::open:
    case Spacing::graded: return length_words(w.pitch, inches) + " apart";
    case Spacing::unsaid: break;
    }
    return {};
}

void add_windings(const Model& model, int moment, StepWords& words) {
    const OpenFly& fly = *model.fly;
    const Counted own = counted_at(fly, moment);
    if (own.first >= own.last) return;
    const Act& act = fly.resolved.acts[static_cast<std::size_t>(moment)];
    const Action& action = fly.pattern.recipe.steps[static_cast<std::size_t>(act.step)]
                               .actions[static_cast<std::size_t>(act.index)];
    const bool inches = model.settings.inches;
    const bool one = own.last - own.first == 1;
    // A single strand's turns stand beside the counter, where there is one.
    const bool counter = one && model.settings.count_turns && std::round(own.turns) >= 1.0;
    for (int i = own.first; i < own.last; ++i) {
        const Winding& w = fly.tied.windings[static_cast<std::size_t>(i)];
        const std::string spacing = spacing_words(w, inches);
        if (one) words.spacing = spacing;
        if (!counter) {
            std::string line = counted(w.turns, "turn", "turns");
            if (!spacing.empty()) line += ", " + spacing;
            words.facts.push_back(std::move(line));
        }
        if (i == own.first) words.facts.emplace_back(sense_words(w.sense));
        words.facts.push_back("from " + place_words(w.from, one ? action.from : Spot{}, inches) +
                              " to " + place_words(w.to, one ? action.to : Spot{}, inches) +
                              " behind the eye");
    }
}

/// The rest of what action_text() says: things placed, and thread that holds them.
void add_details(const Model& model, int moment, std::vector<std::string>& facts) {
    const OpenFly& fly = *model.fly;
    const std::string text = action_text(fly.pattern, fly.resolved, fly.tied, moment);
    const std::size_t colon = text.find(": ");
    if (colon == std::string::npos) return;
    std::string_view rest = std::string_view(text).substr(colon + 2);
    const Counted own = counted_at(fly, moment);
    const int last = fly.tied.moments[static_cast<std::size_t>(moment)].windings;
    const int first =
        moment == 0 ? 0 : fly.tied.moments[static_cast<std::size_t>(moment) - 1].windings;
    // Windings come last, in order; those with lines of their own are left out here.
    std::vector<std::string> details;
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find("; "), rest.size());
        details.emplace_back(rest.substr(0, end));
        rest.remove_prefix(std::min(rest.size(), end + 2));
    }
    const int placed = static_cast<int>(details.size()) - (last - first);
    for (int i = 0; i < static_cast<int>(details.size()); ++i) {
        const int winding = first + i - placed;
        if (i >= placed && winding >= own.first && winding < own.last) continue;
        facts.push_back(details[static_cast<std::size_t>(i)]);
    }
}

std::string fly_words(const SittingState& state, int fly) {
    if (state.flies < 2) return {};
    const auto spoilt =
        std::count(state.fly_state.begin(), state.fly_state.end(), FlyState::spoilt);
    std::string words = "fly " + number(fly + 1) + " of " + number(state.flies);
    if (spoilt > 0) words += ", " + number(static_cast<int>(spoilt)) + " spoilt";
    return words;
}

StepWords words_before(const Model& model) {
    StepWords words;
    const Recipe& recipe = model.fly->pattern.recipe;
    words.what = recipe.name.empty() ? recipe.id : recipe.name;
    words.step = recipe.verbatim;
    if (model.fly->tied.moments.empty()) {
        words.facts.emplace_back("a recipe of words, with no steps to walk through");
        return words;
    }
    if (model.fly->own) words.facts.emplace_back("on your measured hook");
    words.facts.push_back("size " + write_hook_size(model.fly->size) + ", " +
                          number(static_cast<int>(recipe.steps.size())) + " steps");
    if (!recipe.imitates.empty()) words.facts.push_back(recipe.imitates);
    words.next = "Lay out what it takes";
    return words;
}

StepWords words_after(const Model& model) {
    StepWords words;
    const auto count = [&](FlyState state) {
        return static_cast<int>(
            std::count(model.state.fly_state.begin(), model.state.fly_state.end(), state));
    };
    words.what = count(FlyState::spoilt) == 0 ? "Done" : "Done, as far as it went";
    words.facts.push_back(counted(count(FlyState::done), "fly", "flies") + " in the box");
    if (const int spoilt = count(FlyState::spoilt); spoilt > 0) {
        words.facts.push_back(number(spoilt) + " spoilt");
    }
    if (!model.state.otherwise.empty()) {
        words.facts.push_back(
            counted(static_cast<double>(model.state.otherwise.size()), "change", "changes") +
            " noted");
    }
    words.next = "Another one";
    return words;
}

void add_notes(const Model& model, const Moment& moment, StepWords& words) {
    const OpenFly& fly = *model.fly;
    const Step& step = fly.pattern.recipe.steps[static_cast<std::size_t>(moment.step)];
    words.step = step.text;
    words.landmark = step.landmark;
    words.tip = step.tip;
    words.original = step.original;
    for (const Caution one : each_of(step_cautions(fly.pattern, fly.resolved, moment.step))) {
        words.cautions.emplace_back(caution_text(one));
    }
    if (!step.caution.empty()) words.cautions.push_back(step.caution);
    for (const Finding& finding : fly.tied.findings) {
        if (finding.step != moment.step) continue;
        const FindingText text = describe(fly.pattern, finding);
        std::string line = std::string(name(finding.level)) + ": " + text.message;
        if (!text.remedy.empty()) line += "; " + text.remedy;
        words.findings.push_back(capitalised(line));
    }
}

std::string what_at(const OpenFly& fly, int moment) {
    return capitalised(
        std::string(before_numbers(action_text(fly.pattern, fly.resolved, fly.tied, moment))));
}

} // namespace

StepWords step_words(const Model& model) {
    if (!model.fly) return {};
    if (model.events.empty()) return words_before(model);
    if (model.state.finished(model.course)) return words_after(model);
    const OpenFly& fly = *model.fly;
    const int at = moment_of(model);
    const Moment& moment = fly.tied.moments[static_cast<std::size_t>(at)];
    StepWords words;
    int first = at;
    int last = at;
    const auto step_of = [&](int m) { return fly.tied.moments[static_cast<std::size_t>(m)].step; };
    while (first > 0 && step_of(first - 1) == moment.step) --first;
    while (last + 1 < static_cast<int>(fly.tied.moments.size()) &&
           step_of(last + 1) == moment.step) {
        ++last;
    }
    words.place = "Step " + number(moment.step + 1) + " of " +
                  number(static_cast<int>(fly.pattern.recipe.steps.size()));
    if (last > first)
        words.place += " · " + number(at - first + 1) + " of " + number(last - first + 1);
    words.fly = fly_words(model.state, model.course[static_cast<std::size_t>(model.state.at)].fly);
    words.what = what_at(fly, at);
    add_windings(model, at, words);
    add_details(model, at, words.facts);
    add_notes(model, moment, words);
    const auto following = static_cast<std::size_t>(model.state.at) + 1;
    if (following < model.course.size()) {
        const Stop& next = model.course[following];
        words.next = what_at(fly, next.moment);
        if (next.fly != model.course[following - 1].fly) {
            words.next = "fly " + number(next.fly + 1) + ": " + words.next;
        }
    } else {
        words.next = "done";
    }
    const double median =
        median_of(model.state.step_seconds[static_cast<std::size_t>(moment.step)]);
    if (median > 0.0) words.time = "usually " + time_words(seconds(median));
    words.restore_point = moment.restore_point;
    words.again = model.state.at < model.state.redo_until;
    return words;
}

BreakWords break_words(const Model& model) {
    BreakWords words;
    if (!at_work(model)) return words;
    const OpenFly& fly = *model.fly;
    const Recipe& recipe = fly.pattern.recipe;
    const int back = restore_stop(fly.tied, model.course, model.state.at);
    const int first = model.course[static_cast<std::size_t>(back)].moment;
    words.back_to = what_at(fly, first);
    std::set<int> parts;
    for (const PartTake& take : fly.tied.takes) {
        const bool before =
            take.step != none && take.step < fly.tied.moments[static_cast<std::size_t>(first)].step;
        if (before && take.part != none && parts.insert(take.part).second) {
            words.stands.push_back(part_words(recipe, take.part));
        }
    }
    for (int i = back; i < model.state.at; ++i) {
        const Stop& stop = model.course[static_cast<std::size_t>(i)];
        const Stop& here = model.course[static_cast<std::size_t>(model.state.at)];
        if (stop.fly == here.fly) words.again.push_back(what_at(fly, stop.moment));
    }
    return words;
}

} // namespace wrapwright
