// What can be done next: the state of the fly says it, and says why not.

#include "core/tying/next_ops.h"

#include "tests/support/demo.h"

#include <algorithm>
#include <array>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

std::vector<NextOp> at(const Recipe& recipe, std::size_t step, std::size_t action) {
    auto rows = next_ops(recipe, HookSize{14}, nullptr, step, action);
    REQUIRE_MESSAGE(rows.ok(), rows.error().message);
    return std::move(rows).value();
}

bool possible(const std::vector<NextOp>& rows, Op op, int part = -1) {
    return std::any_of(rows.begin(), rows.end(), [&](const NextOp& r) {
        return r.op == op && r.possible && (part == -1 || r.part == part);
    });
}

std::string why_not(const std::vector<NextOp>& rows, Op op) {
    const auto it = std::find_if(rows.begin(), rows.end(),
                                 [&](const NextOp& r) { return r.op == op && !r.possible; });
    return it == rows.end() ? std::string() : it->why;
}

} // namespace

// Source  of what may follow what: the table of operations (core/tying/op_table.cpp), whose hard
//         order is common practice
TEST_CASE("on the bare hook come bead and vise; nothing that asks for thread") {
    const Recipe jig = demo("weirfoot-jig").recipe;
    const auto rows = at(jig, 0, 0);
    CHECK(possible(rows, Op::slide_on, 1)); // the bead
    CHECK(possible(rows, Op::flatten_barb));
    CHECK(possible(rows, Op::clamp));
    CHECK(why_not(rows, Op::wind_ballast) == "the hook is not in the vise: clamp it first");
    CHECK(why_not(rows, Op::tie_in) == "no thread is on: start it first");
    CHECK(why_not(rows, Op::whip_finish) == "no thread is on: start it first");
    CHECK(why_not(rows, Op::unclamp) == "the hook is not in the vise");
}

TEST_CASE("a strand is tied in, wound, tied off and trimmed, in this order") {
    const Recipe jig = demo("weirfoot-jig").recipe;
    const int rib = 5;
    REQUIRE(jig.parts[5].id == "rib");
    const auto tie_in = at(jig, 5, 0);
    CHECK(possible(tie_in, Op::tie_in, rib));
    CHECK_FALSE(possible(tie_in, Op::counter_rib, rib));
    const auto tied = at(jig, 6, 0);
    CHECK_FALSE(possible(tied, Op::tie_in, rib));
    // The run itself finds that there is no body to rib yet.
    CHECK(why_not(tied, Op::counter_rib).find("body") != std::string::npos);
    const auto dubbed = at(jig, 7, 0);
    CHECK(possible(dubbed, Op::counter_rib, rib));
    CHECK_FALSE(possible(dubbed, Op::tie_off, rib));
    const auto wound = at(jig, 7, 1);
    CHECK(possible(wound, Op::tie_off, rib));
    CHECK_FALSE(possible(wound, Op::counter_rib, rib));
    CHECK_FALSE(possible(wound, Op::trim, rib));
    CHECK(possible(at(jig, 7, 2), Op::trim, rib));
}

TEST_CASE("thread is cut after a finish, and never twice") {
    const Recipe jig = demo("weirfoot-jig").recipe;
    CHECK_FALSE(possible(at(jig, 10, 1), Op::cut_thread));
    CHECK(why_not(at(jig, 10, 1), Op::cut_thread).find("finish") != std::string::npos);
    CHECK(possible(at(jig, 10, 2), Op::cut_thread));
    const auto cut = at(jig, 11, 0);
    CHECK_FALSE(possible(cut, Op::cut_thread));
    CHECK(possible(cut, Op::start_thread));
    CHECK(possible(cut, Op::coat, 9));
    CHECK_FALSE(possible(cut, Op::cure));
}

TEST_CASE("every action of a sound demo is among those that are possible where it stands") {
    for (const char* name :
         {"weirfoot-jig", "sill-dun", "lockgate-sedge", "tailrace-spider", "millpool-leech"}) {
        const Pattern pattern = demo(name);
        const Recipe& recipe = pattern.recipe;
        const HookSize size = recipe.size_list[recipe.size_list.size() / 2];
        for (const auto& linked : pattern.actions) {
            const auto step = static_cast<std::size_t>(linked.step);
            const auto index = static_cast<std::size_t>(linked.index);
            const Op op = recipe.steps[step].actions[index].op;
            const auto rows = next_ops(recipe, size, nullptr, step, index);
            REQUIRE(rows.ok());
            CAPTURE(name);
            CAPTURE(step);
            CAPTURE(index);
            CAPTURE(std::string(wrapwright::name(op)));
            CAPTURE(why_not(rows.value(), op));
            CHECK(possible(rows.value(), op));
        }
    }
}
