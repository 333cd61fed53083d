// Amounts and places: the members of ObjectReader that understand what a person wrote.

#include "core/recipe/amount_scan.h"
#include "core/recipe/text_reader.h"
#include "core/units/scan.h"

namespace wrapwright::detail {

namespace {

using json::Kind;
using json::Node;

struct MeasureWords {
    std::string_view wanted;
    std::string_view example;
};

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

} // namespace

Reading ObjectReader::reading(const Node& node, Measure measure) {
    if (!expect(node, Kind::text, words_of(measure).wanted)) return {};
    const Result<Reading> read = read_measure(node.text, measure, document_.parts);
    if (read.ok()) return read.value();
    refuse(node, read.error());
    return {};
}

Reading ObjectReader::lenient_reading(const Node& node, Measure measure) {
    const Result<Reading> read = read_measure(node.text, measure, document_.parts);
    if (read.ok()) return read.value();
    Reading word;
    word.kind = AmountKind::word;
    return word;
}

void ObjectReader::amount(std::string_view key, Amount& value, Measure measure) {
    at(key, [&](const Node& node) {
        if (node.kind == Kind::object) {
            ObjectReader(document_, node).amount_object(node, value, measure);
        } else if (expect(node, Kind::text, words_of(measure).wanted)) {
            value.text = node.text;
            value.reading = reading(node, measure);
        }
    });
}

void ObjectReader::amount_object(const Node& node, Amount& value, Measure measure) {
    text("text", value.text);
    text("is", value.is);
    at("by_size", [&](const Node& rows) { sized_texts(rows, value, measure); });
    rest(value.unknown);
    if (document_.error) return;
    // Where a number stands beside them, the words may say what they like.
    if (const Node* words = node.find("text")) value.reading = lenient_reading(*words, measure);
    if (value.is.empty()) {
        if (value.by_size.empty()) at("text", [&](const Node& t) { reading(t, measure); });
        return;
    }
    at("is", [&](const Node& is) {
        value.reading = reading(is, measure);
        if (!document_.error && value.reading.kind == AmountKind::word) {
            refuse(is, {ErrorCode::malformed, quoted(is.text) + " carries no number",
                        "write one here, such as " + std::string(words_of(measure).example) +
                            ", or leave the key out"});
        }
    });
}

void ObjectReader::sized_texts(const Node& rows, Amount& value, Measure measure) {
    if (!expect(rows, Kind::object, "an object with hook sizes as keys")) return;
    ObjectReader table(document_, rows);
    for (const Node& row : rows.items) {
        table.at(row.key, [&](const Node& node) {
            const Result<WrittenHookSizes> sizes = parse_hook_sizes(row.key);
            if (!sizes.ok()) return refuse(node, sizes.error());
            SizedText sized{row.key, node.text, sizes.value().sizes, reading(node, measure)};
            for (const SizedText& other : value.by_size) {
                for (const HookSize size : sized.list) {
                    if (std::find(other.list.begin(), other.list.end(), size) == other.list.end()) {
                        continue;
                    }
                    refuse(node,
                           {ErrorCode::duplicate,
                            "size " + write_hook_size(size) + " is also in " + quoted(other.sizes),
                            "let every size be in one row"});
                }
            }
            value.by_size.push_back(std::move(sized));
        });
    }
}

void ObjectReader::spot(std::string_view key, Spot& value) {
    at(key, [&](const Node& node) {
        if (node.kind != Kind::object) return spot_text(node, value);
        ObjectReader inner(document_, node);
        std::string words;
        inner.text("text", words);
        const bool has_is = node.find("is") != nullptr;
        inner.at(has_is ? "is" : "text", [&](const Node& said) { spot_text(said, value); });
        value.is = has_is ? value.text : std::string();
        value.text = std::move(words);
        inner.rest(value.unknown);
    });
}

void ObjectReader::spot_text(const Node& node, Spot& value) {
    if (!expect(node, Kind::text, "a place, such as bend or 1 mm behind bead")) return;
    Result<Spot> spot = read_spot(node.text, document_.parts);
    if (!spot.ok()) return refuse(node, spot.error());
    value = std::move(spot).value();
}

} // namespace wrapwright::detail
