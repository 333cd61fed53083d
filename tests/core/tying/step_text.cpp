#include "core/tying/step_text.h"

#include <doctest/doctest.h>

using namespace wrapwright;

namespace {

/// A rib of wire on a hook, with a varnish and a protected feather among the materials.
struct Bench {
    Pattern pattern;
    Resolved numbers;
    Tied tied;

    Bench() {
        Base base;
        base.id = "hook";
        pattern.recipe.bases.push_back(base);
        for (const char* id : {"wire", "varnish", "feather"}) {
            RecipeMaterial material;
            material.id = id;
            pattern.recipe.materials.push_back(material);
            Part part;
            part.id = id;
            part.role = id;
            pattern.recipe.parts.push_back(part);
        }
        pattern.recipe.materials[2].restricted = true;
        numbers.materials.resize(3);
        numbers.materials[1].coat = CoatKind::varnish;
    }

    Act& add(Op op, int step, int part) {
        Act act;
        act.op = op;
        act.step = step;
        act.part = part;
        act.material = part;
        numbers.acts.push_back(act);
        return numbers.acts.back();
    }
};

} // namespace

TEST_CASE("a step asks for the cautions of its operations and its materials, each once") {
    Bench bench;
    bench.add(Op::trim, 0, 0);
    bench.add(Op::trim, 0, 0);
    bench.add(Op::coat, 1, 1);
    bench.add(Op::tie_in, 2, 2);
    bench.add(Op::lay_base, 3, none);
    const auto of_step = [&](int step) {
        return each_of(step_cautions(bench.pattern, bench.numbers, step));
    };
    CHECK(of_step(0) == std::vector{Caution::blade});
    CHECK(of_step(1) == std::vector{Caution::solvent});
    CHECK(of_step(2) == std::vector{Caution::protected_material});
    CHECK(of_step(3).empty());
}

TEST_CASE("every caution has a word and a text without a verdict") {
    for (unsigned bit = 1; bit <= static_cast<unsigned>(Caution::protected_material); bit <<= 1U) {
        const auto list = each_of(static_cast<Caution>(bit));
        REQUIRE(list.size() == 1);
        CHECK_FALSE(caution_word(list.front()).empty());
        CHECK(caution_text(list.front()).find("legal") == std::string_view::npos);
    }
}

TEST_CASE("an open winding is told by turns, spacing, way round and stretch") {
    Bench bench;
    bench.add(Op::counter_rib, 0, 0);
    Winding winding;
    winding.act = 0;
    winding.material = 0;
    winding.turns = 5.0;
    winding.pitch = millimetres(1.2);
    winding.spacing = Spacing::open;
    winding.sense = Sense::against_thread;
    winding.from = millimetres(8.0);
    winding.to = millimetres(2.0);
    bench.tied.windings.push_back(winding);
    CHECK(action_text(bench.pattern, bench.numbers, bench.tied, 0) ==
          "wind the wire across the body: 5 turns, 1.2 mm apart, over the top, towards you, 8 to 2 "
          "mm");
}

TEST_CASE("an action that leaves nothing on the hook is named and no more") {
    Bench bench;
    bench.add(Op::clamp, 0, none);
    bench.add(Op::whip_finish, 0, none);
    bench.add(Op::trim, 0, 0);
    CHECK(action_text(bench.pattern, bench.numbers, bench.tied, 0) == "clamp the hook");
    CHECK(action_text(bench.pattern, bench.numbers, bench.tied, 1) == "whip finish");
    CHECK(action_text(bench.pattern, bench.numbers, bench.tied, 2) == "trim the wire");
}
