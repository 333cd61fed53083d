#include "core/tying/finding_text.h"

#include <doctest/doctest.h>
#include <set>

using namespace wrapwright;

namespace {

Pattern pattern_of_one_part() {
    Pattern pattern;
    Base base;
    base.id = "hook";
    pattern.recipe.bases.push_back(base);
    Part part;
    part.id = "bead";
    part.role = "bead";
    pattern.recipe.parts.push_back(part);
    return pattern;
}

Finding finding_of(Rule rule) {
    Finding finding;
    finding.rule = rule;
    finding.part = 0;
    finding.evidence = {Evidence{Kind::length, 1.25e-3}, Evidence{Kind::length, 0.75e-3},
                        Evidence{Kind::length, -0.5e-3}, Evidence{Kind::count, 3.0}};
    return finding;
}

} // namespace

TEST_CASE("every rule has a word of its own that leads back to it") {
    std::set<std::string_view> words;
    for (int i = 0; i < rule_count; ++i) {
        const auto r = static_cast<Rule>(i);
        CAPTURE(name(r));
        CHECK(words.insert(name(r)).second);
        CHECK(rule(name(r)) == r);
    }
    CHECK_FALSE(rule("no-such-rule").has_value());
}

TEST_CASE("every finding is told in full: what, what to do, and no blank left unfilled") {
    const Pattern pattern = pattern_of_one_part();
    for (int i = 0; i < rule_count; ++i) {
        const FindingText text = describe(pattern, finding_of(static_cast<Rule>(i)));
        CAPTURE(text.message);
        CAPTURE(text.remedy);
        CHECK_FALSE(text.message.empty());
        CHECK_FALSE(text.remedy.empty());
        for (const std::string& line : {text.message, text.remedy, text.caution}) {
            CHECK(line.find_first_of("{}\n") == std::string::npos);
            CHECK(line.find("clockwise") == std::string::npos); // words must hold for either hand
        }
    }
}

TEST_CASE("a bead that sticks says where, by how much, and what helps there") {
    const Pattern pattern = pattern_of_one_part();
    Finding finding = finding_of(Rule::bead_will_not_pass);
    FindingText text = describe(pattern, finding);
    CHECK(text.message == "the bead will not pass the jig bend: it needs 1.25 mm and has 0.75 mm");
    CHECK(text.remedy.find("slotted") != std::string::npos);
    CHECK(evidence_words(text.evidence) == "needed 1.25 mm, has 0.75 mm, margin -0.5 mm");

    finding.evidence[3].si = 1.0;
    text = describe(pattern, finding);
    CHECK(text.message.find("the barb") != std::string::npos);
    CHECK(text.remedy.find("press the barb flat") != std::string::npos);
}

TEST_CASE("evidence is given in the unit that it is read in") {
    const Pattern pattern = pattern_of_one_part();
    Finding finding;
    finding.rule = Rule::thread_near_breaking;
    finding.evidence = {Evidence{Kind::force, 3.0}, Evidence{Kind::force, 3.3},
                        Evidence{Kind::ratio, 1.1}, Evidence{Kind::ratio, 1.5}};
    const FindingText text = describe(pattern, finding);
    REQUIRE(text.evidence.size() == 4);
    CHECK(text.evidence[0].unit == "N");
    CHECK(text.evidence[0].what == "pull");
    CHECK(text.evidence[0].value == 3.0);
    CHECK(text.evidence[2].unit.empty());
}

TEST_CASE("a finding without a part still makes a sentence") {
    Pattern pattern = pattern_of_one_part();
    Finding finding = finding_of(Rule::step_too_steep);
    finding.part = none;
    CHECK(describe(pattern, finding).message.find("turns of the work cross") == 0);
}
