#pragma once
// An amount as somebody wrote it, and what was understood of it. The words are never replaced.

#include "core/units/estimate.h"
#include "core/units/hook_size.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

enum class AmountKind : unsigned char {
    none,     ///< nothing written
    exact,    ///< "6 turns"
    range,    ///< "2-3", "10 or 12"
    about,    ///< "about 12"
    relative, ///< "half the shank", "1.5 gape", "same as body"
    word,     ///< "sparse", "to taste": legal, and no number
};

/// A key that this version does not know, kept as it was written: "key" and its JSON value.
struct UnknownKey {
    std::string key;
    std::string json;
    friend bool operator==(const UnknownKey&, const UnknownKey&) = default;
};

enum class Unit : unsigned char {
    count,
    turns,
    length,
    mass,
    linear_density,
    angle,
    duration,
    pinch
};

/// What a relative amount is a share of.
enum class Basis : unsigned char {
    none,
    shank,
    gape,
    eye,
    wire,
    hook, ///< eye to the outside of the bend
    bead, ///< diameter of the bead on the hook
    part, ///< the same amount of another part
};

/// What was understood of an amount's words.
///
/// Units   SI by `unit`; for a relative amount low, value and high are multiples of the basis
struct Reading {
    AmountKind kind = AmountKind::none;
    Unit unit = Unit::count;
    Basis basis = Basis::none;
    double low = 0.0;
    double value = 0.0;
    double high = 0.0;
    std::string part;  ///< id of the part for Basis::part
    bool bare = false; ///< a number alone: its use says what it counts
    friend bool operator==(const Reading&, const Reading&) = default;
};

/// A range of hook sizes and the words that hold for it.
struct SizedText {
    std::string sizes; ///< as written: "10-14", "16 to 18", "12"
    std::string text;
    std::vector<HookSize> list{}; ///< what `sizes` was understood as
    Reading reading{};
    friend bool operator==(const SizedText&, const SizedText&) = default;
};

/// An amount: the words, a number beside them where the person added one, a table by size.
struct Amount {
    std::string text;                 ///< verbatim; printed as it is
    std::string is;                   ///< the person's number beside a word, such as "4 mg"
    std::vector<SizedText> by_size{}; ///< overrides by hook size
    Reading reading{};                ///< of `is` where given, else of `text`
    std::vector<UnknownKey> unknown{};

    [[nodiscard]] bool given() const { return !text.empty() || !is.empty() || !by_size.empty(); }
    /// The reading that holds at that size.
    [[nodiscard]] const Reading& at(HookSize size) const;
    friend bool operator==(const Amount&, const Amount&) = default;
};

/// What an amount's words mean; AmountKind::word when they carry no number.
///
/// Understands numbers and fractions in digits and words, ranges, "about", turns, fibres and other
/// pieces, units of length, mass, thread, angle and time, shares of shank, gape, eye, wire, hook
/// and bead, and "same as", "as long as", "twice" another part, whose id is one of `parts`. The
/// value of a range is its middle, for whole counts rounded down, and the first named of "10 or
/// 12"; "about" is +-10 % (common practice, no source).
/// Fails   malformed or unknown_unit when a number in digits is there but cannot be meant;
///         out_of_range below 0 or beyond use; never for plain words
[[nodiscard]] Result<Reading> read_amount(std::string_view text,
                                          const std::vector<std::string>& parts);

/// Named places on the hook and on the fly that grows there.
enum class Landmark : unsigned char {
    none,
    eye,  ///< back of the eye
    bead, ///< behind the bead that is on the hook
    front,
    middle,
    point,
    barb,
    bend,
    bend_bottom,
    head,       ///< where the no-go zone behind the eye ends
    thread,     ///< where the thread hangs
    part_front, ///< the eyeward end of what was wound or bound for a part
    part_rear,  ///< its tailward end
};

/// A place as somebody wrote it, such as "bend", "0.3 shank", "1 mm behind bead", "rear of body".
struct Spot {
    std::string text;
    std::string is;
    Landmark landmark = Landmark::none;
    std::string part; ///< id, for part_front and part_rear
    Reading offset{}; ///< tailward of the landmark: positive; eyeward: negative
    std::vector<UnknownKey> unknown{};

    [[nodiscard]] bool given() const { return !text.empty() || !is.empty(); }
    friend bool operator==(const Spot&, const Spot&) = default;
};

/// What a place's words mean.
///
/// A share of the shank without a landmark is told from the front.
/// Fails   unknown_word when no landmark and no length can be made out, with a list of landmarks;
///         unknown_unit when the way from the landmark is no length
[[nodiscard]] Result<Spot> read_spot(std::string_view text, const std::vector<std::string>& parts);

} // namespace wrapwright
