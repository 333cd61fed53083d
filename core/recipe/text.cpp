#include "core/recipe/text.h"

#include "core/recipe/rule_set.h"
#include "core/recipe/text_reader.h"
#include "core/recipe/text_writer.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// The ids of the parts, before any amount that may lean on one is read.
std::vector<std::string> part_ids(const json::Node& recipe) {
    std::vector<std::string> ids;
    const json::Node* parts = recipe.find("parts");
    if (parts == nullptr || parts->kind != json::Kind::list) return ids;
    for (const json::Node& part : parts->items) {
        const json::Node* id = part.find("id");
        if (id != nullptr && id->kind == json::Kind::text) ids.push_back(id->text);
    }
    return ids;
}

Result<json::Node> read_file_object(std::string_view text) {
    Result<json::Node> root = json::read(text);
    if (root.ok() && root.value().kind != json::Kind::object) {
        return Error{ErrorCode::malformed,
                     "the text is no JSON object",
                     "begin with { and the key \"format\"",
                     {root.value().line, {}}};
    }
    return root;
}

/// The member or item that the first step of a path leads to, and the rest of the path.
const json::Node* take_step(const json::Node& node, std::string_view& path) {
    if (path.starts_with('.')) path.remove_prefix(1);
    if (path.starts_with('[')) {
        std::size_t i = 0;
        for (path.remove_prefix(1); !path.empty() && path.front() != ']'; path.remove_prefix(1)) {
            i = i * 10 + static_cast<std::size_t>(path.front() - '0');
        }
        path.remove_prefix(std::min<std::size_t>(path.size(), 1));
        return i < node.items.size() ? &node.items[i] : nullptr;
    }
    const std::string_view key = path.substr(0, path.find_first_of(".["));
    path.remove_prefix(key.size());
    return node.find(key);
}

constexpr std::string_view hook_format = "wrapwright hook";
constexpr int hook_version = 1;

} // namespace

Result<OpenedRecipe> open_recipe(std::string_view text) {
    const Result<json::Node> root = read_file_object(text);
    if (!root.ok()) return root.error();
    detail::Document document;
    document.parts = part_ids(root.value());
    document.any_version = true;
    OpenedRecipe opened;
    detail::ObjectReader reader(document, root.value());
    detail::visit_keys(reader, opened.recipe);
    if (document.version > recipe_version) {
        opened.newer = "written by a newer program (version " + std::to_string(document.version) +
                       "): it can be looked at and tied, but not changed here";
    }
    if (!document.error) return opened;
    Error error = *document.error;
    if (!opened.newer.empty()) {
        error.code = ErrorCode::unknown_version;
        error.message.insert(0, "the file is of a newer program, and this one does not know: ");
    }
    return error;
}

Result<Recipe> read_recipe(std::string_view text) {
    const Result<json::Node> root = read_file_object(text);
    if (!root.ok()) return root.error();
    detail::Document document;
    document.parts = part_ids(root.value());
    Recipe recipe;
    detail::ObjectReader reader(document, root.value());
    detail::visit_keys(reader, recipe);
    if (document.error) return *document.error;
    return recipe;
}

std::string write_recipe(const Recipe& recipe) {
    detail::ObjectWriter writer;
    detail::visit_keys(writer, recipe);
    return json::lines(writer.object_so_far());
}

int line_at(std::string_view text, std::string_view path) {
    const Result<json::Node> root = json::read(text);
    if (!root.ok()) return 0;
    int line = root.value().line;
    for (const json::Node* node = &root.value(); node != nullptr && !path.empty();) {
        node = take_step(*node, path);
        if (node != nullptr) line = node->line;
    }
    return line;
}

Result<Hook> read_hook(std::string_view text) {
    const Result<json::Node> root = read_file_object(text);
    if (!root.ok()) return root.error();
    detail::Document document;
    Hook hook;
    detail::ObjectReader reader(document, root.value());
    reader.header(hook_format, hook_version);
    detail::visit_keys(reader, hook);
    reader.refuse_rest("a hook");
    if (document.error) return *document.error;
    Result<Hook> complete = complete_hook(std::move(hook));
    if (complete.ok()) return complete;
    Error error = complete.error();
    error.place.line = line_at(text, error.place.key);
    return error;
}

Result<RuleSet> read_rules(std::string_view text) {
    const Result<json::Node> root = read_file_object(text);
    if (!root.ok()) return root.error();
    detail::Document document;
    RuleSet r;
    detail::ObjectReader reader(document, root.value());
    reader.header("wrapwright rules", 1);
    reader.text("id", r.id);
    reader.text("name", r.name);
    reader.text("date", r.date);
    reader.text("note", r.note);
    reader.whole("beads_most", r.beads_most, 0, 100);
    reader.plain_length("bead_most", r.bead_most);
    reader.flag("no_cones", r.no_cones, false);
    reader.whole("hooks_most", r.hooks_most, 0, 100);
    reader.plain_length("hook_most", r.hook_most);
    reader.flag("barbless", r.barbless, false);
    reader.flag("weight_covered", r.weight_covered, false);
    reader.flag("lead_free", r.lead_free, false);
    reader.plain_mass("mass_most", r.mass_most);
    reader.whole("flies_most", r.flies_most, 0, 100);
    reader.plain_length("spacing_least", r.spacing_least);
    reader.refuse_rest("a rule set");
    if (document.error) return *document.error;
    if (r.name.empty() || r.date.empty()) {
        return Error{
            ErrorCode::malformed,
            "a rule set without a name or a date",
            "write \"name\" and \"date\": rules change, and both are shown with every answer",
            {root.value().line, r.name.empty() ? "name" : "date"}};
    }
    return r;
}

std::string write_hook(const Hook& hook) {
    detail::ObjectWriter writer;
    writer.header(hook_format, hook_version);
    detail::visit_keys(writer, hook);
    return json::lines(writer.object_so_far());
}

} // namespace wrapwright
