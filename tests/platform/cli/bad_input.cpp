// Bad input: one line on stderr that names place and remedy, exit code 2, nothing written.

#include "tests/platform/cli/program.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;

namespace {

/// A line "FILE:...: message; remedy" and nothing else.
void check_refused(const Ran& ran, const std::string& place) {
    CAPTURE(ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    REQUIRE_FALSE(ran.err.empty());
    CHECK(ran.err.find('\n') == ran.err.size() - 1);
    CHECK(ran.err.find("; ") != std::string::npos);
    CHECK(ran.err.find(place) != std::string::npos);
}

/// A recipe of one material, one part and one action, with one text replaced.
std::string small_recipe(const std::string& from, const std::string& to) {
    std::string text = R"({
  "format": "wrapwright recipe",
  "version": 1,
  "id": "small",
  "name": "Small",
  "sizes": "14",
  "materials": [
    {"id": "thread", "kind": "thread", "linear": "70 den"}
  ],
  "parts": [
    {"id": "thread", "role": "thread", "made_of": ["thread"]},
    {"id": "head", "role": "head", "made_of": ["thread"], "turns": "6 turns"}
  ],
  "steps": [
    {"text": "Start.", "actions": [
      {"do": "clamp"},
      {"do": "start thread", "part": "thread", "to": "middle", "turns": "5 turns"},
      {"do": "whip finish", "turns": "4 turns"},
      {"do": "cut thread"}
    ]}
  ]
}
)";
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

struct Bad {
    const char* what;
    const char* from;
    const char* to;
    const char* place; ///< what the line must name
};

constexpr Bad bad_recipes[] = {
    {"cut short", "  \"steps\": [", "\x04", "bad.json:14: "},
    {"a key twice", "\"id\": \"small\",", "\"id\": \"small\", \"id\": \"again\",",
     "bad.json:4: id:"},
    {"no number", "\"70 den\"", "NaN", "bad.json:8"},
    {"a negative count", "\"6 turns\"", "\"-6 turns\"", "bad.json:12: parts[1].turns:"},
    {"a unit of another kind", "\"5 turns\"", "\"5 furlongs\"",
     "bad.json:17: steps[0].actions[1].turns:"},
    {"an amount that leads back to itself", "\"6 turns\"", "\"same as head\"",
     "bad.json:12: parts[1].turns:"},
    {"a newer version", "\"version\": 1", "\"version\": 99", "bad.json:3: version:"},
    {"another format", "wrapwright recipe", "shopping list", "bad.json:2: format:"},
    {"an unknown operation", "\"clamp\"", "\"sing\"", "bad.json:16: steps[0].actions[0].do:"},
    {"a part that nobody has", "\"part\": \"thread\", \"to\"", "\"part\": \"tail\", \"to\"",
     "bad.json:17: steps[0].actions[1].part:"},
    {"a place that is nowhere", "\"middle\"", "\"yonder\"", "bad.json:17: steps[0].actions[1].to:"},
    {"an id twice", "{\"id\": \"head\"", "{\"id\": \"thread\"", "bad.json:12: parts[1].id:"},
    {"a number where a text goes", "\"Small\"", "7", "bad.json:5: name:"},
};

} // namespace

TEST_CASE("each recipe that cannot be used is refused with its place and a remedy") {
    const Scratch scratch;
    REQUIRE(wrapwright::test::wrapwright(
                {"plan", scratch.file("good.json", small_recipe("6 turns", "6 turns"))})
                .code == 0);
    for (const Bad& bad : bad_recipes) {
        CAPTURE(bad.what);
        const std::string text = small_recipe(bad.from, bad.to);
        const std::string file = scratch.file("bad.json", text);
        for (const char* command : {"plan", "check", "tally"}) {
            check_refused(wrapwright::test::wrapwright({command, file}), bad.place);
        }
        CHECK(bytes_of(file) == text);
    }
}

TEST_CASE("files that are no recipe at all are refused by name") {
    const Scratch scratch;
    check_refused(wrapwright::test::wrapwright({"plan", scratch.file("empty.json", "")}),
                  "empty.json");
    check_refused(wrapwright::test::wrapwright({"plan", scratch.file("junk.json", "\xff\xfe\0x")}),
                  "junk.json");
    check_refused(
        wrapwright::test::wrapwright({"plan", scratch.file("deep.json", std::string(100000, '['))}),
        "deep.json");
    check_refused(wrapwright::test::wrapwright({"plan", scratch.folder().string() + "/none.json"}),
                  "none.json");
    check_refused(wrapwright::test::wrapwright({"plan", scratch.folder().string()}),
                  scratch.folder().string());
    check_refused(wrapwright::test::wrapwright({"plan", "no-such-demo"}), "weirfoot-jig");
}

TEST_CASE("a file of a terabyte is refused by its size, without reading it") {
    const Scratch scratch;
    const std::string file = scratch.file("huge.json", "{");
    std::filesystem::resize_file(file, std::uintmax_t{1} << 40U); // sparse: takes no room
    // Whoever reads it runs out of memory or of the time that a test has.
    check_refused(wrapwright::test::wrapwright({"plan", file}), "huge.json");
}

TEST_CASE("a hook file that cannot be used is refused by its own name") {
    const Scratch scratch;
    const std::string hook = scratch.file(
        "hook.json", "{\"format\": \"wrapwright hook\", \"version\": 1, \"shank\": \"-8 mm\"}");
    check_refused(wrapwright::test::wrapwright({"plan", "sill-dun", "--hook", hook}), "hook.json");
}

TEST_CASE("options that cannot be meant are refused in one line") {
    for (const std::vector<std::string>& arguments :
         std::vector<std::vector<std::string>>{{},
                                               {"dance"},
                                               {"plan"},
                                               {"plan", "sill-dun", "--loud"},
                                               {"plan", "sill-dun", "--size", "cat"},
                                               {"plan", "sill-dun", "--size", "00"},
                                               {"plan", "sill-dun", "--size", "200"},
                                               {"plan", "sill-dun", "--hand", "third"},
                                               {"plan", "sill-dun", "extra"}}) {
        check_refused(wrapwright::test::wrapwright(arguments), "wrapwright");
    }
}

TEST_CASE("the help names every command and the exit codes") {
    const Ran ran = wrapwright::test::wrapwright({"--help"});
    CHECK(ran.code == 0);
    for (const char* word : {"plan", "check", "tally", "picture", "model", "size", "Exit codes"}) {
        CAPTURE(word);
        CHECK(ran.out.find(word) != std::string::npos);
    }
}
