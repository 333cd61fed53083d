#include "core/geometry/export.h"
#include "core/geometry/fly/build.h"
#include "platform/cli/commands.h"
#include "platform/cli/files.h"
#include "platform/cli/load.h"

#include <memory>

namespace wrapwright::cli {

namespace {

struct ModelOptions {
    std::string recipe, size, hook, out;
};

/// How a look is told to a program that knows metal and roughness alone.
struct Surface {
    float metallic = 0.0F;
    float roughness = 0.8F;
};

Surface surface_of(Look look) {
    switch (look) {
    case Look::steel:
    case Look::metal: return {1.0F, 0.3F};
    case Look::lead: return {1.0F, 0.7F};
    case Look::film: return {0.0F, 0.1F};
    case Look::thread: return {0.0F, 0.5F};
    default: return {};
    }
}

std::vector<NamedMesh> meshes_of(const Pattern& pattern, const FlyModel& model) {
    std::vector<NamedMesh> meshes;
    for (const FlyPiece& piece : model.pieces) {
        NamedMesh mesh;
        mesh.mesh = &piece.mesh;
        mesh.name = piece.part == none
                        ? "hook"
                        : pattern.recipe.parts[static_cast<std::size_t>(piece.part)].id;
        std::copy(piece.colour.begin(), piece.colour.end(), mesh.rgb);
        const Surface surface = surface_of(piece.look);
        mesh.metallic = surface.metallic;
        mesh.roughness = surface.roughness;
        mesh.opacity = piece.opacity;
        meshes.push_back(std::move(mesh));
    }
    return meshes;
}

ExitCode run_model(const ModelOptions& options) {
    const std::filesystem::path out(options.out);
    const bool stl = out.extension() == ".stl";
    if (!stl && out.extension() != ".glb") {
        refuse_usage("-o: '" + options.out + "' is neither .glb nor .stl",
                     "end the name with .glb for pictures or .stl for printing");
    }
    const Loaded loaded = load(options.recipe, options.hook);
    const Fly fly = run(loaded, size_of(loaded, options.size));
    FlyDetail detail;
    detail.vise = false;
    detail.hanging_thread = false;
    FlyModel model;
    build_fly(loaded.pattern, fly.tied, static_cast<int>(fly.tied.moments.size()) - 1, detail,
              model);
    const std::vector<NamedMesh> meshes = meshes_of(loaded.pattern, model);
    write_file(out, stl ? write_stl(meshes) : write_glb(meshes));
    return ExitCode::fine;
}

} // namespace

void add_model(const Command& program, Job& job) {
    auto options = std::make_shared<ModelOptions>();
    const Command command = program.command("model", "The finished fly as a 3D file");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("-o,--out", options->out, "FILE.glb (metres) or FILE.stl (mm)").required();
    command.runs(job, options, run_model);
}

} // namespace wrapwright::cli
