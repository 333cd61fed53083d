// Stock and orders: cells that were typed, reservations, and what is undone.

#include "gui/answer.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

template <class Row>
const TableColumn<Row>* field_of(std::span<const TableColumn<Row>> fields, std::string_view key) {
    const auto at =
        std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.key == key; });
    return at == fields.end() || at->fixed ? nullptr : &*at;
}

Entry entry_of(EntryKind kind, std::int64_t item, double amount, Duration now) {
    Entry out;
    out.kind = kind;
    out.item = item;
    out.amount = amount;
    out.made = static_cast<std::int64_t>(now.si);
    return out;
}

void append(std::vector<Entry>& to, std::vector<Entry> more) {
    to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace

void Answer::keep_book(BookChange change, int what) {
    if (change.empty() || !may_write()) return;
    Effect& e = effect(EffectKind::keep_book);
    e.change = std::move(change);
    e.number = what;
}

void Answer::stock_cell(std::int64_t row, const std::string& column, const std::string& text) {
    BookWork& b = model().book;
    const StockItem* there = item_of(*b.book, row);
    StockItem item = there != nullptr ? *there : StockItem{};
    const auto refuse = [&](const Error& error) {
        b.refused = "Not taken: '" + text + "': " + error.message + "; " + error.remedy;
    };
    BookChange change;
    if (column == "on hand" || column == "packs") {
        if (there == nullptr) {
            return refuse(
                {ErrorCode::not_found, "this line has no name yet", "write what it is first", {}});
        }
        const Result<double> amount = read_amount(text, 0.0);
        if (!amount.ok()) return refuse(amount.error());
        if (column == "on hand") {
            change.entries.push_back(
                entry_of(EntryKind::counted, row, amount.value(), model().now));
        } else if (amount.value() > 0.0) {
            change.entries.push_back(
                entry_of(EntryKind::bought, row, amount.value() * item.pack, model().now));
            change.entries.back().price =
                money_of(static_cast<double>(item.price.minor) * amount.value());
        }
        return keep_book(std::move(change));
    }
    const auto* field = field_of(stock_fields(), column);
    if (field == nullptr) return;
    if (there == nullptr && column != "what") {
        return refuse(
            {ErrorCode::not_found, "this line has no name yet", "write what it is first", {}});
    }
    const Result<bool> read = field->read(item, text);
    if (!read.ok()) return refuse(read.error());
    const int same = StockNames(b.book->items).find(item.what);
    if (column == "what" && same >= 0 && b.book->items[static_cast<std::size_t>(same)].id != row) {
        return refuse({ErrorCode::duplicate,
                       "the stock has such a line already",
                       "find it there, or write what tells the two apart",
                       {}});
    }
    if (there != nullptr && item == *there) return;
    change.items.push_back(std::move(item));
    keep_book(std::move(change));
}

void Answer::order_cell(std::int64_t row, const std::string& column, const std::string& text) {
    BookWork& b = model().book;
    const OrderLine* there = line_of(*b.book, row);
    OrderLine line;
    if (there != nullptr) {
        line = *there;
    } else {
        // A new line goes on with the order of the one before.
        line.taken = b.today;
        for (auto at = b.book->lines.rbegin(); at != b.book->lines.rend(); ++at) {
            if (at->gone) continue;
            line.who = at->who;
            line.due = at->due;
            break;
        }
    }
    const auto* field = field_of(order_fields(), column);
    if (field == nullptr) return;
    const Day was_due = line.due;
    const Result<bool> read = field->read(line, text);
    if (!read.ok()) {
        b.refused =
            "Not taken: '" + text + "': " + read.error().message + "; " + read.error().remedy;
        return;
    }
    if (there != nullptr && line == *there) return;
    if (line.due != was_due && line.due != Day{} && line.due < b.today) {
        say(write_day(line.due) + " is past");
    }
    BookChange change;
    // What is not tied any more needs nothing.
    if (there != nullptr && open(there->status) && !open(line.status)) {
        append(change.entries,
               release(row, b.book->holdings, static_cast<std::int64_t>(model().now.si)));
    }
    change.lines.push_back(std::move(line));
    keep_book(std::move(change));
}

void Answer::book_cell(std::int64_t row, const std::string& key, const std::string& text) {
    const std::size_t blank = key.find(' ');
    if (!model().book.book || blank == std::string::npos) return;
    model().book.refused.clear();
    const std::string column = key.substr(blank + 1);
    if (key.starts_with("stock")) {
        stock_cell(row, column, text);
    } else {
        order_cell(row, column, text);
    }
}

void Answer::remove_row(std::int64_t row, bool stock) {
    BookWork& b = model().book;
    if (!b.book) return;
    BookChange change;
    if (stock) {
        const StockItem* item = item_of(*b.book, row);
        if (item == nullptr || item->gone) return;
        if (b.book->holdings.of(row).reserved > 0.0) {
            b.refused = "Not put away: an order has " + item->what +
                        " reserved; release it, or let the order go first";
            return;
        }
        change.items.push_back(*item);
        change.items.back().gone = true;
    } else {
        const OrderLine* line = line_of(*b.book, row);
        if (line == nullptr || line->gone) return;
        change.entries = release(row, b.book->holdings, static_cast<std::int64_t>(model().now.si));
        change.lines.push_back(*line);
        change.lines.back().gone = true;
    }
    b.refused.clear();
    keep_book(std::move(change));
    say("Put away; Undo (ctrl z) brings it back");
}

void Answer::people(const std::string& key, double value) {
    BookWork& b = model().book;
    const int whole = static_cast<int>(std::lround(value));
    if (key == "students") b.students = std::clamp(whole, 1, 60);
    if (key == "flies each") b.flies_each = std::clamp(whole, 1, 48);
    if (key == "people") b.people = std::clamp(whole, 2, 100);
    if (key == "for the host") b.for_host = std::clamp(whole, 0, 12);
    if (key == "stretch") b.stretch = std::clamp(value, 1.0, 6.0);
}

void Answer::class_clock(int what) {
    BookWork& b = model().book;
    if (!model().fly) return;
    const int steps = static_cast<int>(model().fly->pattern.recipe.steps.size());
    if (what == 0) {
        const bool stands = b.class_since.si == 0.0;
        b.class_since = stands ? model().now : Duration{};
        b.class_step = b.class_done = 0;
    }
    if (what == 1 || what == -1) {
        b.class_step = std::clamp(b.class_step + what, 0, std::max(0, steps - 1));
        b.class_done = 0;
    }
    if (what == 2) b.class_done = std::min(b.class_done + 1, b.students);
    if (what == 3) b.class_done = std::max(b.class_done - 1, 0);
}

void Answer::book(const Wish& wish) {
    BookWork& b = model().book;
    const auto now = static_cast<std::int64_t>(model().now.si);
    const auto need_of = [&](int line) -> const LineNeed* {
        if (!b.work) return nullptr;
        for (const LineNeed& need : b.work->needs.lines) {
            if (need.line == line) return &need;
        }
        return nullptr;
    };
    switch (wish.kind) {
    case WishKind::orders_view: b.view = static_cast<OrdersView>(wish.number); break;
    case WishKind::book_cell: book_cell(wish.number, wish.key, wish.text); break;
    case WishKind::book_remove: remove_row(wish.number, wish.key == "stock"); break;
    case WishKind::pick_row:
        if (wish.key == "stock") {
            b.item = wish.number;
            effect(EffectKind::load_book).number = 1; // its history alone
        } else {
            b.line = wish.number;
        }
        break;
    case WishKind::book_undo:
        if (b.undo.empty()) {
            say("Nothing was changed here since the bench was opened");
        } else {
            keep_book(b.undo.back(), 1);
        }
        break;
    case WishKind::book_redo:
        if (!b.redo.empty()) keep_book(b.redo.back(), 2);
        break;
    case WishKind::reserve_line:
        if (const LineNeed* need = need_of(wish.number)) {
            BookChange change;
            change.entries = reserve(*need, b.work->needs, b.book->holdings, now);
            if (change.empty()) say("Nothing more of it is free");
            keep_book(std::move(change));
        }
        break;
    case WishKind::release_line:
        if (b.book) {
            BookChange change;
            change.entries = release(wish.number, b.book->holdings, now);
            if (change.empty()) say("It has nothing reserved");
            keep_book(std::move(change));
        }
        break;
    case WishKind::tie_line:
        if (b.book && may_write()) effect(EffectKind::tie_line).number = wish.number;
        break;
    case WishKind::table_in: {
        Effect& e = effect(EffectKind::table_in, wish.text);
        e.key = wish.key;
        break;
    }
    case WishKind::table_take:
        if (b.preview && wish.number != 0) keep_book(b.preview->change);
        b.preview.reset();
        b.table.clear();
        break;
    case WishKind::table_out: effect(EffectKind::table_out).key = wish.key; break;
    case WishKind::order_page: effect(EffectKind::order_page).number = wish.number; break;
    case WishKind::page: effect(EffectKind::page).number = wish.number; break;
    case WishKind::people: people(wish.key, static_cast<double>(wish.x)); break;
    case WishKind::class_clock: class_clock(wish.number); break;
    default: break;
    }
}

} // namespace wrapwright::detail
