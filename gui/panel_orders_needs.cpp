// What open orders need of the stock, as bars of need against what there is.

#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <imgui_internal.h>

namespace wrapwright {

namespace {

/// Need against stock: what is there solid, what is missing hatched, so that it reads without colour.
void bar(Ui& ui, const Box& box, const ItemNeed& item) {
    const double most = std::max({item.need, item.on_hand, 1e-12});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto x = [&](double v) { return box.x + box.width * static_cast<float>(v / most); };
    const double got = item.need - item.short_of;
    list.AddRectFilled({box.x, box.y}, {x(got), box.bottom()}, im(ui.colours.good));
    if (item.short_of > 0.0) {
        const float from = x(got), to = x(item.need);
        list.AddRect({from, box.y}, {to, box.bottom()}, im(ui.colours.warn), 0.0F, 0, 2.0F);
        for (float at = from; at < to; at += grid) {
            const float end = std::min(at + box.height, to);
            list.AddLine({at, box.bottom()}, {end, box.bottom() - (end - at)}, im(ui.colours.warn),
                         2.0F);
        }
    }
    if (item.on_hand > 0.0) {
        const float at = x(item.on_hand);
        list.AddLine({at, box.y - 3.0F}, {at, box.bottom() + 3.0F}, im(ui.colours.ink), 3.0F);
    }
}

std::string item_words(const ItemNeed& item) {
    std::string out("needs ");
    out.append(write_rounded(item.need, 2)).append(1, ' ').append(name(item.unit));
    if (item.item == 0) return out.append("; nothing in the stock is called that");
    out.append(", there are ").append(write_rounded(item.on_hand, 2));
    if (item.other_unit) return out.append("; the stock counts it in another unit");
    if (item.short_of > 0.0) {
        out.append("; short ").append(write_rounded(item.short_of, 2));
        out.append(": ").append(std::to_string(item.packs));
        out.append(item.packs == 1 ? " pack" : " packs");
        if (item.cash.minor > 0) out.append(", ").append(write_money(item.cash));
    }
    return out;
}

/// Which line is short because of which.
void eaten(Ui& ui, Scroll& scroll, const Needs& needs, int row) {
    for (const LineNeed& line : needs.lines) {
        for (const LineUse& use : line.uses) {
            if (use.item != row || use.short_of <= 0.0) continue;
            std::string words("line ");
            words.append(std::to_string(line.line)).append(" lacks ");
            words.append(write_rounded(use.short_of, 2));
            for (std::size_t i = 0; i < use.eaten_by.size(); ++i) {
                words.append(i == 0 ? "; taken before it by line " : ", ");
                words.append(std::to_string(use.eaten_by[i]));
            }
            const Box at = scroll.row(1.4F * ui.fonts.small->FontSize);
            write(ui, ui.fonts.small, ui.colours.soft,
                  {at.x + 3.0F * grid, at.y, at.width - 3.0F * grid, at.height}, words);
        }
    }
}

} // namespace

void setting_field(Ui& ui, const Box& box, std::string_view words, const char* key,
                   std::string_view shown, bool number) {
    const float wide = std::min(0.4F * box.width, 16.0F * ui.sizes.small);
    words_in(ui, words, ui.colours.ink, {box.x, box.y, box.width - wide - grid, box.height});
    // The field keeps what is typed; it is taken at enter.
    const std::string name = std::string("##").append(key);
    std::string& typed = ui.typing.fields[key];
    const ImGuiID id = ImGui::GetID(name.c_str());
    if (ui.typing.fresh || ImGui::GetActiveID() != id) typed = shown;
    if (line_edit(ui, name.c_str(), "", typed, {box.right() - wide, box.y, wide, box.height},
                  number)) {
        Wish w = wish(WishKind::set, 0, typed);
        w.key = key;
        ui.want(std::move(w));
    }
}

void setting_rows(Ui& ui, Scroll& scroll, std::span<const SettingRow> rows, int across) {
    const float high = control_height(ui);
    Box row;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const int column = static_cast<int>(i) % across;
        if (column == 0) {
            if (i > 0) (void)scroll.row(0.5F * grid);
            row = scroll.row(high);
        }
        const float wide =
            (row.width - static_cast<float>(across - 1) * grid) / static_cast<float>(across);
        setting_field(ui, {row.x + static_cast<float>(column) * (wide + grid), row.y, wide, high},
                      rows[i].words, rows[i].key, rows[i].shown, rows[i].number);
    }
}

void needs_view(Ui& ui, const Box& box) {
    const BookWork& b = ui.model.book;
    const BookSettings& s = ui.model.settings.book;
    if (!b.work) return;
    const Needs& needs = b.work->needs;
    Scroll scroll(ui, "needs", box);
    const std::array<SettingRow, 3> settings{{
        {"spoilt, share", "spoilt share", write_number(s.spoil)},
        {"sure, share; 0 plain", "sure share", write_number(s.sure)},
        {"waste, share", "waste share", write_number(s.waste)},
    }};
    setting_rows(ui, scroll, settings, box.width < 40.0F * ui.sizes.small ? 1 : 3);
    (void)scroll.row(0.5F * grid);
    const float inner = box.width - 3.0F * grid;
    std::string all;
    int starts = 0, lacking = 0;
    for (const LineNeed& line : needs.lines) starts += line.starts;
    for (const ItemNeed& item : needs.items) lacking += item.short_of > 0.0 ? 1 : 0;
    all.append(std::to_string(needs.lines.size()))
        .append(needs.lines.size() == 1 ? " open line, " : " open lines, ");
    all.append(std::to_string(starts)).append(" flies to begin, ");
    all.append(std::to_string(lacking)).append(" materials short; to buy: ");
    all.append(write_money(needs.cash)).append(1, ' ').append(s.currency);
    write(ui, ui.fonts.small, ui.colours.ink,
          scroll.row(height_of(ui.fonts.small, all, inner) + grid), all);
    const float line = ui.fonts.small->FontSize;
    if (needs.lines.empty()) {
        write(ui, ui.fonts.small, ui.colours.soft, scroll.row(2.0F * line), "No order is open.");
    }
    for (const LineNeed& need : needs.lines) {
        if (!need.unknown) continue;
        const OrderLine* of = line_of(*b.book, need.line);
        std::string words("Line ");
        words.append(std::to_string(need.line)).append(": what it takes is not known");
        for (const LineFacts& facts : b.facts) {
            if (facts.line == need.line && !facts.why_not.empty()) {
                words.append("; ").append(facts.why_not);
            }
        }
        if (of != nullptr && of->recipe.empty()) words.append("; no recipe was said");
        const float tall = height_of(ui.fonts.small, words, inner) + grid;
        write(ui, ui.fonts.small, ui.colours.warn, scroll.row(tall), words);
    }
    // What lacks comes first.
    std::vector<int> order(needs.items.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
    std::sort(order.begin(), order.end(), [&](int x, int y) {
        const ItemNeed& p = needs.items[static_cast<std::size_t>(x)];
        const ItemNeed& q = needs.items[static_cast<std::size_t>(y)];
        const bool a = p.short_of > 0.0, c = q.short_of > 0.0;
        return a != c ? a : x < y;
    });
    for (const int i : order) {
        const ItemNeed& item = needs.items[static_cast<std::size_t>(i)];
        const std::string words = item_words(item);
        const Box head = scroll.row(1.3F * line);
        write(ui, ui.fonts.small, ui.colours.ink, head, item.what);
        const float tall = height_of(ui.fonts.small, words, head.width) + 0.5F * grid;
        write(ui, ui.fonts.small, item.short_of > 0.0 ? ui.colours.warn : ui.colours.soft,
              scroll.row(tall), words);
        const Box strip = scroll.row(2.5F * grid);
        bar(ui, {strip.x, strip.y, strip.width, 1.5F * grid}, item);
        eaten(ui, scroll, needs, i);
        (void)scroll.row(1.5F * grid);
    }
}

} // namespace wrapwright
