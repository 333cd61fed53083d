#include "core/stock/order_work.h"

#include "core/units/number_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/library.h"
#include "platform/cli/terminal.h"
#include "platform/order_facts.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct NeedOptions {
    std::string data, today;
    double spoil = 5.0, sure = 95.0, waste = 10.0, minutes_a_day = 120.0;
    bool json = false;
};

WorkTerms terms_of(const NeedOptions& options) {
    WorkTerms terms;
    terms.need = {options.spoil / 100.0, options.sure / 100.0, options.waste / 100.0};
    terms.today = {static_cast<int>(now_seconds() / 86'400)};
    if (!options.today.empty()) {
        const Result<Day> day = read_day(options.today, terms.today);
        if (!day.ok()) refuse_usage("--today: " + day.error().message, day.error().remedy);
        terms.today = day.value();
    }
    for (Duration& room : terms.room) room = minutes(options.minutes_a_day);
    return terms;
}

Json lines_json(const Book& book, const std::vector<LineFacts>& facts, const OrderWork& work) {
    Json out = Json::array();
    for (const LineNeed& need : work.needs.lines) {
        const OrderLine& line = *line_of(book, need.line);
        Json uses = Json::array();
        for (const LineUse& use : need.uses) {
            uses.push_back({{"what", work.needs.items[static_cast<std::size_t>(use.item)].what},
                            {"each", tidy(use.each)},
                            {"need", tidy(use.need)},
                            {"got", tidy(use.got)},
                            {"short", tidy(use.short_of)},
                            {"eaten_by", use.eaten_by}});
        }
        Json row{{"line", line.id},       {"who", line.who},        {"due", write_day(line.due)},
                 {"recipe", line.recipe}, {"size", line.size},      {"to_tie", need.to_tie},
                 {"starts", need.starts}, {"uses", std::move(uses)}};
        for (const LineFacts& of : facts) {
            if (of.line == line.id && !of.why_not.empty()) row["not_known"] = of.why_not;
        }
        for (const PlanLine& plan : work.plan.lines) {
            if (plan.line != line.id) continue;
            row["hours"] = tidy(plan.time.si / 3600.0);
            row["ready"] = write_day(plan.ready);
            row["met"] = plan.met;
        }
        out.push_back(std::move(row));
    }
    return out;
}

void print_json(const Book& book, const std::vector<LineFacts>& facts, const OrderWork& work) {
    Json items = Json::array();
    for (const ItemNeed& item : work.needs.items) {
        items.push_back({{"what", item.what},
                         {"in_stock", item.item != 0},
                         {"unit", name(item.unit)},
                         {"need", tidy(item.need)},
                         {"on_hand", tidy(item.on_hand)},
                         {"reserved", tidy(item.reserved)},
                         {"short", tidy(item.short_of)},
                         {"packs", item.packs},
                         {"cash", write_money(item.cash)},
                         {"other_unit", item.other_unit}});
    }
    print({{"lines", lines_json(book, facts, work)},
           {"items", std::move(items)},
           {"cash", write_money(work.needs.cash)},
           {"no_time", work.no_time}});
}

void print_text(const Book& book, const std::vector<LineFacts>& facts, const OrderWork& work) {
    using Align = Table::Align;
    Table lines({{"line"},
                 {"due"},
                 {"fly", Align::left},
                 {"to tie"},
                 {"begin"},
                 {"ready"},
                 {"missing", Align::left}});
    for (const LineNeed& need : work.needs.lines) {
        const OrderLine& line = *line_of(book, need.line);
        std::string missing, ready;
        for (const LineUse& use : need.uses) {
            if (use.short_of <= 0.0) continue;
            missing.append(missing.empty() ? "" : "; ").append(write_rounded(use.short_of, 2));
            missing.append(1, ' ').append(
                work.needs.items[static_cast<std::size_t>(use.item)].what);
            for (const std::int64_t by : use.eaten_by) {
                missing.append(by == use.eaten_by.front() ? " (eaten by line " : ", ");
                missing.append(std::to_string(by));
            }
            if (!use.eaten_by.empty()) missing.push_back(')');
        }
        for (const LineFacts& of : facts) {
            if (of.line == line.id && !of.why_not.empty()) missing = of.why_not;
        }
        for (const PlanLine& plan : work.plan.lines) {
            if (plan.line != line.id) continue;
            ready = plan.ready == Day{} ? std::string("no time") : write_day(plan.ready);
            if (!plan.met) ready.append(", late");
        }
        lines.add({std::to_string(line.id), write_day(line.due),
                   printable(line.name + (line.size.empty() ? "" : " #" + line.size)),
                   std::to_string(need.to_tie), std::to_string(need.starts), ready,
                   printable(missing)});
    }
    Table items({{"material", Align::left},
                 {"need"},
                 {"on hand"},
                 {"reserved"},
                 {"short"},
                 {"packs"},
                 {"to pay"},
                 {"", Align::left}});
    for (const ItemNeed& item : work.needs.items) {
        const std::string note = item.item == 0    ? "not in the stock"
                                 : item.other_unit ? "the stock counts otherwise"
                                                   : "";
        items.add({printable(item.what), write_rounded(item.need, 2),
                   write_rounded(item.on_hand, 2), write_rounded(item.reserved, 2),
                   write_rounded(item.short_of, 2),
                   item.packs > 0 ? std::to_string(item.packs) : "",
                   item.cash.minor > 0 ? write_money(item.cash) : "", note});
    }
    fmt::print("{}\n{}", lines.text(terminal()), items.text(terminal()));
    fmt::print("to buy: {}\n", write_money(work.needs.cash));
    if (!work.no_time.empty()) {
        fmt::print("no time is known for {} lines: say minutes for one fly in the order\n",
                   work.no_time.size());
    }
}

ExitCode run_need(const NeedOptions& options) {
    Store store = open_there(data_folder(options.data), false);
    const Book book = or_give_up(store.book());
    FactFinder finder;
    const std::vector<LineFacts> facts = finder.of(store, book);
    const OrderWork work = work_of(book, facts, terms_of(options));
    if (options.json) {
        print_json(book, facts, work);
    } else if (work.needs.lines.empty()) {
        fmt::print("no order is open\n");
    } else {
        print_text(book, facts, work);
    }
    return ExitCode::fine;
}

} // namespace

void add_need(const Command& program, Job& job) {
    auto options = std::make_shared<NeedOptions>();
    const Command command = program.command(
        "need", "What the open orders need of the stock, what lacks, and when they are ready");
    command.option("--data", options->data, "folder of the library; else the usual one");
    command.option("--spoil", options->spoil, "percent of flies that are spoilt").within(0.0, 89.0);
    command
        .option("--sure", options->sure,
                "percent confidence that enough are good; 0: just the spoilt share on top")
        .within(0.0, 99.9);
    command.option("--waste", options->waste, "percent lost of what comes by length or weight")
        .within(0.0, 90.0);
    command.option("--minutes-a-day", options->minutes_a_day, "time to tie, each day")
        .within(0.0, 1440.0);
    command.option("--today", options->today, "the day to plan from, such as 2026-12-01");
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_need);
}

} // namespace wrapwright::cli
