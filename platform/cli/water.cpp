#include "platform/cli/commands.h"
#include "platform/cli/fishing.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct WaterOptions {
    std::string recipe, size, hook;
    FishingOptions fishing;
    bool json = false;
};

ExitCode run_water(const WaterOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone()) {
        refuse_usage("this recipe is words alone: there is no fly to put into the water",
                     "name a recipe with steps, such as weirfoot-jig");
    }
    Fly fly = run(loaded, size_of(loaded, options.size));
    const Fishing fishing = fishing_of(options.fishing);
    weigh_beads(options.fishing, loaded, fly);
    const InWater water =
        or_refuse_option(in_water(loaded.pattern, fly.resolved, fly.tied, fishing));
    if (options.json) {
        Json json{{"recipe", loaded.pattern.recipe.id},
                  {"size", size_words(fly.tied.size).substr(1)}};
        json.update(water_json(loaded.pattern, water));
        print(json);
        return ExitCode::fine;
    }
    const Terminal to = terminal();
    fmt::print("{}  {}\n{}", to.paint(printable(loaded.pattern.recipe.name), Colour::bold),
               to.paint(size_words(fly.tied.size), Colour::cyan),
               water_text(loaded.pattern, water, fishing, to));
    return ExitCode::fine;
}

} // namespace

void add_water(const Command& program, Job& job) {
    auto options = std::make_shared<WaterOptions>();
    const Command command =
        program.command("water", "What a fly weighs, how it sinks and which way up it rides");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    add_fishing(command, options->fishing);
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_water);
}

} // namespace wrapwright::cli
