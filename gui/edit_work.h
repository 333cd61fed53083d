#pragma once
// The recipe that is being written: its history, the fly that it makes, where the person is in it.

#include "core/recipe/edit.h"
#include "core/tying/next_ops.h"
#include "gui/open_fly.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace wrapwright {

/// Which part of the screen for writing is shown.
enum class EditView : unsigned char { write, sizes, loose, versions };

struct SizesWork;    ///< gui/sizes_work.h
struct LooseWork;    ///< gui/loose_work.h
struct VersionsWork; ///< gui/versions_work.h

struct EditWork {
    std::string id{};                      ///< of the recipe; empty: nothing is being written
    std::optional<History> history{};      ///< nothing while nothing is being written
    std::shared_ptr<const Recipe> saved{}; ///< its newest revision
    std::shared_ptr<const OpenFly> fly{};  ///< as it was written when it last could be run
    std::string halted{};                  ///< why what is written now cannot be run
    HookSize size{};
    EditView view = EditView::write;
    std::string row{};    ///< that is picked: "parts[2]", "steps[3].actions[0]"; empty: the head
    bool picking = false; ///< an operation, to stand before `pick_action` of `pick_step`
    std::size_t pick_step = 0, pick_action = 0;
    std::vector<NextOp> next{}; ///< what can be done there
    // Of the other views; nothing until they were open.
    std::shared_ptr<const SizesWork> sizes{};
    std::shared_ptr<const LooseWork> loose{};
    std::shared_ptr<const VersionsWork> versions{};

    [[nodiscard]] const Draft& draft() const { return history->now(); }
    [[nodiscard]] bool changed() const {
        return history && saved && (draft().recipe != *saved || !draft().unread.empty());
    }
};

/// A row of a list by its path: "steps[3].actions[0]" is entry 0 of "steps[3].actions".
struct RowPlace {
    std::string list{}; ///< empty for the head
    int index = 0;
};
[[nodiscard]] RowPlace place_of(const std::string& row);
[[nodiscard]] std::string row_of(const std::string& list, int index);

/// The step and action that a row is in; no action for the row of a step, neither for other rows.
struct StepPlace {
    std::optional<std::size_t> step{}, action{};
};
[[nodiscard]] StepPlace step_of(const std::string& row);

/// How many entries the list at that path has.
[[nodiscard]] int entries_of(const Recipe& recipe, const std::string& list);

/// The moment that the picture shows for the row that is picked; the last one where it has none.
[[nodiscard]] int moment_of(const EditWork& work);

/// Begins to write a recipe, with a draft that was kept or from its newest revision.
[[nodiscard]] EditWork begin_writing(std::string id, Draft draft, Recipe saved, HookSize size);

/// Runs what is written; where that cannot be done the fly stays as it was and `halted` says why.
void run_draft(EditWork& work);

} // namespace wrapwright
