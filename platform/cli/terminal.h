#pragma once
// Text for people: colour on a terminal, none in a pipe, and tables that line up in both.

#include <fmt/core.h>

#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::cli {

enum class Colour : unsigned char { plain, bold, faint, red, yellow, green, cyan };

/// How standard output is written to.
struct Terminal {
    bool colour = false; ///< it is a terminal, NO_COLOR is unset and TERM is not "dumb"
    int width = 92;      ///< columns to wrap at

    [[nodiscard]] std::string paint(std::string_view text, Colour colour_of_text) const;
};

/// The terminal that standard output is, from the environment.
[[nodiscard]] Terminal terminal();

/// Columns that a text takes up: code points of UTF-8, none of them wide.
[[nodiscard]] int columns(std::string_view text);

/// The text broken at spaces to fit, with every line but the first indented.
[[nodiscard]] std::string wrapped(std::string_view text, int width, int indent);

/// Formats onto the end of `out`.
template <class... A>
void append(std::string& out, fmt::format_string<A...> format, A&&... arguments) {
    fmt::format_to(std::back_inserter(out), format, std::forward<A>(arguments)...);
}

/// A table: one heading row, then rows of as many cells.
class Table {
  public:
    enum class Align : unsigned char { left, right };
    struct Column {
        std::string heading;
        Align align = Align::right;
    };

    explicit Table(std::vector<Column> columns_of_table);
    void add(std::vector<std::string> cells, Colour colour = Colour::plain);
    [[nodiscard]] bool is_empty() const { return rows_.empty(); }
    /// The table as lines, each indented by two; columns whose every cell is empty are left out.
    [[nodiscard]] std::string text(const Terminal& to) const;

  private:
    struct Row {
        std::vector<std::string> cells;
        Colour colour = Colour::plain;
    };
    std::vector<Column> columns_;
    std::vector<Row> rows_;
};

} // namespace wrapwright::cli
