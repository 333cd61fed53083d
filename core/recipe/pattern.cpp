#include "core/recipe/pattern.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// More bases than any fly has; the state of each lives in a fixed array while tying.
constexpr std::size_t most_bases = 4;

Error dangling(std::string key, std::string_view what, std::string_view id) {
    return {ErrorCode::unknown_word,
            "no " + std::string(what) + " has the id '" + std::string(id) + "'",
            "use the id of one of the recipe's " + std::string(what) + "s, or add it there",
            {0, std::move(key)}};
}

std::string at_key(std::string_view list, std::size_t i, std::string_view member = {}) {
    std::string key = std::string(list) + '[' + std::to_string(i) + ']';
    if (!member.empty()) key += '.' + std::string(member);
    return key;
}

template <class T>
int find_id(const std::vector<T>& list, std::string_view id) {
    const auto it = std::find_if(list.begin(), list.end(), [&](const T& x) { return x.id == id; });
    return it == list.end() ? none : static_cast<int>(it - list.begin());
}

template <class T>
std::optional<Error> check_ids(const std::vector<T>& list, std::string_view list_name) {
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (list[i].id.empty()) {
            return Error{ErrorCode::malformed,
                         "an entry of '" + std::string(list_name) + "' has no id",
                         "give it a short id of its own, such as \"body\"",
                         {0, at_key(list_name, i, "id")}};
        }
        if (find_id(list, list[i].id) != static_cast<int>(i)) {
            return Error{ErrorCode::duplicate,
                         "the id '" + list[i].id + "' is used twice",
                         "give one of the two another id",
                         {0, at_key(list_name, i, "id")}};
        }
    }
    return std::nullopt;
}

/// Links ids to indices and remembers the first error, so that the walk reads as a list.
struct Linker {
    const Recipe& recipe;
    std::optional<Error> error{};

    int part(const std::string& id, std::string key) {
        if (id.empty()) return none;
        const int i = find_id(recipe.parts, id);
        if (i == none && !error) error = dangling(std::move(key), "part", id);
        return i;
    }
    int material(const std::string& id, std::string key) {
        if (id.empty()) return none;
        const int i = find_id(recipe.materials, id);
        if (i == none && !error) error = dangling(std::move(key), "material", id);
        return i;
    }
    int base(const std::string& id, std::string key) {
        if (id.empty()) return none;
        const int i = find_id(recipe.bases, id);
        if (i == none && !error) error = dangling(std::move(key), "base", id);
        return i;
    }
    /// The part that any reading of an amount is relative to; one amount leans on one part at most.
    int leans_on(const Amount& amount, const std::string& key) {
        int found = part(amount.reading.part, key);
        for (const SizedText& row : amount.by_size) {
            const int other = part(row.reading.part, key + ".by_size");
            if (other == none) continue;
            if (found != none && found != other && !error) {
                error = Error{ErrorCode::ambiguous,
                              "the amount leans on two different parts",
                              "let every size lean on the same part",
                              {0, key}};
            }
            found = other;
        }
        return found;
    }
};

/// Whether following one kind of amount from part to part comes back to where it started.
template <class Next>
std::optional<Error> check_cycle(const Pattern& pattern, Next next, std::string_view member) {
    const std::size_t n = pattern.parts.size();
    for (std::size_t start = 0; start < n; ++start) {
        int at = static_cast<int>(start);
        for (std::size_t hops = 0; hops <= n && at != none; ++hops) {
            if (hops == n) {
                return Error{ErrorCode::cyclic,
                             "the " + std::string(member) + " of '" +
                                 pattern.recipe.parts[start].id + "' leads back to itself",
                             "give one of these parts a number of its own",
                             {0, at_key("parts", start, member)}};
            }
            at = next(pattern.parts[static_cast<std::size_t>(at)]);
        }
    }
    return std::nullopt;
}

void link_parts(Linker& linker, Pattern& pattern) {
    const Recipe& recipe = pattern.recipe;
    for (std::size_t i = 0; i < recipe.parts.size(); ++i) {
        const Part& part = recipe.parts[i];
        Pattern::LinkedPart linked;
        linked.base = std::max(0, linker.base(part.base, at_key("parts", i, "base")));
        linked.first_ingredient = static_cast<int>(pattern.ingredients.size());
        linked.ingredients = static_cast<int>(part.made_of.size());
        for (const Ingredient& ingredient : part.made_of) {
            pattern.ingredients.push_back(
                {linker.material(ingredient.material, at_key("parts", i, "made_of")),
                 ingredient.share});
        }
        linked.turns_of = linker.leans_on(part.turns, at_key("parts", i, "turns"));
        linked.count_of = linker.leans_on(part.count, at_key("parts", i, "count"));
        linked.length_of = linker.leans_on(part.length, at_key("parts", i, "length"));
        linked.diameter_of = linker.leans_on(part.diameter, at_key("parts", i, "diameter"));
        linked.pitch_of = linker.leans_on(part.pitch, at_key("parts", i, "pitch"));
        pattern.parts.push_back(linked);
    }
}

void link_actions(Linker& linker, Pattern& pattern) {
    const Recipe& recipe = pattern.recipe;
    int base = 0;
    for (std::size_t s = 0; s < recipe.steps.size(); ++s) {
        for (std::size_t a = 0; a < recipe.steps[s].actions.size(); ++a) {
            const Action& action = recipe.steps[s].actions[a];
            const auto key = [&](std::string_view member) {
                return at_key("steps", s) + "." + at_key("actions", a, member);
            };
            Pattern::LinkedAction linked;
            linked.step = static_cast<int>(s);
            linked.index = static_cast<int>(a);
            linked.part = linker.part(action.part, key("part"));
            linked.material = linker.material(action.material, key("material"));
            if (action.op == Op::join) {
                linked.other_base = linker.base(action.other, key("other"));
            } else {
                linked.other_part = linker.part(action.other, key("other"));
            }
            // Where nothing is said, work goes on where the part belongs, or where it was.
            const int said = linker.base(action.base, key("base"));
            if (said != none) {
                base = said;
            } else if (linked.part != none) {
                base = pattern.parts[static_cast<std::size_t>(linked.part)].base;
            }
            linked.base = base;
            linked.from_part = linker.part(action.from.part, key("from"));
            linked.to_part = linker.part(action.to.part, key("to"));
            linked.turns_of = linker.leans_on(action.turns, key("turns"));
            linked.count_of = linker.leans_on(action.count, key("count"));
            linked.length_of = linker.leans_on(action.length, key("length"));
            linked.diameter_of = linker.leans_on(action.diameter, key("diameter"));
            linked.diameter_end_of = linker.leans_on(action.diameter_end, key("diameter_end"));
            linked.pitch_of = linker.leans_on(action.pitch, key("pitch"));
            pattern.actions.push_back(linked);
        }
    }
}

} // namespace

Result<Pattern> link(Recipe recipe) {
    if (auto error = check_ids(recipe.bases, "bases")) return *error;
    if (auto error = check_ids(recipe.materials, "materials")) return *error;
    if (auto error = check_ids(recipe.parts, "parts")) return *error;
    if (auto error = check_ids(recipe.joints, "joints")) return *error;
    if (recipe.bases.size() > most_bases) {
        return Error{ErrorCode::too_large,
                     "more than four bases in one fly",
                     "describe the fly with four hooks, shanks and tubes at most",
                     {0, "bases"}};
    }
    Pattern pattern;
    pattern.recipe = std::move(recipe);
    // A recipe that names no base is still tied on a hook.
    if (pattern.recipe.bases.empty()) pattern.recipe.bases.emplace_back().id = "hook";
    Linker linker{pattern.recipe};
    link_parts(linker, pattern);
    link_actions(linker, pattern);
    for (std::size_t i = 0; i < pattern.recipe.joints.size(); ++i) {
        const Joint& joint = pattern.recipe.joints[i];
        linker.base(joint.from, at_key("joints", i, "from"));
        linker.base(joint.to, at_key("joints", i, "to"));
        linker.material(joint.material, at_key("joints", i, "material"));
        linker.material(joint.beads, at_key("joints", i, "beads"));
    }
    if (linker.error) return *linker.error;

    using Linked = Pattern::LinkedPart;
    for (const auto& error : {
             check_cycle(
                 pattern, [](const Linked& p) { return p.turns_of; }, "turns"),
             check_cycle(
                 pattern, [](const Linked& p) { return p.count_of; }, "count"),
             check_cycle(
                 pattern, [](const Linked& p) { return p.length_of; }, "length"),
             check_cycle(
                 pattern, [](const Linked& p) { return p.diameter_of; }, "diameter"),
             check_cycle(
                 pattern, [](const Linked& p) { return p.pitch_of; }, "pitch"),
         }) {
        if (error) return *error;
    }
    return pattern;
}

Result<Rig> make_rig(const Pattern& pattern, HookSize size, const Hook* own) {
    Rig rig{size, {}};
    for (std::size_t i = 0; i < pattern.recipe.bases.size(); ++i) {
        const Base& base = pattern.recipe.bases[i];
        if (i == 0 && own != nullptr) {
            rig.hooks.push_back(*own);
        } else if (base.measured && base.measured->size.value_or(size) == size) {
            rig.hooks.push_back(*base.measured);
        } else {
            const Reading& said = base.size.at(size);
            const HookSize label =
                said.kind == AmountKind::exact ? HookSize{static_cast<int>(said.value)} : size;
            Result<Hook> hook = typical_hook(base.family.value_or(HookFamily::wet), label);
            if (!hook.ok()) {
                Error error = hook.error();
                error.place.key = at_key("bases", i);
                return error;
            }
            rig.hooks.push_back(std::move(hook).value());
        }
    }
    return rig;
}

} // namespace wrapwright
