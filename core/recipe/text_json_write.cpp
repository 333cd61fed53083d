#include "core/recipe/text_json.h"

#include <array>

namespace wrapwright::json {

namespace {

constexpr std::size_t most_columns = 100;

std::string quoted(std::string_view text) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string out = "\"";
    for (const char c : text) {
        switch (c) {
        case '"': out += "\\\""; break;
        case '\\': out += "\\\\"; break;
        case '\n': out += "\\n"; break;
        case '\t': out += "\\t"; break;
        case '\r': out += "\\r"; break;
        default:
            if (static_cast<unsigned char>(c) < 0x20) {
                out += "\\u00";
                out += digits[static_cast<std::size_t>(c) >> 4];
                out += digits[static_cast<std::size_t>(c) & 15];
            } else {
                out += c;
            }
        }
    }
    return out + '"';
}

/// The brackets of a list or an object.
std::string_view brackets(const Node& node) { return node.kind == Kind::list ? "[]" : "{}"; }

std::string label(const Node& node, const Node& member) {
    return node.kind == Kind::object ? quoted(member.key) + ": " : std::string();
}

void add_lines(const Node& node, std::size_t indent, std::size_t column, std::string& out) {
    const bool nested = node.kind == Kind::list || node.kind == Kind::object;
    const std::string flat = one_line(node);
    // One column is left for a comma. The outermost value always stands over several lines.
    if (!nested || node.items.empty() || (indent > 0 && column + flat.size() < most_columns)) {
        out += flat;
        return;
    }
    out += brackets(node)[0];
    for (const Node& item : node.items) {
        if (&item != &node.items.front()) out += ',';
        out += '\n';
        out.append(indent + 2, ' ');
        const std::string key = label(node, item);
        out += key;
        add_lines(item, indent + 2, indent + 2 + key.size(), out);
    }
    out += '\n';
    out.append(indent, ' ');
    out += brackets(node)[1];
}

} // namespace

std::string one_line(const Node& node) {
    switch (node.kind) {
    case Kind::null: return "null";
    case Kind::boolean:
    case Kind::number: return node.text;
    case Kind::text: return quoted(node.text);
    case Kind::list:
    case Kind::object: break;
    }
    std::string out(1, brackets(node)[0]);
    for (const Node& item : node.items) {
        if (&item != &node.items.front()) out += ", ";
        out += label(node, item) + one_line(item);
    }
    return out + brackets(node)[1];
}

std::string lines(const Node& node) {
    std::string out;
    add_lines(node, 0, 0, out);
    return out + '\n';
}

} // namespace wrapwright::json
