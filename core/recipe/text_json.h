#pragma once
// JSON as a tree that knows the line of every value, and back to bytes that never vary.

#include "core/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::json {

inline constexpr std::size_t most_bytes = std::size_t{4} << 20;
inline constexpr int most_levels = 48;
inline constexpr int most_values = 200'000;

enum class Kind : unsigned char { null, boolean, number, text, list, object };

/// One value; a member of an object carries its key.
struct Node {
    Kind kind = Kind::null;
    int line = 0;
    std::string key{};
    std::string text{};        ///< of a text; of a number or boolean: as written
    std::vector<Node> items{}; ///< of a list or an object

    [[nodiscard]] const Node* find(std::string_view member) const;
};

/// The tree of a JSON text; a byte order mark of UTF-8 before it is passed over.
///
/// Fails   too_large over `most` bytes, most_levels or most_values; duplicate for a key said twice in
///         one object; out_of_range for a number no double holds; malformed for anything that is
///         not JSON in UTF-8; each with its line
[[nodiscard]] Result<Node> read(std::string_view text, std::size_t most = most_bytes);

/// The value on one line.
[[nodiscard]] std::string one_line(const Node& node);

/// The value over several lines: what fits into 100 columns stays on one, two spaces a level.
[[nodiscard]] std::string lines(const Node& node);

} // namespace wrapwright::json
