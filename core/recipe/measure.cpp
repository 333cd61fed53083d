#include "core/recipe/measure.h"

#include "core/recipe/amount_scan.h"
#include "core/units/number_text.h"
#include "core/units/number_words.h"
#include "core/units/scan.h"
#include "core/units/size_text.h"

namespace wrapwright {

namespace {

using detail::has_digit;
using detail::PartIds;
using detail::quoted;

/// Whether a reading can be what its key measures; a bare number takes the key's unit.
bool fits(Reading& reading, Measure measure) {
    if (reading.kind == AmountKind::none || reading.kind == AmountKind::word) return true;
    if (reading.basis == Basis::part) {
        return measure == Measure::turns || measure == Measure::count || measure == Measure::length;
    }
    switch (measure) {
    case Measure::turns:
        if (reading.bare) reading.unit = Unit::turns;
        return reading.unit == Unit::turns;
    case Measure::count:
        if (reading.basis == Basis::bead) { // "1 bead" is a bead here, not its diameter
            reading.basis = Basis::none;
            reading.kind = reading.low == reading.high ? AmountKind::exact : AmountKind::range;
            reading.unit = Unit::count;
        }
        return reading.unit == Unit::count || reading.unit == Unit::pinch ||
               reading.unit == Unit::mass;
    case Measure::length: return reading.unit == Unit::length;
    case Measure::linear_density: return reading.unit == Unit::linear_density;
    case Measure::mass: return reading.unit == Unit::mass;
    case Measure::duration: return reading.unit == Unit::duration;
    case Measure::size: break;
    }
    return false;
}

Result<Reading> read_size(std::string_view text) {
    Reading reading;
    if (text.empty()) return reading;
    reading.kind = AmountKind::word;
    if (!has_digit(text)) return reading;
    const Result<WrittenHookSize> size = parse_hook_size(text);
    if (!size.ok()) return size.error();
    reading.kind = AmountKind::exact;
    reading.low = reading.value = reading.high = size.value().size.number;
    return reading;
}

/// One number of a reading, in the unit that people say it in.
std::string one(double value, Unit unit) {
    switch (unit) {
    case Unit::length: return length_words(Length{value}, true);
    case Unit::mass: return mass_words(Mass{value});
    case Unit::linear_density:
        return write_rounded(in_denier(LinearDensity{value}), 1) + " den (" +
               write_rounded(in_tex(LinearDensity{value}), 2) + " tex)";
    case Unit::angle: return write_rounded(in_degrees(Angle{value}), 1) + " degrees";
    case Unit::duration: return time_words(Duration{value});
    case Unit::turns: return write_rounded(value, 2) + (value == 1.0 ? " turn" : " turns");
    case Unit::pinch: return write_rounded(value, 2) + (value == 1.0 ? " pinch" : " pinches");
    case Unit::count: break;
    }
    return write_rounded(value, 3);
}

std::string_view basis_words(Basis basis) {
    switch (basis) {
    case Basis::shank: return "shank";
    case Basis::gape: return "gape";
    case Basis::eye: return "eye";
    case Basis::wire: return "hook's wire";
    case Basis::hook: return "hook";
    case Basis::bead: return "bead";
    case Basis::part:
    case Basis::none: break;
    }
    return "";
}

/// Whether a bare length is one that wire, beads and foam are sold by in inches: ".015", "7/64".
bool is_inch_label(std::string_view text) {
    text = detail::trimmed(text);
    if (text.starts_with('.')) return true;
    const std::size_t stroke = text.find('/');
    if (stroke == std::string_view::npos) return false;
    const std::string_view below = text.substr(stroke + 1);
    return below == "8" || below == "16" || below == "32" || below == "64";
}

} // namespace

MeasureWords words_of(Measure measure) {
    switch (measure) {
    case Measure::turns: return {"a number of turns", "6 turns"};
    case Measure::count: return {"a count", "8 fibres"};
    case Measure::length: return {"a length", "2.8 mm, .015 in or half the shank"};
    case Measure::linear_density: return {"a thread's weight per length", "70 den or 8 tex"};
    case Measure::mass: return {"a mass", "4 mg"};
    case Measure::duration: return {"a time", "20 min"};
    case Measure::size: break;
    }
    return {"a hook size", "14 or 2/0"};
}

Result<Reading> read_measure(std::string_view text, Measure measure, const PartIds& parts) {
    if (measure == Measure::size) return read_size(text);
    Result<Reading> read = read_amount(text, parts);
    if (!read.ok() || fits(read.value(), measure)) return read;
    const MeasureWords words = words_of(measure);
    const bool no_unit = read.value().bare;
    return Error{ErrorCode::unknown_unit,
                 quoted(text) + (no_unit ? " has no unit" : " is not " + std::string(words.wanted)),
                 "write " + std::string(words.wanted) + ", such as " + std::string(words.example) +
                     ", or a word"};
}

std::string reading_words(const Reading& r) {
    if (r.kind == AmountKind::none) return "nothing written";
    if (r.kind == AmountKind::word) return "kept as a word";
    const auto number = [&](double value) {
        if (r.basis == Basis::none) return one(value, r.unit);
        std::string words = write_rounded(value, 3);
        words.append(" x the ").append(r.basis == Basis::part ? r.part : basis_words(r.basis));
        return words;
    };
    if (r.low == r.high) return number(r.value); // exact: both were set from one number
    const auto bare = [&](double value) {        // without the unit that the last one says
        const bool plain = r.basis != Basis::none || r.unit == Unit::count ||
                           r.unit == Unit::turns || r.unit == Unit::pinch;
        return plain ? write_rounded(value, 3) : number(value);
    };
    std::string words = bare(r.low);
    words.append(" to ").append(number(r.high)).append("; works with ").append(bare(r.value));
    return words;
}

TypedAmount type_amount(std::string_view text, Measure measure,
                        const std::vector<std::string>& parts) {
    TypedAmount typed;
    typed.amount.text = text;
    if (detail::trimmed(text).empty()) {
        typed.amount.text.clear();
        typed.understood = "nothing written";
        return typed;
    }
    Result<Reading> reading = read_measure(text, measure, parts);
    if (!reading.ok() && measure == Measure::length && is_inch_label(text)) {
        std::string inches(detail::trimmed(text));
        inches += " in";
        Result<Reading> in = read_measure(inches, measure, parts);
        if (in.ok()) {
            typed.amount.is = std::move(inches);
            reading = std::move(in);
        }
    }
    if (!reading.ok()) {
        typed.error = reading.error();
        typed.understood = reading.error().message;
        typed.amount.reading.kind = AmountKind::word;
        return typed;
    }
    typed.amount.reading = reading.value();
    typed.number = reading.value().kind != AmountKind::word;
    if (measure == Measure::size && typed.number) {
        const int n = static_cast<int>(reading.value().value);
        typed.understood = "hook size " + write_hook_size(HookSize{n});
    } else {
        typed.understood = reading_words(reading.value());
    }
    return typed;
}

} // namespace wrapwright
