#include "core/tally/cost.h"

#include "core/tally/starts.h"
#include "core/tally/tally.h"
#include "core/tying/words.h"
#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/load.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct CostOptions {
    std::string recipe, size, hook, currency, rate = "0", packing = "0", postage = "0";
    std::vector<std::string> prices;
    int dozens = 1;
    double spoil = 0.0, sure = 95.0, waste = 10.0, minutes_each = 0.0, finishing = 0.0, fee = 0.0,
           tax = 0.0;
    bool json = false;
};

Money said_money(const std::string& option, const std::string& text) {
    const Result<Money> money = read_money(text);
    if (!money.ok())
        refuse_usage("--" + option + ": " + money.error().message, money.error().remedy);
    return money.value();
}

/// A price: MATERIAL=4.50/25, /100yd, /60flies.
struct Price {
    std::string id;
    Money money{};
    double pack = 0.0;
    enum class Of : unsigned char { pieces, length, flies } of = Of::pieces;
};

Price read_price(const std::string& said) {
    const auto equals = said.find('='), slash = said.find('/');
    const auto refuse = [&] {
        refuse_usage(
            "--price: '" + said + "' is no price of a pack",
            "write MATERIAL=4.50/25 for pieces, =4.50/100yd for a spool, =20.00/60flies for "
            "a cape; hooks are 'hook'");
    };
    if (equals == std::string::npos || slash == std::string::npos || slash < equals) refuse();
    Price price;
    price.id = said.substr(0, equals);
    price.money = said_money("price", said.substr(equals + 1, slash - equals - 1));
    std::string pack = said.substr(slash + 1);
    if (pack.ends_with("flies")) {
        price.of = Price::Of::flies;
        pack.resize(pack.size() - 5);
    }
    const Result<double> pieces = read_number(pack);
    if (pieces.ok()) {
        price.pack = pieces.value();
    } else {
        const Result<WrittenLength> length = parse_length(pack);
        if (!length.ok()) refuse();
        price.of = Price::Of::length;
        price.pack = length.value().quantity.si;
    }
    if (!(price.pack > 0.0)) refuse();
    return price;
}

std::string id_of(const Pattern& pattern, const Draw& draw) {
    if (draw.material == none) return "hook";
    return pattern.recipe.materials[static_cast<std::size_t>(draw.material)].id;
}

/// What one fly draws, with the prices that were said; unpriced ones are named.
std::vector<CostItem> items_of(const Loaded& loaded, const Fly& fly, const CostOptions& options,
                               std::vector<std::string>& unpriced) {
    std::vector<Price> prices;
    for (const std::string& said : options.prices) prices.push_back(read_price(said));
    std::vector<bool> used(prices.size(), false);
    std::vector<CostItem> items;
    for (const Draw& draw : tally_batch({{&fly.resolved, &fly.tied, 1}})) {
        const std::string id = id_of(loaded.pattern, draw);
        CostItem item;
        item.what = draw.material == none ? base_words(loaded.pattern.recipe, draw.base)
                                          : material_words(loaded.pattern.recipe, draw.material);
        item.waste = draw.material == none ? 0.0 : options.waste / 100.0;
        bool priced = false;
        for (std::size_t i = 0; i < prices.size(); ++i) {
            const Price& p = prices[i];
            if (p.id != id) continue;
            used[i] = priced = true;
            item.price = p.money;
            item.pack = p.pack;
            if (p.of == Price::Of::flies) {
                item.use = 1.0;
                item.waste = 0.0; // its yield says it already
            } else if (p.of == Price::Of::length) {
                item.use = draw.wound ? draw.length.si : draw.length.si * std::max(1.0, draw.count);
                if (!(item.use > 0.0)) {
                    refuse_usage("--price: " + id + " is not drawn by its length",
                                 "give its pack in pieces, or in flies");
                }
            } else if (draw.count > 0.0) {
                item.use = draw.count;
            } else {
                refuse_usage("--price: " + id + " is not drawn by the piece",
                             "give the length of its pack, or how many flies it makes");
            }
        }
        if (!priced) unpriced.push_back(item.what);
        if (priced) items.push_back(std::move(item));
    }
    for (std::size_t i = 0; i < prices.size(); ++i) {
        if (used[i]) continue;
        refuse_usage("--price: this fly draws no '" + prices[i].id + "'",
                     "take the id of one of its materials, or 'hook'");
    }
    return items;
}

Json money_json(Money money) { return write_money(money); }

ExitCode run_cost(const CostOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    const Fly fly = run(loaded, size_of(loaded, options.size));
    CostTerms terms;
    terms.good = 12 * options.dozens;
    const Result<int> starts = starts_for(terms.good, options.spoil / 100.0, options.sure / 100.0);
    if (!starts.ok()) refuse_usage(starts.error().message, starts.error().remedy);
    terms.starts = starts.value();
    terms.hourly = said_money("rate", options.rate);
    terms.each = minutes(options.minutes_each);
    terms.finishing = minutes(options.finishing);
    terms.packing = said_money("packing", options.packing);
    terms.postage = said_money("postage", options.postage);
    terms.fee = options.fee / 100.0;
    terms.tax = options.tax / 100.0;
    if (terms.fee + terms.tax >= 0.95) {
        refuse_usage("fee and tax take nearly all of the price",
                     "give shares that leave some of it");
    }
    std::vector<std::string> unpriced;
    const CostSheet sheet = cost_of(items_of(loaded, fly, options, unpriced), terms);
    if (options.json) {
        Json lines = Json::array();
        for (const CostLine& l : sheet.lines) {
            lines.push_back({{"what", l.what},
                             {"used", tidy(l.used)},
                             {"packs", l.packs},
                             {"consumed", money_json(l.consumed)},
                             {"cash", money_json(l.cash)}});
        }
        print({{"recipe", loaded.pattern.recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"good", terms.good},
               {"starts", terms.starts},
               {"currency", options.currency},
               {"lines", std::move(lines)},
               {"unpriced", unpriced},
               {"consumed", money_json(sheet.consumed)},
               {"cash", money_json(sheet.cash)},
               {"per_fly_minor", tidy(sheet.per_fly)},
               {"per_dozen_minor", tidy(sheet.per_dozen)},
               {"price", money_json(sheet.price)}});
        return ExitCode::fine;
    }
    using Align = Table::Align;
    Table table({{"what", Align::left}, {"used"}, {"packs"}, {"consumed"}, {"to pay"}});
    for (const CostLine& l : sheet.lines) {
        table.add({printable(l.what), fmt::format("{:.2f}", l.used),
                   l.packs > 0 ? std::to_string(l.packs) : "", write_money(l.consumed),
                   write_money(l.cash)});
    }
    table.add({"all", "", "", write_money(sheet.consumed), write_money(sheet.cash)});
    fmt::print("{}  {}: {} good flies from {} begun{}{}\n{}", printable(loaded.pattern.recipe.name),
               size_words(fly.tied.size), terms.good, terms.starts,
               options.currency.empty() ? "" : ", in ", printable(options.currency),
               table.text(terminal()));
    fmt::print("a fly {:.2f}, a dozen {:.2f}; price that covers it, fee and tax: {}\n",
               sheet.per_fly / 100.0, sheet.per_dozen / 100.0, write_money(sheet.price));
    if (terms.hourly.minor == 0)
        fmt::print("labour is counted as nothing: --rate says an hour's worth\n");
    if (terms.tax > 0.0) {
        fmt::print("tax is a column and no advice: ask where you sell what you owe\n");
    }
    std::string missing;
    for (const std::string& what : unpriced)
        missing.append(missing.empty() ? "" : "; ").append(what);
    if (!missing.empty()) fmt::print("without a price: {}\n", printable(missing));
    return ExitCode::fine;
}

} // namespace

void add_cost(const Command& program, Job& job) {
    auto options = std::make_shared<CostOptions>();
    const Command command =
        program.command("cost", "What dozens of a fly use up, and what whole packs for them cost");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--dozens", options->dozens, "good flies wanted").within(1, 5000);
    command.option("--price", options->prices, "MATERIAL=4.50/25, /100yd or /60flies")
        .one_at_a_time();
    command.option("--spoil", options->spoil, "percent of flies that are spoilt").within(0.0, 89.0);
    command.option("--sure", options->sure, "percent confidence that enough are good")
        .within(1.0, 99.9);
    command.option("--waste", options->waste, "percent of a material that is lost; usually 10")
        .within(0.0, 90.0);
    command.option("--rate", options->rate, "worth of an hour, such as 15.00");
    command.option("--each", options->minutes_each, "minutes for one fly").within(0.0, 10000.0);
    command.option("--finishing", options->finishing, "minutes of finishing for the batch")
        .within(0.0, 100000.0);
    command.option("--packing", options->packing, "money");
    command.option("--postage", options->postage, "money");
    command.option("--fee", options->fee, "percent of the price that a market takes")
        .within(0.0, 90.0);
    command.option("--tax", options->tax, "percent of the price; off unless you say it")
        .within(0.0, 90.0);
    command.option("--currency", options->currency, "a word");
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_cost);
}

} // namespace wrapwright::cli
