#pragma once
// What somebody sent, whatever shape it has, and what taking it in would change here.

#include "core/share/bundle.h"
#include "core/share/compare.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// A recipe that came in.
struct SharedRecipe {
    Recipe recipe{};
    std::string text{};  ///< its text form, as it came
    std::string newer{}; ///< of a newer program: to be looked at, never taken in; why
};

/// What a file or a pasted text holds.
struct Shared {
    std::vector<SharedRecipe> recipes{};
    std::vector<BundleFile> photos{};
    std::string note{};
    std::vector<std::string> refused{}; ///< recipes that could not be read: which, and why
};

/// Opens a bundle, a letter or a recipe file.
///
/// A bundle's recipes that cannot be read are told and left out; the others come.
/// Fails   where nothing at all can be opened, as the three readers do
[[nodiscard]] Result<Shared> open_shared(std::string_view text);

enum class MergeKind : unsigned char { fresh, same, differs, newer };

[[nodiscard]] std::string_view name(MergeKind kind);

/// What taking one recipe in would do.
struct MergeRow {
    MergeKind kind = MergeKind::fresh;
    std::string id, name;
    std::vector<Change> changes{}; ///< from what is here to what came, where it differs
};

/// The row of a recipe that came in, beside the one of its id that is here, if any.
[[nodiscard]] MergeRow merge_row(const SharedRecipe& there, const std::optional<Recipe>& here);

} // namespace wrapwright
