// Amounts and places: the members of ObjectReader that understand what a person wrote.

#include "core/recipe/measure.h"
#include "core/recipe/text_reader.h"
#include "core/units/scan.h"

namespace wrapwright::detail {

using json::Kind;
using json::Node;

Reading ObjectReader::reading(const Node& node, AmountOf measure) {
    if (!expect(node, Kind::text, words_of(measure).wanted)) return {};
    const Result<Reading> read = read_measure(node.text, measure, document_.parts);
    if (read.ok()) return read.value();
    refuse(node, read.error());
    return {};
}

Reading ObjectReader::lenient_reading(const Node& node, AmountOf measure) {
    const Result<Reading> read = read_measure(node.text, measure, document_.parts);
    if (read.ok()) return read.value();
    Reading word;
    word.kind = AmountKind::word;
    return word;
}

void ObjectReader::amount(std::string_view key, Amount& value, AmountOf measure) {
    at(key, [&](const Node& node) {
        if (node.kind == Kind::object) {
            ObjectReader(document_, node).amount_object(node, value, measure);
        } else if (expect(node, Kind::text, words_of(measure).wanted)) {
            value.text = node.text;
            value.reading = reading(node, measure);
        }
    });
}

void ObjectReader::amount_object(const Node& node, Amount& value, AmountOf measure) {
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

void ObjectReader::sized_texts(const Node& rows, Amount& value, AmountOf measure) {
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
