#include "gui/book_work.h"

namespace wrapwright {

const OrderLine* picked_line(const BookWork& work) {
    const OrderLine* line = work.book ? line_of(*work.book, work.line) : nullptr;
    return line != nullptr && line->gone ? nullptr : line;
}

const StockItem* picked_item(const BookWork& work) {
    const StockItem* item = work.book ? item_of(*work.book, work.item) : nullptr;
    return item != nullptr && item->gone ? nullptr : item;
}

void reckon(BookWork& work, const WorkTerms& terms) {
    if (!work.book) return;
    work.work = std::make_shared<const OrderWork>(work_of(*work.book, work.facts, terms));
}

} // namespace wrapwright
