#include "core/recipe/card_line.h"

#include "core/recipe/text_json.h"
#include "core/units/scan.h"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace wrapwright {

namespace {

using detail::trimmed;

std::string quoted(std::string_view text) {
    return json::one_line({json::Kind::text, 0, {}, std::string(text), {}});
}

struct KindWords {
    MaterialKind kind;
    std::initializer_list<std::string_view> words;
};

/// The first row that has a word of the line wins. Common practice, no source.
MaterialKind kind_of(std::string_view role, std::string_view line) {
    using K = MaterialKind;
    static const std::array<KindWords, 27> rows{{
        {K::bead, {"bead"}},
        {K::cone, {"cone"}},
        {K::dumbbell, {"dumbbell", "barbell"}},
        {K::coat, {"varnish", "resin", "epoxy", "lacquer", "glue", "cement"}},
        {K::ballast, {"ballast", "weighting", "lead wire", "lead-free wire"}},
        {K::oval, {"oval"}},
        {K::tinsel, {"tinsel"}},
        {K::wire, {"wire"}},
        {K::chenille, {"chenille"}},
        {K::floss, {"floss"}},
        {K::dubbing, {"dubbing", "fur", "mask", "underfur", "seal"}},
        {K::yarn, {"wool", "yarn"}},
        {K::marabou, {"marabou"}},
        {K::cdc, {"cdc", "preen"}},
        {K::herl, {"herl"}},
        {K::quill, {"quill"}},
        {K::biot, {"biot"}},
        {K::slip, {"slip"}},
        {K::foam, {"foam"}},
        {K::film, {"film", "scudback", "shellback", "foil"}},
        {K::legs, {"rubber", "silicone"}},
        {K::flash, {"flash", "sparkle"}},
        {K::hair, {"hair", "bucktail", "squirrel", "deer", "elk", "calf"}},
        {K::fibres, {"fibre", "fiber", "barb", "whisk", "pheasant tail"}},
        {K::soft_hackle, {"soft hackle", "hen", "partridge", "speckled"}},
        {K::hackle, {"hackle", "cock", "saddle", "cape"}},
        {K::thread, {"thread", "silk"}},
    }};
    const auto has = [](std::string_view text, std::string_view word) {
        const std::string low = detail::lowered(text);
        const std::size_t at = low.find(word);
        return at != std::string::npos && (at == 0 || low[at - 1] < 'a' || low[at - 1] > 'z');
    };
    for (const std::string_view text : {line, role}) {
        for (const KindWords& row : rows) {
            for (const std::string_view word : row.words) {
                if (has(text, word)) return row.kind;
            }
        }
    }
    return K::other;
}

std::vector<std::string> ids(const auto& list) {
    std::vector<std::string> all;
    all.reserve(list.size());
    for (const auto& entry : list) all.push_back(entry.id);
    return all;
}

/// The amount that one piece of a card's line says, as a member of the part.
std::string amount_member(const Recipe& recipe, std::string_view piece) {
    const Result<Reading> read = read_amount(piece, ids(recipe.parts));
    if (!read.ok()) return {};
    const Reading& r = read.value();
    if (r.kind == AmountKind::none || r.kind == AmountKind::word || r.bare) return {};
    const char* key = r.unit == Unit::turns    ? "turns"
                      : r.unit == Unit::length ? "length"
                      : r.unit == Unit::count  ? "count"
                                               : nullptr;
    if (key == nullptr || (r.basis == Basis::part && r.unit != Unit::length)) return {};
    return std::string(", \"").append(key).append("\": ").append(quoted(piece));
}

Edit added(std::string list, int index, std::string json) {
    return {EditKind::add, std::move(list), std::move(json), index, 0};
}

std::string material_json(const Recipe& recipe, std::string_view role, std::string_view words) {
    const std::string id = fresh_id(words, ids(recipe.materials));
    const MaterialKind kind = kind_of(role, words);
    std::string json = "{\"id\": " + quoted(id) + ", \"kind\": " + quoted(name(kind)) +
                       ", \"text\": " + quoted(words);
    if (kind == MaterialKind::coat) json += ", \"coat\": \"varnish\"";
    return json + "}";
}

std::vector<Edit> part_edits(const Recipe& recipe, int index, std::string_view line) {
    const std::size_t colon = line.find(':');
    const std::string_view role = trimmed(line.substr(0, colon));
    std::string_view rest =
        colon == std::string_view::npos ? std::string_view{} : trimmed(line.substr(colon + 1));
    std::string json =
        "{\"id\": " + quoted(fresh_id(role, ids(recipe.parts))) + ", \"role\": " + quoted(role);
    std::vector<Edit> edits;
    if (!rest.empty()) {
        json += ", \"text\": " + quoted(rest);
        const std::string_view stuff = trimmed(rest.substr(0, rest.find(',')));
        // The same words are the same material.
        const auto known =
            std::find_if(recipe.materials.begin(), recipe.materials.end(),
                         [&](const RecipeMaterial& m) { return m.text == stuff || m.id == stuff; });
        std::string id;
        if (known != recipe.materials.end()) {
            id = known->id;
        } else {
            id = fresh_id(stuff, ids(recipe.materials));
            edits.push_back(added("materials", static_cast<int>(recipe.materials.size()),
                                  material_json(recipe, role, stuff)));
        }
        json += ", \"made_of\": [" + quoted(id) + "]";
        std::string said;
        while (!rest.empty()) {
            const std::string_view piece = rest.substr(0, rest.find(','));
            rest.remove_prefix(std::min(rest.size(), piece.size() + 1));
            const std::string member = amount_member(recipe, trimmed(piece));
            const std::string key = member.substr(0, member.find(':'));
            if (!key.empty() && said.find(key) == std::string::npos) said += member;
        }
        json += said;
    }
    edits.push_back(added("parts", index, json + "}"));
    return edits;
}

Edit base_edit(const Recipe& recipe, int index, std::string_view line) {
    const std::string low = detail::lowered(line);
    std::string_view kind = "hook";
    for (const std::string_view word : {"trailing", "shank", "tube", "needle"}) {
        if (low.find(word) == std::string::npos) continue;
        kind = word == "trailing" ? "trailing hook" : word;
        break;
    }
    return added("bases", index,
                 "{\"id\": " + quoted(fresh_id(kind, ids(recipe.bases))) +
                     ", \"kind\": " + quoted(kind) + ", \"text\": " + quoted(line) + "}");
}

/// "braided wire, 12 mm": the material of a joint between the last two bases, and its length.
std::vector<Edit> joint_edits(const Recipe& recipe, int index, std::string_view line) {
    const std::string_view stuff = trimmed(line.substr(0, line.find(',')));
    std::string json = "{\"id\": " + quoted(fresh_id("joint", ids(recipe.joints)));
    if (recipe.bases.size() > 1) {
        json += ", \"from\": " + quoted(recipe.bases[recipe.bases.size() - 2].id);
        json += ", \"to\": " + quoted(recipe.bases.back().id);
    }
    const auto known =
        std::find_if(recipe.materials.begin(), recipe.materials.end(),
                     [&](const RecipeMaterial& m) { return m.text == stuff || m.id == stuff; });
    std::vector<Edit> edits;
    std::string id = known != recipe.materials.end() ? known->id : std::string();
    if (id.empty()) {
        id = fresh_id(stuff, ids(recipe.materials));
        edits.push_back(added("materials", static_cast<int>(recipe.materials.size()),
                              material_json(recipe, {}, stuff)));
    }
    json += ", \"material\": " + quoted(id);
    if (line.size() > stuff.size()) {
        const std::string member = amount_member(recipe, trimmed(line.substr(line.find(',') + 1)));
        if (member.starts_with(", \"length\"")) json += member;
    }
    edits.push_back(added("joints", index, json + "}"));
    return edits;
}

Edit target_edit(int index, std::string_view line) {
    const std::size_t colon = line.find(':');
    std::string json = "{\"part\": " + quoted(detail::lowered(trimmed(line.substr(0, colon))));
    if (colon != std::string_view::npos) {
        json += ", \"length\": " + quoted(trimmed(line.substr(colon + 1)));
    }
    return added("targets", index, json + "}");
}

/// A member of an action, where there are words for it.
std::string member(const char* key, std::string_view words) {
    if (words.empty()) return {};
    return std::string(", \"").append(key).append("\": ").append(quoted(words));
}

/// "from bend to 0.3 shank", "at bend" or "to bend"; nothing for other words.
std::string place_members(std::string_view piece) {
    if (piece.starts_with("from ")) {
        const std::size_t to = piece.find(" to ");
        std::string members = member("from", trimmed(piece.substr(5, to - 5)));
        if (to != std::string_view::npos) members += member("to", trimmed(piece.substr(to + 4)));
        return members;
    }
    if (piece.starts_with("to ") || piece.starts_with("at ")) {
        return member("to", trimmed(piece.substr(3)));
    }
    return {};
}

} // namespace

std::size_t operation_end(std::string_view line) {
    std::size_t end = line.size();
    for (const std::string_view mark : {" from ", " to ", " at ", ","}) {
        end = std::min(end, line.find(mark));
    }
    return end;
}

std::string said_of_operation(const Recipe& recipe, std::string_view said) {
    std::string members, note;
    while (!said.empty()) {
        const std::string_view piece = said.substr(0, said.find(','));
        said.remove_prefix(std::min(said.size(), piece.size() + 1));
        const std::string_view words = trimmed(piece);
        std::string more = place_members(words);
        if (more.empty()) more = amount_member(recipe, words);
        if (more.empty() && !words.empty()) note.append(note.empty() ? "" : ", ").append(words);
        // The first that is said of a thing stands.
        const std::string key = more.substr(0, more.find(':'));
        if (!key.empty() && members.find(key) == std::string::npos) members += more;
    }
    return members + member("note", note);
}

Result<std::vector<Edit>> line_edits(const Recipe& recipe, const std::string& list, int index,
                                     const std::string& line) {
    const std::string_view words = trimmed(line);
    if (words.empty()) {
        return Error{ErrorCode::malformed, "a line without words", "write what is to be added", {}};
    }
    if (list == "parts") return part_edits(recipe, index, words);
    if (list == "materials") {
        return std::vector<Edit>{added(list, index, material_json(recipe, {}, words))};
    }
    if (list == "bases") return std::vector<Edit>{base_edit(recipe, index, words)};
    if (list == "joints") return joint_edits(recipe, index, words);
    if (list == "targets") return std::vector<Edit>{target_edit(index, words)};
    return std::vector<Edit>{added(list, index, "{\"text\": " + quoted(words) + "}")};
}

} // namespace wrapwright
