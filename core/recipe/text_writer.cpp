#include "core/recipe/text_writer.h"

#include "core/recipe/text_reader.h"
#include "core/units/number_text.h"

namespace wrapwright::detail {

namespace {

using json::Kind;
using json::Node;

constexpr int most_decimals = 20; ///< more than a double of a length in mm can need

/// The shortest decimal number of so many of a unit that reads back as the same SI value.
///
/// Error   one unit in the last place where no decimal of the unit reads back so
template <class ToSi>
std::string shortest(double number, double si, ToSi to_si) {
    for (int decimals = 0; decimals <= most_decimals; ++decimals) {
        std::string text = write_rounded(number, decimals);
        if (to_si(read_number(text).value()) == si) return text; // exact on purpose
    }
    return write_number(number);
}

std::string length_text(Length length) {
    return shortest(in_millimetres(length), length.si,
                    [](double mm) { return millimetres(mm).si; }) +
           " mm";
}

std::string angle_text(Angle angle) {
    return shortest(in_degrees(angle), angle.si, [](double deg) { return degrees(deg).si; }) +
           " deg";
}

/// An estimate as its words, or as an object; nothing for what completion fills in again.
template <class Q, class ToText>
std::optional<Node> estimate_node(const Estimate<Q>& e, ToText to_text) {
    if (e.origin == Origin::typical || e.origin == Origin::derived) return std::nullopt;
    if (e.origin == Origin::measured && e.low == e.value && e.value == e.high) {
        return Node{Kind::text, 0, {}, to_text(e.value), {}};
    }
    Node object{Kind::object};
    object.items.push_back({Kind::text, 0, "value", to_text(e.value), {}});
    object.items.push_back({Kind::text, 0, "low", to_text(e.low), {}});
    object.items.push_back({Kind::text, 0, "high", to_text(e.high), {}});
    object.items.push_back({Kind::text, 0, "origin", std::string(word_of(e.origin)), {}});
    return object;
}

/// What a reader has kept as JSON, as a value again.
Node as_read(const std::string& json) {
    Result<Node> node = json::read(json);
    WW_ASSERT(node.ok());
    return std::move(node).value();
}

} // namespace

void ObjectWriter::add(std::string_view key, Node node) {
    node.key = std::string(key);
    object_.items.push_back(std::move(node));
}

void ObjectWriter::add(std::string_view key, Kind kind, std::string text) {
    object_.items.push_back({kind, 0, std::string(key), std::move(text), {}});
}

void ObjectWriter::header(std::string_view format, int newest) {
    add("format", Kind::text, std::string(format));
    add("version", Kind::number, std::to_string(newest));
}

void ObjectWriter::text(std::string_view key, const std::string& value) {
    if (!value.empty()) add(key, Kind::text, value);
}

void ObjectWriter::texts(std::string_view key, const std::vector<std::string>& value) {
    if (value.empty()) return;
    Node list{Kind::list};
    for (const std::string& item : value) list.items.push_back({Kind::text, 0, {}, item, {}});
    add(key, std::move(list));
}

void ObjectWriter::flag(std::string_view key, bool value, bool usual) {
    if (value != usual) add(key, Kind::boolean, value ? "true" : "false");
}

void ObjectWriter::whole(std::string_view key, int value, int least, int) {
    if (value != least) add(key, Kind::number, std::to_string(value));
}

void ObjectWriter::share(std::string_view key, double value, bool said) {
    if (said) add(key, Kind::number, write_number(value));
}

void ObjectWriter::amount(std::string_view key, const Amount& value, AmountOf) {
    if (value.is.empty() && value.by_size.empty() && value.unknown.empty()) {
        return text(key, value.text);
    }
    ObjectWriter inner;
    inner.text("text", value.text);
    inner.text("is", value.is);
    if (!value.by_size.empty()) {
        Node rows{Kind::object};
        for (const SizedText& row : value.by_size) {
            rows.items.push_back({Kind::text, 0, row.sizes, row.text, {}});
        }
        inner.add("by_size", std::move(rows));
    }
    inner.rest(value.unknown);
    add(key, std::move(inner.object_));
}

void ObjectWriter::spot(std::string_view key, const Spot& value) {
    if (value.is.empty() && value.unknown.empty()) return text(key, value.text);
    ObjectWriter inner;
    inner.text("text", value.text);
    inner.text("is", value.is);
    inner.rest(value.unknown);
    add(key, std::move(inner.object_));
}

void ObjectWriter::made_of(std::string_view key, const std::vector<Ingredient>& value) {
    if (value.empty()) return;
    Node list{Kind::list};
    for (const Ingredient& ingredient : value) {
        ObjectWriter inner;
        visit_keys(inner, ingredient);
        std::vector<Node>& members = inner.object_.items;
        const bool plain = members.size() == 1 && members.front().key == "material";
        list.items.push_back(plain ? std::move(members.front()) : std::move(inner.object_));
        list.items.back().key.clear();
    }
    add(key, std::move(list));
}

void ObjectWriter::hook(std::string_view key, const std::optional<Hook>& value,
                        const std::string& written) {
    if (!value) return;
    if (const auto said = read_measured(written); said && *said == *value) {
        add(key, as_read(written));
    } else {
        object(key, *value);
    }
}

void ObjectWriter::hook_size(std::string_view key, const std::optional<HookSize>& value) {
    if (value) add(key, Kind::text, write_hook_size(*value));
}

void ObjectWriter::length(std::string_view key, const Estimate<Length>& value) {
    if (auto node = estimate_node(value, length_text)) add(key, std::move(*node));
}

void ObjectWriter::angle(std::string_view key, const Estimate<Angle>& value) {
    if (auto node = estimate_node(value, angle_text)) add(key, std::move(*node));
}

void ObjectWriter::angle(std::string_view key, const Angle& value) {
    if (value.si != 0.0) add(key, Kind::text, angle_text(value)); // exact: 0 is the usual one
}

void ObjectWriter::rest(const std::vector<UnknownKey>& unknown) {
    for (const UnknownKey& key : unknown) add(key.key, as_read(key.json));
}

} // namespace wrapwright::detail
