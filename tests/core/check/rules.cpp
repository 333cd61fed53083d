#include "core/check/rules.h"

#include "tests/support/demo.h"
#include "tests/support/fly_builder.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

struct Judged {
    Pattern pattern;
    Resolved numbers;
    Tied tied;

    explicit Judged(const Recipe& recipe, const Hook& hook = test_hook())
        : pattern(link(recipe).value()) {
        const Rig rig = make_rig(pattern, HookSize{14}, &hook).value();
        REQUIRE(resolve(pattern, rig, numbers).ok());
        tie(pattern, rig, numbers, Limits{}, tied);
    }
    [[nodiscard]] std::vector<RuleRow> rows(const RuleSet& rules) const {
        return check_rules(rules, pattern, numbers, tied);
    }
    [[nodiscard]] RuleVerdict only(const RuleSet& rules) const {
        const auto all = rows(rules);
        REQUIRE(all.size() == 1);
        CHECK((rule_remedy(all[0]).empty()) == (all[0].verdict == RuleVerdict::pass));
        return all[0].verdict;
    }
};

RuleSet bead_at_most(double mm) {
    RuleSet r;
    r.bead_most = millimetres(mm);
    return r;
}

std::string file_text(const std::filesystem::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

TEST_CASE("a bead label within its plating of the limit cannot be told, a measured one can") {
    // The bead is stated as 2.8 mm: 2.75 to 2.85 until somebody measures it.
    const Judged fly(good_nymph());
    CHECK(fly.only(bead_at_most(2.86)) == RuleVerdict::pass);
    CHECK(fly.only(bead_at_most(2.80)) == RuleVerdict::cannot_tell);
    CHECK(fly.only(bead_at_most(2.74)) == RuleVerdict::fail);
    Judged measured(good_nymph());
    for (Stuff& s : measured.numbers.materials) {
        if (s.kind == MaterialKind::bead) {
            s.bead.diameter = exactly(s.bead.diameter.value, Origin::measured);
        }
    }
    CHECK(measured.only(bead_at_most(2.80)) == RuleVerdict::pass);
    CHECK(measured.only(bead_at_most(2.79)) == RuleVerdict::fail);
}

TEST_CASE("one bead too many fails, and as many as allowed pass") {
    RuleSet r;
    r.beads_most = 1;
    CHECK(Judged(good_nymph()).only(r) == RuleVerdict::pass);
    r.beads_most = 0;
    CHECK(Judged(good_nymph()).only(r) == RuleVerdict::fail);
}

TEST_CASE(
    "a barb pressed flat passes, one that stands fails, one that is only usual cannot be told") {
    RuleSet r;
    r.barbless = true;
    CHECK(Judged(good_nymph()).only(r) == RuleVerdict::pass);
    Recipe standing = good_nymph();
    drop_action(standing, Op::flatten_barb);
    CHECK(Judged(standing).only(r) == RuleVerdict::fail); // the test hook's barb was measured
    Hook typical = test_hook();
    typical.barb_height = {millimetres(0.2), millimetres(0.1), millimetres(0.3), Origin::typical};
    CHECK(Judged(standing, typical).only(r) == RuleVerdict::cannot_tell);
}

TEST_CASE("a hook just within its length passes and just beyond fails") {
    const Judged fly(good_nymph());
    RuleSet r;
    r.hook_most = millimetres(40.0);
    const double length = fly.rows(r)[0].value;
    // Hand-checked on the test hook: eye 1.5, shank 8.4, half the gape's bend 2.15, half a wire.
    CHECK(length > 11.5e-3);
    CHECK(length < 12.6e-3);
    r.hook_most = {length * 1.0001};
    CHECK(fly.only(r) == RuleVerdict::pass);
    r.hook_most = {length * 0.9999};
    CHECK(fly.only(r) == RuleVerdict::fail);
}

TEST_CASE("ballast under a body is covered, and without the body it shows") {
    RuleSet r;
    r.weight_covered = true;
    Recipe close = good_nymph();
    find_action(close, Op::wind, "body").to = spot(Landmark::bead);
    CHECK(Judged(close).only(r) == RuleVerdict::pass);
    // Its body ends 0.4 mm behind the bead, where thread alone lies over the ballast.
    CHECK(Judged(good_nymph()).only(r) == RuleVerdict::cannot_tell);
    Recipe bare = good_nymph();
    drop_action(bare, Op::wind, "body");
    drop_action(bare, Op::tie_off, "body");
    drop_action(bare, Op::trim, "body");
    CHECK(Judged(bare).only(r) == RuleVerdict::fail);
}

TEST_CASE("lead, mass and cones are counted") {
    const Judged fly(good_nymph());
    RuleSet lead;
    lead.lead_free = true;
    CHECK(fly.only(lead) == RuleVerdict::fail);
    RuleSet mass;
    mass.mass_most = fly.tied.mass.high * 1.001;
    CHECK(fly.only(mass) == RuleVerdict::pass);
    mass.mass_most = fly.tied.mass.value;
    CHECK(fly.only(mass) == RuleVerdict::cannot_tell);
    mass.mass_most = 0.999 * fly.tied.mass.low;
    CHECK(fly.only(mass) == RuleVerdict::fail);
    RuleSet cones;
    cones.no_cones = true;
    CHECK(fly.only(cones) == RuleVerdict::pass);
}

TEST_CASE("what a single fly cannot tell is said so, with the limit") {
    const Judged fly(good_nymph());
    RuleSet r;
    r.spacing_least = metres(0.5);
    CHECK(fly.only(r) == RuleVerdict::cannot_tell);
    CHECK(rule_words(fly.rows(r)[0]) == "spacing: not told by a fly; at least 50 cm");
}

TEST_CASE("a set of nothing asks nothing, and every set that came along reads and judges") {
    CHECK(Judged(good_nymph()).rows({}).empty());
    int sets = 0;
    for (const auto& entry : std::filesystem::directory_iterator(WW_SOURCE_DIR "/assets/rules")) {
        const Result<RuleSet> rules = read_rules(file_text(entry.path()));
        REQUIRE(rules.ok());
        CHECK_FALSE(rules.value().date.empty());
        CHECK_FALSE(rules.value().note.empty());
        const auto rows = Judged(good_nymph()).rows(rules.value());
        CHECK(rows.size() >= 8);
        for (const RuleRow& row : rows) CHECK_FALSE(rule_words(row).empty());
        ++sets;
    }
    CHECK(sets >= 2);
}

TEST_CASE("a slip in a rule file is named with its line, and a set without a date is refused") {
    const Result<RuleSet> slip = read_rules("{\"format\": \"wrapwright rules\", \"version\": 1,\n"
                                            "\"name\": \"A\", \"date\": \"2026\",\n"
                                            "\"bead_mots\": \"4 mm\"}");
    REQUIRE_FALSE(slip.ok());
    CHECK(slip.error().place.line == 3);
    CHECK(slip.error().code == ErrorCode::unknown_word);
    const Result<RuleSet> undated =
        read_rules("{\"format\": \"wrapwright rules\", \"version\": 1, \"name\": \"A\"}");
    REQUIRE_FALSE(undated.ok());
    CHECK(undated.error().place.key == "date");
    const Result<RuleSet> unit = read_rules("{\"format\": \"wrapwright rules\", \"version\": 1,\n"
                                            "\"name\": \"A\", \"date\": \"2026\",\n"
                                            "\"bead_most\": \"4\"}");
    REQUIRE_FALSE(unit.ok());
    CHECK(unit.error().code == ErrorCode::unknown_unit);
    CHECK_FALSE(read_rules("").ok());
    CHECK_FALSE(read_rules("[]").ok());
}
