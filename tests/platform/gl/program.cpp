#include "platform/gl/program.h"

#include "platform/gl/offscreen.h"
#include "shaders/bodies.h"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <set>

using namespace wrapwright;

namespace {

// What the reference compiler says of a program's two shaders; empty when it takes them.
std::string objections(GlKind kind, const ProgramRecipe& recipe) {
    const std::filesystem::path folder =
        std::filesystem::path(WW_BINARY_DIR) / "shaders" / "checked";
    std::filesystem::create_directories(folder);
    const std::string stem = std::string(recipe.name) + (kind == GlKind::es_30 ? ".es" : ".gl");
    const std::string vertex = (folder / (stem + ".vert")).string();
    const std::string fragment = (folder / (stem + ".frag")).string();
    const std::string said = (folder / (stem + ".txt")).string();
    std::ofstream(vertex) << shader_text(kind, {&recipe.vertex, 1});
    std::ofstream(fragment) << shader_text(kind, recipe.fragment);
    const std::string command =
        "glslangValidator -l '" + vertex + "' '" + fragment + "' >'" + said + "' 2>&1";
    if (std::system(command.c_str()) == 0) return {};
    std::ifstream file(said);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

TEST_CASE("the reference compiler takes every program, for GL 3.3 and for ES 3.00") {
    for (const ProgramRecipe& recipe : all_programs()) {
        for (const GlKind kind : {GlKind::desktop_33, GlKind::es_30}) {
            CAPTURE(std::string(recipe.name));
            CAPTURE(static_cast<int>(kind));
            CHECK(objections(kind, recipe) == "");
        }
    }
}

TEST_CASE("the reference compiler objects to a shader that is wrong") {
    const ProgramRecipe wrong{"wrong", "depth.vert", {"looks/fur.glsl"}}; // no Surface, no main
    CHECK(objections(GlKind::es_30, wrong) != "");
}

TEST_CASE("every body belongs to a program, and none has a version line") {
    std::set<std::string_view> used{"common.glsl"};
    for (const ProgramRecipe& recipe : all_programs()) {
        used.insert(recipe.vertex);
        used.insert(recipe.fragment.begin(), recipe.fragment.end());
    }
    for (const std::string_view name : shader_names()) {
        CAPTURE(std::string(name));
        CHECK(used.contains(name));
        CHECK(shader_body(name).find("#version") == std::string_view::npos);
    }
}

TEST_CASE("the driver takes every program in both kinds of context") {
    for (const GlKind kind : {GlKind::desktop_33, GlKind::es_30}) {
        const Result<Offscreen> offscreen = Offscreen::open(kind);
        REQUIRE(offscreen.ok());
        for (const ProgramRecipe& recipe : all_programs()) {
            const Result<Program> program = Program::make(offscreen.value().gl(), recipe.name);
            const std::string said = program.ok() ? "" : program.error().message;
            CHECK(said == "");
        }
        CHECK(offscreen.value().gl().GetError() == GLenum{GL_NO_ERROR});
    }
}
