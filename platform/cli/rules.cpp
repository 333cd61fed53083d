#include "core/check/rules.h"

#include "platform/cli/commands.h"
#include "platform/cli/files.h"
#include "platform/cli/json.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct RulesOptions {
    std::string recipe, size, hook, set;
    bool json = false;
};

Json row_json(const RuleRow& row) {
    Json json{{"rule", rule_words(row)}, {"verdict", name(row.verdict)}};
    if (row.has_number) {
        json["value"] = row.value; // SI; rounding would hide a tenth of a millimetre
        json["low"] = row.low;
        json["high"] = row.high;
        json["margin"] = row.margin;
    }
    json["limit"] = row.limit;
    if (const std::string remedy = rule_remedy(row); !remedy.empty()) json["remedy"] = remedy;
    return json;
}

ExitCode run_rules(const RulesOptions& options) {
    const auto file = find_rules(options.set);
    const Result<RuleSet> read = read_rules(read_file(file));
    if (!read.ok()) refuse(file, read.error());
    const RuleSet& rules = read.value();
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone()) {
        refuse_usage("this recipe is words alone: there is no fly to check",
                     "name a recipe with steps, such as weirfoot-jig");
    }
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const std::vector<RuleRow> rows = check_rules(rules, loaded.pattern, fly.resolved, fly.tied);
    bool beyond = false;
    for (const RuleRow& row : rows) beyond = beyond || row.verdict == RuleVerdict::fail;
    if (options.json) {
        Json list = Json::array();
        for (const RuleRow& row : rows) list.push_back(row_json(row));
        print({{"recipe", loaded.pattern.recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"set", rules.name},
               {"date", rules.date},
               {"note", rules.note},
               {"rows", std::move(list)}});
    } else {
        const Terminal to = terminal();
        fmt::print("{}  {}: {}, as of {}\n",
                   to.paint(printable(loaded.pattern.recipe.name), Colour::bold),
                   to.paint(size_words(fly.tied.size), Colour::cyan), printable(rules.name),
                   printable(rules.date));
        constexpr Colour colours[] = {Colour::green, Colour::red, Colour::yellow};
        for (const RuleRow& row : rows) {
            fmt::print("  {} {}\n",
                       to.paint(fmt::format("{:<11}", name(row.verdict)),
                                colours[static_cast<std::size_t>(row.verdict)]),
                       rule_words(row));
            const std::string remedy = rule_remedy(row);
            if (!remedy.empty()) fmt::print("              {}\n", to.paint(remedy, Colour::faint));
        }
        fmt::print("  {}\n", to.paint(wrapped(printable(rules.note), to.width, 2), Colour::faint));
    }
    return beyond ? ExitCode::stops : ExitCode::fine;
}

} // namespace

void add_rules(const Command& program, Job& job) {
    auto options = std::make_shared<RulesOptions>();
    const Command command = program.command("rules", "A fly against a dated set of limits");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--set", options->set, "rule file, or the name of one that came along")
        .required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_rules);
}

} // namespace wrapwright::cli
