#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct CheckOptions {
    std::string recipe, size, hook;
    bool all_sizes = false, json = false;
};

Json size_json(const Loaded& loaded, const Fly& fly) {
    Json findings = Json::array();
    for (const Finding& finding : fly.tied.findings) {
        findings.push_back(finding_json(loaded.pattern, finding));
    }
    return {{"size", size_words(fly.tied.size).substr(1)},
            {"stops", is_stopped(fly.tied)},
            {"findings", std::move(findings)}};
}

ExitCode run_check(const CheckOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    const Recipe& recipe = loaded.pattern.recipe;
    const bool one = !options.size.empty() || (!options.all_sizes && loaded.own.has_value());
    const std::vector<HookSize> sizes =
        one ? std::vector{size_of(loaded, options.size)} : sizes_of(loaded);
    if (loaded.is_words_alone() && !options.json) {
        fmt::print("{}: words alone, there is nothing to check\n", printable(recipe.name));
        return ExitCode::fine;
    }
    const Terminal to = terminal();
    Json list = Json::array();
    bool stopped = false;
    for (const HookSize size : sizes) {
        const Fly fly = run(loaded, size);
        stopped = stopped || is_stopped(fly.tied);
        if (options.json) {
            list.push_back(size_json(loaded, fly));
            continue;
        }
        fmt::print("{} {}: {}\n", to.paint(printable(recipe.name), Colour::bold),
                   to.paint(size_words(size), Colour::cyan), findings_count(fly.tied));
        if (!fly.tied.findings.empty())
            fmt::print("{}", findings_text(loaded.pattern, fly.tied, to));
    }
    if (options.json)
        print({{"recipe", recipe.id}, {"stops", stopped}, {"sizes", std::move(list)}});
    return stopped ? ExitCode::stops : ExitCode::fine;
}

} // namespace

void add_check(const Command& program, Job& job) {
    auto options = std::make_shared<CheckOptions>();
    const Command command = program.command(
        "check", "Findings of a recipe at one size or all; exit code 1 if any stops the fly");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    const Option size = command.option("--size", options->size, "one hook size; else all of them");
    command.flag("--all-sizes", options->all_sizes, "every size that the recipe names")
        .never_with(size);
    command.option("--hook", options->hook, "file of your own measured hook");
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_check);
}

} // namespace wrapwright::cli
