// Dressings of an old book with seven fields, read in three layouts.
//
// Source  E. C. Gregg, How to Tie Flies, A. S. Barnes, New York 1940 (public domain): the fields and
//         the kind of words in them. The dressings are typed from memory of these traditional flies,
//         in our own words and layout; they were not compared with the book.
#include "tests/core/loose/words.h"

#include <array>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

struct Dressing {
    std::string_view name, tag, tail, rib, body, hackle, wings;
};

constexpr std::array<Dressing, 27> dressings{{
    {"Alder", "gold tinsel", "none", "none", "peacock herl", "black", "brown mottled turkey"},
    {"Alexandra", "none", "scarlet ibis", "none", "silver tinsel", "black", "peacock sword"},
    {"Beaverkill", "none", "gray mallard", "none", "white floss", "brown palmer", "slate"},
    {"Black Gnat", "none", "none", "none", "black chenille", "black", "black or slate"},
    {"Blue Dun", "none", "blue dun hackle fibres", "none", "blue gray fur", "blue dun", "slate"},
    {"Blue Professor", "gold tinsel", "scarlet ibis", "gold tinsel", "blue floss", "brown",
     "gray mallard"},
    {"Brown Hackle", "gold tinsel", "none", "none", "peacock herl", "brown", "none"},
    {"Cahill", "none", "wood duck", "none", "muskrat fur", "brown", "mandarin or wood duck"},
    {"Coachman", "gold tinsel", "none", "none", "peacock herl", "brown", "white"},
    {"Royal Coachman", "none", "golden pheasant tippets", "none",
     "peacock herl and a band of red floss", "brown", "white"},
    {"Cowdung", "gold tinsel", "none", "none", "olive green wool", "brown", "cinnamon or slate"},
    {"Ginger Quill", "none", "ginger hackle fibres", "none", "stripped peacock quill", "ginger",
     "slate"},
    {"Gold Ribbed Hare's Ear", "none", "brown hackle fibres", "gold tinsel", "hare's fur", "none",
     "slate"},
    {"Gray Hackle", "gold tinsel", "scarlet", "gold tinsel", "peacock herl or yellow floss",
     "grizzly", "none"},
    {"Grizzly King", "gold tinsel", "scarlet ibis", "gold tinsel", "green floss", "grizzly",
     "gray mallard"},
    {"Iron Blue Dun", "red floss", "iron blue", "none", "mole fur", "iron blue", "dark slate"},
    {"King of the Waters", "none", "gray mallard", "gold tinsel", "red floss", "brown palmer",
     "gray mallard"},
    {"March Brown", "none", "brown mallard", "yellow silk", "brown fur", "brown grouse",
     "mottled turkey"},
    {"McGinty", "none", "scarlet ibis and gray mallard", "none", "black and yellow chenille",
     "brown", "white mallard"},
    {"Montreal", "gold tinsel", "scarlet", "gold tinsel", "claret floss", "claret",
     "brown mottled turkey"},
    {"Parmachene Belle", "black ostrich", "red and white hackle fibres", "silver tinsel",
     "yellow floss", "red and white", "white goose and a strip of scarlet goose"},
    {"Professor", "gold tinsel", "scarlet ibis", "gold tinsel", "yellow floss", "brown",
     "gray mallard"},
    {"Queen of the Waters", "none", "none", "gold tinsel", "orange floss", "brown palmer",
     "gray mallard"},
    {"Rio Grande King", "gold tinsel", "golden pheasant", "none", "black chenille", "brown",
     "white"},
    {"White Miller", "none", "none", "silver tinsel", "white wool", "white", "white"},
    {"Wickham's Fancy", "none", "ginger hackle fibres", "none", "flat gold tinsel", "ginger palmer",
     "slate"},
    {"Yellow Sally", "gold tinsel", "yellow", "gold tinsel", "yellow floss", "yellow", "yellow"},
}};

struct Row {
    std::string_view label, role, value;
};

std::array<Row, 6> rows(const Dressing& d) {
    return {{{"Tag", "tag", d.tag},
             {"Tail", "tail", d.tail},
             {"Ribs", "rib", d.rib},
             {"Body", "body", d.body},
             {"Hackle", "hackle", d.hackle},
             {"Wings", "wing", d.wings}}};
}

std::string lower_first(std::string_view word) {
    std::string text(word);
    text[0] = static_cast<char>(text[0] + 32);
    return text;
}

std::string labelled(const Dressing& d) {
    std::string text(d.name);
    text += "\n";
    for (const Row& r : rows(d)) {
        text.append(r.label).append(": ").append(r.value).append("\n");
    }
    return text;
}

std::string with_commas(const Dressing& d) {
    std::string text(d.name);
    for (const Row& r : rows(d)) {
        text.append(", ").append(lower_first(r.label)).append(" ").append(r.value);
    }
    return text + ".\n";
}

/// "tail of gray mallard", "no tail".
std::string having(const Row& r) {
    std::string text;
    if (r.value == "none") return text.append("no ").append(lower_first(r.label));
    return text.append("a ").append(lower_first(r.label)).append(" of ").append(r.value);
}

/// "the hackle is black", "there is no hackle".
std::string being(const Row& r, std::string_view is) {
    std::string text;
    if (r.value == "none") return text.append("there is no ").append(lower_first(r.label));
    return text.append("the ").append(lower_first(r.label)).append(is).append(r.value);
}

std::string paragraph(const Dressing& d) {
    const auto r = rows(d);
    std::string text = "The ";
    text.append(d.name).append(" has ").append(having(r[0])).append(" and ").append(having(r[1]));
    text.append(". It has ").append(having(r[2])).append(", and ").append(being(r[3], " is "));
    text.append("; ").append(being(r[4], " is ")).append(" and ").append(being(r[5], " are "));
    return text + ".\n";
}

void check(const Dressing& d, const std::string& text) {
    CAPTURE(text);
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    CHECK(value_of(text, read, PieceKind::name) == d.name);
    CHECK(read.flies == 1);
    for (const Row& r : rows(d)) {
        CAPTURE(r.role);
        CHECK(part_of(text, read, r.role) == (r.value == "none" ? "(none)" : r.value));
    }
    int parts = 0;
    for (const Piece& p : read.pieces) parts += p.kind == PieceKind::part ? 1 : 0;
    CHECK(parts == 6); // and no other part was made out of their words
}

/// The recipe without the text that it came from.
std::string made(const std::string& text) {
    const LooseText read = loose(text);
    Result<Recipe> recipe = make_recipe(text, read, accept_all(read));
    REQUIRE(recipe.ok());
    CHECK(recipe.value().verbatim == text);
    Recipe plain = std::move(recipe).value();
    plain.verbatim.clear();
    std::string all = plain.name;
    for (const Part& p : plain.parts) {
        all.append("\n").append(p.id).append(" ").append(p.role).append(" ").append(p.text);
        for (const Ingredient& i : p.made_of) all.append(" = ").append(i.material);
    }
    for (const RecipeMaterial& m : plain.materials) {
        all.append("\n").append(m.id).append(" ").append(name(m.kind)).append(" ");
        all.append(m.text).append(" ").append(m.colour).append(" / ").append(m.instead);
    }
    return all;
}

} // namespace

TEST_CASE("in labelled lines each of the seven fields lands where it belongs") {
    for (const Dressing& d : dressings) check(d, labelled(d));
}

TEST_CASE("in a list with commas each of the seven fields lands where it belongs") {
    for (const Dressing& d : dressings) check(d, with_commas(d));
}

TEST_CASE("in a paragraph each of the seven fields lands where it belongs") {
    for (const Dressing& d : dressings) check(d, paragraph(d));
}

TEST_CASE("all three layouts of a dressing make the same recipe") {
    for (const Dressing& d : dressings) {
        const std::string lines = made(labelled(d));
        CHECK(made(with_commas(d)) == lines);
        CHECK(made(paragraph(d)) == lines);
    }
}
