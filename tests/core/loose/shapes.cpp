// Loose texts of very different shape, as needs of the bench: lines, a table, prose, steps, several
// hooks, words for amounts. The flies are invented.
#include "core/loose/spellings.h"
#include "tests/core/loose/words.h"
#include "tests/support/close.h"

#include <algorithm>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Recipe recipe_of(std::string_view text, int fly = 0) {
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    Result<Recipe> made = make_recipe(text, read, accept_all(read), fly);
    REQUIRE(made.ok());
    return std::move(made).value();
}

const Part* role(const Recipe& r, std::string_view wanted) {
    for (const Part& p : r.parts) {
        if (p.role == wanted) return &p;
    }
    return nullptr;
}

const RecipeMaterial* material(const Recipe& r, const Part* part, std::size_t at = 0) {
    if (part == nullptr || at >= part->made_of.size()) return nullptr;
    for (const RecipeMaterial& m : r.materials) {
        if (m.id == part->made_of[at].material) return &m;
    }
    return nullptr;
}

} // namespace

TEST_CASE("a card with labels gives hook, sizes, amounts and materials") {
    const Recipe r = recipe_of("Sluice Nymph\n"
                               "Hook: jig, #12-16, barbless or equivalent\n"
                               "Bead: 7/64 in slotted tungsten bead, copper\n"
                               "Thread - 70 den brown\n"
                               "Weight: 8 turns of .015 lead wire\n"
                               "Tail: 10 or 12 fibres of ginger hackle fibres, half the shank\n"
                               "Rib: 5 turns copper wire (optional)\n"
                               "Body: hare's ear, sparse\n"
                               "Hackle and legs: brown partridge, or grouse\n");
    CHECK(r.name == "Sluice Nymph");
    CHECK(r.id == "sluice-nymph");
    REQUIRE(r.bases.size() == 1);
    CHECK(r.bases[0].text == "jig, #12-16, barbless or equivalent");
    CHECK(r.bases[0].family == HookFamily::jig);
    CHECK(r.sizes == "#12-16");
    CHECK(r.size_list.size() == 3); // 12, 14, 16
    const RecipeMaterial* bead = material(r, role(r, "bead"));
    REQUIRE(bead != nullptr);
    CHECK(bead->kind == MaterialKind::bead);
    CHECK(bead->size.text == "7/64 in");
    // Source  1 in = 25.4 mm exactly, so 7/64 in is 2.778125 mm
    CHECK(within(bead->size.reading.value, 2.778125e-3, 1e-15));
    const RecipeMaterial* lead = material(r, role(r, "ballast"));
    REQUIRE(lead != nullptr);
    CHECK(lead->size.text == ".015");
    CHECK(lead->size.is == ".015 in");
    CHECK(role(r, "ballast")->turns.text == "8 turns");
    const Part* tail = role(r, "tail");
    REQUIRE(tail != nullptr);
    CHECK(tail->count.text == "10 or 12 fibres");
    CHECK(tail->length.reading.basis == Basis::shank);
    CHECK(tail->length.reading.value == 0.5);
    REQUIRE(role(r, "rib") != nullptr);
    CHECK(role(r, "rib")->optional);
    CHECK(role(r, "body")->count.text == "sparse");
    REQUIRE(role(r, "legs") != nullptr); // two parts share a line
    CHECK(role(r, "legs")->made_of[0].material == role(r, "hackle")->made_of[0].material);
    CHECK(material(r, role(r, "legs"))->instead == "grouse");
    CHECK(material(r, role(r, "thread"))->linear.text == "70 den");
}

TEST_CASE("no label at all: the words of a spider stay, and those that are known are found") {
    const std::string text = "silk, partridge, sparse, a little past the hook; rib five turns";
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    CHECK(part_of(text, read, "thread") == "silk");
    CHECK(part_of(text, read, "rib") == "five turns");
    const Recipe r = recipe_of(text);
    REQUIRE(role(r, "rib") != nullptr);
    CHECK(role(r, "rib")->turns.reading.value == 5.0);
    const bool partridge =
        std::any_of(r.materials.begin(), r.materials.end(),
                    [](const RecipeMaterial& m) { return m.kind == MaterialKind::soft_hackle; });
    CHECK(partridge);
}

TEST_CASE("a table with heads gives one fly for each row") {
    const std::string text = "| Name | Tag | Tail | Body |\n|---|---|---|---|\n"
                             "| Weir Wet | gold | red floss | black wool |\n"
                             "| Gate Wet | none | | yellow wool |\n";
    const LooseText read = loose(text);
    CHECK(read.flies == 2);
    CHECK(recipe_of(text, 0).name == "Weir Wet");
    const Recipe second = recipe_of(text, 1);
    CHECK(second.name == "Gate Wet");
    CHECK(role(second, "tag") == nullptr);
    REQUIRE(role(second, "body") != nullptr);
    CHECK(role(second, "body")->text == "yellow wool");
}

TEST_CASE("columns by tabs, wide blanks, bars and dots are labels too") {
    for (const std::string_view text :
         {"Gauge Fly\nTail\tred floss\nBody\tblack wool\n",
          "Gauge Fly\nTail    red floss\nBody    black wool\n",
          "Gauge Fly\n| Tail | red floss |\n| Body | black wool |\n",
          "Gauge Fly\nTail ..... red floss\nBody ..... black wool\n",
          "Gauge Fly\nTail = red floss\nBody = black wool\n",
          "Gauge Fly\n- Tail: red floss\n- Body: black wool\n",
          "GAUGE FLY\nTAIL \u2014 red floss\nBODY \u2014 black wool\n"}) {
        CAPTURE(text);
        const LooseText read = loose(text);
        CHECK(part_of(text, read, "tail") == "red floss");
        CHECK(part_of(text, read, "body") == "black wool");
    }
}

TEST_CASE("numbered steps give steps with the actions that they name") {
    const Recipe r =
        recipe_of("Pound Lock Wet\nBody: black wool\nHackle: brown\n\nSteps:\n"
                  "1. Start the thread behind the eye and lay a base to the bend.\n"
                  "2. Tie in the body with three turns. Wind the body forward; tie off.\n"
                  "3. Now the difficult bit, watch your fingers.\n");
    REQUIRE(r.steps.size() == 3);
    REQUIRE(r.steps[0].actions.size() == 2);
    CHECK(r.steps[0].actions[0].op == Op::start_thread);
    CHECK(r.steps[0].actions[1].op == Op::lay_base);
    REQUIRE(r.steps[1].actions.size() == 3);
    CHECK(r.steps[1].actions[0].op == Op::tie_in);
    CHECK(r.steps[1].actions[0].part == "body");
    CHECK(r.steps[1].actions[0].turns.text == "three turns");
    CHECK(r.steps[2].text == "Now the difficult bit, watch your fingers");
}

TEST_CASE("several hooks are several bases, and what follows one goes on it") {
    const Recipe r = recipe_of("Name: Two Gates\nRear hook: #6 wet\nTail: white marabou\n"
                               "Front hook: #4\nBody: white chenille\n");
    REQUIRE(r.bases.size() == 2);
    CHECK(r.sizes == "#6, #4");
    CHECK(role(r, "body")->base == "front-hook");
}

TEST_CASE("old and mistaken sizes are not guessed, and the text says why") {
    for (const std::string_view text :
         {"Hook: 00\nBody: red silk floss\n", "Hook: #12=18\nBody: red floss\n"}) {
        CAPTURE(text);
        const LooseText read = loose(text);
        CHECK(all_of(text, read, PieceKind::sizes).empty());
        CHECK_FALSE(read.notes.empty());
        CHECK(value_of(text, read, PieceKind::base).size() > 1);
    }
}

TEST_CASE("conditions stay with their part, in words") {
    const Recipe r = recipe_of("Mill Pupa\nBody: red floss\nRib: gold wire on large hooks\n");
    REQUIRE(role(r, "rib") != nullptr);
    CHECK(role(r, "rib")->condition == "on large hooks");
}

TEST_CASE("what is not understood stays as text in its place") {
    const std::string text = "My neighbour swears by it at dusk.\nTail: red floss\nQwerty zxcvb!\n";
    const LooseText read = loose(text);
    const std::vector<std::string> left = all_of(text, read, PieceKind::text);
    REQUIRE(left.size() == 2);
    CHECK(left[0].find("neighbour") != std::string::npos);
    CHECK(left[1].find("Qwerty") != std::string::npos);
}

TEST_CASE("only what is sure is accepted when a person asks for that") {
    const std::string text = "Tail: red floss\nthe hackle goes somewhere, a brown wing\n";
    const LooseText read = loose(text);
    const auto sure = accept_sure(read);
    const auto all = accept_all(read);
    CHECK(std::count(sure.begin(), sure.end(), true) < std::count(all.begin(), all.end(), true));
    const Result<Recipe> r = make_recipe(text, read, sure);
    REQUIRE(r.ok());
    CHECK(role(r.value(), "tail") != nullptr);
    CHECK(r.value().verbatim == text);
}

TEST_CASE("a letter with provenance keeps author, source and permission") {
    const Recipe r = recipe_of("Pattern: Bywash Dun\nTied by: the lock keeper\nDate: May 2026\n"
                               "Source: a letter\nPermission: free to copy\nClass: dry\n"
                               "Sizes: 12, 14 and 16\nNotes: nothing to add\n  but this line\n");
    CHECK(r.name == "Bywash Dun");
    CHECK(r.provenance.author == "the lock keeper");
    CHECK(r.provenance.source == "a letter");
    CHECK(r.provenance.permission == "free to copy");
    CHECK(r.fly_class == "dry");
    CHECK(r.size_list.size() == 3);
    CHECK(r.notes == "nothing to add\n  but this line");
}

TEST_CASE("a letter gives the parts in it, and its greetings stay text") {
    const std::string text =
        "Dear Tom, you asked about the little black fly. I use a #16 hook, black thread, and a "
        "tail "
        "of three or four black hackle fibres. The body is just black thread with a rib of fine "
        "silver wire, five turns; then a sparse hackle of starling, two turns at most. Fish it in "
        "the film at dusk.\nYours, the keeper\n";
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    CHECK(part_of(text, read, "tail") == "three or four black hackle fibres");
    CHECK(part_of(text, read, "rib") == "fine silver wire, five turns");
    CHECK(all_of(text, read, PieceKind::sizes) == std::vector<std::string>{"#16"});
    std::string left;
    for (const std::string& stretch : all_of(text, read, PieceKind::text)) left += stretch;
    CHECK(left.find("Dear Tom") != std::string::npos);
    CHECK(left.find("Yours, the keeper") != std::string::npos);
    const Recipe r = recipe_of(text);
    REQUIRE(role(r, "rib") != nullptr);
    CHECK(role(r, "rib")->turns.text == "five turns");
}

TEST_CASE("a table with one part in each row is read, whatever its heads are") {
    const std::string text =
        "| Part | Material | Amount |\n|---|---|---|\n| Hook | streamer #4-8 | |\n"
        "| Tail | olive marabou | 1 plume, as long as the shank |\n"
        "| Body | olive chenille | |\n| Hackle | olive, palmered | 6 turns |\n";
    const Recipe r = recipe_of(text);
    REQUIRE(r.bases.size() == 1);
    CHECK(r.size_list.size() == 3);
    REQUIRE(role(r, "tail") != nullptr);
    CHECK(material(r, role(r, "tail"))->text == "olive marabou");
    CHECK(role(r, "tail")->length.reading.basis == Basis::shank);
    CHECK(role(r, "hackle")->turns.text == "6 turns");
}

TEST_CASE("a text without anything known is no recipe of parts, and loses nothing") {
    const std::string text = "Whatever you have. It will do. Fish it.\n";
    const LooseText read = loose(text);
    CHECK(all_of(text, read, PieceKind::part).empty());
    CHECK(recipe_of(text).verbatim == text);
}

TEST_CASE("words that are searched alike come in groups, and a bad list names its line") {
    const Result<Spellings> list = Spellings::read("# two\ntyer, tier\nsilk, thread, Floss\n");
    REQUIRE(list.ok());
    CHECK(list.value().alike("TIER") == std::vector<std::string>{"tier", "tyer"});
    CHECK(list.value().alike("silk").size() == 3);
    CHECK(list.value().alike("hook") == std::vector<std::string>{"hook"});
    CHECK(Spellings::read("tyer\n").error().place.line == 1);
    CHECK_FALSE(Spellings::read("tail, wing case\n").ok());
}
