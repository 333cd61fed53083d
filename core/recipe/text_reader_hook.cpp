// Hooks: the members of ObjectReader that read what somebody measured.

#include "core/recipe/text_reader.h"
#include "core/units/number_text.h"
#include "core/units/scan.h"
#include "core/units/size_text.h"

namespace wrapwright::detail {

namespace {

using json::Kind;
using json::Node;

} // namespace

std::optional<Hook> read_measured(std::string_view json) {
    const Result<Node> node = json::read(json);
    if (!node.ok() || node.value().kind != Kind::object) return std::nullopt;
    Document document;
    Hook hook;
    ObjectReader reader(document, node.value());
    visit_keys(reader, hook);
    if (document.error) return std::nullopt;
    Result<Hook> complete = complete_hook(std::move(hook));
    if (!complete.ok()) return std::nullopt;
    return std::move(complete).value();
}

void ObjectReader::length_text(const Node& node, Length& value) {
    if (!expect(node, Kind::text, "a length with its unit, such as 8.6 mm")) return;
    const Result<WrittenLength> length = parse_length(node.text);
    if (!length.ok()) return refuse(node, length.error());
    value = length.value().quantity;
}

void ObjectReader::angle_text(const Node& node, Angle& value) {
    if (!expect(node, Kind::text, "an angle, such as 60 deg")) return;
    const Result<LeadingNumber> number = leading_number(node.text);
    if (number.ok()) {
        const std::string unit =
            lowered(trimmed(std::string_view(node.text).substr(number.value().length)));
        if (unit == "deg" || unit == "degrees" || unit == "degree" || unit == "\u00b0") {
            value = degrees(number.value().value);
            return;
        }
    }
    refuse(node, {ErrorCode::malformed, quoted(node.text) + " is no angle",
                  "write degrees, such as 60 deg; down is negative"});
}

template <class Q, class ReadText>
void ObjectReader::estimate(std::string_view key, Estimate<Q>& value, ReadText read_text) {
    at(key, [&](const Node& node) {
        if (node.kind != Kind::object) {
            Q measured{};
            read_text(*this, node, measured);
            value = exactly(measured, Origin::measured);
            return;
        }
        ObjectReader inner(document_, node);
        value.origin = Origin::measured;
        if (node.find("value") == nullptr) {
            refuse(node, {ErrorCode::malformed, "the key \"value\" is missing",
                          "write it, with \"low\", \"high\" and \"origin\" where they are known"});
        }
        const auto member = [&](std::string_view name, Q& q, Q usual) {
            q = usual;
            inner.at(name, [&](const Node& n) { read_text(inner, n, q); });
        };
        member("value", value.value, {});
        member("low", value.low, value.value);
        member("high", value.high, value.value);
        inner.word("origin", value.origin);
        inner.refuse_rest("an estimate");
        if (value.low > value.value || value.value > value.high) {
            refuse(node, {ErrorCode::out_of_range, "low, value and high are not in this order",
                          "let low be the least and high the most that it may be"});
        }
    });
}

void ObjectReader::length(std::string_view key, Estimate<Length>& value) {
    estimate(key, value,
             [](ObjectReader& r, const Node& node, Length& q) { r.length_text(node, q); });
}

void ObjectReader::plain_length(std::string_view key, Length& value) {
    at(key, [&](const Node& node) { length_text(node, value); });
}

void ObjectReader::plain_mass(std::string_view key, Mass& value) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::text, "a mass with its unit, such as 180 mg")) return;
        const Result<WrittenMass> mass = parse_mass(node.text);
        if (!mass.ok()) return refuse(node, mass.error());
        value = mass.value().quantity;
    });
}

void ObjectReader::angle(std::string_view key, Estimate<Angle>& value) {
    estimate(key, value,
             [](ObjectReader& r, const Node& node, Angle& q) { r.angle_text(node, q); });
}

void ObjectReader::angle(std::string_view key, Angle& value) {
    at(key, [&](const Node& node) { angle_text(node, value); });
}

void ObjectReader::hook(std::string_view key, std::optional<Hook>& value, std::string& written) {
    at(key, [&](const Node& node) {
        Hook said;
        read_object(node, said);
        if (document_.error) return;
        Result<Hook> complete = complete_hook(std::move(said));
        if (!complete.ok()) return refuse(node, complete.error());
        value = std::move(complete).value();
        written = json::one_line(node);
    });
}

void ObjectReader::refuse_rest(std::string_view what) {
    for (std::size_t i = 0; i < met_.size(); ++i) {
        if (met_[i]) continue;
        const Node& node = object_.items[i];
        refuse(node, {ErrorCode::unknown_word,
                      std::string(what) + " has no key " + quoted(node.key),
                      "look for a slip in its name, or leave it out",
                      {0, node.key}});
    }
}

} // namespace wrapwright::detail
