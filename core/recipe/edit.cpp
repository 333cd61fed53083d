#include "core/recipe/edit.h"

#include "core/recipe/text_reader.h"
#include "core/recipe/text_writer.h"
#include "core/units/scan.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

using json::Kind;
using json::Node;

constexpr int most_unread = 200;

/// A path in two: up to the last key, and that key; "parts[2].turns" gives "parts[2]" and "turns".
struct Split {
    std::string_view parent, key;
};

Split split(std::string_view path) {
    const std::size_t dot = path.rfind('.');
    if (dot == std::string_view::npos) return {{}, path};
    return {path.substr(0, dot), path.substr(dot + 1)};
}

Node* member(Node& object, std::string_view key) {
    for (Node& item : object.items) {
        if (item.key == key) return &item;
    }
    return nullptr;
}

/// The value at a path; nothing where there is none.
Node* node_at(Node& root, std::string_view path) {
    Node* node = &root;
    while (!path.empty() && node != nullptr) {
        if (path.starts_with('.')) path.remove_prefix(1);
        if (path.starts_with('[')) {
            std::size_t i = 0;
            for (path.remove_prefix(1); !path.empty() && path.front() != ']';
                 path.remove_prefix(1)) {
                if (path.front() < '0' || path.front() > '9' || i > 1'000'000) return nullptr;
                i = i * 10 + static_cast<std::size_t>(path.front() - '0');
            }
            if (path.empty()) return nullptr;
            path.remove_prefix(1);
            node = i < node->items.size() ? &node->items[i] : nullptr;
            continue;
        }
        const std::string_view key = path.substr(0, path.find_first_of(".["));
        path.remove_prefix(key.size());
        node = member(*node, key);
    }
    return node;
}

void erase_member(Node& object, std::string_view key) {
    std::erase_if(object.items, [&](const Node& item) { return item.key == key; });
}

Node text_node(std::string_view key, std::string_view text) {
    return {Kind::text, 0, std::string(key), std::string(text), {}};
}

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> keys) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

/// The words of a list with commas between them.
Node list_node(std::string_view key, std::string_view text, const Node* before) {
    Node list{Kind::list, 0, std::string(key), {}, {}};
    while (!text.empty()) {
        const std::string_view one = text.substr(0, text.find(','));
        text.remove_prefix(std::min(text.size(), one.size() + 1));
        const std::string_view word = detail::trimmed(one);
        if (word.empty()) continue;
        // A share that was written stays with its material.
        const Node* kept = nullptr;
        if (before != nullptr) {
            for (const Node& item : before->items) {
                const Node* material = item.find("material");
                if (material != nullptr && material->text == word) kept = &item;
            }
        }
        list.items.push_back(kept != nullptr ? *kept : text_node({}, word));
    }
    return list;
}

/// The object at a path, made where there is none yet. Words alone, such as those of an amount that
/// gets a number beside them, become the text of one.
Node* object_at(Node& root, std::string_view path) {
    if (path.empty()) return &root;
    if (Node* there = node_at(root, path)) {
        if (there->kind == Kind::text) {
            Node words = text_node("text", there->text);
            there->kind = Kind::object;
            there->text.clear();
            there->items = {std::move(words)};
        }
        return there->kind == Kind::object ? there : nullptr;
    }
    const auto [parent, key] = split(path);
    Node* holder = key.find('[') == std::string_view::npos ? object_at(root, parent) : nullptr;
    if (holder == nullptr) return nullptr;
    holder->items.push_back({Kind::object, 0, std::string(key), {}, {}});
    return &holder->items.back();
}

/// Whether the words are a number as JSON writes it, without sign and exponent.
bool is_plain_number(std::string_view text) {
    const std::size_t whole = std::min(text.find_first_not_of("0123456789"), text.size());
    if (whole == 0 || (whole > 1 && text.front() == '0')) return false;
    if (whole == text.size()) return true;
    const std::string_view decimals = text.substr(whole + 1);
    return text[whole] == '.' && !decimals.empty() &&
           decimals.find_first_not_of("0123456789") == std::string_view::npos;
}

/// Whether a measured hook has no measure any more; its family came along with the first one.
bool measures_nothing(const Node& hook) {
    return hook.key == "measured" &&
           std::all_of(hook.items.begin(), hook.items.end(),
                       [](const Node& item) { return item.key == "family"; });
}

/// Puts words at a path, in the form that its key is written in.
bool put_words(Node& root, std::string_view path, std::string_view text) {
    const auto [parent, key] = split(path);
    Node* object = object_at(root, parent);
    if (object == nullptr || key.find('[') != std::string_view::npos) return false;
    Node* there = member(*object, key);
    if (there != nullptr && there->kind == Kind::object) {
        // An amount with a table by size: its words are one member of it.
        if (there->find("text") == nullptr && there->find("is") == nullptr &&
            there->find("by_size") == nullptr) {
            return false;
        }
        erase_member(*there, "text");
        if (!text.empty()) there->items.insert(there->items.begin(), text_node("text", text));
        return true;
    }
    if (is_one_of(key, {"aliases", "tags", "made_of"})) {
        Node list = list_node(key, text, there);
        erase_member(*object, key);
        if (!list.items.empty()) object->items.push_back(std::move(list));
        return true;
    }
    Node value = text_node(key, text);
    if (is_one_of(key, {"copies", "share", "within"}) && is_plain_number(text)) {
        value.kind = Kind::number;
    }
    if (is_one_of(key, {"flat", "restricted", "off_hook", "optional", "over_wet", "restore_point",
                        "dressed"})) {
        value.kind = Kind::boolean;
        value.text = text.empty() || text == "no" || text == "off" ? "false" : "true";
    }
    if (text.empty()) {
        erase_member(*object, key);
        // Nothing of a hook was measured any more.
        if (measures_nothing(*object))
            erase_member(*node_at(root, split(parent).parent), "measured");
    } else if (there != nullptr) {
        *there = std::move(value);
    } else {
        object->items.push_back(std::move(value));
    }
    return true;
}

/// Takes the words at a path out of the tree; nothing where there are none.
std::optional<std::string> take_words(Node& root, std::string_view path) {
    Node* node = node_at(root, path);
    if (node == nullptr || path.empty()) return std::nullopt;
    if (node->kind == Kind::object) {
        if (node->find("text") == nullptr) return std::nullopt;
        std::string text = node->find("text")->text;
        erase_member(*node, "text");
        return text;
    }
    if (node->kind != Kind::text && node->kind != Kind::number) return std::nullopt;
    const auto [parent, key] = split(path);
    if (key.find('[') != std::string_view::npos) return std::nullopt;
    std::string text = node->text;
    Node* object = parent.empty() ? &root : node_at(root, parent);
    erase_member(*object, key);
    if (measures_nothing(*object)) erase_member(*node_at(root, split(parent).parent), "measured");
    return text;
}

/// Sets aside every word of an object that reads nowhere as a whole, such as a hook of which only the
/// wire was measured yet; whether there were any.
bool set_aside(Node& root, std::string path, const std::string& why, std::vector<Unread>& unread) {
    Node* object = node_at(root, path);
    if (object == nullptr) { // the place is of a word that is not there
        path = std::string(split(path).parent);
        object = node_at(root, path);
    }
    const auto [parent, key] = split(path);
    if (object == nullptr || key != "measured" || object->items.empty()) return false;
    for (const Node& item : object->items) {
        if (item.kind != Kind::text) return false;
        unread.push_back({path + "." + item.key, item.text, why});
    }
    erase_member(*node_at(root, parent), key);
    return true;
}

Node tree_of(const Draft& draft) {
    detail::ObjectWriter writer;
    detail::visit_keys(writer, draft.recipe);
    Node root = writer.object_so_far();
    for (const Unread& words : draft.unread) (void)put_words(root, words.path, words.text);
    return root;
}

std::vector<std::string> ids_of(const Node& root, std::string_view list) {
    std::vector<std::string> ids;
    const Node* entries = root.find(list);
    if (entries == nullptr) return ids;
    for (const Node& entry : entries->items) {
        if (const Node* id = entry.find("id")) ids.push_back(id->text);
    }
    return ids;
}

/// Reads the tree, setting aside what does not read, until all the rest does.
Result<Draft> draft_of(Node root) {
    Draft draft;
    for (int i = 0; i <= most_unread; ++i) {
        detail::Document document{ids_of(root, "parts"), {}, {}};
        draft.recipe = {};
        detail::ObjectReader reader(document, root);
        detail::visit_keys(reader, draft.recipe);
        if (!document.error) return draft;
        const Error& error = *document.error;
        const std::string path = error.place.key;
        std::string why = error.message + "; " + error.remedy;
        std::optional<std::string> words = take_words(root, path);
        if (i == most_unread) return error;
        if (words) {
            draft.unread.push_back({path, *std::move(words), std::move(why)});
        } else if (!set_aside(root, path, why, draft.unread)) {
            return error;
        }
    }
    return draft;
}

/// What names an entry that goes: actions of a part, shares of a material, places of a base.
void forget(Node& root, std::string_view list, const std::string& id) {
    if (id.empty()) return;
    const auto names = [&](const Node& object, std::string_view key) {
        const Node* said = object.find(key);
        return said != nullptr && said->text == id;
    };
    const std::string_view key = list == "parts"       ? "part"
                                 : list == "materials" ? "material"
                                                       : "base";
    if (Node* steps = member(root, "steps")) {
        for (Node& step : steps->items) {
            Node* actions = member(step, "actions");
            if (actions == nullptr) continue;
            if (list == "parts") {
                std::erase_if(actions->items, [&](const Node& a) { return names(a, key); });
            }
            for (Node& action : actions->items) {
                if (names(action, key)) erase_member(action, key);
                if (list != "materials" && names(action, "other")) erase_member(action, "other");
            }
        }
    }
    Node* joints = member(root, "joints");
    if (joints != nullptr && list == "bases") {
        std::erase_if(joints->items,
                      [&](const Node& j) { return names(j, "from") || names(j, "to"); });
    }
    Node* parts = member(root, "parts");
    if (parts == nullptr || list == "parts") return;
    for (Node& part : parts->items) {
        if (names(part, key)) erase_member(part, key);
        Node* made_of = member(part, "made_of");
        if (made_of == nullptr || list != "materials") continue;
        std::erase_if(made_of->items,
                      [&](const Node& m) { return m.text == id || names(m, "material"); });
        if (made_of->items.empty()) erase_member(part, "made_of");
    }
}

Error leads_nowhere(const Edit& edit) {
    return {ErrorCode::not_found,
            "nothing can be changed at '" + edit.path + "'",
            "take a key of the recipe's format",
            {0, edit.path}};
}

std::optional<Error> change(Node& root, const Edit& edit) {
    if (edit.kind == EditKind::set) {
        if (!put_words(root, edit.path, edit.text)) return leads_nowhere(edit);
        return std::nullopt;
    }
    Node* list = node_at(root, edit.path);
    if (edit.kind == EditKind::add) {
        Result<Node> entry = json::read(edit.text);
        if (!entry.ok()) return entry.error();
        if (entry.value().kind != Kind::object) return leads_nowhere(edit);
        if (list == nullptr) {
            const auto [parent, key] = split(edit.path);
            Node* object = parent.empty() ? &root : node_at(root, parent);
            if (object == nullptr || object->kind != Kind::object) return leads_nowhere(edit);
            object->items.push_back({Kind::list, 0, std::string(key), {}, {}});
            list = &object->items.back();
        }
        if (list->kind != Kind::list) return leads_nowhere(edit);
        const int last = static_cast<int>(list->items.size());
        list->items.insert(list->items.begin() + std::clamp(edit.index, 0, last),
                           std::move(entry).value());
        return std::nullopt;
    }
    const auto within = [&](int i) {
        return i >= 0 && static_cast<std::size_t>(i) < list->items.size();
    };
    if (list == nullptr || list->kind != Kind::list || !within(edit.index)) {
        return leads_nowhere(edit);
    }
    const auto at = list->items.begin() + edit.index;
    if (edit.kind == EditKind::move) {
        if (!within(edit.to)) return leads_nowhere(edit);
        const auto to = list->items.begin() + edit.to;
        if (edit.index < edit.to) std::rotate(at, at + 1, to + 1);
        if (edit.to < edit.index) std::rotate(to, at, at + 1);
        return std::nullopt;
    }
    const Node* id = at->find("id");
    const std::string named = id == nullptr ? std::string() : id->text;
    list->items.erase(at);
    if (edit.path.find('.') == std::string::npos) forget(root, edit.path, named);
    return std::nullopt;
}

} // namespace

const Unread* Draft::unread_at(std::string_view path) const {
    const auto it =
        std::find_if(unread.begin(), unread.end(), [&](const Unread& u) { return u.path == path; });
    return it == unread.end() ? nullptr : &*it;
}

Result<Draft> edited(const Draft& draft, const std::vector<Edit>& edits) {
    Node root = tree_of(draft);
    for (const Edit& edit : edits) {
        if (std::optional<Error> error = change(root, edit)) return *error;
    }
    return draft_of(std::move(root));
}

std::string write_draft(const Draft& draft) { return json::lines(tree_of(draft)); }

Result<Draft> read_draft(std::string_view text) {
    Result<Node> root = json::read(text);
    if (!root.ok()) return root.error();
    if (root.value().kind != Kind::object) {
        return Error{ErrorCode::malformed, "the draft is no JSON object", "begin with {", {1, {}}};
    }
    return draft_of(std::move(root).value());
}

} // namespace wrapwright
