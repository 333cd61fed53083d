#pragma once
// The part of the model for stock and orders.

#include "core/stock/book_table.h"
#include "core/stock/kit.h"
#include "core/stock/order_work.h"

#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

enum class OrdersView : unsigned char { lines, stock, needs, days, cost, people, paper };

/// What can be written for a printer.
enum class Paper : unsigned char {
    card,
    handout,
    handout_left, ///< the pictures mirrored
    tags,
    labels,
    list,
    gauge,
    swap_tags ///< for everybody of the swap
};

struct BookWork {
    std::shared_ptr<const Book> book{}; ///< nothing until a screen of it was opened
    std::vector<LineFacts> facts{};     ///< of open lines
    std::shared_ptr<const OrderWork> work{};
    OrdersView view = OrdersView::lines;
    std::int64_t item = 0, line = 0; ///< rows that are picked; 0: none
    std::vector<Entry> history{};    ///< of that item, newest last
    std::vector<BookChange> undo{}, redo{};
    std::string refused{}; ///< what was typed and not taken, with the reason; until the next edit

    std::string table{}; ///< the file whose preview is shown; empty: none
    std::shared_ptr<const BookPreview> preview{};

    std::int64_t tying = 0; ///< the line that the sitting is for
    Day today{};
    // A class or a swap.
    int students = 6, flies_each = 3, people = 12, for_host = 0;
    double stretch = 2.0;   ///< how much longer learners take, 1 to 6
    Duration class_since{}; ///< when the room's clock was started; 0: it stands
    int class_step = 0;     ///< where the room is
    int class_done = 0;     ///< hands up
};

/// The line that is picked, the item that is; nullptr where none is.
[[nodiscard]] const OrderLine* picked_line(const BookWork& work);
[[nodiscard]] const StockItem* picked_item(const BookWork& work);

/// Needs, days and the rest anew, after the book or the settings changed.
void reckon(BookWork& work, const WorkTerms& terms);

} // namespace wrapwright
