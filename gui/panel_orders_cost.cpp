// What an order costs to make, in use and in whole packs, and what happens at other rates.

#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// A row of words with two amounts at its right.
void amounts(Ui& ui, const Box& row, Colour colour, std::string_view what, std::string_view used,
             std::string_view consumed, std::string_view cash) {
    ImFont* font = ui.fonts.small;
    const float wide = std::min(6.0F * ui.sizes.small, 0.2F * row.width);
    const auto right = [&](std::string_view words, float end) {
        const float w = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, words.data(),
                                            words.data() + words.size())
                            .x;
        write(ui, font, colour, {end - w - 1.0F, row.y, w + 2.0F, row.height}, words);
    };
    write(ui, font, colour, {row.x, row.y, row.width - 3.2F * wide, row.height}, what);
    right(used, row.right() - 2.0F * wide);
    right(consumed, row.right() - wide);
    right(cash, row.right());
}

void fields(Ui& ui, Scroll& scroll, float width) {
    const BookSettings& s = ui.model.settings.book;
    const std::array<SettingRow, 8> rows{{
        {"an hour's worth", "an hour's worth", write_money(s.hourly)},
        {"spoilt, share", "spoilt share", write_number(s.spoil)},
        {"waste, share", "waste share", write_number(s.waste)},
        {"packing", "packing", write_money(s.packing)},
        {"postage", "postage", write_money(s.postage)},
        {"fee, share", "fee share", write_number(s.fee)},
        {"tax, share; 0 off", "tax share", write_number(s.tax)},
        {"currency, a word", "currency", s.currency, false},
    }};
    const float letters = width / ui.sizes.small;
    setting_rows(ui, scroll, rows, letters > 60.0F ? 4 : 2);
    (void)scroll.row(grid);
}

} // namespace

void cost_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const BookSettings& s = m.settings.book;
    Scroll scroll(ui, "cost", box);
    fields(ui, scroll, box.width);
    const float line = 1.35F * ui.fonts.small->FontSize;
    const auto say = [&](Colour colour, std::string_view words) {
        const float tall = height_of(ui.fonts.small, words, box.width - 3.0F * grid) + 0.5F * grid;
        write(ui, ui.fonts.small, colour, scroll.row(tall), words);
    };
    const OrderLine* picked = picked_line(m.book);
    std::vector<std::int64_t> ids;
    std::string head;
    for (const OrderLine& of : m.book.book->lines) {
        if (of.gone || picked == nullptr || !same_order(of, *picked)) continue;
        ids.push_back(of.id);
        head.append(head.empty() ? "" : "; ").append(line_words(of));
    }
    if (ids.empty()) return say(ui.colours.soft, "Pick a line among the orders first.");
    const OrderCost cost =
        cost_of_lines(*m.book.book, ids, m.book.facts, terms_of(s, m.book.today));
    say(ui.colours.ink, head);
    std::string begun = std::to_string(cost.good);
    begun.append(" good flies from ").append(std::to_string(cost.starts)).append(" begun, ");
    begun.append(cost.time.si > 0.0 ? write_rounded(cost.time.si / 3600.0, 1) + " h"
                                    : std::string("no time is known"));
    if (!s.currency.empty()) begun.append("; in ").append(s.currency);
    say(ui.colours.soft, begun);
    amounts(ui, scroll.row(line), ui.colours.soft, "", "used", "in use", "to pay");
    for (const CostLine& of : cost.sheet.lines) {
        const std::string packs =
            of.packs > 0 ? std::to_string(of.packs).append(of.packs == 1 ? " pack" : " packs")
                         : write_rounded(of.used, 2);
        amounts(ui, scroll.row(line), ui.colours.ink, of.what, packs, write_money(of.consumed),
                write_money(of.cash));
    }
    amounts(ui, scroll.row(line), ui.colours.ink, "all", "", write_money(cost.sheet.consumed),
            write_money(cost.sheet.cash));
    (void)scroll.row(grid);
    std::string each("A fly ");
    each.append(write_money(money_of(cost.sheet.per_fly))).append(", a dozen ");
    each.append(write_money(money_of(cost.sheet.per_dozen)));
    each.append("; a price that covers all, with fee and tax: ");
    each.append(write_money(cost.sheet.price)).append(".");
    say(ui.colours.ink, each);
    if (cost.price.minor > 0) {
        const Money over = cost.price - cost.sheet.price;
        std::string agreed("Agreed: ");
        agreed.append(write_money(cost.price))
            .append(over.minor < 0 ? ", that is " : ", that leaves ");
        agreed.append(write_money({over.minor < 0 ? -over.minor : over.minor}));
        agreed.append(over.minor < 0 ? " too little." : ".");
        say(over.minor < 0 ? ui.colours.warn : ui.colours.good, agreed);
    }
    if (s.hourly.minor == 0) {
        say(ui.colours.soft, "Your time is counted as nothing: write an hour's worth above.");
    }
    if (s.tax > 0.0) {
        say(ui.colours.soft,
            "The tax is a column and no advice: what you owe is said where you sell.");
    }
    if (!cost.unpriced.empty()) {
        std::string words("Without a price, and so in no sum: ");
        for (std::size_t i = 0; i < cost.unpriced.size(); ++i) {
            words.append(i == 0 ? "" : "; ").append(cost.unpriced[i]);
        }
        say(ui.colours.warn, words);
    }
}

} // namespace wrapwright
