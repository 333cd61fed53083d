#include "core/units/explain_size.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"

#include <fmt/core.h>

namespace wrapwright::cli {

namespace {

struct SizeOptions {
    std::string text;
    bool json = false;
};

Json explanation_json(const SizeExplanation& explanation) {
    Json meanings = Json::array();
    for (const SizeMeaning& meaning : explanation.meanings) {
        Json facts = Json::array();
        for (const SizeFact& fact : meaning.facts) {
            Json one{{"name", fact.name}, {"text", fact.text}};
            if (fact.number) one["number"] = *fact.number; // exact: never rounded here
            facts.push_back(std::move(one));
        }
        meanings.push_back({{"what", meaning.what}, {"facts", std::move(facts)}});
    }
    return {{"text", explanation.text},
            {"meanings", std::move(meanings)},
            {"warnings", explanation.warnings}};
}

ExitCode run_size(const SizeOptions& options) {
    const SizeExplanation explanation = explain_size(options.text);
    if (explanation.meanings.empty() && explanation.error) {
        refuse_usage(explanation.error->message, explanation.error->remedy);
    }
    if (options.json) {
        print(explanation_json(explanation));
    } else {
        for (const std::string& line : lines(explanation)) fmt::print("{}\n", printable(line));
    }
    return ExitCode::fine;
}

} // namespace

void add_size(const Command& program, Job& job) {
    auto options = std::make_shared<SizeOptions>();
    const Command command = program.command("size", "Explain a size text, such as \"7/64 in\"");
    command.option("TEXT", options->text, "any size: 7/64 in, .015, #14, 2/0, 70 den, 34 AWG")
        .required();
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_size);
}

} // namespace wrapwright::cli
