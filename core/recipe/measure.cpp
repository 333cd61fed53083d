#include "core/recipe/measure.h"

#include "core/recipe/amount_scan.h"
#include "core/recipe/amount_words.h"
#include "core/units/scan.h"

namespace wrapwright {

namespace {

using detail::has_digit;
using detail::PartIds;
using detail::quoted;

/// Whether a reading can be what its key measures; a bare number takes the key's unit.
bool fits(Reading& reading, AmountOf measure) {
    if (reading.kind == AmountKind::none || reading.kind == AmountKind::word) return true;
    if (reading.basis == Basis::part) {
        return measure == AmountOf::turns || measure == AmountOf::count ||
               measure == AmountOf::length;
    }
    switch (measure) {
    case AmountOf::turns:
        if (reading.bare) reading.unit = Unit::turns;
        return reading.unit == Unit::turns;
    case AmountOf::count:
        if (reading.basis == Basis::bead) { // "1 bead" is a bead here, not its diameter
            reading.basis = Basis::none;
            reading.kind = reading.low == reading.high ? AmountKind::exact : AmountKind::range;
            reading.unit = Unit::count;
        }
        return reading.unit == Unit::count || reading.unit == Unit::pinch ||
               reading.unit == Unit::mass;
    case AmountOf::length: return reading.unit == Unit::length;
    case AmountOf::linear_density: return reading.unit == Unit::linear_density;
    case AmountOf::mass: return reading.unit == Unit::mass;
    case AmountOf::duration: return reading.unit == Unit::duration;
    case AmountOf::size: break;
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

MeasureWords words_of(AmountOf measure) {
    switch (measure) {
    case AmountOf::turns: return {"a number of turns", "6 turns"};
    case AmountOf::count: return {"a count", "8 fibres"};
    case AmountOf::length: return {"a length", "2.8 mm, .015 in or half the shank"};
    case AmountOf::linear_density: return {"a thread's weight per length", "70 den or 8 tex"};
    case AmountOf::mass: return {"a mass", "4 mg"};
    case AmountOf::duration: return {"a time", "20 min"};
    case AmountOf::size: break;
    }
    return {"a hook size", "14 or 2/0"};
}

Result<Reading> read_measure(std::string_view text, AmountOf measure, const PartIds& parts) {
    if (measure == AmountOf::size) return read_size(text);
    Result<Reading> read = read_amount(text, parts);
    if (!read.ok() || fits(read.value(), measure)) return read;
    const MeasureWords words = words_of(measure);
    const bool no_unit = read.value().bare;
    return Error{ErrorCode::unknown_unit,
                 quoted(text) + (no_unit ? " has no unit" : " is not " + std::string(words.wanted)),
                 "write " + std::string(words.wanted) + ", such as " + std::string(words.example) +
                     ", or a word"};
}

TypedAmount type_amount(std::string_view text, AmountOf measure,
                        const std::vector<std::string>& parts) {
    TypedAmount typed;
    typed.amount.text = text;
    if (detail::trimmed(text).empty()) {
        typed.amount.text.clear();
        typed.understood = "nothing written";
        return typed;
    }
    Result<Reading> reading = read_measure(text, measure, parts);
    if (!reading.ok() && measure == AmountOf::length && is_inch_label(text)) {
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
    if (measure == AmountOf::size && typed.number) {
        const int n = static_cast<int>(reading.value().value);
        typed.understood = "hook size " + write_hook_size(HookSize{n});
    } else {
        typed.understood = wrapwright::understood(reading.value());
    }
    return typed;
}

} // namespace wrapwright
