#include "platform/cli/terminal.h"

#include "core/assert.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include <sys/ioctl.h>
#include <unistd.h>

namespace wrapwright::cli {

std::string Terminal::paint(std::string_view text, Colour colour_of_text) const {
    constexpr std::array<std::string_view, 7> codes{"", "1", "2", "31", "33", "32", "36"};
    const std::string_view code = codes[static_cast<std::size_t>(colour_of_text)];
    if (!colour || code.empty()) return std::string(text);
    return fmt::format("\x1b[{}m{}\x1b[0m", code, text);
}

Terminal terminal() {
    Terminal to;
    if (isatty(STDOUT_FILENO) == 0) return to;
    const char* const no_colour = std::getenv("NO_COLOR");
    const char* const kind = std::getenv("TERM");
    const bool dumb = kind == nullptr || std::string_view(kind) == "dumb";
    to.colour = !dumb && (no_colour == nullptr || *no_colour == '\0');
    winsize size{};
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) {
        to.width = std::clamp<int>(size.ws_col, 50, 110);
    }
    return to;
}

int columns(std::string_view text) {
    return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

std::string wrapped(std::string_view text, int width, int indent) {
    std::string out;
    int used = indent;
    while (!text.empty()) {
        const auto space = text.find(' ');
        const std::string_view word = text.substr(0, space);
        const int wide = columns(word);
        if (used > indent && used + 1 + wide > width) {
            append(out, "\n{:{}}", "", indent);
            used = indent;
        } else if (used > indent) {
            out += ' ';
            ++used;
        }
        out += word;
        used += wide;
        if (space == std::string_view::npos) break;
        text.remove_prefix(space + 1);
    }
    return out;
}

Table::Table(std::vector<Column> columns_of_table) : columns_(std::move(columns_of_table)) {}

void Table::add(std::vector<std::string> cells, Colour colour) {
    WW_ASSERT(cells.size() == columns_.size());
    rows_.push_back({std::move(cells), colour});
}

std::string Table::text(const Terminal& to) const {
    std::vector<int> wide(columns_.size(), 0);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        for (const Row& row : rows_) wide[i] = std::max(wide[i], columns(row.cells[i]));
        if (wide[i] > 0) wide[i] = std::max(wide[i], columns(columns_[i].heading));
    }
    const auto line = [&](auto cell_of) {
        std::string out;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            if (wide[i] == 0) continue;
            const std::string_view cell = cell_of(i);
            const std::string gap(static_cast<std::size_t>(wide[i] - columns(cell)), ' ');
            out += "  ";
            if (columns_[i].align == Align::right) out += gap;
            out += cell;
            if (columns_[i].align == Align::left) out += gap;
        }
        out.erase(out.find_last_not_of(' ') + 1);
        return out;
    };
    std::string out =
        to.paint(line([&](std::size_t i) { return std::string_view(columns_[i].heading); }),
                 Colour::faint) +
        '\n';
    for (const Row& row : rows_) {
        out += to.paint(line([&](std::size_t i) { return std::string_view(row.cells[i]); }),
                        row.colour) +
               '\n';
    }
    return out;
}

} // namespace wrapwright::cli
