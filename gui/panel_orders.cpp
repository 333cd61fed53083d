#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cfloat>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 7> views{"Orders", "Stock",   "Needs", "Days",
                                                "Cost",   "Classes", "Paper"};
constexpr int view_count = static_cast<int>(views.size());

const LineNeed* need_of(const Model& m, std::int64_t line) {
    if (!m.book.work) return nullptr;
    for (const LineNeed& need : m.book.work->needs.lines) {
        if (need.line == line) return &need;
    }
    return nullptr;
}

/// "3 materials", "recipe unknown".
std::string missing_words(const Model& m, std::int64_t line) {
    const LineNeed* need = need_of(m, line);
    if (need == nullptr) return {};
    if (need->unknown) return "not known";
    const auto lacks = std::count_if(need->uses.begin(), need->uses.end(),
                                     [](const LineUse& use) { return use.short_of > 0.0; });
    if (lacks == 0) return "nothing";
    return std::to_string(lacks).append(lacks == 1 ? " material" : " materials");
}

std::string ready_words(const Model& m, std::int64_t line, bool& late) {
    if (!m.book.work) return {};
    for (const PlanLine& plan : m.book.work->plan.lines) {
        if (plan.line != line) continue;
        late = !plan.met;
        return plan.ready == Day{} ? std::string("never") : write_day(plan.ready);
    }
    return {};
}

/// Computed columns follow the fields.
enum Computed : int { tied_column, ready_column, missing_column, computed_columns };

std::string computed(const Model& m, const OrderLine& line, int which, bool& late) {
    switch (which) {
    case tied_column: return std::to_string(m.book.book->holdings.finished(line.id));
    case ready_column: return ready_words(m, line.id, late);
    default: return missing_words(m, line.id);
    }
}

void lines_foot(Ui& ui, const Box& foot) {
    const OrderLine* line = picked_line(ui.model.book);
    constexpr std::array<std::string_view, 5> acts{"Tie it", "Reserve", "Release", "Order sheet",
                                                   "Put away"};
    const float wide = (foot.width - 4.0F * grid) / 5.0F;
    for (std::size_t i = 0; i < acts.size(); ++i) {
        const Box at{foot.x + static_cast<float>(i) * (wide + grid), foot.y, wide, foot.height};
        if (!button(ui, acts[i], at, i == 0) || line == nullptr) continue;
        const int id = static_cast<int>(line->id);
        if (i == 0) ui.want(wish(WishKind::tie_line, id));
        if (i == 1) ui.want(wish(WishKind::reserve_line, id));
        if (i == 2) ui.want(wish(WishKind::release_line, id));
        if (i == 3) ui.want(wish(WishKind::order_page, id));
        if (i == 4) {
            Wish w = wish(WishKind::book_remove, id);
            w.key = "order";
            ui.want(std::move(w));
        }
    }
}

void lines_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const Book& book = *m.book.book;
    const auto fields = order_fields();
    const int own = static_cast<int>(fields.size());
    // The computed ones stand after the status, where the eye looks for them.
    constexpr int after = 9;
    const auto field_at = [&](int c) {
        return c <= after ? c : c <= after + computed_columns ? -1 : c - computed_columns;
    };
    std::vector<GridColumn> columns;
    for (int c = 0; c < own + computed_columns; ++c) {
        const int f = field_at(c);
        if (f >= 0) {
            const TableColumn<OrderLine>& field = fields[static_cast<std::size_t>(f)];
            const float letters = field.key == "recipe" || field.key == "who"   ? 18.0F
                                  : field.key == "note" || field.key == "model" ? 16.0F
                                  : field.key == "due" || field.key == "taken"  ? 10.0F
                                                                                : 4.0F;
            columns.push_back({field.title, letters, field.number, field.fixed,
                               field.key == "recipe", field.key == "size"});
            continue;
        }
        constexpr std::array<std::string_view, computed_columns> titles{"tied", "ready", "missing"};
        const int which = c - after - 1;
        columns.push_back({titles[static_cast<std::size_t>(which)],
                           which == ready_column ? 10.0F : 5.0F, which == tied_column, true});
    }
    bool late = false;
    const auto text = [&](int i, int c) {
        const OrderLine& line = book.lines[static_cast<std::size_t>(i)];
        const int f = field_at(c);
        if (f >= 0) return fields[static_cast<std::size_t>(f)].write(line);
        return computed(m, line, c - after - 1, late);
    };
    Box in = box;
    const float high = control_height(ui);
    const bool tight = only_table(ui, box);
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= tight ? 0.0F : high + grid;
    in.height -= refused_line(ui, in);
    const std::vector<int>& order = ordered(
        ui, 0, static_cast<int>(book.lines.size()), static_cast<int>(columns.size()),
        [&](int i) { return !book.lines[static_cast<std::size_t>(i)].gone; }, text);
    GridRows rows;
    rows.count = static_cast<int>(order.size()) + 1;
    rows.fresh = rows.count - 1;
    rows.text = [&](int r, int c) {
        if (r == rows.count - 1) return std::string(c == 1 ? "new line" : "");
        return text(order[static_cast<std::size_t>(r)], c);
    };
    rows.colour = [&](int r, int c) {
        if (r == rows.count - 1) return ui.colours.soft;
        late = false;
        const OrderLine& line =
            book.lines[static_cast<std::size_t>(order[static_cast<std::size_t>(r)])];
        if (field_at(c) >= 0) {
            const bool past = line.due != Day{} && line.due < m.book.today && open(line.status);
            if (fields[static_cast<std::size_t>(field_at(c))].key == "due" && past) {
                return ui.colours.warn;
            }
            return columns[static_cast<std::size_t>(c)].fixed ? ui.colours.soft : ui.colours.ink;
        }
        const std::string words = computed(m, line, c - after - 1, late);
        const bool bad = late || (c - after - 1 == missing_column && words != "nothing");
        return bad ? ui.colours.warn : ui.colours.soft;
    };
    int flies = 0;
    Money price{};
    for (const int i : order) {
        const OrderLine& line = book.lines[static_cast<std::size_t>(i)];
        flies += line.flies;
        price += price_of(line);
    }
    if (!tight) {
        rows.sums.assign(columns.size(), {});
        rows.sums[3] = "all that is shown";
        rows.sums[7] = write_flies(flies);
        rows.sums[8] = write_money(price);
    }
    GridAnswer answer = draw_grid(ui, "orders", in, columns, rows, ui.typing.grid,
                                  ui.typing.order.column, ui.typing.order.down);
    if (answer.heading) sort_by(ui, *answer.heading);
    const auto id_of = [&](int r) {
        return r < static_cast<int>(order.size())
                   ? static_cast<int>(
                         book.lines[static_cast<std::size_t>(order[static_cast<std::size_t>(r)])]
                             .id)
                   : 0;
    };
    if (answer.edited && field_at(answer.column) >= 0) {
        Wish w = wish(WishKind::book_cell, id_of(answer.row), std::move(answer.text));
        w.key.assign("order ").append(
            fields[static_cast<std::size_t>(field_at(answer.column))].key);
        ui.want(std::move(w));
    }
    const int here = id_of(ui.typing.grid.row);
    if (answer.remove && here != 0) {
        Wish w = wish(WishKind::book_remove, here);
        w.key = "order";
        ui.want(std::move(w));
    }
    if (here != static_cast<int>(m.book.line) && !answer.edited) {
        Wish w = wish(WishKind::pick_row, here);
        w.key = "order";
        ui.want(std::move(w));
    }
    if (!tight) lines_foot(ui, foot);
}

} // namespace

std::string line_words(const OrderLine& line) {
    std::string out = write_flies(line.flies);
    out.append(1, ' ').append(line.name.empty() ? std::string("flies") : line.name);
    if (!line.size.empty()) out.append(" #").append(line.size);
    if (!line.who.empty()) out.append(", for ").append(line.who);
    return out;
}

float refused_line(Ui& ui, const Box& box) {
    const std::string& words = ui.model.book.refused;
    if (words.empty()) return 0.0F;
    const float high = height_of(ui.fonts.small, words, box.width) + grid;
    write(ui, ui.fonts.small, ui.colours.warn,
          {box.x, box.bottom() - high + 0.5F * grid, box.width, high}, words);
    return high;
}

const std::vector<int>& ordered(Ui& ui, int view, int count, int columns,
                                const std::function<bool(int)>& shown,
                                const std::function<std::string(int, int)>& text) {
    TableOrder& order = ui.typing.order;
    const void* of = ui.model.book.book.get();
    const bool same = order.view == view && order.filter == ui.typing.filter;
    if (same && order.of == of) return order.rows;
    int all = 0;
    for (int i = 0; i < count; ++i) all += shown(i) ? 1 : 0;
    // An edit leaves the rows where they are; sorting again is for whoever presses the heading.
    if (same && order.of != nullptr && order.all == all && order.count == count) {
        order.of = of;
        return order.rows;
    }
    order.all = all;
    order.count = count;
    if (order.view != view) {
        order.column = -1;
        order.down = false;
    }
    order.of = of;
    order.view = view;
    order.filter = ui.typing.filter;
    order.rows.clear();
    const std::string wanted = plain_name(order.filter);
    for (int i = 0; i < count; ++i) {
        if (!shown(i)) continue;
        bool has = wanted.empty();
        for (int c = 0; c < columns && !has; ++c) {
            has = plain_name(text(i, c)).find(wanted) != std::string::npos;
        }
        if (has) order.rows.push_back(i);
    }
    if (order.column < 0 || order.column >= columns) return order.rows;
    struct Key {
        double number;
        std::string words;
        int row;
    };
    std::vector<Key> keys;
    keys.reserve(order.rows.size());
    for (const int i : order.rows) {
        std::string words = plain_name(text(i, order.column));
        const Result<LeadingNumber> number = leading_number(words);
        keys.push_back({number.ok() ? number.value().value : 1e300, std::move(words), i});
    }
    const bool down = order.down;
    std::sort(keys.begin(), keys.end(), [down](const Key& a, const Key& b) {
        if (a.number != b.number) return down ? a.number > b.number : a.number < b.number;
        if (a.words != b.words) return down ? a.words > b.words : a.words < b.words;
        return a.row < b.row;
    });
    for (std::size_t k = 0; k < keys.size(); ++k) order.rows[k] = keys[k].row;
    return order.rows;
}

void sort_by(Ui& ui, int column) {
    TableOrder& order = ui.typing.order;
    order.down = order.column == column && !order.down;
    order.column = column;
    order.of = nullptr;
}

bool table_files(Ui& ui, const Box& box, const char* key) {
    const BookWork& b = ui.model.book;
    const float high = box.height;
    if (b.preview) return true;
    const bool dialog = ui.model.picks_files;
    const float wide =
        std::min(7.0F * ui.sizes.small, (dialog ? 0.34F : 0.25F) * (box.width - 3.0F * grid));
    ImGui::PushTabStop(false); // tab walks in the table
    const float room = box.width - 2.0F * wide - 3.0F * grid;
    const float filter = dialog ? room + grid : 0.4F * room;
    (void)line_edit(ui, "##filter", "filter", ui.typing.filter, {box.x, box.y, filter, high});
    bool entered = false;
    if (!dialog) {
        entered = line_edit(ui, "##table", "a file", ui.typing.table_file,
                            {box.x + filter + grid, box.y, room - filter, high});
    }
    ImGui::PopTabStop();
    const float x = box.right() - 2.0F * wide - grid;
    const bool in = button(ui, "Look into", {x, box.y, wide, high});
    if (in && dialog) {
        ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::table)));
    } else if ((in || entered) && !ui.typing.table_file.empty()) {
        Wish w = wish(WishKind::table_in, 0, ui.typing.table_file);
        w.key = key;
        ui.want(std::move(w));
    }
    if (button(ui, "Write table", {x + wide + grid, box.y, wide, high})) {
        Wish w = wish(WishKind::table_out);
        w.key = key;
        ui.want(std::move(w));
    }
    return false;
}

namespace {

/// The views and the way back, in two rows where one would cut their words. Tells the height that takes.
float views_row(Ui& ui, const Box& box) {
    constexpr int count = view_count + 1;
    const ImFont* font = ui.fonts.small;
    float widest = 0.0F;
    for (const std::string_view view : views) {
        widest = std::max(widest, font->CalcTextSizeA(reach_size(ui), FLT_MAX, 0.0F, view.data(),
                                                      view.data() + view.size())
                                      .x);
    }
    const auto wide_of = [&](int across) {
        return (box.width - static_cast<float>(across - 1) * grid) / static_cast<float>(across);
    };
    const int rows = wide_of(count) < widest + grid ? 2 : 1;
    const int across = (count + rows - 1) / rows;
    const float wide = wide_of(across);
    const auto place = [&](int i) {
        return Box{box.x + static_cast<float>(i % across) * (wide + grid),
                   box.y + static_cast<float>(i / across) * (box.height + grid), wide, box.height};
    };
    for (int i = 0; i < view_count; ++i) {
        const bool on = static_cast<int>(ui.model.book.view) == i;
        std::string label(views[static_cast<std::size_t>(i)]);
        if (button(ui, label.append("##view"), place(i), on)) {
            ui.typing.grid = {};
            ui.want(wish(WishKind::orders_view, i));
        }
    }
    if (button(ui, "Undo##book", place(view_count))) ui.want(wish(WishKind::book_undo));
    return static_cast<float>(rows) * (box.height + grid);
}

} // namespace

void panel_orders(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const float high = control_height(ui);
    const bool tight = only_table(ui, box);
    const float top = tight ? 0.0F : views_row(ui, {box.x, box.y, box.width, high});
    const ImGuiIO& io = ImGui::GetIO();
    const int step = (ImGui::IsKeyPressed(ImGuiKey_PageDown) ? 1 : 0) -
                     (ImGui::IsKeyPressed(ImGuiKey_PageUp) ? 1 : 0);
    if (io.KeyCtrl && step != 0 && !ui.typing.grid.editing) {
        ui.typing.grid = {};
        ui.want(wish(WishKind::orders_view,
                     (static_cast<int>(m.book.view) + step + view_count) % view_count));
    }
    const Box ground{box.x, box.y + top, box.width, box.height - top};
    sheet(ui, ground);
    Box in = ground.inside(1.5F * grid);
    if (!m.book.book) {
        write(ui, ui.fonts.small, ui.colours.soft, in, "The book is being opened.");
        return;
    }
    const bool table = m.book.view == OrdersView::lines || m.book.view == OrdersView::stock;
    if ((table && !tight) || m.book.preview) {
        const char* key = m.book.view == OrdersView::stock ? "stock" : "order";
        if (table_files(ui, {in.x, in.y, in.width, high}, key)) return preview_view(ui, in);
        in.y += high + grid;
        in.height -= high + grid;
    }
    switch (m.book.view) {
    case OrdersView::lines: lines_view(ui, in); break;
    case OrdersView::stock: stock_view(ui, in); break;
    case OrdersView::needs: needs_view(ui, in); break;
    case OrdersView::days: days_view(ui, in); break;
    case OrdersView::cost: cost_view(ui, in); break;
    case OrdersView::people: people_view(ui, in); break;
    case OrdersView::paper: paper_view(ui, in); break;
    }
}

} // namespace wrapwright
