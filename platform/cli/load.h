#pragma once
// From what was said on the command line to a record: recipe, hook, size, run.

#include "core/hook/hook.h"
#include "core/recipe/pattern.h"
#include "core/tying/record.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace wrapwright::cli {

/// A recipe that was read, with the file that errors about it name.
struct Loaded {
    std::filesystem::path file;
    std::string text; ///< as it was read: finds the line of an error that knows only its key
    Pattern pattern;
    std::optional<Hook> own; ///< the person's hook, where one was given

    /// Whether there is anything to run; else the recipe is words alone.
    [[nodiscard]] bool is_words_alone() const { return pattern.actions.empty(); }
};

/// Reads a recipe and, where its file is named, a measured hook.
[[nodiscard]] Loaded load(const std::string& recipe, const std::string& hook_file);

/// The size that was said, or that of the own hook, or the middle one of the recipe's.
[[nodiscard]] HookSize size_of(const Loaded& loaded, const std::string& said);

/// The recipe's sizes, largest hook first; 14 where it names none.
[[nodiscard]] std::vector<HookSize> sizes_of(const Loaded& loaded);

/// One fly: what it was tied from and the record.
struct Fly {
    Rig rig;
    Resolved resolved;
    Tied tied;
};

/// Runs the recipe at that size.
[[nodiscard]] Fly run(const Loaded& loaded, HookSize size);

/// Whether any finding of the record stops the fly.
[[nodiscard]] bool is_stopped(const Tied& tied);

/// "#14", "#1/0".
[[nodiscard]] std::string size_words(HookSize size);

} // namespace wrapwright::cli
