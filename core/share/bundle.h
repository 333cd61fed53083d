#pragma once
// Several recipes with their photos in one file: JSON of our own, described by
// assets/bundle.schema.json.

#include "core/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

inline constexpr int bundle_version = 1;
inline constexpr std::size_t most_bundle_bytes = std::size_t{96} << 20U;
inline constexpr std::size_t most_bundle_files = 5'000;

/// One file of a bundle.
struct BundleFile {
    std::string path;  ///< recipes/NAME.json, or photos/RECIPE/SIZE/NAME
    std::string bytes; ///< as the file is; of a photo any bytes
    friend bool operator==(const BundleFile&, const BundleFile&) = default;
};

struct Bundle {
    std::string note{}; ///< from who packed it
    std::vector<BundleFile> files{};
    friend bool operator==(const Bundle&, const Bundle&) = default;
};

/// Why a bundle may not hold a file of that path; nothing where it may.
///
/// Only recipes/ and photos/ are there, with plain names: no way out of the folder that it is
/// unpacked in, on any system.
[[nodiscard]] std::string path_fault(std::string_view path);

/// The bundle as text.
/// Fails   out_of_range for a path with a fault; duplicate; too_large; malformed for a recipe that is
///         no UTF-8
[[nodiscard]] Result<std::string> write_bundle(const Bundle& bundle);

/// The bundle of a text.
///
/// Recipes are not read, only handed out.
/// Fails   as write_bundle does; unknown_version; malformed, with line and key
[[nodiscard]] Result<Bundle> read_bundle(std::string_view text);

/// Whether the text begins as a bundle does.
[[nodiscard]] bool is_bundle(std::string_view text);

} // namespace wrapwright
