#include "core/recipe/text_reader.h"

#include "core/recipe/amount_scan.h"
#include "core/units/number_text.h"
#include "core/units/scan.h"

namespace wrapwright::detail {

namespace {

using json::Kind;
using json::Node;

std::string_view kind_words(Kind kind) {
    switch (kind) {
    case Kind::null: return "null";
    case Kind::boolean: return "true or false";
    case Kind::number: return "a number";
    case Kind::text: return "a text";
    case Kind::list: return "a list";
    case Kind::object: break;
    }
    return "an object";
}

std::optional<int> small_int(const Node& node) {
    if (node.kind != Kind::number || node.text.size() > 9) return std::nullopt;
    if (node.text.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
    return std::stoi(node.text);
}

bool is_tint(std::string_view text) {
    return text.size() == 7 && text.front() == '#' &&
           text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string_view::npos;
}

} // namespace

ObjectReader::ObjectReader(Document& document, const Node& object)
    : document_(document), object_(object), met_(object.items.size(), false) {}

const Node* ObjectReader::take(std::string_view key) {
    const Node* node = object_.find(key);
    if (node != nullptr) met_[static_cast<std::size_t>(node - object_.items.data())] = true;
    return node;
}

void ObjectReader::refuse(const Node& node, Error error) {
    if (document_.error) return;
    std::string key = document_.path;
    if (!error.place.key.empty()) key += (key.empty() ? "" : ".") + error.place.key;
    error.place = {node.line, std::move(key)};
    document_.error = std::move(error);
}

bool ObjectReader::expect(const Node& node, Kind kind, std::string_view wanted) {
    if (node.kind == kind) return true;
    std::string remedy = "write " + std::string(wanted);
    if (node.kind == Kind::null) remedy += ", or leave the key out";
    if (node.kind == Kind::number && kind == Kind::text) remedy += ", in quotation marks";
    refuse(node, {ErrorCode::malformed,
                  std::string(kind_words(node.kind)) + " stands where " +
                      std::string(kind_words(kind)) + " belongs",
                  std::move(remedy)});
    return false;
}

void ObjectReader::header(std::string_view format, int newest) {
    const std::string line =
        "\"format\": " + json::one_line({Kind::text, 0, {}, std::string(format), {}});
    if (object_.find("format") == nullptr) {
        refuse(object_, {ErrorCode::malformed,
                         "the key \"format\" is missing",
                         "begin with " + line,
                         {0, "format"}});
    }
    at("format", [&](const Node& node) {
        if (!expect(node, Kind::text, "a text") || node.text == format) return;
        refuse(node, {ErrorCode::malformed,
                      "the format is " + quoted(node.text) + ", not " + quoted(format),
                      "take a file that begins with " + line});
    });
    const std::string version = "\"version\": " + std::to_string(newest);
    if (object_.find("version") == nullptr) {
        refuse(object_, {ErrorCode::malformed,
                         "the key \"version\" is missing",
                         "write " + version + " after the format",
                         {0, "version"}});
    }
    at("version", [&](const Node& node) {
        const auto number = small_int(node);
        if (!number || *number < 1) {
            refuse(node, {ErrorCode::malformed, "the version is no whole number from 1 on",
                          "write " + version});
            return;
        }
        document_.version = *number;
        if (*number > newest && !document_.any_version) {
            refuse(node, {ErrorCode::unknown_version,
                          "the file has version " + node.text +
                              ", written by a newer program; "
                              "this one reads up to " +
                              std::to_string(newest),
                          "take a newer program, or save the file there in version " +
                              std::to_string(newest)});
        }
    });
}

void ObjectReader::text(std::string_view key, std::string& value) {
    at(key, [&](const Node& node) {
        if (expect(node, Kind::text, "a text")) value = node.text;
    });
}

void ObjectReader::texts(std::string_view key, std::vector<std::string>& value) {
    each(key, [&](const Node& node) {
        if (expect(node, Kind::text, "a text")) value.push_back(node.text);
    });
}

void ObjectReader::flag(std::string_view key, bool& value, bool usual) {
    value = usual;
    at(key, [&](const Node& node) {
        if (expect(node, Kind::boolean, "true or false")) value = node.text == "true";
    });
}

void ObjectReader::whole(std::string_view key, int& value, int least, int most) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::number, "a whole number")) return;
        const auto number = small_int(node);
        if (!number || *number < least || *number > most) {
            refuse(node, {ErrorCode::out_of_range, node.text + " is no count that this can have",
                          "write a whole number from " + std::to_string(least) + " to " +
                              std::to_string(most)});
            return;
        }
        value = *number;
    });
}

void ObjectReader::share(std::string_view key, double& value, bool& said) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::number, "a number from 0 to 1")) return;
        const Result<double> number = read_number(node.text);
        if (!number.ok() || !(number.value() > 0.0 && number.value() <= 1.0)) {
            refuse(node, {ErrorCode::out_of_range, node.text + " is no share of a part",
                          "write a number above 0 and up to 1, such as 0.5 for a half"});
            return;
        }
        value = number.value();
        said = true;
    });
}

void ObjectReader::tint(std::string_view key, std::string& value) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::text, "a tint, such as \"#6b6b35\"")) return;
        if (!is_tint(node.text)) {
            refuse(node, {ErrorCode::malformed, quoted(node.text) + " is no tint",
                          "write # and six digits from 0 to f, such as #6b6b35; words go in "
                          "\"colour\""});
        }
        value = node.text;
    });
}

void ObjectReader::hole(std::string_view key, std::string& value) {
    BeadHole known{};
    if (object_.find(key) == nullptr) return;
    word(key, known);
    value = word_of(known);
}

void ObjectReader::sizes(std::string_view key, std::string& value, std::vector<HookSize>& list) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::text, "hook sizes, such as \"12-18\"")) return;
        value = node.text;
        if (!has_digit(value)) return; // "to suit the day" is legal
        Result<WrittenHookSizes> sizes = parse_hook_sizes(value);
        if (!sizes.ok()) return refuse(node, sizes.error());
        list = std::move(sizes).value().sizes;
    });
}

void ObjectReader::hook_size(std::string_view key, std::optional<HookSize>& value) {
    at(key, [&](const Node& node) {
        if (!expect(node, Kind::text, "a hook size, such as \"14\"")) return;
        const Result<WrittenHookSize> size = parse_hook_size(node.text);
        if (!size.ok()) return refuse(node, size.error());
        if (!size.value().extra.empty()) {
            return refuse(node, {ErrorCode::malformed,
                                 quoted(size.value().extra) + " is more than a hook size",
                                 "keep such words in \"label\" and measure the shank"});
        }
        value = size.value().size;
    });
}

void ObjectReader::made_of(std::string_view key, std::vector<Ingredient>& value) {
    each(key, [&](const Node& node) {
        Ingredient& ingredient = value.emplace_back();
        if (node.kind == Kind::text) {
            ingredient.material = node.text;
        } else {
            read_object(node, ingredient);
        }
    });
    at(key, [&](const Node& node) {
        double said = 0.0;
        std::size_t unsaid = 0;
        for (const Ingredient& i : value) {
            said += i.share_said ? i.share : 0.0;
            unsaid += i.share_said ? 0 : 1;
        }
        constexpr double slack = 0.01; // "0.33, 0.33, 0.33" is meant as a whole
        if (said > 1.0 + slack || (unsaid == 0 && !value.empty() && said < 1.0 - slack) ||
            (unsaid > 0 && said >= 1.0)) {
            refuse(node, {ErrorCode::out_of_range, "the shares add to " + write_rounded(said, 3),
                          "let them add to 1, or leave out those that share the rest equally"});
            return;
        }
        for (Ingredient& i : value) {
            if (!i.share_said) i.share = (1.0 - said) / static_cast<double>(unsaid);
        }
    });
}

void ObjectReader::rest(std::vector<UnknownKey>& unknown) {
    for (std::size_t i = 0; i < met_.size(); ++i) {
        if (met_[i]) continue;
        const Node& node = object_.items[i];
        unknown.push_back({node.key, json::one_line(node)});
    }
}

} // namespace wrapwright::detail
