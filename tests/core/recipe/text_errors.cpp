// Bad input: one clear line that names the place and the remedy, whatever is wrong.

#include "core/recipe/text.h"

#include <doctest/doctest.h>
#include <string>

using namespace wrapwright;

namespace {

Error error_of(const std::string& text) {
    const Result<Recipe> r = read_recipe(text);
    REQUIRE_FALSE(r.ok());
    const Error& e = r.error();
    CHECK_FALSE(e.message.empty());
    CHECK_FALSE(e.remedy.empty());
    CHECK(e.message.find('\n') == std::string::npos);
    CHECK(e.remedy.find('\n') == std::string::npos);
    return e;
}

/// A recipe with one step of one action, its members as given.
std::string with_action(const std::string& members) {
    return "{\n\"format\": \"wrapwright recipe\",\n\"version\": 1,\n\"id\": \"x\",\n\"steps\": [\n"
           "{\"text\": \"t\", \"actions\": [\n{" +
           members + "}\n]}\n]\n}\n";
}

} // namespace

TEST_CASE("an empty text, or one that is no object, is refused") {
    error_of("");
    error_of("   \n");
    error_of("[]");
    error_of("\"a recipe\"");
    error_of("\xEF\xBB\xBF");
}

TEST_CASE("a text of another format, or with none, is refused by name") {
    CHECK(error_of("{}").place.key == "format");
    CHECK(error_of(R"({"format": "something else", "version": 1})").place.key == "format");
    CHECK(error_of(R"({"format": "wrapwright recipe"})").place.key == "version");
}

TEST_CASE("a file of a newer version says so") {
    const Error e = error_of("{\"format\": \"wrapwright recipe\",\n\"version\": 99}");
    CHECK(e.code == ErrorCode::unknown_version);
    CHECK(e.place.line == 2);
}

TEST_CASE("a truncated text is refused at the line where it ends") {
    const std::string whole = with_action(R"("do": "clamp")");
    REQUIRE(read_recipe(whole).ok());
    for (std::size_t n = 1; n + 2 < whole.size(); n += 7) {
        CAPTURE(n);
        const Error e = error_of(whole.substr(0, n));
        CHECK(e.place.line >= 1);
    }
}

TEST_CASE("nesting without end is refused, however deep") {
    for (const int depth : {60, 5000, 200000}) {
        CAPTURE(depth);
        const Error e = error_of(R"({"format":"wrapwright recipe","version":1,"x":)" +
                                 std::string(static_cast<std::size_t>(depth), '['));
        CHECK(e.code == ErrorCode::too_large);
    }
}

TEST_CASE("a text over four megabytes is refused by its length") {
    std::string text(std::size_t{5} << 20, ' ');
    CHECK(error_of(text).code == ErrorCode::too_large);
}

TEST_CASE("a key that stands twice is refused with its line") {
    const Error e = error_of(
        "{\"format\": \"wrapwright recipe\", \"version\": 1,\n\"id\": \"a\",\n\"id\": \"b\"}");
    CHECK(e.code == ErrorCode::duplicate);
    CHECK(e.place.line == 3);
    CHECK(e.place.key == "id");
}

TEST_CASE("numbers that are none are refused") {
    error_of(R"({"format":"wrapwright recipe","version":1,"x":NaN})");
    error_of(R"({"format":"wrapwright recipe","version":1,"x":Infinity})");
    error_of(R"({"format":"wrapwright recipe","version":1e999})");
    error_of(R"({"format":"wrapwright recipe","version":-1})");
    error_of(R"({"format":"wrapwright recipe","version":1.5})");
    error_of(R"({"format":"wrapwright recipe","version":1,"parts":[{"id":"a","copies":-3}]})");
}

TEST_CASE("bytes that are no text are refused") {
    error_of("{\"format\": \"wrapwright recipe\", \"version\": 1, \"id\": \"\xFF\xFE\"}");
    error_of(std::string("\0\0\0\0", 4));
}

TEST_CASE("a value of the wrong kind is refused with its key") {
    CHECK(error_of(R"({"format":"wrapwright recipe","version":1,"steps":{}})").place.key ==
          "steps");
    CHECK(error_of(R"({"format":"wrapwright recipe","version":1,"name":7})").place.key == "name");
}

TEST_CASE("an operation that there is not is refused, and the nearest is suggested") {
    const Error e = error_of(with_action(R"("do": "whip finnish")"));
    CHECK(e.code == ErrorCode::unknown_word);
    CHECK(e.place.line == 7);
    CHECK(e.place.key == "steps[0].actions[0].do");
    CHECK((e.message + e.remedy).find("whip finish") != std::string::npos);
}

TEST_CASE(
    "a wrong unit, a negative amount and a number out of bounds are refused where they stand") {
    for (const char* members :
         {R"("do": "wind", "turns": "3 mm")", R"("do": "wind", "turns": "-2 turns")",
          R"("do": "tie in", "length": "5 turns")", R"("do": "tie in", "length": "-4 mm")",
          R"("do": "tie in", "length": "4 furlongs")", R"("do": "wind", "pitch": "1e999 mm")"}) {
        CAPTURE(members);
        const Error e = error_of(with_action(members));
        CHECK(e.place.line == 7);
        CHECK(e.place.key.rfind("steps[0].actions[0].", 0) == 0);
    }
}

TEST_CASE("a place that there is not is refused with the landmarks that there are") {
    const Error e = error_of(with_action(R"("do": "travel", "to": "the moon")"));
    CHECK(e.code == ErrorCode::unknown_word);
    CHECK(e.remedy.find("bend") != std::string::npos);
}

TEST_CASE("an old hook size is never guessed") {
    // Source  a collector's list of the 1880s writes small dry-fly hooks 0, 00 and 000
    for (const char* old : {"00", "000"}) {
        CAPTURE(old);
        const Error e = error_of(
            std::string(R"({"format":"wrapwright recipe","version":1,"sizes":")") + old + "\"}");
        CHECK(e.code == ErrorCode::ambiguous);
        CHECK(e.place.key == "sizes");
    }
}

TEST_CASE("a hook that is measured in nonsense is refused with its key") {
    const Result<Hook> h =
        read_hook(R"({"format":"wrapwright hook","version":1,"family":"dry","shank":"-3 mm"})");
    REQUIRE_FALSE(h.ok());
    CHECK(h.error().place.key == "shank");
    CHECK_FALSE(read_hook("{}").ok());
}
