// Stock and orders of the bench at work: what is kept, what a sitting draws, tables and sheets.

#include "platform/app.h"

#include "core/card/order_sheet.h"
#include "core/stock/settle.h"
#include "core/units/hook_size.h"
#include "platform/files.h"

#include <algorithm>
#include <ctime>

namespace wrapwright {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t largest_table = std::size_t{64} << 20U;

/// The day where the person is.
Day local_day(std::int64_t now) {
    const auto seconds = static_cast<std::time_t>(now);
    std::tm local{};
    if (localtime_r(&seconds, &local) == nullptr) return {static_cast<int>(now / 86'400)};
    return day_of(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

} // namespace

Result<bool> App::load_book(Model& next, bool history_alone) {
    if (!history_alone || !next.book.book) {
        Result<Book> book = store_.book();
        if (!book.ok()) return book.error();
        next.book.today = local_day(today());
        next.book.book = std::make_shared<const Book>(std::move(book).value());
        next.book.facts = facts_.of(store_, *next.book.book);
        reckon(next.book, terms_of(next.settings.book, next.book.today));
    }
    next.book.history.clear();
    if (next.book.item == 0) return true;
    auto history = store_.entries_of_item(next.book.item, 40);
    if (!history.ok()) return history.error();
    next.book.history = std::move(history).value();
    return true;
}

Result<bool> App::keep_book(const Effect& effect, Model& next) {
    BookChange change = effect.change;
    if (const Result<bool> found = find_recipes(store_, change.lines); !found.ok()) return found;
    if (const Result<bool> kept = store_.keep(change, today()); !kept.ok()) return kept;
    BookWork& b = next.book;
    const std::shared_ptr<const Book> before = b.book;
    if (!before) return true;
    BookChange back = inverse(change, *before);
    if (effect.number == 1) {
        b.undo.pop_back();
        b.redo.push_back(std::move(back));
    } else {
        if (effect.number == 2) b.redo.pop_back();
        if (effect.number == 0) b.redo.clear();
        b.undo.push_back(std::move(back));
    }
    Book after = *before;
    if (!merge(after, change)) return load_book(next, false);
    b.book = std::make_shared<const Book>(std::move(after));
    b.facts = facts_.of(store_, *b.book);
    reckon(b, terms_of(next.settings.book, b.today));
    if (change.lines.size() == 1 && change.items.empty()) b.line = change.lines[0].id;
    return load_book(next, true);
}

Result<bool> App::settle_stock(Model& next) {
    if (next.read_only || sitting_ == 0 || !next.fly || next.events.empty()) return true;
    const auto items = store_.stock_items();
    if (!items.ok()) return items.error();
    const auto entries = store_.entries_of_sitting(sitting_);
    if (!entries.ok()) return entries.error();
    BookChange change;
    change.entries = settle({sitting_, next.book.tying, &next.fly->pattern, &next.fly->resolved,
                             &next.fly->tied, &next.state},
                            entries.value(), items.value(), today());
    if (change.empty()) return true;
    if (const Result<bool> kept = store_.keep(change, today()); !kept.ok()) return kept;
    facts_.forget();
    return next.book.book ? load_book(next, false) : Result<bool>(true);
}

Result<bool> App::look_into_table(const Effect& effect, Model& next) {
    const Result<std::string> text = read_file(effect.text, largest_table);
    if (!text.ok()) return text.error();
    const Book& book = *next.book.book;
    Result<BookPreview> preview = effect.key == "stock"
                                      ? preview_stock(text.value(), book, today())
                                      : preview_orders(text.value(), book, next.book.today);
    if (!preview.ok()) {
        Error error = preview.error();
        std::string place = effect.text;
        if (error.place.line > 0) place.append(", line ").append(std::to_string(error.place.line));
        return in_file(place, std::move(error));
    }
    next.book.table = effect.text;
    next.book.preview = std::make_shared<const BookPreview>(std::move(preview).value());
    return true;
}

Result<bool> App::write_book_table(const std::string& key, Model& next) {
    const fs::path folder = fs::path(next.data_folder) / "tables";
    const std::string day = write_day(next.book.today);
    return key == "stock"
               ? hand_out(folder / ("stock-" + day + ".csv"), stock_table(*next.book.book), next)
               : hand_out(folder / ("orders-" + day + ".csv"), order_table(*next.book.book), next);
}

Result<bool> App::write_order_page(std::int64_t line, Model& next) {
    const Book& book = *next.book.book;
    const OrderLine* first = line_of(book, line);
    if (first == nullptr || !next.book.work) return true;
    std::vector<const OrderLine*> lines;
    std::vector<std::int64_t> ids;
    for (const OrderLine& other : book.lines) {
        if (other.gone || !same_order(other, *first)) continue;
        lines.push_back(&other);
        ids.push_back(other.id);
    }
    const OrderCost cost =
        cost_of_lines(book, ids, next.book.facts, terms_of(next.settings.book, next.book.today));
    const OrderFacts facts{lines, book, *next.book.work, cost, next.settings.book.currency};
    const fs::path file =
        fs::path(next.data_folder) / "pages" / ("order-" + std::to_string(ids.front()) + ".html");
    return hand_out(file, order_sheet(page_a4, facts), next);
}

Result<bool> App::tie_line(std::int64_t id, Model& next) {
    const OrderLine* line = line_of(*next.book.book, id);
    if (line == nullptr) return true;
    const OrderLine of = *line;
    const int left = std::max(1, of.flies - next.book.book->holdings.finished(id));
    if (const Result<bool> opened = open_recipe(of.recipe, next); !opened.ok()) return opened;
    if (!of.size.empty() && write_hook_size(next.fly->size) != of.size) {
        if (const Result<bool> sized = open_size(of.size, next); !sized.ok()) return sized;
    }
    next.book.tying = id;
    next.flies = std::min(left, 12);
    next.screen = Screen::lay_out;
    if (of.status != LineStatus::to_do) return true;
    Effect effect;
    effect.change.lines.push_back(of);
    effect.change.lines.back().status = LineStatus::tying;
    return keep_book(effect, next);
}

Result<bool> App::carry_out_book(const Effect& effect, Model& next) {
    if (effect.kind == EffectKind::load_book) return load_book(next, effect.number == 1);
    if (!next.book.book) return true; // nothing of it is on the screen
    switch (effect.kind) {
    case EffectKind::keep_book: return keep_book(effect, next);
    case EffectKind::table_in: return look_into_table(effect, next);
    case EffectKind::table_out: return write_book_table(effect.key, next);
    case EffectKind::page: return write_recipe_page(static_cast<Paper>(effect.number), next);
    case EffectKind::order_page: return write_order_page(effect.number, next);
    case EffectKind::tie_line: return tie_line(effect.number, next);
    default: return true;
    }
}

} // namespace wrapwright
