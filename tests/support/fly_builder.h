#pragma once
// Recipes built in code, so that tests of tying do not lean on the text form. Every fly here is
// invented for the tests.

#include "core/tying/tie.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace wrapwright::test {

inline Amount amount(double value, Unit unit) {
    Amount a;
    a.text = "test";
    a.reading = {AmountKind::exact, unit, Basis::none, value, value, value, {}};
    return a;
}
inline Amount turns(double n) { return amount(n, Unit::turns); }
inline Amount count(double n) { return amount(n, Unit::count); }
inline Amount mm(double v) { return amount(v / 1e3, Unit::length); }
inline Amount den(double v) { return amount(v / 9e6, Unit::linear_density); }
inline Amount a_word(const char* w) {
    Amount a;
    a.text = w;
    a.reading.kind = AmountKind::word;
    return a;
}

inline Spot spot(Landmark landmark, double offset_mm = 0.0) {
    Spot s;
    s.text = "test";
    s.landmark = landmark;
    s.offset = {AmountKind::exact, Unit::length,    Basis::none, offset_mm / 1e3,
                offset_mm / 1e3,   offset_mm / 1e3, {}};
    return s;
}
inline Spot spot_of(Landmark landmark, const char* part) {
    Spot s = spot(landmark);
    s.part = part;
    return s;
}

inline RecipeMaterial material(const char* id, MaterialKind kind, Substance substance) {
    RecipeMaterial m;
    m.id = id;
    m.kind = kind;
    m.substance = substance;
    return m;
}

inline Part part(const char* id, const char* role, const char* of) {
    Part p;
    p.id = id;
    p.role = role;
    Ingredient ingredient;
    ingredient.material = of;
    p.made_of.push_back(ingredient);
    return p;
}

inline Action action(Op op, const char* part_id = "") {
    Action a;
    a.op = op;
    a.part = part_id;
    return a;
}

/// A small nymph with a bead and ballast that ties without trouble on a #14 wet hook.
inline Recipe good_nymph() {
    Recipe r;
    r.id = "test-nymph";
    r.name = "Test nymph";
    r.size_list = {HookSize{14}};
    Base base;
    base.id = "hook";
    base.family = HookFamily::wet;
    r.bases.push_back(base);

    RecipeMaterial thread = material("thread", MaterialKind::thread, Substance::polyester);
    thread.linear = den(72);
    RecipeMaterial bead = material("bead", MaterialKind::bead, Substance::tungsten);
    bead.size = mm(2.8);
    bead.bore = mm(1.2);
    bead.hole = "countersunk";
    RecipeMaterial lead = material("lead", MaterialKind::ballast, Substance::lead);
    lead.size = mm(0.254);
    RecipeMaterial fibres = material("fibres", MaterialKind::fibres, Substance::keratin);
    fibres.fibre_length = mm(50);
    RecipeMaterial herl = material("herl", MaterialKind::herl, Substance::keratin);
    herl.fibre_length = mm(100);
    herl.size = mm(0.3);
    herl.thickness = mm(0.2);
    RecipeMaterial wire = material("wire", MaterialKind::wire, Substance::copper);
    wire.size = mm(0.13);
    RecipeMaterial varnish = material("varnish", MaterialKind::coat, Substance::lacquer);
    varnish.coat = CoatKind::varnish;
    r.materials = {thread, bead, lead, fibres, herl, wire, varnish};

    r.parts = {part("thread", "thread", "thread"), part("bead", "bead", "bead"),
               part("ballast", "ballast", "lead"), part("tail", "tail", "fibres"),
               part("body", "body", "herl"),       part("rib", "rib", "wire"),
               part("coat", "head", "varnish")};
    r.parts[2].turns = turns(7);
    r.parts[3].count = count(6);
    r.parts[3].length = mm(4);
    r.parts[5].turns = turns(5);

    const auto step = [&](std::vector<Action> actions) {
        Step s;
        s.text = "test";
        s.actions = std::move(actions);
        r.steps.push_back(s);
    };
    Action barb = action(Op::flatten_barb);
    Action slide = action(Op::slide_on, "bead");
    Action clamp = action(Op::clamp);
    step({barb, slide, clamp});
    Action ballast = action(Op::wind_ballast, "ballast");
    ballast.from = spot(Landmark::bead);
    Action start = action(Op::start_thread, "thread");
    start.to = spot_of(Landmark::part_rear, "ballast");
    Action lock = action(Op::lock_ballast);
    step({ballast, start, lock});
    Action tail = action(Op::pinch_in, "tail");
    tail.to = spot(Landmark::bend);
    Action rib_in = action(Op::tie_in, "rib");
    rib_in.to = spot(Landmark::bend);
    Action body_in = action(Op::tie_in, "body");
    body_in.to = spot(Landmark::bend);
    step({tail, rib_in, body_in});
    Action body = action(Op::wind, "body");
    body.to = spot(Landmark::bead, 0.4);
    Action body_off = action(Op::tie_off, "body");
    Action body_trim = action(Op::trim, "body");
    step({body, body_off, body_trim});
    Action rib = action(Op::counter_rib, "rib");
    rib.to = spot(Landmark::bead, 0.4);
    Action rib_off = action(Op::tie_off, "rib");
    rib_off.turns = turns(4);
    Action rib_trim = action(Op::trim, "rib");
    step({rib, rib_off, rib_trim});
    Action whip = action(Op::whip_finish);
    whip.turns = turns(5);
    step({whip, action(Op::cut_thread), action(Op::unclamp)});
    Action coat = action(Op::coat, "coat");
    coat.from = spot(Landmark::bead);
    step({coat});
    return r;
}

/// The first action of that operation (and part) in the recipe.
inline Action& find_action(Recipe& r, Op op, const std::string& part_id = "") {
    for (Step& s : r.steps) {
        for (Action& a : s.actions) {
            if (a.op == op && (part_id.empty() || a.part == part_id)) return a;
        }
    }
    std::abort(); // a test that asks for an action that is not there is a mistake in the test
}

/// Takes the first such action out.
inline void drop_action(Recipe& r, Op op, const std::string& part_id = "") {
    for (Step& s : r.steps) {
        const auto it = std::find_if(s.actions.begin(), s.actions.end(), [&](const Action& a) {
            return a.op == op && (part_id.empty() || a.part == part_id);
        });
        if (it != s.actions.end()) {
            s.actions.erase(it);
            return;
        }
    }
    std::abort();
}

/// The hook that the tests tie on: measured, so that typical values may change without them.
inline Hook test_hook() {
    Hook h;
    h.label = "test 14";
    h.size = HookSize{14};
    h.shank = exactly(millimetres(8.4), Origin::measured);
    h.gape = exactly(millimetres(4.3), Origin::measured);
    h.wire = exactly(millimetres(0.49), Origin::measured);
    h.eye_length = exactly(millimetres(1.5), Origin::measured);
    h.eye_diameter = exactly(millimetres(1.6), Origin::measured);
    h.barb_height = exactly(millimetres(0.2), Origin::measured);
    return h;
}

struct Run1 {
    Pattern pattern;
    Tied tied;
};

/// The record of a recipe on the test hook; aborts the test program where it cannot be run.
inline Run1 run(const Recipe& recipe, const Limits& limits = {}) {
    Result<Pattern> pattern = link(recipe);
    WW_ASSERT(pattern.ok());
    const Hook hook = test_hook();
    Result<Tied> tied = tie_once(pattern.value(), HookSize{14}, &hook, limits);
    WW_ASSERT(tied.ok());
    return {std::move(pattern).value(), std::move(tied).value()};
}

inline int count_rule(const Tied& tied, Rule rule) {
    return static_cast<int>(std::count_if(tied.findings.begin(), tied.findings.end(),
                                          [&](const Finding& f) { return f.rule == rule; }));
}
inline bool has_rule(const Tied& tied, Rule rule) { return count_rule(tied, rule) > 0; }
inline const Finding& first(const Tied& tied, Rule rule) {
    const auto it = std::find_if(tied.findings.begin(), tied.findings.end(),
                                 [&](const Finding& f) { return f.rule == rule; });
    WW_ASSERT(it != tied.findings.end());
    return *it;
}
inline int stops(const Tied& tied) {
    return static_cast<int>(
        std::count_if(tied.findings.begin(), tied.findings.end(),
                      [](const Finding& f) { return f.level == Level::stops; }));
}

} // namespace wrapwright::test
