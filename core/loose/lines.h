#pragma once
// Lines of a loose text: labels, numbers and bullets before them, rows of a table. Only for this room.

#include "core/loose/reader.h"

#include <optional>
#include <string>
#include <vector>

namespace wrapwright::detail {

/// A line, with and without its end.
struct Line {
    Span whole{}, content{};
};

/// The line that begins at `at`; ends at LF, CR LF or CR.
[[nodiscard]] Line line_from(std::string_view text, std::size_t at, std::size_t end);

/// A label that begins a line: "Tail:", "Hackle and tail -", "| Body |".
struct Label {
    PieceKind kind = PieceKind::part; ///< part, base, field or heading
    std::string word{};
    std::vector<std::string> roles{};
    Span label{}, value{};
    bool optional = false;
};

/// The label of a line, where it has one; `value` ends with the line.
[[nodiscard]] std::optional<Label> label_of(const Reader& reader, Span content);

/// What comes before a numbered or bulleted line's words.
struct Bullet {
    std::size_t bytes = 0; ///< 0: none
    bool numbered = false;
};
[[nodiscard]] Bullet bullet_of(std::string_view line);

/// The cells of a line; one cell where it is no row.
[[nodiscard]] std::vector<Span> cells_of(std::string_view text, Span content);

/// The labels of a table's columns, where each cell of a line is one.
[[nodiscard]] std::vector<Label> columns_of(const Reader& reader, Span content);

} // namespace wrapwright::detail
