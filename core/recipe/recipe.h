#pragma once
// The recipe as somebody wrote it: parts, materials, steps, with every word kept.
//
// Three lists that refer to each other by id: materials (what is drawn from stock), parts (what is
// on the fly) and steps (what is done). One material may fill several parts; one part may be made
// of several materials; the order of parts is not the order of tying.

#include "core/hook/hook.h"
#include "core/material/material.h"
#include "core/recipe/amount.h"
#include "core/recipe/op.h"

#include <optional>
#include <string>
#include <vector>

namespace wrapwright {

inline constexpr int recipe_version = 1;

/// What a fly is tied on: a hook, a shank, a tube, a needle.
struct Base {
    std::string id;
    std::string kind = "hook"; ///< hook, shank, tube, needle, trailing hook
    std::string text;          ///< verbatim, such as "jig hook, 60 degrees, or equivalent"
    std::optional<HookFamily> family{};
    Amount size;                    ///< a size number where it does not follow the fly's size
    std::optional<Hook> measured{}; ///< the person's own; values of 0 are filled in
    std::string measured_json;      ///< `measured` as it was written; kept while it says the same
    bool dressed = true;            ///< false: a trailing hook that is only joined
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Base&, const Base&) = default;
};

/// What holds two bases together.
struct Joint {
    std::string id;
    std::string from, to; ///< ids of bases
    std::string material; ///< id of wire, braid, ring
    Amount length;        ///< free between the two
    std::string beads;    ///< id of beads on the joint, if any
    Amount bead_count;
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Joint&, const Joint&) = default;
};

/// A material as it is bought and drawn from stock.
struct RecipeMaterial {
    std::string id;
    MaterialKind kind = MaterialKind::other;
    std::string text;   ///< verbatim
    std::string colour; ///< a word; "colour of choice" is one
    std::string tint;   ///< "#rrggbb" for pictures, where the word is not enough
    Substance substance = Substance::unknown;
    CoatKind coat = CoatKind::none;
    Amount size; ///< strand or bead diameter, by size where needed
    Amount width, thickness;
    Amount linear;       ///< "70 den", "8 tex"; read by the units room
    Amount fibre_length; ///< usable
    Amount barb_length;
    Amount bore, slot;
    std::string hole;        ///< "drilled", "countersunk", "slotted", or nothing
    Amount weighed;          ///< one piece on the person's scale
    Amount cure;             ///< how long a coat takes
    bool flat = false;       ///< thread spun open
    std::string instead;     ///< what may replace it, verbatim
    std::string origin_note; ///< lawful origin, verbatim
    bool restricted = false; ///< protected or restricted somewhere: check
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const RecipeMaterial&, const RecipeMaterial&) = default;
};

/// One share of a part that is made of several materials.
struct Ingredient {
    std::string material;    ///< id
    double share = 1.0;      ///< of the part's amount; the shares of a part add to 1
    std::string how;         ///< "blend", "twist", "layer", verbatim
    bool share_said = false; ///< false: equal parts of what the others leave
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Ingredient&, const Ingredient&) = default;
};

/// Something that is on the finished fly, or is done to it and shows.
struct Part {
    std::string id;
    std::string role; ///< "tail", "body", "rib", "ballast" ... the trade's word
    std::string text; ///< verbatim
    std::string base; ///< id; empty: the first base
    std::vector<Ingredient> made_of{};
    std::string side;      ///< "near", "far", "top", "below", "round", verbatim
    int copies = 1;        ///< pairs and repeats
    bool off_hook = false; ///< a sub-assembly made before it goes on
    Amount turns, count, length, diameter, pitch;
    std::string only_sizes; ///< "10-14": left out at other sizes
    bool optional = false;
    std::string either;           ///< parts with the same word here are paired alternatives
    std::string choice;           ///< which of the alternatives this part belongs to
    std::string condition;        ///< "if floss, then rib", verbatim
    std::vector<HookSize> only{}; ///< what only_sizes was understood as
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Part&, const Part&) = default;
};

/// One physical action of a step.
struct Action {
    Op op = Op::mark;
    std::string part;     ///< id
    std::string material; ///< id, where the part has several or there is no part
    std::string base;     ///< id; empty: where the last action was
    std::string other;    ///< id of a part that it goes over, or of a base that it joins
    Spot from, to;        ///< where the turns start and end; `to` alone for a single place
    Amount turns, count, length, diameter, pitch;
    Amount diameter_end;          ///< at `to`, where it tapers from `diameter`
    std::optional<Sense> sense{}; ///< unsaid: the op's own
    Spacing spacing = Spacing::unsaid;
    std::string hold;      ///< "top", "near side" ... where it is held, verbatim
    bool over_wet = false; ///< it is meant to go over a wet coat
    std::string note;
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Action&, const Action&) = default;
};

enum class BatchStage : unsigned char { each, all_first, all_last };

/// One block of the recipe as it is read out, with the actions that it consists of.
struct Step {
    std::string text;     ///< hand-neutral words
    std::string landmark; ///< what to look for, verbatim
    std::string tip;
    std::string caution;  ///< the author's own, beside those of the actions
    std::string original; ///< the source's wording, where it differs
    std::string picture;  ///< name of a photo
    BatchStage batch = BatchStage::each;
    bool restore_point = false; ///< a broken thread falls back to here
    std::vector<Action> actions{};
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Step&, const Step&) = default;
};

/// How long a part of the finished fly should be, in place of what a standard says.
struct OwnTarget {
    std::string part; ///< tail, body, thorax, wing or hackle
    Amount length;
    double within = 0.1; ///< tolerance, as a share of the length
    bool within_said = false;
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const OwnTarget&, const OwnTarget&) = default;
};

/// Who wrote it, from what, and what may be done with it.
struct Provenance {
    std::string author, date, source, page, permission, credit, changes, version_of, language;
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Provenance&, const Provenance&) = default;
};

/// A whole recipe.
struct Recipe {
    int version = recipe_version;
    std::string id, name;
    std::vector<std::string> aliases{}, tags{};
    std::string fly_class; ///< "jig nymph", "dry", "wet", "streamer", "sedge" ...
    std::string sizes;     ///< verbatim: "12-18", "16 to 12", "10, 12, 14"
    std::string verbatim;  ///< the original text, word for word, in any shape
    std::string fishing, imitates, history, notes;
    Provenance provenance;
    std::vector<Base> bases{};
    std::vector<Joint> joints{};
    std::vector<RecipeMaterial> materials{};
    std::vector<Part> parts{};
    std::vector<Step> steps{};
    std::vector<OwnTarget> targets{};
    std::vector<HookSize> size_list{}; ///< what `sizes` was understood as
    std::vector<UnknownKey> unknown{};
    friend bool operator==(const Recipe&, const Recipe&) = default;
};

} // namespace wrapwright
