#include "core/units/explain_size.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace wrapwright;

namespace {

std::vector<std::string> meanings(std::string_view text) {
    std::vector<std::string> names;
    for (const SizeMeaning& meaning : explain_size(text).meanings) names.push_back(meaning.what);
    return names;
}

/// The text of the first fact of that name; empty if there is none.
std::string fact(std::string_view text, std::string_view name) {
    for (const SizeMeaning& meaning : explain_size(text).meanings) {
        for (const SizeFact& f : meaning.facts) {
            if (f.name == name) return f.text;
        }
    }
    return {};
}

bool warns(std::string_view text, std::string_view words) {
    const SizeExplanation explanation = explain_size(text);
    return std::any_of(explanation.warnings.begin(), explanation.warnings.end(),
                       [&](const std::string& w) { return w.find(words) != std::string::npos; });
}

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("a bead's fraction is explained with its true and its sold millimetres") {
    CHECK(meanings("7/64 in") == Names{"length"});
    CHECK(fact("7/64 in", "millimetres") == "2.778125 mm");
    CHECK(fact("7/64 in", "bead of that label") == "sold as 2.7, 2.8 mm");
    CHECK(fact("1/4 in", "millimetres") == "6.35 mm");
    CHECK(warns("1/4 in", "1/4 in is 6.35 mm exactly, whatever a chart"));
    // Both are on packets of the same bead: a label is no measurement.
    CHECK(fact("3.8 mm", "bead of that label").starts_with("sold under 5/32 in (true 3.969 mm)"));
    CHECK(fact("4 mm", "bead of that label").starts_with("sold under 5/32 in (true 3.969 mm)"));
    CHECK(fact("2.8 mm", "nearest 64th of an inch") == "7/64 in, which is 0.022 mm less");
}

TEST_CASE("numbers stand beside the words for programs to read") {
    const SizeExplanation inch = explain_size("7/64 in");
    REQUIRE(inch.meanings.size() == 1);
    CHECK(inch.meanings[0].facts[0].number == 2.778125);
    CHECK(inch.text == "7/64 in");
}

TEST_CASE("masses, thread weights and gauges are explained in the other units") {
    // Source  exact definitions; 3.9 x 64.79891 = 252.715749 and 70 / 9 = 7.777...
    CHECK(fact("3.9 gr", "milligrams") == "252.7157 mg");
    CHECK(warns("3.9 gr", "the gram is g"));
    CHECK(fact("1/80 oz", "milligrams") == "354.369 mg");
    CHECK(fact("70 den", "tex") == "7.777778 tex");
    CHECK(fact("70 den", "mass of a metre") == "7.777778 mg");
    CHECK(warns("70 den", "not thickness"));
    // Source  ASTM B258: 0.127 mm x 92^(2/39) = 0.160144 mm
    CHECK(fact("AWG 34", "millimetres") == "0.160144 mm");
}

TEST_CASE("2/0 is a large hook or a thread, and 8/0 may be a glass bead too") {
    CHECK(meanings("2/0") == Names{"hook size", "thread label"});
    CHECK(fact("2/0", "next smaller") == "1/0");
    CHECK(warns("2/0", "say which"));
    CHECK(meanings("hook 2/0") == Names{"hook size"});
    CHECK(meanings("#2/0") == Names{"hook size"});
    CHECK(meanings("thread 3/0") == Names{"thread label"});
    CHECK(fact("thread 3/0", "order").find("3/0 is thicker than 8/0") != std::string::npos);
    CHECK(meanings("8/0") == Names{"hook size", "thread label", "glass bead"});
}

TEST_CASE("00 asks for its era and is never 2/0") {
    for (const char* text : {"00", "old hook 00", "size 00"}) {
        const SizeExplanation explanation = explain_size(text);
        CAPTURE(text);
        REQUIRE(explanation.error);
        CHECK(explanation.error->code == ErrorCode::ambiguous);
        CHECK(warns(text, "it is never the hook 2/0"));
        CHECK(fact(text, "as hook").empty());
    }
    CHECK(meanings("old hook 00") == Names{"old hook size"});
    CHECK(meanings("thread 00") == Names{"thread label"});
    CHECK_FALSE(explain_size("thread 00").error);
}

TEST_CASE("1XL is kept as text, with both conventions and no millimetres") {
    CHECK(fact("#14 1XL", "in the maker's words") == "1XL, kept as text");
    CHECK(fact("#14 1XL", "shank") ==
          "unknown until measured; counting every number, that of a 13; "
          "counting even numbers, that of a 12");
    CHECK(fact("14 1X heavy", "shank").empty());
    CHECK(warns("#14 1XL", "nothing is computed from it"));
    CHECK(fact("10/0 30XL", "shank").find("beyond the largest hook") != std::string::npos);
}

TEST_CASE("lists and ranges say which sizes they name and how they step") {
    CHECK(fact("16 to 12", "as hook") == "12, 14, 16");
    CHECK(fact("10,12,14", "as hook") == "10, 12, 14");
    CHECK(fact("10,12,14", "steps").empty());
    CHECK(fact("12-15", "steps") == "every number, since an end of the range is odd");
    CHECK(fact("4-1/0", "steps") == "the even ladder, as most hooks are sold; 1 is left out");
}

TEST_CASE("a number without a unit is explained as each thing it may be") {
    CHECK(meanings("14") == Names{"hook size"});
    CHECK(meanings("70") == Names{"thread, if denier is meant"});
    CHECK(meanings("28") ==
          Names{"hook size", "wire, if a gauge is meant", "thread, if denier is meant"});
    CHECK(meanings(".015") == Names{"length, if inches are meant"});
    CHECK(meanings("2.8") ==
          Names{"length, if millimetres are meant", "length, if inches are meant"});
    CHECK(meanings("1/80") ==
          Names{"length, if inches are meant", "weighted eyes or head, if ounces are meant"});
    CHECK(warns(".015", "write it out, such as .015 in"));
    CHECK_FALSE(warns("14", "write it out"));
}

TEST_CASE("what has no meaning keeps its text and names the remedy") {
    struct Row {
        const char* text;
        ErrorCode code;
        const char* message;
    };
    for (const Row& row : {
             Row{"#12=18", ErrorCode::malformed,
                 "\"#12=18\" is no hook size: not understood at \"=18\""},
             Row{"sparse", ErrorCode::malformed, "\"sparse\" is no size"},
             Row{"1,5 mm", ErrorCode::malformed, "a comma inside the number \"1,5 mm\""},
             Row{"5 furlong", ErrorCode::unknown_unit, "\"furlong\" is no unit"},
             Row{"-3 mm", ErrorCode::out_of_range, "\"-3 mm\" is below nothing"},
             Row{"60 awg", ErrorCode::out_of_range, "\"60 awg\" is outside AWG 0 to 56"},
             Row{"4000", ErrorCode::out_of_range,
                 "\"4000\" is outside the hook sizes 32 (smallest) to 20/0 (largest)"},
             Row{"", ErrorCode::malformed, "no size is written"},
             Row{"thread x", ErrorCode::malformed, "\"x\" is no thread label"},
             Row{"14 \x01\x02", ErrorCode::malformed,
                 "\"14 ??\" is no hook size: not understood at \"??\""},
         }) {
        const SizeExplanation explanation = explain_size(row.text);
        CAPTURE(row.text);
        CHECK(explanation.meanings.empty());
        CHECK(explanation.text == row.text);
        REQUIRE(explanation.error);
        CHECK(explanation.error->code == row.code);
        CHECK(explanation.error->message == row.message);
        CHECK_FALSE(explanation.error->remedy.empty());
    }
    CHECK(explain_size(std::string(201, '1')).error->code == ErrorCode::too_large);
}

TEST_CASE("the lines for people start with the text and align the facts") {
    const std::vector<std::string> out = lines(explain_size("AWG 34"));
    REQUIRE(out.size() == 5);
    CHECK(out[0] == "AWG 34");
    CHECK(out[1] == "  length");
    CHECK(out[2] == "    millimetres  0.160144 mm");
    CHECK(out[3] == "    inches       0.006304884 in");
    CHECK(out[4].starts_with("  note: "));
    CHECK(lines(explain_size("sparse")).back().starts_with("  remedy: "));
}
