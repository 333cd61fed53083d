#include "core/bench/otherwise.h"

#include "core/recipe/by_size.h"
#include "tests/support/demo.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

struct Sat {
    Pattern pattern = demo("weirfoot-jig");
    Resolved numbers{};
    Tied record = tied(pattern, HookSize{14});

    Sat() {
        const Result<Rig> rig = make_rig(pattern, HookSize{14});
        REQUIRE(rig.ok());
        REQUIRE(resolve(pattern, rig.value(), numbers).ok());
    }
    [[nodiscard]] Otherwise at(Op op, const char* text) const {
        for (std::size_t i = 0; i < record.moments.size(); ++i) {
            if (numbers.acts[static_cast<std::size_t>(record.moments[i].act)].op == op) {
                return {{0, static_cast<int>(i)}, text};
            }
        }
        FAIL("no such action");
        return {};
    }
    [[nodiscard]] Recipe revised(const std::vector<Otherwise>& changes) const {
        const auto draft =
            edited({pattern.recipe, {}}, otherwise_edits(pattern, numbers, record, changes));
        REQUIRE(draft.ok());
        CHECK(draft.value().unread.empty());
        return draft.value().recipe;
    }
};

} // namespace

TEST_CASE("turns that were wound otherwise become the part's turns at that size, and no other") {
    const Sat sat;
    const Recipe r = sat.revised({sat.at(Op::counter_rib, "rib: 7 turns, 0.5 mm apart")});
    REQUIRE(r.parts[5].id == "rib");
    CHECK(r.parts[5].turns.at(HookSize{14}).value == 7.0);
    CHECK(r.parts[5].turns.at(HookSize{12}).value == 5.0);
    CHECK(r.parts[5].turns.at(HookSize{16}).value == 4.0);
    CHECK(r.steps[7].tip == "Done otherwise: rib: 7 turns, 0.5 mm apart");
}

TEST_CASE("words without a number are kept at the tip of their step, word for word") {
    const Sat sat;
    const Recipe r =
        sat.revised({sat.at(Op::dub, "another material"), sat.at(Op::dub, "a little longer"),
                     sat.at(Op::pinch_in, "9 fibres")});
    CHECK(r.steps[6].tip.ends_with(
        " Done otherwise: another material Done otherwise: a little longer"));
    CHECK(r.steps[6].tip.starts_with(sat.pattern.recipe.steps[6].tip));
    CHECK(r.parts[3].count.at(HookSize{14}).value == 9.0);
    CHECK(r.parts[3].count.at(HookSize{10}).value == 10.0);
}

TEST_CASE("the note of the revision names every change") {
    CHECK(otherwise_note({{{}, "rib: 7 turns"}, {{}, "another material"}}) ==
          "rib: 7 turns; another material");
}
