#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct PlanOptions {
    std::string recipe, size, hook, hand = "right";
    bool json = false;
};

ExitCode run_plan(const PlanOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone() && !options.json) {
        fmt::print("{}\nThis recipe is words alone: there is nothing to run.\n",
                   words_text(loaded.pattern.recipe, terminal()));
        return ExitCode::fine;
    }
    const Fly fly = run(loaded, size_of(loaded, options.size));
    if (options.json) {
        Json json = plan_json(loaded, fly);
        json["hand"] = options.hand;
        print(json);
    } else {
        const Hand hand = options.hand == "left" ? Hand::left : Hand::right;
        fmt::print("{}", plan_text(loaded, fly, hand, terminal()));
    }
    return ExitCode::fine;
}

} // namespace

void add_plan(const Command& program, Job& job) {
    auto options = std::make_shared<PlanOptions>();
    const Command command =
        program.command("plan", "Steps, windings, parts, mass and findings of a recipe");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--hand", options->hand, "right or left; words stay the same")
        .one_of({"right", "left"});
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_plan);
}

} // namespace wrapwright::cli
