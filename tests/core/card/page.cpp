// Pages as text: nothing of what was written breaks them, and they need nothing from anywhere.

#include "core/card/gauge.h"
#include "core/card/recipe_pages.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>
#include <limits>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

struct Paper {
    Pattern pattern;
    Resolved resolved{};
    Tied tied{};

    explicit Paper(Recipe recipe) : pattern(link(std::move(recipe)).value()) {
        const HookSize size =
            pattern.recipe.size_list.empty() ? HookSize{14} : pattern.recipe.size_list.front();
        const Result<Rig> rig = make_rig(pattern, size);
        REQUIRE(rig.ok());
        REQUIRE(resolve(pattern, rig.value(), resolved).ok());
        tie(pattern, rig.value(), resolved, Limits{}, tied);
    }
    [[nodiscard]] PageFacts facts() const { return {pattern, resolved, tied}; }
    [[nodiscard]] std::vector<std::string> pages() const {
        const PageFacts f = facts();
        return {recipe_card(page_index, f), handout(page_a4, f), toe_tags(page_a4, f),
                box_labels(page_letter, f), lay_out_page(page_a4, f)};
    }
};

int count(std::string_view text, std::string_view what) {
    int n = 0;
    for (auto at = text.find(what); at != text.npos; at = text.find(what, at + 1)) ++n;
    return n;
}

} // namespace

TEST_CASE("words of a recipe cannot end a tag or begin one, on any page") {
    Recipe recipe = demo("weirfoot-jig").recipe;
    recipe.name = "<script>alert('x')</script> & \"co\"\x01";
    recipe.imitates = "</svg></style>";
    recipe.steps[0].text = "a < b & c > d";
    for (RecipeMaterial& m : recipe.materials) m.text = "<b>" + m.text;
    for (const std::string& page : Paper(recipe).pages()) {
        CHECK(page.find("<script") == page.npos);
        CHECK(page.find("</svg></style>") == page.npos);
        CHECK(page.find('\x01') == page.npos);
        CHECK(count(page, "</style>") == count(page, "<style>"));
        CHECK(page.find("&lt;script&gt;") != page.npos);
    }
}

TEST_CASE("a page holds all that it needs: no script, no picture and no style from elsewhere") {
    for (const char* name : {"weirfoot-jig", "millpool-leech", "keepers-note"}) {
        for (std::string page : Paper(demo(name).recipe).pages()) {
            for (const char* link : {"src=", "href=", "url(", "@import", "<script", "https:"}) {
                CAPTURE(link);
                CHECK(page.find(link) == page.npos);
            }
            CHECK(count(page, "http://") == count(page, "xmlns=\"http://www.w3.org/2000/svg\""));
        }
    }
}

TEST_CASE(
    "everybody of a swap has as many tags as flies, each with his name and none with a fly's") {
    const std::vector<std::string> people{"Ada <of the weir>", "Brun"};
    const std::string page = blank_tags(page_a4, people, 3, "2026-11-29");
    CHECK(count(page, "<b>Ada &lt;of the weir&gt;</b>, 2026-11-29") == 3);
    CHECK(count(page, "<b>Brun</b>") == 3);
    CHECK(count(page, "contains lead: yes") == 6);
    CHECK(count(page, "Fly: ___") == 6);
}

TEST_CASE("numbers of a drawing have a point and no exponent, and are always numbers") {
    CHECK(svg_number(1234567.25) == "1234567.25");
    CHECK(svg_number(1e-9) == "0");
    CHECK(svg_number(-0.5) == "-0.5");
    CHECK(svg_number(std::numeric_limits<double>::quiet_NaN()) == "0");
    CHECK(svg_number(std::numeric_limits<double>::infinity()) == "0");
    for (const std::string& page : Paper(demo("weirfoot-jig").recipe).pages()) {
        CHECK(page.find("nan") == page.npos);
    }
}

TEST_CASE(
    "a page in any two runs has the same bytes, and each recipe prints at each of its sizes") {
    for (const char* name : {"weirfoot-jig", "sill-dun", "tailrace-spider", "lockgate-sedge",
                             "millpool-leech", "keepers-note"}) {
        const Paper paper(demo(name).recipe);
        CHECK(paper.pages() == paper.pages());
        for (const std::string& page : paper.pages()) CHECK(page.size() > 500);
    }
}

TEST_CASE("what was written without structure is printed as it was written") {
    const Paper note(demo("keepers-note").recipe);
    const std::string page = recipe_card(page_index, note.facts());
    const std::string first = note.pattern.recipe.verbatim.substr(0, 20);
    CHECK(page.find(escaped(first)) != page.npos);
}

TEST_CASE("the picture of a step shows what is on the fly by then, and no more") {
    const Paper paper(demo("weirfoot-jig").recipe);
    const std::string page = handout(page_a4, paper.facts());
    // The pictures grow with the fly: the first step has no body, the last has all of it.
    const auto first = page.find("class=\"step keep\"");
    const auto second = page.find("class=\"step keep\"", first + 1);
    const auto last = page.rfind("class=\"step keep\"");
    const std::string one = page.substr(first, second - first), all = page.substr(last);
    CHECK(count(one, "<path") < count(all, "<path"));
    CHECK(count(one, "fill=\"#ccc\"") == 0);
    CHECK(count(all, "fill=\"#ccc\"") == 1);
}
