// A recipe goes through a letter and comes back byte for byte, whatever mail does to lines.
#include "core/share/letter.h"
#include "core/share/pack.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

constexpr std::string_view names[] = {"weirfoot-jig",   "sill-dun",       "tailrace-spider",
                                      "lockgate-sedge", "millpool-leech", "keepers-note"};

std::string letter_of(const Recipe& recipe) {
    Result<std::string> letter = write_letter(recipe);
    REQUIRE(letter.ok());
    return std::move(letter).value();
}

void check_back(const std::string& letter, const Recipe& recipe) {
    const Result<std::string> back = read_letter(letter);
    CAPTURE(back.ok() ? std::string() : back.error().message);
    REQUIRE(back.ok());
    CHECK(back.value() == write_recipe(recipe));
}

/// What a mail program may do: quote each line and break it anew at that many columns.
std::string mailed(std::string_view text, std::size_t columns, std::string_view quote,
                   std::string_view end) {
    std::string out;
    while (!text.empty()) {
        const std::size_t line = std::min(text.find('\n'), text.size());
        std::string_view rest = text.substr(0, line);
        text.remove_prefix(std::min(line + 1, text.size()));
        do {
            const std::size_t n = std::min(columns, rest.size());
            out.append(quote).append(rest.substr(0, n)).append(end);
            rest.remove_prefix(n);
        } while (!rest.empty());
    }
    return out;
}

} // namespace

TEST_CASE("every demo recipe comes back from a letter byte for byte") {
    for (const std::string_view name : names) {
        const Recipe recipe = demo(name).recipe;
        const std::string letter = letter_of(recipe);
        CHECK(is_letter(letter));
        check_back(letter, recipe);
        CHECK(letter.find(recipe.name) == 0); // people see what it is
        for (const Part& part : recipe.parts) CHECK(letter.find(part.text) != std::string::npos);
        if (!recipe.provenance.permission.empty()) {
            CHECK(letter.find(recipe.provenance.permission) != std::string::npos);
        }
        MESSAGE(name << ": file " << write_recipe(recipe).size() << " bytes, letter "
                     << letter.size() << ", of it exact "
                     << letter.size() - letter.find("[wrapwright"));
    }
}

TEST_CASE("quoted, wrapped and indented lines change nothing") {
    const Recipe recipe = demo("weirfoot-jig").recipe;
    const std::string letter = letter_of(recipe);
    for (const std::string_view quote : {"", "> ", ">> ", "> > ", "    ", " | ", ">\t"}) {
        for (const std::size_t columns : {7U, 20U, 63U, 72U, 1000U}) {
            check_back(mailed(letter, columns, quote, "\n"), recipe);
            check_back(mailed(letter, columns, quote, "\r\n"), recipe);
            check_back(mailed(letter, columns, quote, " \n\n"), recipe);
        }
    }
    std::string one_line = letter;
    for (char& c : one_line) {
        if (c == '\n') c = ' ';
    }
    check_back("Hello!\n" + one_line + "\n-- \nyours", recipe);
}

TEST_CASE("lost or changed letters are noticed, never guessed") {
    const std::string letter = letter_of(demo("sill-dun").recipe);
    const std::size_t begin = letter.find("[wrapwright");
    Dice dice{99};
    int refused = 0, tries = 0;
    for (int i = 0; i < 200; ++i) {
        std::string harmed = letter;
        const std::size_t at =
            begin + 22 +
            static_cast<std::size_t>(dice.roll(static_cast<int>(letter.size() - begin) - 26));
        if (harmed[at] == '\n') continue;
        if (i % 2 == 0) {
            harmed.erase(at, 1);
        } else {
            harmed[at] = harmed[at] == 'A' ? 'B' : 'A';
        }
        ++tries;
        const Result<std::string> back = read_letter(harmed);
        if (!back.ok()) {
            ++refused;
            CHECK_FALSE(back.error().remedy.empty());
        } else {
            CHECK(back.value() == write_recipe(demo("sill-dun").recipe)); // bits after the end
        }
    }
    CHECK(refused >= tries - 4);
    CHECK(read_letter(letter.substr(0, letter.size() - 40)).error().code == ErrorCode::malformed);
    CHECK(read_letter("Tail: red").error().code == ErrorCode::not_found);
    CHECK(read_letter("[wrapwright recipe 12:AAAA]").error().code == ErrorCode::unknown_version);
}

TEST_CASE("a letter that says it is endless is refused at once") {
    const std::string packed{"\xff\xff\xff\x7f\0\0\0\0aaaaaaaa", 16};
    CHECK(unpack(packed).error().code == ErrorCode::too_large);
    // 4 MiB out of sixteen bytes: more than was sent is read, so it ends early.
    const std::string bomb{"\xff\xff\x3f\0\0\0\0\0aaaaaaaa", 16};
    CHECK_FALSE(unpack(bomb).ok());
}

TEST_CASE("any text packs and unpacks to itself") {
    Dice dice{3};
    for (int i = 0; i < 60; ++i) {
        std::string text;
        const int kinds = 1 + dice.roll(256);
        for (int n = dice.roll(3000); n > 0; --n) text += static_cast<char>(dice.roll(kinds));
        const Result<std::string> back = unpack(pack(text));
        REQUIRE(back.ok());
        CHECK(back.value() == text);
        const Result<std::string> coded = from_base64(base64(text));
        REQUIRE(coded.ok());
        CHECK(coded.value() == text);
    }
    // Source  RFC 4648 section 10, without the padding
    CHECK(base64("foobar") == "Zm9vYmFy");
    CHECK(base64("fooba") == "Zm9vYmE");
    // Source  the check value of CRC-32: "123456789" gives cbf43926 (catalogue of CRCs, from memory)
    CHECK(crc32("123456789") == 0xcbf43926U);
}

TEST_CASE("a recipe whose words look like a letter is still itself") {
    Recipe recipe = demo("keepers-note").recipe;
    recipe.notes = "[wrapwright recipe 1:AAAA] is how a letter ends";
    check_back(letter_of(recipe), recipe);
}
