// The text form: what is read is written and read back the same, and nothing the person wrote is lost.

#include "core/recipe/pattern.h"
#include "core/recipe/text.h"
#include "core/recipe/text_keys.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

using namespace wrapwright;

namespace {

std::string file_text(const std::filesystem::path& file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::filesystem::path> recipe_files() {
    std::vector<std::filesystem::path> files;
    for (const char* folder : {"/assets/recipes", "/assets/recipes/wrong", "/tests/data/recipes"}) {
        for (const auto& entry :
             std::filesystem::directory_iterator(std::string(WW_SOURCE_DIR) + folder)) {
            if (entry.path().extension() == ".json") files.push_back(entry.path());
        }
    }
    return files;
}

Recipe hard_cases() {
    const Result<Recipe> recipe =
        read_recipe(file_text(WW_SOURCE_DIR "/tests/data/recipes/hard-cases.json"));
    REQUIRE(recipe.ok());
    return recipe.value();
}

template <class List>
const auto& by_id(const List& list, std::string_view id) {
    for (const auto& x : list) {
        if (x.id == id) return x;
    }
    FAIL("no entry with the id " << id);
    return list.front();
}

/// Collects the keys that the reader and the writer walk, by the schema's name of their object.
struct KeyList {
    std::set<std::string> keys{};
    template <class... Rest>
    void note(const char* key, const Rest&...) {
        keys.insert(key);
    }
    void rest(const std::vector<UnknownKey>&) {}
    void header(const char*, int) {}
#define WW_NOTE(member)                                                                            \
    template <class... Rest>                                                                       \
    void member(const char* key, const Rest&... more) {                                            \
        note(key, more...);                                                                        \
    }
    WW_NOTE(text)
    WW_NOTE(maybe_word)
    WW_NOTE(word)
    WW_NOTE(amount)
    WW_NOTE(hook)
    WW_NOTE(flag)
    WW_NOTE(tint)
    WW_NOTE(hole)
    WW_NOTE(share)
    WW_NOTE(made_of)
    WW_NOTE(whole)
    WW_NOTE(sizes)
    WW_NOTE(spot)
    WW_NOTE(list)
    WW_NOTE(texts)
    WW_NOTE(object)
#undef WW_NOTE
};

template <class T>
std::set<std::string> keys_of() {
    KeyList list;
    const T value{};
    detail::visit_keys(list, value);
    return list.keys;
}

std::set<std::string> schema_keys(const nlohmann::json& object) {
    std::set<std::string> keys;
    for (const auto& [key, value] : object.at("properties").items()) keys.insert(key);
    return keys;
}

} // namespace

TEST_CASE("every recipe that is written back reads back as the same bytes") {
    const auto files = recipe_files();
    CHECK(files.size() >= 10);
    for (const auto& file : files) {
        CAPTURE(file.string());
        const Result<Recipe> recipe = read_recipe(file_text(file));
        REQUIRE(recipe.ok());
        const std::string once = write_recipe(recipe.value());
        const Result<Recipe> back = read_recipe(once);
        REQUIRE(back.ok());
        CHECK(write_recipe(back.value()) == once);
        CHECK(once.back() == '\n');
    }
}

TEST_CASE("every key and value of a file is in what is written, known or not") {
    // Source  a general JSON library: both texts parse to the same document
    for (const auto& file : recipe_files()) {
        CAPTURE(file.string());
        const std::string text = file_text(file);
        const Result<Recipe> recipe = read_recipe(text);
        REQUIRE(recipe.ok());
        const auto before = nlohmann::json::parse(text);
        const auto after = nlohmann::json::parse(write_recipe(recipe.value()));
        const auto changes = nlohmann::json::diff(before, after);
        CHECK_MESSAGE(changes.empty(), changes.dump());
    }
}

TEST_CASE("several bases and their joints are held") {
    const Recipe r = hard_cases();
    CHECK(r.bases.size() == 3);
    CHECK(r.joints.size() == 2);
    CHECK(r.joints[0].from == "front");
    CHECK_FALSE(by_id(r.bases, "rear").dressed);
    REQUIRE(r.bases[0].measured.has_value());
    // 1 1/8 in is 28.575 mm exactly (1959 agreement)
    CHECK(std::abs(in_millimetres(r.bases[0].measured->shank.value) - 28.575) < 1e-9);
}

TEST_CASE("one material fills several parts and one part is made of several materials") {
    const Recipe r = hard_cases();
    int with_pheasant = 0;
    for (const Part& p : r.parts) {
        for (const Ingredient& i : p.made_of) with_pheasant += i.material == "pheasant" ? 1 : 0;
    }
    CHECK(with_pheasant >= 2);
    CHECK(by_id(r.parts, "thorax").made_of.size() == 2);
    CHECK(by_id(r.parts, "rib").made_of[0].how == "twist");
}

TEST_CASE("label, true size, hole and weighed mass of a bead stand side by side") {
    const Recipe r = hard_cases();
    const RecipeMaterial& bead = by_id(r.materials, "bead");
    CHECK(bead.size.text == "7/64");
    CHECK(bead.size.is == "7/64 in");
    CHECK(std::abs(bead.size.reading.value - 2.778125e-3) < 1e-15);
    CHECK(bead.hole == "slotted");
    CHECK(std::abs(bead.weighed.reading.value - 153e-6) < 1e-12);
    CHECK(bead.weighed.text == "ten weigh 1.53 g");
}

TEST_CASE("paired alternatives, options, conditions and parts for some sizes are held") {
    const Recipe r = hard_cases();
    CHECK(by_id(r.parts, "rib-2").either == by_id(r.parts, "rib-3").either);
    CHECK(by_id(r.parts, "rib-2").choice != by_id(r.parts, "rib-3").choice);
    bool optional = false, conditional = false, sized = false, off_hook = false, pair = false;
    for (const Part& p : r.parts) {
        optional = optional || p.optional;
        conditional = conditional || !p.condition.empty();
        sized = sized || !p.only.empty();
        off_hook = off_hook || p.off_hook;
        pair = pair || p.copies == 2;
    }
    CHECK(optional);
    CHECK(conditional);
    CHECK(sized);
    CHECK(off_hook);
    CHECK(pair);
}

TEST_CASE("a recipe of words alone keeps them word for word") {
    const std::string words =
        "silk, partridge, sparse,\\n a little past the hook; \\\"rib\\\" five turns";
    const Result<Recipe> recipe =
        read_recipe(R"({"format":"wrapwright recipe","version":1,"verbatim":")" + words + "\"}");
    REQUIRE(recipe.ok());
    CHECK(recipe.value().verbatim ==
          "silk, partridge, sparse,\n a little past the hook; \"rib\" five turns");
    CHECK(recipe.value().steps.empty());
}

TEST_CASE("sizes are understood in every way that they are written") {
    const auto sizes = [](const std::string& text) {
        const Result<Recipe> r = read_recipe(
            R"({"format":"wrapwright recipe","version":1,"id":"s","sizes":")" + text + "\"}");
        REQUIRE(r.ok());
        CHECK(r.value().sizes == text);
        std::vector<int> numbers;
        for (const HookSize s : r.value().size_list) numbers.push_back(s.number);
        return numbers;
    };
    CHECK(sizes("14") == std::vector{14});
    CHECK(sizes("10,12,14") == std::vector{10, 12, 14});
    CHECK(sizes("12-18") == std::vector{12, 14, 16, 18});
    CHECK(sizes("16 to 12").size() == 3);
    CHECK(sizes("2/0, 1/0").size() == 2);
}

TEST_CASE("the schema names the keys that the program reads, and no other") {
    const auto schema =
        nlohmann::json::parse(file_text(WW_SOURCE_DIR "/assets/recipe.schema.json"));
    const auto& defs = schema.at("$defs");
    std::set<std::string> top = keys_of<Recipe>();
    top.insert({"format", "version"});
    CHECK(schema_keys(schema) == top);
    CHECK(schema_keys(defs.at("provenance")) == keys_of<Provenance>());
    CHECK(schema_keys(defs.at("base")) == keys_of<Base>());
    CHECK(schema_keys(defs.at("joint")) == keys_of<Joint>());
    CHECK(schema_keys(defs.at("material")) == keys_of<RecipeMaterial>());
    CHECK(schema_keys(defs.at("part")) == keys_of<Part>());
    CHECK(schema_keys(defs.at("action")) == keys_of<Action>());
    CHECK(schema_keys(defs.at("step")) == keys_of<Step>());
    CHECK(schema_keys(defs.at("target")) == keys_of<OwnTarget>());
}

TEST_CASE("the example in the description of the format is a recipe") {
    const std::string page = file_text(WW_SOURCE_DIR "/assets/format.md");
    const std::size_t begin = page.find("    {\n");
    const std::size_t end = page.find("\n    }\n", begin);
    REQUIRE(end != std::string::npos);
    const Result<Recipe> recipe = read_recipe(page.substr(begin, end + 7 - begin));
    REQUIRE(recipe.ok());
    CHECK(recipe.value().steps.size() == 1);
    CHECK(recipe.value().unknown.empty());
    CHECK(link(recipe.value()).ok());
}

TEST_CASE("every amount in the description of the format is understood as it says") {
    const std::string page = file_text(WW_SOURCE_DIR "/assets/format.md");
    std::size_t at = page.find("| written | understood |");
    const std::size_t end = page.find("\n\n", at);
    REQUIRE(end != std::string::npos);
    int amounts = 0;
    while ((at = page.find_first_of("`|", at)) < end) {
        if (page[at++] == '|') continue;
        const std::string text = page.substr(at, page.find('`', at) - at);
        at += text.size() + 1;
        CAPTURE(text);
        const Result<Reading> reading = read_amount(text, {"body", "tail"});
        REQUIRE(reading.ok());
        const bool is_word = text == "sparse" || text == "to taste";
        CHECK((reading.value().kind == AmountKind::word) == is_word);
        ++amounts;
    }
    CHECK(amounts >= 20);
}

TEST_CASE("a measured hook is written and read back the same") {
    for (const char* name : {"dry-14", "jig-14"}) {
        CAPTURE(name);
        const Result<Hook> hook =
            read_hook(file_text(std::string(WW_SOURCE_DIR "/assets/hooks/") + name + ".json"));
        REQUIRE(hook.ok());
        CHECK(hook.value().shank.origin == Origin::measured);
        const std::string once = write_hook(hook.value());
        const Result<Hook> back = read_hook(once);
        REQUIRE(back.ok());
        CHECK(write_hook(back.value()) == once);
    }
}
