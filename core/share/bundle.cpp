#include "core/share/bundle.h"

#include "core/loose/loose.h"
#include "core/recipe/text_json.h"
#include "core/share/pack.h"
#include "core/units/scan.h"

#include <algorithm>
#include <unordered_set>

namespace wrapwright {

namespace {

using json::Kind;
using json::Node;

constexpr std::string_view format = "wrapwright bundle";
constexpr std::size_t longest_name = 100;

Error bad_path(std::string_view path, std::string_view fault, int line) {
    std::string message = "the path ";
    message.append(detail::quoted(path)).append(" ").append(fault);
    return {ErrorCode::out_of_range,
            std::move(message),
            "name files recipes/NAME.json and photos/RECIPE/SIZE/NAME, with plain names",
            {line, "path"}};
}

Error too_large() {
    return {ErrorCode::too_large,
            "a bundle over 96 MiB or 5,000 files",
            "make several, or leave photos out",
            {}};
}

Error malformed(const Node& node, std::string message) {
    return {
        ErrorCode::malformed, std::move(message), "take an undamaged copy", {node.line, node.key}};
}

/// Names that some systems take for devices.
bool is_device(std::string_view name) {
    const std::string low = detail::lowered(name.substr(0, name.find('.')));
    if (low == "con" || low == "nul" || low == "aux" || low == "prn") return true;
    return low.size() == 4 && (low.starts_with("com") || low.starts_with("lpt")) &&
           detail::is_digit(low[3]);
}

Node text_node(std::string_view key, std::string text) {
    return {Kind::text, 0, std::string(key), std::move(text), {}};
}

Result<BundleFile> read_file(const Node& node) {
    const Node* path = node.find("path");
    const Node* text = node.find("text");
    const Node* coded = node.find("base64");
    if (path == nullptr || path->kind != Kind::text)
        return malformed(node, "a file without a path");
    if (const std::string fault = path_fault(path->text); !fault.empty()) {
        return bad_path(path->text, fault, path->line);
    }
    if (text != nullptr && text->kind == Kind::text && coded == nullptr) {
        return BundleFile{path->text, text->text};
    }
    if (coded == nullptr || coded->kind != Kind::text || text != nullptr) {
        return malformed(*path, "a file needs either a text or base64");
    }
    Result<std::string> bytes = from_base64(coded->text);
    if (!bytes.ok()) return malformed(*coded, bytes.error().message);
    return BundleFile{path->text, std::move(bytes).value()};
}

} // namespace

std::string path_fault(std::string_view path) {
    const bool recipe = path.starts_with("recipes/") && path.ends_with(".json");
    if (!recipe && !path.starts_with("photos/")) return "is neither a recipe's nor a photo's";
    std::size_t parts = 0;
    for (std::size_t at = 0; at <= path.size(); ++parts) {
        const std::size_t end = std::min(path.find('/', at), path.size());
        const std::string_view name = path.substr(at, end - at);
        at = end + 1;
        if (name.empty() || name.size() > longest_name) return "has a part without a fit name";
        if (name.front() == '.' || name.back() == '.' || name.back() == ' ' ||
            name.front() == ' ') {
            return "leads out of its folder, or hides";
        }
        for (const char c : name) {
            const auto byte = static_cast<unsigned char>(c);
            if (byte < 0x20 || byte == 0x7f ||
                std::string_view("\\:*?\"<>|").find(c) != std::string_view::npos) {
                return "has a mark that no name may have";
            }
        }
        if (is_device(name)) return "is a device on some systems";
    }
    if (!is_utf8(path)) return "is no UTF-8";
    return recipe ? (parts == 2 ? "" : "is nested too deeply")
                  : (parts == 4 ? "" : "is not photos/RECIPE/SIZE/NAME");
}

Result<std::string> write_bundle(const Bundle& bundle) {
    Node root{Kind::object, 0, {}, {}, {}};
    root.items.push_back(text_node("format", std::string(format)));
    root.items.push_back({Kind::number, 0, "version", std::to_string(bundle_version), {}});
    if (!bundle.note.empty()) root.items.push_back(text_node("note", bundle.note));
    Node files{Kind::list, 0, "files", {}, {}};
    std::unordered_set<std::string> paths;
    std::size_t bytes = 0;
    for (const BundleFile& file : bundle.files) {
        if (const std::string fault = path_fault(file.path); !fault.empty()) {
            return bad_path(file.path, fault, 0);
        }
        if (!paths.insert(detail::lowered(file.path)).second)
            return bad_path(file.path, "is there twice", 0);
        const bool recipe = file.path.starts_with("recipes/");
        if (recipe && !is_utf8(file.bytes)) {
            return Error{ErrorCode::malformed,
                         detail::quoted(file.path) + " is no UTF-8",
                         "save the recipe in the encoding UTF-8",
                         {}};
        }
        Node one{Kind::object, 0, {}, {}, {}};
        one.items.push_back(text_node("path", file.path));
        one.items.push_back(recipe ? text_node("text", file.bytes)
                                   : text_node("base64", base64(file.bytes)));
        bytes += file.bytes.size() * 4 / 3;
        if (bytes > most_bundle_bytes || files.items.size() >= most_bundle_files)
            return too_large();
        files.items.push_back(std::move(one));
    }
    root.items.push_back(std::move(files));
    std::string text = json::lines(root);
    if (text.size() > most_bundle_bytes) return too_large();
    return text;
}

bool is_bundle(std::string_view text) {
    return text.substr(0, 200).find("\"wrapwright bundle\"") != std::string_view::npos;
}

Result<Bundle> read_bundle(std::string_view text) {
    const Result<Node> read = json::read(text, most_bundle_bytes);
    if (!read.ok()) return read.error();
    const Node& root = read.value();
    const Node* said = root.find("format");
    const Node* version = root.find("version");
    if (said == nullptr || said->text != format || version == nullptr) {
        return Error{
            ErrorCode::malformed,
            "no bundle: its first keys are format and version",
            "take a file that begins with {\"format\": \"wrapwright bundle\", \"version\": 1",
            {root.line, "format"}};
    }
    if (version->kind != Kind::number || version->text != std::to_string(bundle_version)) {
        return Error{ErrorCode::unknown_version,
                     "the bundle has version " + version->text +
                         ", written by a newer program; this one reads 1",
                     "take the newer program; nothing of it was taken in",
                     {version->line, "version"}};
    }
    Bundle bundle;
    if (const Node* note = root.find("note"); note != nullptr && note->kind == Kind::text) {
        bundle.note = note->text;
    }
    const Node* files = root.find("files");
    if (files == nullptr || files->kind != Kind::list)
        return malformed(root, "a bundle without files");
    if (files->items.size() > most_bundle_files) return too_large();
    std::unordered_set<std::string> paths;
    for (const Node& node : files->items) {
        Result<BundleFile> file = read_file(node);
        if (!file.ok()) return file.error();
        if (!paths.insert(detail::lowered(file.value().path)).second) {
            return bad_path(file.value().path, "is there twice", node.line);
        }
        bundle.files.push_back(std::move(file).value());
    }
    return bundle;
}

} // namespace wrapwright
