#include "core/recipe/amount_scan.h"

#include "core/recipe/amount_unit.h"
#include "core/units/number_text.h"
#include "core/units/scan.h"

#include <algorithm>
#include <cmath>

namespace wrapwright::detail {

namespace {

/// How far "about" may be off, as a share: common practice, no source.
constexpr double about_spread = 0.10;

constexpr double most = 1e9; ///< of anything, in the unit it is written in

/// A number as taken, and whether it has to be a share of something to mean anything.
struct Multiple {
    double number = 0.0;
    bool of_something = false; ///< "2 x", "60 %", "twice"
    bool article = false;      ///< only "a": a number if a unit follows, else just a word
};

constexpr struct {
    std::string_view word;
    double number;
} number_words[] = {
    {"one", 1},   {"two", 2},   {"three", 3},    {"four", 4},    {"five", 5},    {"six", 6},
    {"seven", 7}, {"eight", 8}, {"nine", 9},     {"ten", 10},    {"eleven", 11}, {"twelve", 12},
    {"an", 1},    {"a", 1},     {"fifteen", 15}, {"twenty", 20},
};

constexpr struct {
    std::string_view singular, plural;
    double divisor;
} fraction_words[] = {
    {"half", "halves", 2},   {"third", "thirds", 3}, {"quarter", "quarters", 4},
    {"fifth", "fifths", 5},  {"sixth", "sixths", 6}, {"eighth", "eighths", 8},
    {"tenth", "tenths", 10},
};

/// "half", "quarter", "thirds" as the number that it divides by.
std::optional<double> take_divisor(std::string_view& rest) {
    std::string_view after = rest;
    if (after.starts_with('-')) after.remove_prefix(1); // "two-thirds"
    for (const auto& row : fraction_words) {
        if (!take_any(after, {row.plural, row.singular})) continue;
        rest = after;
        return row.divisor;
    }
    return std::nullopt;
}

bool starts_number(std::string_view rest) {
    if (rest.empty()) return false;
    const auto first = static_cast<unsigned char>(rest.front());
    if (is_digit(rest.front()) || first >= 0x80) return true; // the fractions of Unicode
    if (rest.front() != '.' && rest.front() != '-' && rest.front() != '+') return false;
    return rest.size() > 1 && (is_digit(rest[1]) || rest[1] == '.');
}

/// Takes a number in digits or in words.
Result<std::optional<Multiple>> take_number(std::string_view& rest) {
    std::optional<Multiple> taken;
    if (starts_number(rest)) {
        const Result<LeadingNumber> number = leading_number(rest);
        if (!number.ok()) {
            if (number.error().code == ErrorCode::not_found) return taken;
            return number.error();
        }
        taken = Multiple{number.value().value};
        rest.remove_prefix(number.value().length);
        rest.remove_prefix(blanks_at(rest, 0));
    } else {
        for (const auto& row : number_words) {
            if (taken || !take_word(rest, row.word)) continue;
            taken = Multiple{row.number};
            taken->article = row.word == "a" || row.word == "an";
        }
        if (const auto divisor = take_divisor(rest)) {
            taken = Multiple{taken.value_or(Multiple{1.0}).number / *divisor};
        }
    }
    if (!taken) return taken;
    if (take_any(rest, {"and a half"})) taken->number += 0.5;
    if (taken->number < 0.0) {
        return Error{ErrorCode::out_of_range, "a number below nothing",
                     "write a number that is not negative"};
    }
    if (!(taken->number <= most)) {
        return Error{ErrorCode::out_of_range, "a number beyond any use", "check the digits"};
    }
    return taken;
}

/// Takes "times", "x" or "%" after a number.
void take_times(std::string_view& rest, Multiple& multiple) {
    if (take_any(rest, {"per cent", "percent", "%"})) {
        multiple.number /= 100.0;
        multiple.of_something = true;
    } else if (take_any(rest, {"times", "x", "\u00d7"})) {
        multiple.of_something = true;
    }
}

bool take_range_mark(std::string_view& rest, bool& choice) {
    choice = take_any(rest, {"or"});
    return choice || take_any(rest, {"to", "-", "\u2013", "\u2014"});
}

bool is_whole(double x) { return std::floor(x) == x; } // exact: whole numbers are

/// The number to work with between two: one of a choice, something that can be counted.
double middle(double low, double high, double first, Unit unit, bool choice) {
    const bool counted =
        (unit == Unit::count || unit == Unit::turns) && is_whole(low) && is_whole(high);
    if (!counted) return (low + high) / 2.0;
    return choice ? first : std::floor((low + high) / 2.0);
}

/// What the words before an amount say of it.
struct Opening {
    bool about = false;
    std::optional<Multiple> multiple{}; ///< said in words that are no number, such as "twice"
    bool part_first = false;            ///< "same as": another part rather than a measure
};

Opening take_opening(std::string_view& rest) {
    Opening opening;
    opening.about = take_any(rest, {"about", "around", "roughly", "approximately", "approx.",
                                    "approx", "circa", "ca.", "ca", "~"});
    if (take_any(rest, {"the same as", "same as", "equal to"})) {
        opening.multiple = Multiple{1.0, true};
        opening.part_first = true;
    } else if (take_any(rest, {"as long as", "as many as", "as wide as", "as thick as"})) {
        opening.multiple = Multiple{1.0, true};
    } else if (take_any(rest, {"twice", "double"})) {
        opening.multiple = Multiple{2.0, true};
    }
    return opening;
}

/// Takes one number with its unit; the unit is missing where none follows.
struct Term {
    Multiple multiple{};
    std::optional<AmountUnit> unit{};
};

Result<std::optional<Term>> take_term(std::string_view& rest, const Opening& opening,
                                      const PartIds& parts) {
    std::optional<Term> none;
    Term term;
    if (opening.multiple) {
        term.multiple = *opening.multiple;
    } else {
        const Result<std::optional<Multiple>> number = take_number(rest);
        if (!number.ok()) return number.error();
        if (!number.value()) return none;
        term.multiple = *number.value();
        take_times(rest, term.multiple);
    }
    std::string_view after = rest;
    const bool of = take_any(after, {"of"});
    take_any(after, {"the", "a", "an"});
    if (of || term.multiple.of_something) {
        term.unit = take_share(after, parts, opening.part_first);
        term.multiple.of_something = true;
    } else {
        term.unit = take_unit(after, parts);
    }
    if (term.unit) rest = after;
    return std::optional<Term>(term);
}

Reading reading_of(const Term& first, const std::optional<Term>& second, bool choice, bool about) {
    const AmountUnit bare;
    const AmountUnit& last_unit = second && second->unit ? *second->unit : bare;
    const AmountUnit& unit = second && second->unit ? last_unit : first.unit ? *first.unit : bare;
    Reading r;
    r.unit = unit.unit;
    r.bare = !first.unit && !(second && second->unit);
    r.basis = unit.basis;
    r.part = unit.part;
    const double a = si(first.multiple.number, first.unit ? *first.unit : unit);
    const double b = second ? si(second->multiple.number, unit) : a;
    r.low = std::min(a, b);
    r.high = std::max(a, b);
    r.value = second ? middle(r.low, r.high, a, r.unit, choice) : a;
    r.kind = second ? AmountKind::range : AmountKind::exact;
    if (about) {
        r.low *= 1.0 - about_spread;
        r.high *= 1.0 + about_spread;
        r.kind = AmountKind::about;
    }
    if (unit.basis != Basis::none) r.kind = AmountKind::relative;
    return r;
}

/// Whether two ends of a range measure the same thing, or one of them is bare.
bool agree(const Term& a, const Term& b) {
    return !a.unit || !b.unit ||
           (a.unit->unit == b.unit->unit && a.unit->basis == b.unit->basis &&
            a.unit->part == b.unit->part);
}

} // namespace

bool take_any(std::string_view& rest, std::initializer_list<std::string_view> phrases) {
    for (const std::string_view phrase : phrases) {
        std::string_view after = rest;
        std::size_t at = 0;
        bool taken = true;
        while (taken && at < phrase.size()) {
            const std::size_t blank = std::min(phrase.find(' ', at), phrase.size());
            if (at > 0 && after.starts_with('-')) after.remove_prefix(1);
            taken = take_word(after, phrase.substr(at, blank - at));
            at = blank + 1;
        }
        if (!taken) continue;
        rest = after;
        return true;
    }
    return false;
}

std::optional<std::string> take_part(std::string_view& rest, const PartIds& parts) {
    const auto same = [](char a, char b) {
        const auto plain = [](char c) { return c == '-' || c == '_' ? ' ' : lower(c); };
        return plain(a) == plain(b);
    };
    const std::string* best = nullptr;
    for (const std::string& id : parts) {
        if (id.empty() || id.size() > rest.size()) continue;
        if (!std::equal(id.begin(), id.end(), rest.begin(), same)) continue;
        const bool ends =
            id.size() == rest.size() || !(is_letter(rest[id.size()]) || is_digit(rest[id.size()]));
        if (ends && (best == nullptr || best->size() < id.size())) best = &id;
    }
    if (best == nullptr) return std::nullopt;
    rest.remove_prefix(best->size());
    rest.remove_prefix(blanks_at(rest, 0));
    return *best;
}

Result<std::optional<Reading>> take_amount(std::string_view& rest, const PartIds& parts) {
    const std::optional<Reading> nothing;
    const std::string_view start = rest;
    rest.remove_prefix(blanks_at(rest, 0));
    const Opening opening = take_opening(rest);

    Result<std::optional<Term>> first = std::optional<Term>();
    std::string_view gauge = rest;
    if (take_any(gauge, {"awg"})) {
        rest = gauge;
        const Result<std::optional<Multiple>> number = take_number(rest);
        if (!number.ok()) return number.error();
        if (number.value()) first = std::optional<Term>({*number.value(), wire_gauge_unit()});
    } else {
        first = take_term(rest, opening, parts);
    }
    if (!first.ok()) return first.error();
    const bool stands = first.value() && (first.value()->unit || !first.value()->multiple.article);

    std::optional<Term> second;
    bool choice = false;
    std::string_view after = rest;
    if (first.value() && !opening.multiple && take_range_mark(after, choice)) {
        const Result<std::optional<Term>> end = take_term(after, {}, parts);
        if (!end.ok()) return end.error();
        if (end.value() && agree(*first.value(), *end.value())) {
            second = end.value();
            rest = after;
        }
    }
    const auto lacks_basis = [](const Term& t) { return t.multiple.of_something && !t.unit; };
    const bool shares = first.value() && lacks_basis(*first.value()) && !(second && second->unit);
    if (!first.value() || !(stands || second) || shares || (second && lacks_basis(*second))) {
        rest = start;
        return nothing;
    }
    const bool about = take_any(rest, {"or so"}) || opening.about;
    const Reading reading = reading_of(*first.value(), second, choice, about);
    if (!std::isfinite(reading.high)) {
        return Error{ErrorCode::out_of_range, "a number beyond any use", "check the digits"};
    }
    return std::optional<Reading>(reading);
}

bool has_digit(std::string_view text) { return std::any_of(text.begin(), text.end(), is_digit); }

} // namespace wrapwright::detail
