#include "core/card/recipe_pages.h"

#include "platform/cli/commands.h"
#include "platform/cli/failure.h"
#include "platform/cli/files.h"
#include "platform/cli/load.h"

#include <memory>

namespace wrapwright::cli {

namespace {

struct CardOptions {
    std::string recipe, size, hook, as = "card", paper, hand = "right", maker, date, out;
    int flies = 12;
};

PageSize paper_of(const CardOptions& options) {
    const std::string& said = options.paper;
    if (said == "A6") return page_a6;
    if (said == "3x5") return page_index;
    if (said == "letter") return page_letter;
    if (said == "A4") return page_a4;
    return options.as == "card" ? page_index : page_a4;
}

ExitCode run_card(const CardOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const PageSize paper = paper_of(options);
    const PageFacts facts{loaded.pattern, fly.resolved, fly.tied,     options.hand == "left",
                          options.maker,  options.date, options.flies};
    std::string page;
    if (options.as == "card") page = recipe_card(paper, facts);
    if (options.as == "handout") page = handout(paper, facts);
    if (options.as == "tag") page = toe_tags(paper, facts);
    if (options.as == "label") page = box_labels(paper, facts);
    if (options.as == "list") page = lay_out_page(paper, facts);
    write_file(options.out, page);
    return ExitCode::fine;
}

} // namespace

void add_card(const Command& program, Job& job) {
    auto options = std::make_shared<CardOptions>();
    const Command command = program.command(
        "card", "The recipe on paper: a card, a handout, tags, labels, a list to lay out");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--as", options->as, "card, handout, tag, label or list")
        .one_of({"card", "handout", "tag", "label", "list"});
    command.option("--paper", options->paper, "3x5, A6, A4 or letter; a card is 3x5, else A4")
        .one_of({"3x5", "A6", "A4", "letter"});
    command.option("--hand", options->hand, "right or left: left mirrors the pictures")
        .one_of({"right", "left"});
    command.option("--maker", options->maker, "who tied it, for tags and labels");
    command.option("--date", options->date, "as it is to be printed");
    command.option("--flies", options->flies, "in the box, in the batch, or tags").within(1, 1000);
    command.option("-o,--out", options->out, "FILE.html").required();
    command.runs(job, options, run_card);
}

} // namespace wrapwright::cli
