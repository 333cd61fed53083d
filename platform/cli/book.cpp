#include "core/stock/book_table.h"

#include "core/card/order_sheet.h"
#include "platform/cli/commands.h"
#include "platform/cli/files.h"
#include "platform/cli/library.h"
#include "platform/files.h"
#include "platform/order_facts.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct BookOptions {
    std::string data, in, out, sheet;
    std::int64_t line = 0;
    bool yes = false;
};

/// A hundred thousand rows are some ten megabytes.
constexpr std::size_t largest_table = std::size_t{64} << 20U;

std::string read_table_file(const std::string& file) {
    const Result<std::string> text = wrapwright::read_file(file, largest_table);
    if (!text.ok()) refuse(file, text.error());
    return text.value();
}

void tell(const BookPreview& preview) {
    constexpr std::size_t most = 200;
    for (std::size_t i = 0; i < preview.words.size() && i < most; ++i) {
        fmt::print("{}\n", printable(preview.words[i]));
    }
    if (preview.words.size() > most) fmt::print("... {} more\n", preview.words.size() - most);
    fmt::print("{} new, {} changed, {} the same, {} refused\n", preview.added, preview.changed,
               preview.same, preview.refused);
}

/// Shows what a table would do, and does it when that was said.
ExitCode take(Store& store, BookPreview preview, const BookOptions& options) {
    tell(preview);
    if (!options.yes) {
        if (!preview.change.empty()) fmt::print("nothing was changed: --yes does it\n");
        return preview.refused > 0 ? ExitCode::stops : ExitCode::fine;
    }
    or_give_up(find_recipes(store, preview.change.lines));
    or_give_up(store.keep(preview.change, now_seconds()));
    return preview.refused > 0 ? ExitCode::stops : ExitCode::fine;
}

void check(const BookOptions& options, bool sheet) {
    if (!options.in.empty() || !options.out.empty() || sheet) return;
    refuse_usage("nothing was asked for", "say --in FILE or --out FILE");
}

ExitCode run_stock(const BookOptions& options) {
    check(options, false);
    Store store = open_there(data_folder(options.data), !options.in.empty());
    if (!options.in.empty()) {
        Result<BookPreview> preview =
            preview_stock(read_table_file(options.in), or_give_up(store.book()), now_seconds());
        if (!preview.ok()) refuse(options.in, preview.error());
        return take(store, std::move(preview).value(), options);
    }
    write_file(options.out, stock_table(or_give_up(store.book())));
    return ExitCode::fine;
}

ExitCode write_sheet(Store& store, const BookOptions& options) {
    const Book book = or_give_up(store.book());
    const OrderLine* line = line_of(book, options.line);
    if (line == nullptr || line->gone) {
        refuse_usage("--line: no order has such a line", "take a number that --out writes");
    }
    FactFinder finder;
    const std::vector<LineFacts> facts = finder.of(store, book);
    WorkTerms terms;
    terms.today = {static_cast<int>(now_seconds() / 86'400)};
    for (Duration& room : terms.room) room = minutes(120.0);
    const OrderWork work = work_of(book, facts, terms);
    OrderFacts sheet{{}, book, work, {}, {}};
    std::vector<std::int64_t> ids;
    for (const OrderLine& other : book.lines) {
        if (other.gone || !same_order(other, *line)) continue;
        sheet.lines.push_back(&other);
        ids.push_back(other.id);
    }
    const OrderCost cost = cost_of_lines(book, ids, facts, terms);
    const OrderFacts whole{sheet.lines, book, work, cost, {}};
    write_file(options.sheet, order_sheet(page_a4, whole));
    return ExitCode::fine;
}

ExitCode run_orders(const BookOptions& options) {
    check(options, !options.sheet.empty());
    Store store = open_there(data_folder(options.data), !options.in.empty());
    if (!options.in.empty()) {
        const Day today{static_cast<int>(now_seconds() / 86'400)};
        Result<BookPreview> preview =
            preview_orders(read_table_file(options.in), or_give_up(store.book()), today);
        if (!preview.ok()) refuse(options.in, preview.error());
        return take(store, std::move(preview).value(), options);
    }
    if (!options.sheet.empty()) return write_sheet(store, options);
    write_file(options.out, order_table(or_give_up(store.book())));
    return ExitCode::fine;
}

Command add(const Command& program, const char* name, const char* words, BookOptions& options) {
    const Command command = program.command(name, words);
    command.option("--data", options.data, "folder of the library; else the usual one");
    command.option("--in", options.in, "a table to take in: shows what it would change");
    command.option("--out", options.out, "a file for the table");
    command.flag("--yes", options.yes, "do what --in shows");
    return command;
}

} // namespace

void add_stock(const Command& program, Job& job) {
    auto options = std::make_shared<BookOptions>();
    add(program, "stock", "The stock as a table for spreadsheets, out and in", *options)
        .runs(job, options, run_stock);
}

void add_orders(const Command& program, Job& job) {
    auto options = std::make_shared<BookOptions>();
    const Command command =
        add(program, "orders", "The orders as a table, out and in; an order's sheet", *options);
    command.option("--line", options->line, "a line of the order that --sheet prints");
    command.option("--sheet", options->sheet, "FILE.html for an order on paper");
    command.runs(job, options, run_orders);
}

} // namespace wrapwright::cli
