#pragma once
// The schema's history. A number is never changed once it has been released; a change is a new one.

#include <span>
#include <string_view>

namespace wrapwright {

/// The steps from an empty file to the newest schema: entry i leads from user_version i to i + 1.
[[nodiscard]] std::span<const std::string_view> migrations();

} // namespace wrapwright
