#include "core/card/gauge.h"

#include "core/check/photo_found.h"
#include "platform/cli/commands.h"
#include "platform/cli/failure.h"
#include "platform/cli/files.h"
#include "platform/cli/load.h"

#include <algorithm>
#include <memory>

namespace wrapwright::cli {

namespace {

struct GaugeOptions {
    std::string recipe, size, hook, standard, paper = "A4", out;
};

ExitCode run_gauge(const GaugeOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone()) {
        refuse_usage("this recipe is words alone: there is no fly to measure",
                     "take a recipe with steps");
    }
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const std::vector<PartTarget> all = targets_of(loaded.pattern, fly.tied);
    const std::vector<std::string> standards = standards_of(all);
    std::string standard = options.standard;
    if (standard.empty() && !standards.empty()) standard = standards.front();
    if (std::find(standards.begin(), standards.end(), standard) == standards.end()) {
        refuse_usage("--standard: '" + standard + "' says nothing of such a fly",
                     "see `proportions` for those that do");
    }
    const PageSize& paper = options.paper == "letter" ? page_letter : page_a4;
    write_file(options.out,
               gauge_page(paper, loaded.pattern, fly.resolved, fly.tied, only(all, standard)));
    return ExitCode::fine;
}

} // namespace

void add_gauge(const Command& program, Job& job) {
    auto options = std::make_shared<GaugeOptions>();
    const Command command =
        program.command("gauge", "A strip to print and hold the fly against, in true size");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--standard", options->standard, "of proportions; else the first");
    command.option("--paper", options->paper, "A4 or letter").one_of({"A4", "letter"});
    command.option("-o,--out", options->out, "FILE.html").required();
    command.runs(job, options, run_gauge);
}

} // namespace wrapwright::cli
