#pragma once
// A text made short for a letter, and back: packed bytes as letters that mail leaves alone.

#include "core/result.h"

#include <string>
#include <string_view>

namespace wrapwright {

inline constexpr std::size_t most_packed_text = std::size_t{4} << 20; ///< of the text itself

/// The text in fewer bytes: its length, its check sum, and its bits by an adaptive model.
///
/// The model starts from words that recipe files are full of, so that short ones gain too.
/// Valid   at most most_packed_text bytes
/// Cost    some hundred steps for each byte
/// Source  arithmetic coding of binary decisions: Witten, Neal and Cleary 1987, from memory
[[nodiscard]] std::string pack(std::string_view text);

/// The text again.
///
/// Fails   too_large where it says that it is; malformed where bytes are missing or changed
[[nodiscard]] Result<std::string> unpack(std::string_view packed);

/// Base64 of RFC 4648 without padding, in one line.
[[nodiscard]] std::string base64(std::string_view bytes);

/// The bytes of base64; blanks and padding are passed over.
/// Fails   malformed for a character that is none of it
[[nodiscard]] Result<std::string> from_base64(std::string_view letters);

/// The check sum CRC-32 of ISO 3309, as PNG and zip files have it.
[[nodiscard]] unsigned crc32(std::string_view bytes);

} // namespace wrapwright
