#include "gui/model.h"

#include "gui/type_size.h"
#include "gui/versions_work.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr Duration far_away{1e6};

} // namespace

Fishing fishing_of(const Model& model) {
    const Settings& s = model.settings;
    Fishing f;
    f.temperature = celsius(s.river_c);
    f.tippet = {millimetres(s.tippet_mm), metres(s.tippet_m)};
    f.stream.surface = metres_per_second(s.river_m_s);
    f.stream.depth = metres(s.river_deep_m);
    f.stream.roughness = std::min(f.stream.roughness, 0.3 * f.stream.depth);
    f.falls = model.falls;
    f.weighed = model.weighed;
    return f;
}

const RuleSet* rules_of(const Model& model) {
    for (const RuleSet& set : model.rule_sets) {
        if (set.id == model.settings.rules) return &set;
    }
    return model.rule_sets.empty() ? nullptr : &model.rule_sets.front();
}

std::string standard_of(const Model& model) {
    const std::vector<std::string> all = standards_of(model.check.targets);
    for (const std::string& one : all) {
        if (one == model.settings.standard) return one;
    }
    return all.empty() ? std::string{} : all.front();
}

double dots_per_mm(const Model& model) {
    for (const auto& [name, dots] : model.settings.screens) {
        if (name == model.screen_name) return dots;
    }
    if (model.settings.dots_per_mm > 0.0) return model.settings.dots_per_mm;
    return model.screen_dots_per_mm > 0.0 ? model.screen_dots_per_mm : usual_dots_per_mm;
}

bool at_work(const Model& model) {
    return model.fly && !model.events.empty() && !model.state.finished(model.course);
}

int moment_of(const Model& model) {
    if (!model.fly || model.fly->tied.moments.empty()) return none;
    if (model.events.empty()) return 0;
    if (model.state.finished(model.course)) {
        return static_cast<int>(model.fly->tied.moments.size()) - 1;
    }
    return model.course[static_cast<std::size_t>(model.state.at)].moment;
}

Pictured pictured(const Model& model, Picture which) {
    if (model.screen == Screen::edit && which == Picture::own) {
        if (model.edit.view == EditView::versions && model.edit.fly) {
            return {model.edit.fly, static_cast<int>(model.edit.fly->tied.moments.size()) - 1};
        }
        const int moment = moment_of(model.edit);
        return moment == none ? Pictured{} : Pictured{model.edit.fly, moment};
    }
    if (!model.fly || model.fly->tied.moments.empty()) return {}; // words alone
    if (model.screen == Screen::edit && which == Picture::fewer && model.edit.versions) {
        const auto& fly = model.edit.versions->fly;
        if (!fly || fly->tied.moments.empty()) return {};
        return {fly, static_cast<int>(fly->tied.moments.size()) - 1};
    }
    if (which != Picture::own) {
        const bool shown = model.screen == Screen::what_if && model.beside;
        if (!shown) return {};
        return {which == Picture::fewer ? model.fewer : model.more, moment_of(model)};
    }
    if (model.screen == Screen::film) return {model.fly, model.film_at};
    if (model.screen == Screen::what_if && model.tried) return {model.tried, moment_of(model)};
    return {model.fly, moment_of(model)};
}

Counted counted_at(const OpenFly& fly, int moment) {
    if (moment == none) return {};
    const Tied& tied = fly.tied;
    const int last = tied.moments[static_cast<std::size_t>(moment)].windings;
    int first = moment == 0 ? 0 : tied.moments[static_cast<std::size_t>(moment) - 1].windings;
    const auto is_thread = [&](int i) {
        const Winding& w = tied.windings[static_cast<std::size_t>(i)];
        const int thread = tied.moments[static_cast<std::size_t>(moment)].state.thread.material;
        return w.material == thread;
    };
    // A moment's own strand comes first; thread that follows only holds it.
    while (first < last && is_thread(first)) {
        const bool strand_follows = [&] {
            for (int i = first + 1; i < last; ++i) {
                if (!is_thread(i)) return true;
            }
            return false;
        }();
        if (!strand_follows) break;
        ++first;
    }
    if (first >= last) return {};
    Counted counted{first, first, 0.0};
    const bool thread = is_thread(first);
    while (counted.last < last && is_thread(counted.last) == thread) {
        counted.turns += tied.windings[static_cast<std::size_t>(counted.last)].turns;
        ++counted.last;
    }
    return counted;
}

Duration wait_at(const OpenFly& fly, int moment) {
    if (moment == none) return {};
    const auto act_of = [&](int m) -> const Act& {
        const int act = fly.tied.moments[static_cast<std::size_t>(m)].act;
        return fly.resolved.acts[static_cast<std::size_t>(act)];
    };
    if (act_of(moment).op != Op::cure) return {};
    for (int m = moment; m >= 0; --m) {
        const Act& act = act_of(m);
        if (act.material == none || (act.op != Op::cure && act.op != Op::coat)) continue;
        return fly.resolved.materials[static_cast<std::size_t>(act.material)].cure;
    }
    return {};
}

void say(Model& model, std::string words, Duration stays) {
    model.notice = std::move(words);
    model.notice_until = model.now + stays;
}

Duration next_change(const Model& model) {
    Duration next = model.now + far_away;
    if (!model.notice.empty()) next = std::min(next, model.notice_until);
    if (model.counting) next = std::min(next, model.next_turn);
    if (model.film_playing) next = std::min(next, model.film_next);
    if (model.screen == Screen::orders && model.book.class_since.si > 0.0) {
        next = std::min(next, seconds(std::floor(model.now.si) + 1.0)); // the room's clock
    }
    if (at_work(model)) {
        const Duration wait = wait_at(*model.fly, moment_of(model));
        const double gone = (model.now - model.stop_since).si;
        // A countdown is told in whole seconds.
        if (gone < wait.si) next = std::min(next, model.stop_since + seconds(std::floor(gone) + 1));
    }
    return next;
}

} // namespace wrapwright
