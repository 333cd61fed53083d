// From measures to causes, steps and cures; and the recipe's own targets.

#include "core/check/faults.h"
#include "core/check/photo_found.h"
#include "core/recipe/text.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>
#include <set>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE(
    "a length is named too long or too short with the step that makes it, and no other fault") {
    const Pattern pattern = demo("sill-dun");
    const Tied record = tied(pattern, HookSize{14});
    const auto targets = only(targets_of(pattern, record), "club course");
    for (const Measured part : {Measured::tail, Measured::body, Measured::hackle}) {
        const auto own = own_measure(pattern, record, part);
        REQUIRE(own);
        for (const double share : {0.6, 1.0, 1.6}) {
            SeenOnFly seen;
            for (const PartTarget& t : targets) {
                if (t.part == part)
                    seen.parts[static_cast<std::size_t>(part)] = share * t.length.value;
            }
            const auto faults = faults_of(seen, targets, pattern, record);
            CAPTURE(name(part));
            CAPTURE(share);
            if (share == 1.0) {
                CHECK(faults.empty());
                continue;
            }
            REQUIRE(faults.size() == 1);
            CHECK(faults[0].kind == length_fault(part, share > 1.0));
            CHECK(faults[0].step == own->step);
            CHECK(faults[0].until >= own->step);
        }
    }
}

TEST_CASE("every kind of fault has a sign, a cause and a cure of its own") {
    std::set<std::string_view> signs, cures;
    for (int i = 0; i <= static_cast<int>(FaultKind::light); ++i) {
        const FaultWords& w = words_of(static_cast<FaultKind>(i));
        CHECK(static_cast<int>(w.kind) == i);
        CHECK_FALSE(w.cause.empty());
        CHECK_FALSE(w.cure.empty());
        signs.insert(w.sign);
    }
    CHECK(signs.size() == 16);
}

TEST_CASE("a rib is held against the recipe's own spacing, and its evenness against a tenth") {
    const Pattern pattern = demo("weirfoot-jig");
    const Tied record = tied(pattern, HookSize{14});
    const auto rib = own_rib(pattern, record);
    REQUIRE(rib);
    const auto kinds = [&](double share, double uneven) {
        SeenOnFly seen;
        seen.rib_spacing = share * rib->length;
        seen.rib_unevenness = uneven;
        std::set<FaultKind> out;
        for (const FaultSeen& f : faults_of(seen, {}, pattern, record)) out.insert(f.kind);
        return out;
    };
    CHECK(kinds(1.0, 0.05).empty());
    CHECK(kinds(1.05, 0.05).empty());
    CHECK(kinds(1.2, 0.05) == std::set{FaultKind::rib_wide});
    CHECK(kinds(0.8, 0.05) == std::set{FaultKind::rib_close});
    CHECK(kinds(1.0, 0.15) == std::set{FaultKind::rib_uneven});
}

TEST_CASE("a body against the eye crowds it, unless a bead is the head") {
    SeenOnFly seen;
    seen.bare_head = millimetres(0.1);
    const Pattern dun = demo("sill-dun");
    const auto crowded = faults_of(seen, {}, dun, tied(dun, HookSize{14}));
    REQUIRE(crowded.size() == 1);
    CHECK(crowded[0].kind == FaultKind::eye_crowded);
    const Pattern jig = demo("weirfoot-jig");
    CHECK(faults_of(seen, {}, jig, tied(jig, HookSize{14})).empty());
}

TEST_CASE(
    "a recipe's own targets come first, in its own words and tolerance, and keep their bytes") {
    Recipe recipe = demo("sill-dun").recipe;
    const std::string text = write_recipe(recipe);
    std::string with = text.substr(0, text.rfind('}'));
    with.erase(with.find_last_not_of(" \n") + 1);
    with.append(
        ",\n  \"targets\": [{\"part\": \"tail\", \"length\": \"half the shank\", \"within\": "
        "0.2}, {\"part\": \"hackle\", \"length\": \"5-6 mm\"}, {\"part\": \"wing\", "
        "\"length\": \"long\"}]\n}\n");
    Result<Recipe> read = read_recipe(with);
    REQUIRE(read.ok());
    REQUIRE(read.value().targets.size() == 3);
    const std::string once = write_recipe(read.value());
    CHECK(write_recipe(read_recipe(once).value()) == once);
    const Pattern pattern = link(std::move(read).value()).value();
    const Tied record = tied(pattern, HookSize{14});
    const auto targets = targets_of(pattern, record);
    REQUIRE(targets.size() > 2);
    CHECK(standards_of(targets).front() == own_standard);
    const auto own = only(targets, own_standard);
    REQUIRE(own.size() == 2); // "long" is a word, and stays one
    const double shank = record.bases.front().hook.shank.value.si;
    CHECK(within(own[0].length.value.si, 0.5 * shank, 1e-12));
    CHECK(within(own[0].length.low.si, 0.4 * shank, 1e-12));
    CHECK(within(own[0].length.high.si, 0.6 * shank, 1e-12));
    CHECK(own[0].words == "half the shank");
    CHECK(within(own[1].length.low.si, 0.005, 1e-12)); // a range is its own tolerance
    CHECK(within(own[1].length.high.si, 0.006, 1e-12));
}

TEST_CASE("what can be mended is mended before something lies over it") {
    for (const char* recipe : {"sill-dun", "weirfoot-jig", "tailrace-spider", "lockgate-sedge"}) {
        const Pattern pattern = demo(recipe);
        const Tied record = tied(pattern, pattern.recipe.size_list.front());
        const int steps = static_cast<int>(pattern.recipe.steps.size());
        for (int i = 0; i < 5; ++i) {
            const auto part = static_cast<Measured>(i);
            const auto own = own_measure(pattern, record, part);
            const int until = mend_until(pattern, record, part);
            if (!own) {
                CHECK(until == none);
                continue;
            }
            CHECK(until >= own->step);
            CHECK(until < steps);
        }
    }
}
