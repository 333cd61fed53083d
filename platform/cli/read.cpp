// `read`: a recipe in loose text, taken apart, and a recipe file made of it.

#include "core/loose/loose.h"
#include "core/recipe/amount_words.h"
#include "core/recipe/text.h"
#include "core/share/letter.h"
#include "platform/cli/files.h"
#include "platform/cli/json.h"
#include "platform/cli/terminal.h"
#include "platform/cli/writing.h"
#include "platform/files.h"

#include <fmt/core.h>

#include <algorithm>
#include <memory>

namespace wrapwright::cli {

namespace {

constexpr std::size_t most_text_bytes = std::size_t{64} << 20U;

struct ReadOptions {
    std::string file, out;
    int fly = 1;
    bool json = false, sure = false;
};

TradeWords trade_words() {
    const Result<std::filesystem::path> assets = assets_folder();
    if (!assets.ok()) give_up("wrapwright", assets.error().message, assets.error().remedy);
    const std::filesystem::path file = assets.value() / "words" / "trade.txt";
    Result<TradeWords> words = read_trade_words(read_file(file));
    if (!words.ok()) refuse(file, words.error());
    return std::move(words).value();
}

/// What was understood of a piece, beside its words.
std::string meaning_of(const Piece& piece, std::string_view text) {
    std::string words = piece.roles.empty() || piece.kind == PieceKind::action ? piece.word : "";
    for (const std::string& role : piece.roles) {
        if (!words.empty()) words.append(", ");
        words.append(role);
    }
    if (piece.none) words.append(": none");
    if (piece.kind == PieceKind::amount) words.append(understood(piece.reading));
    if (piece.kind == PieceKind::sizes) {
        const auto sizes = parse_hook_sizes(piece.value.of(text));
        for (const HookSize size : sizes.ok() ? sizes.value().sizes : std::vector<HookSize>{}) {
            if (!words.empty()) words.append(", ");
            words.append(write_hook_size(size));
        }
    }
    return words;
}

int depth_of(const LooseText& loose, const Piece& piece) {
    int depth = 0;
    for (int in = piece.in; in >= 0; in = loose.pieces[static_cast<std::size_t>(in)].in) ++depth;
    return depth;
}

/// The line that a byte is in, walking on from the last one asked for.
struct LineCount {
    std::string_view text;
    std::size_t at = 0;
    std::size_t line = 1;

    std::size_t of(std::size_t byte) {
        if (byte < at) {
            at = 0;
            line = 1;
        }
        line += static_cast<std::size_t>(
            std::count(text.begin() + static_cast<std::ptrdiff_t>(at),
                       text.begin() + static_cast<std::ptrdiff_t>(byte), '\n'));
        at = byte;
        return line;
    }
};

Json pieces_json(const LooseText& loose, std::string_view text) {
    Json pieces = Json::array();
    for (const Piece& p : loose.pieces) {
        Json one{{"kind", name(p.kind)},
                 {"begin", p.span.begin},
                 {"end", p.span.end},
                 {"sure", p.sure},
                 {"text", p.value.of(text)}};
        if (p.in >= 0) one["in"] = p.in;
        if (p.fly > 0) one["fly"] = p.fly + 1;
        if (!p.word.empty()) one["word"] = p.word;
        if (p.roles.size() > 1) one["roles"] = p.roles;
        if (p.choice > 0) one["choice"] = p.choice;
        if (p.none) one["none"] = true;
        if (p.optional) one["optional"] = true;
        const std::string words = meaning_of(p, text);
        if (p.in >= 0 && !words.empty()) one["understood"] = words;
        pieces.push_back(std::move(one));
    }
    return {{"flies", loose.flies}, {"pieces", std::move(pieces)}, {"notes", loose.notes}};
}

void print_pieces(const LooseText& loose, std::string_view text, const Terminal& to) {
    Table table({{"line"},
                 {"what", Table::Align::left},
                 {"words", Table::Align::left},
                 {"understood", Table::Align::left},
                 {"", Table::Align::left}});
    LineCount lines{text};
    std::size_t left = 0;
    for (const Piece& p : loose.pieces) {
        if (p.kind == PieceKind::gap) continue;
        const bool is_text = p.kind == PieceKind::text;
        left += is_text ? p.span.end - p.span.begin : 0;
        std::string words(p.value.of(text).substr(0, 60));
        std::replace(words.begin(), words.end(), '\n', ' ');
        std::string what(static_cast<std::size_t>(2 * depth_of(loose, p)), ' ');
        what.append(name(p.kind));
        table.add({std::to_string(lines.of(p.span.begin)), std::move(what), printable(words),
                   printable(meaning_of(p, text)),
                   is_text  ? "not understood, kept"
                   : p.sure ? ""
                            : "not sure"},
                  is_text ? Colour::faint : Colour::plain);
    }
    if (!table.is_empty()) fmt::print("{}", table.text(to));
    for (const std::string& note : loose.notes) fmt::print("note: {}\n", printable(note));
    fmt::print("{} of {} bytes stay as text\n", left, text.size());
}

/// A letter holds the recipe exactly: nothing has to be understood.
ExitCode run_letter(const ReadOptions& options, const std::string& text) {
    const Result<std::string> exact = read_letter(text);
    if (!exact.ok()) refuse(options.file, exact.error());
    const Result<OpenedRecipe> opened = open_recipe(exact.value());
    if (!opened.ok()) refuse(options.file, opened.error());
    const Recipe& recipe = opened.value().recipe;
    if (options.json) {
        print(Json{{"letter", true}, {"id", recipe.id}, {"name", recipe.name}});
    } else {
        fmt::print("a letter with the recipe {} ({}), exactly\n", printable(recipe.name),
                   printable(recipe.id));
    }
    if (!options.out.empty()) write_file(options.out, exact.value());
    return ExitCode::fine;
}

ExitCode run_read(const ReadOptions& options) {
    Result<std::string> bytes = wrapwright::read_file(options.file, most_text_bytes);
    if (!bytes.ok()) refuse(options.file, bytes.error());
    std::string text = std::move(bytes).value();
    const bool old = !is_utf8(text);
    if (old) text = from_windows_1252(text);
    if (is_letter(text)) return run_letter(options, text);
    LooseText loose = read_loose(text, trade_words());
    if (old) loose.notes.emplace_back("no UTF-8: read as Windows-1252");
    if (options.json) {
        print(pieces_json(loose, text));
    } else {
        print_pieces(loose, text, terminal());
    }
    if (options.out.empty()) return ExitCode::fine;
    if (options.fly > std::max(loose.flies, 1)) {
        refuse_usage("there is no fly " + std::to_string(options.fly) + " in the text",
                     "it holds " + std::to_string(loose.flies));
    }
    const std::vector<bool> accepted = options.sure ? accept_sure(loose) : accept_all(loose);
    const Result<Recipe> recipe = make_recipe(text, loose, accepted, options.fly - 1);
    if (!recipe.ok()) refuse(options.file, recipe.error());
    write_file(options.out, write_recipe(recipe.value()));
    return ExitCode::fine;
}

} // namespace

void add_read(const Command& program, Job& job) {
    auto options = std::make_shared<ReadOptions>();
    const Command command =
        program.command("read", "Take a recipe in loose text apart, and make a recipe file of it");
    command.option("TEXTFILE", options->file, "a recipe as people write it").required();
    command.flag("--json", options->json, "print JSON");
    command.flag("--sure", options->sure, "leave out of the recipe what is not sure");
    command.option("--fly", options->fly, "which, where the text holds several").within(1, 20'000);
    command.option("-o,--out", options->out, "RECIPE.json");
    command.runs(job, options, run_read);
}

} // namespace wrapwright::cli
