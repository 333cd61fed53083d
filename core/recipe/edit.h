#pragma once
// Changes of a recipe while somebody writes it. What does not read yet is kept in its place.

#include "core/recipe/recipe.h"
#include "core/result.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// Words that stand at a key and cannot be read there yet, such as "7/" on the way to 7/64 in.
struct Unread {
    std::string path; ///< "parts[2].turns"
    std::string text;
    std::string why; ///< what is wrong, and the remedy
    friend bool operator==(const Unread&, const Unread&) = default;
};

/// A recipe that is being written: all that reads, and all that does not.
struct Draft {
    Recipe recipe{};
    std::vector<Unread> unread{};
    friend bool operator==(const Draft&, const Draft&) = default;

    /// What does not read at that path; nothing where it reads.
    [[nodiscard]] const Unread* unread_at(std::string_view path) const;
};

enum class EditKind : unsigned char {
    set,    ///< the words at `path`; none takes the key away
    add,    ///< an entry of the list at `path` before `index`: text = its JSON object
    remove, ///< the entry `index` of the list, with the actions and shares that name it
    move,   ///< the entry `index` of the list to the place `to`
};

/// One change. Paths are those of errors: "name", "parts[2].turns", "steps[3].actions[0].to".
struct Edit {
    EditKind kind = EditKind::set;
    std::string path{};
    std::string text{};
    int index = 0;
    int to = 0;
};

/// The draft after all of these edits, or none of them.
///
/// Words that do not read stay as Draft::unread and are tried again with every edit. A list of words
/// or ids ("tags", "made_of") is written with commas; a flag as "yes" or nothing. A key that no
/// recipe has is kept as any key that this version does not know.
/// Fails   not_found for an entry or an index that leads nowhere; malformed for an entry that is no
///         JSON object
/// Cost    the recipe written to a tree and read back
[[nodiscard]] Result<Draft> edited(const Draft& draft, const std::vector<Edit>& edits);

/// The draft as one text that loses nothing: a recipe's, with what does not read in its place.
[[nodiscard]] std::string write_draft(const Draft& draft);

/// Fails   as read_recipe does, for what is more than words that do not read
[[nodiscard]] Result<Draft> read_draft(std::string_view text);

/// An id of the words, "hare-fur" for "Hare fur, mixed", that none of the taken ones is.
[[nodiscard]] std::string fresh_id(std::string_view words, const std::vector<std::string>& taken);

/// What was written, step by step, forward and back. Undone and done again gives the same bytes.
class History {
  public:
    explicit History(Draft first) : now_(std::make_shared<const Draft>(std::move(first))) {}

    [[nodiscard]] const Draft& now() const { return *now_; }
    /// Takes the next draft. Changes that carry the same `joins` one after the other are one step.
    void did(Draft next, std::string_view joins = {});
    /// From here on a change is a step of its own, whatever it joins.
    void settle() { joins_.clear(); }
    bool undo();
    bool redo();
    [[nodiscard]] bool can_undo() const { return !past_.empty(); }
    [[nodiscard]] bool can_redo() const { return !future_.empty(); }

  private:
    static constexpr std::size_t most = 300; ///< steps that are kept

    std::shared_ptr<const Draft> now_;
    std::vector<std::shared_ptr<const Draft>> past_{}, future_{};
    std::string joins_{};
};

} // namespace wrapwright
