// The stock: what there is of each thing, where it lies, how it is bought, and what happened with it.

#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// Columns: the name, what there is, then how it is bought.
enum Column : int { what_column, hand_column, reserved_column, free_column, packs_column, rest };

bool is_low(const Book& book, const StockItem& item) {
    return item.low > 0.0 && book.holdings.of(item.id).free() < item.low;
}

std::string cell_text(const Book& book, const StockItem& item, int c) {
    const Holding holding = book.holdings.of(item.id);
    switch (c) {
    case what_column: return item.what;
    case hand_column: return write_rounded(holding.on_hand, 2);
    case reserved_column:
        return holding.reserved > 0.0 ? write_rounded(holding.reserved, 2) : std::string();
    case free_column: return write_rounded(holding.free(), 2);
    case packs_column: return {};
    default: return stock_fields()[static_cast<std::size_t>(c - rest + 1)].write(item);
    }
}

std::string_view key_of(int c) {
    if (c == what_column) return "what";
    if (c == hand_column) return "on hand";
    if (c == packs_column) return "packs";
    return c < rest ? std::string_view()
                    : stock_fields()[static_cast<std::size_t>(c - rest + 1)].key;
}

/// The last things that happened with the picked item, newest first.
void history(Ui& ui, const Box& box) {
    const BookWork& b = ui.model.book;
    const StockItem* item = picked_item(b);
    if (item == nullptr) return;
    const std::vector<bool> holds = holding_entries(b.history);
    std::string words(item->what);
    words.append(": ");
    int told = 0;
    for (std::size_t i = b.history.size(); i-- > 0 && told < 6;) {
        const Entry& e = b.history[i];
        if (e.undoes != 0) continue;
        if (told++ > 0) words.append("; ");
        words.append(name(e.kind)).append(1, ' ').append(write_rounded(e.amount, 2));
        if (e.made > 0) {
            words.append(1, ' ').append(write_day({static_cast<int>(e.made / 86'400)}));
        }
        if (e.sitting > 0) words.append(" (fly ").append(std::to_string(e.fly + 1)).append(1, ')');
        if (!holds[i]) words.append(" (undone)");
    }
    if (told == 0) words.append("nothing happened with it yet");
    write(ui, ui.fonts.small, ui.colours.soft, box, words);
}

} // namespace

bool only_table(const Ui& ui, const Box& box) {
    return ui.typing.grid.editing && box.height < 8.0F * control_height(ui);
}

void stock_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const Book& book = *m.book.book;
    const auto fields = stock_fields();
    const bool narrow = box.width < 40.0F * ui.sizes.small;
    std::vector<GridColumn> columns{{"what", narrow ? 18.0F : 34.0F, false, false, true},
                                    {"on hand", 7.0F, true, false},
                                    {"reserved", 7.0F, true, true},
                                    {"free", 6.0F, true, true},
                                    {"+ packs", 5.0F, true, false}};
    for (std::size_t f = 1; f < fields.size(); ++f) {
        columns.push_back(
            {fields[f].title, fields[f].number ? 5.0F : 8.0F, fields[f].number, fields[f].fixed});
    }
    const auto text = [&](int i, int c) {
        return cell_text(book, book.items[static_cast<std::size_t>(i)], c);
    };
    Box in = box;
    const float high = control_height(ui);
    const float foot = std::max(high, 2.0F * ui.fonts.small->FontSize);
    const Box below{in.x, in.bottom() - foot, in.width, foot};
    const bool tight = only_table(ui, box);
    in.height -= tight ? 0.0F : foot + grid;
    in.height -= refused_line(ui, in);
    const std::vector<int>& order = ordered(
        ui, 1, static_cast<int>(book.items.size()), static_cast<int>(columns.size()),
        [&](int i) { return !book.items[static_cast<std::size_t>(i)].gone; }, text);
    GridRows rows;
    rows.count = static_cast<int>(order.size()) + 1;
    rows.fresh = rows.count - 1;
    const auto item_at = [&](int r) -> const StockItem& {
        return book.items[static_cast<std::size_t>(order[static_cast<std::size_t>(r)])];
    };
    rows.text = [&](int r, int c) {
        if (r == rows.count - 1) return std::string(c == 0 ? "new: what is it?" : "");
        return text(order[static_cast<std::size_t>(r)], c);
    };
    rows.colour = [&](int r, int c) {
        if (r == rows.count - 1 || c == reserved_column) return ui.colours.soft;
        if ((c == free_column || c == hand_column) && is_low(book, item_at(r))) {
            return ui.colours.warn;
        }
        return c == free_column ? ui.colours.soft : ui.colours.ink;
    };
    int low = 0;
    double worth = 0.0;
    for (const int i : order) {
        const StockItem& item = book.items[static_cast<std::size_t>(i)];
        low += is_low(book, item) ? 1 : 0;
        worth += static_cast<double>(item.price.minor) *
                 std::max(0.0, book.holdings.of(item.id).on_hand) / item.pack;
    }
    rows.sums.assign(columns.size(), {});
    rows.sums[0] = std::to_string(order.size())
                       .append(order.size() == 1 ? " line, " : " lines, ")
                       .append(std::to_string(low));
    rows.sums[0].append(low == 1 ? " is low" : " are low");
    rows.sums[7] = write_money(money_of(worth));
    if (tight) rows.sums.clear();
    GridAnswer answer = draw_grid(ui, "stock", in, columns, rows, ui.typing.grid,
                                  ui.typing.order.column, ui.typing.order.down);
    if (answer.heading) sort_by(ui, *answer.heading);
    const auto id_of = [&](int r) {
        return r < static_cast<int>(order.size()) ? static_cast<int>(item_at(r).id) : 0;
    };
    if (answer.edited && !key_of(answer.column).empty()) {
        Wish w = wish(WishKind::book_cell, id_of(answer.row), std::move(answer.text));
        w.key.assign("stock ").append(key_of(answer.column));
        ui.want(std::move(w));
    }
    const int here = id_of(ui.typing.grid.row);
    const bool put_away = !tight && button(ui, "Put away",
                                           {below.right() - 7.0F * ui.sizes.small, below.y,
                                            7.0F * ui.sizes.small, high});
    if ((answer.remove || put_away) && here != 0) {
        Wish w = wish(WishKind::book_remove, here);
        w.key = "stock";
        ui.want(std::move(w));
    }
    if (here != static_cast<int>(m.book.item) && !answer.edited) {
        Wish w = wish(WishKind::pick_row, here);
        w.key = "stock";
        ui.want(std::move(w));
    }
    if (!tight) history(ui, {below.x, below.y, below.width - 7.5F * ui.sizes.small, below.height});
}

} // namespace wrapwright
