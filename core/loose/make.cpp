// From accepted pieces to a recipe. Only texts are set here; the recipe's own reader gives them their
// numbers, so that the result is what a file of it would give.
#include "core/loose/loose.h"
#include "core/loose/scan.h"
#include "core/recipe/text.h"
#include "core/recipe/text_words.h"
#include "core/units/scan.h"

#include <algorithm>
#include <unordered_map>

namespace wrapwright {

namespace {

constexpr std::size_t most_text = std::size_t{2} << 20;
constexpr std::size_t most_parts = 1'000; ///< and steps: what is beyond stays in the text
constexpr std::size_t most_bases = 4;     ///< that link() takes

/// What a recipe is made from, and where it stands.
struct Making {
    std::string_view text;
    const LooseText& loose;
    const std::vector<bool>& accepted;
    int fly;
    Recipe recipe{};
    std::string base{}; ///< id of the base that parts go on
    std::unordered_map<std::string, int> base_ids{}, part_ids{}, material_ids{}; ///< given so far
    std::unordered_map<std::string, std::size_t> materials{};                    ///< by their words
    std::unordered_map<std::string, std::string> part_of_role{};

    [[nodiscard]] bool counts(int at) const {
        for (int i = at; i >= 0; i = loose.pieces[static_cast<std::size_t>(i)].in) {
            if (!accepted[static_cast<std::size_t>(i)]) return false;
        }
        return loose.pieces[static_cast<std::size_t>(at)].fly == fly;
    }
    [[nodiscard]] std::string words(const Piece& piece) const {
        return std::string(piece.value.of(text));
    }
    /// The accepted pieces that belong to one.
    [[nodiscard]] std::vector<int> inside(int of) const {
        std::vector<int> found;
        for (std::size_t i = static_cast<std::size_t>(of) + 1; i < loose.pieces.size(); ++i) {
            if (loose.pieces[i].in < of) break;
            if (loose.pieces[i].in == of && accepted[i]) found.push_back(static_cast<int>(i));
        }
        return found;
    }
    [[nodiscard]] const Piece& at(int i) const { return loose.pieces[static_cast<std::size_t>(i)]; }
};

/// A short id of plain letters from somebody's words.
std::string id_of(std::string_view words, std::string_view otherwise) {
    constexpr std::size_t longest = 32;
    std::string id;
    for (const char c : words) {
        const char l = detail::lower(c);
        if (detail::is_letter(l) || detail::is_digit(l)) {
            id += l;
        } else if (!id.empty() && id.back() != '-' && static_cast<unsigned char>(c) < 0x80 &&
                   c != '\'') {
            id += '-';
        }
        if (id.size() >= longest) break;
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    if (id.empty()) id = otherwise;
    return id;
}

/// The id, with a number after it where it was given before.
std::string unlike(std::unordered_map<std::string, int>& given, std::string id) {
    for (;;) {
        const int n = ++given[id];
        if (n == 1) return id;
        id.append("-").append(std::to_string(n));
    }
}

void append_line(std::string& to, const std::string& more) {
    if (!to.empty()) to += '\n';
    to += more;
}

void add_list(std::vector<std::string>& to, std::string_view words) {
    while (!words.empty()) {
        const std::size_t comma = std::min(words.find_first_of(",;"), words.size());
        const std::string_view one = detail::trimmed(words.substr(0, comma));
        if (!one.empty()) to.emplace_back(one);
        words.remove_prefix(std::min(comma + 1, words.size()));
    }
}

void add_field(Making& m, const Piece& piece) {
    Recipe& r = m.recipe;
    const std::string words = m.words(piece);
    Provenance& p = r.provenance;
    const std::pair<std::string_view, std::string*> places[] = {
        {"class", &r.fly_class}, {"author", &p.author},         {"date", &p.date},
        {"source", &p.source},   {"permission", &p.permission}, {"credit", &p.credit},
        {"fishing", &r.fishing}, {"imitates", &r.imitates},     {"history", &r.history},
        {"notes", &r.notes},
    };
    for (const auto& [word, place] : places) {
        if (word == piece.word) return append_line(*place, words);
    }
    if (piece.word == "aliases") return add_list(r.aliases, words);
    if (piece.word == "tags") return add_list(r.tags, words);
    if (piece.word == "sizes") return;
    append_line(r.notes, std::string(piece.span.of(m.text))); // tools, difficulty
}

void add_sizes(Making& m, int of) {
    for (const int i : m.inside(of)) {
        if (m.at(i).kind != PieceKind::sizes) continue;
        const Result<WrittenHookSizes> sizes = parse_hook_sizes(m.at(i).value.of(m.text));
        if (!sizes.ok() || m.recipe.sizes.size() > 400) continue;
        if (!m.recipe.sizes.empty()) m.recipe.sizes += ", ";
        m.recipe.sizes += m.words(m.at(i));
    }
}

std::optional<HookFamily> family_of(std::string_view words) {
    const std::string low = ' ' + phrase_of(words) + ' ';
    const std::pair<std::string_view, HookFamily> rows[] = {
        {" jig ", HookFamily::jig},
        {" streamer ", HookFamily::streamer},
        {" long shank ", HookFamily::long_shank},
        {" curved ", HookFamily::curved},
        {" scud ", HookFamily::curved},
        {" grub ", HookFamily::curved},
        {" dry ", HookFamily::dry},
        {" wet ", HookFamily::wet},
    };
    for (const auto& [word, family] : rows) {
        if (low.find(word) != std::string::npos) return family;
    }
    return std::nullopt;
}

void add_base(Making& m, int at) {
    if (m.recipe.bases.size() >= most_bases) return;
    const Piece& piece = m.at(at);
    Base base;
    base.kind = piece.word;
    if (base.kind == "rear hook" || base.kind == "front hook") base.kind = "hook";
    base.id = unlike(m.base_ids, id_of(piece.word, "base"));
    base.text = m.words(piece);
    base.family = family_of(base.text);
    base.dressed = base.kind != "trailing hook";
    m.base = base.id;
    m.recipe.bases.push_back(std::move(base));
    add_sizes(m, at);
}

/// Puts an amount where its key can hold it; a place that is taken stays as it is.
void put_amount(Making& m, const Piece& piece, Part* part, RecipeMaterial* material) {
    const Reading& r = piece.reading;
    const std::string words = m.words(piece);
    const auto put = [&](Amount& amount, std::string is = {}) {
        if (amount.given()) return;
        amount.text = words;
        amount.is = std::move(is);
    };
    if (material != nullptr && part == nullptr) {
        const bool label = r.kind == AmountKind::word;
        if (r.unit == Unit::linear_density) return put(label ? material->size : material->linear);
        if (r.bare) return put(material->size, words + " in"); // ".015" of a wire is in inches
        if (r.unit == Unit::length) return put(material->size);
        return;
    }
    if (part == nullptr) return;
    if (r.kind == AmountKind::word) {
        const std::string low = phrase_of(words);
        const bool length = low == "long" || low == "short";
        return put(length ? part->length : part->count);
    }
    switch (r.unit) {
    case Unit::turns: return put(part->turns);
    case Unit::count:
    case Unit::pinch: return put(part->count);
    case Unit::length: return put(part->length);
    default: return;
    }
}

/// The material of those words, made where no part had it before; its id.
std::string material_of(Making& m, int at, const std::string& instead, const Piece& part) {
    const Piece& piece = m.at(at);
    const std::string words = m.words(piece);
    const auto [place, is_new] = m.materials.emplace(phrase_of(words), m.recipe.materials.size());
    if (is_new) {
        RecipeMaterial material;
        material.id =
            unlike(m.material_ids, id_of(words, part.word.empty() ? "material" : part.word));
        material.text = words;
        if (const auto kind = detail::find_word(piece.word, detail::words_of<MaterialKind>())) {
            material.kind = static_cast<MaterialKind>(*kind);
        }
        m.recipe.materials.push_back(std::move(material));
    }
    RecipeMaterial* found = &m.recipe.materials[place->second];
    if (found->instead.empty()) found->instead = instead;
    for (const int i : m.inside(at)) {
        const Piece& inner = m.at(i);
        if (inner.kind == PieceKind::colour && found->colour.empty()) {
            found->colour = m.words(inner);
        }
        if (inner.kind == PieceKind::amount) put_amount(m, inner, nullptr, found);
    }
    return found->id;
}

void add_part(Making& m, int at) {
    const Piece& piece = m.at(at);
    if (piece.none || m.recipe.parts.size() >= most_parts) return;
    const std::vector<int> inner = m.inside(at);
    Part part;
    part.role = piece.word;
    part.text = m.words(piece);
    part.optional = piece.optional;
    if (m.recipe.bases.size() > 1) part.base = m.base;
    std::string instead;
    for (const int i : inner) {
        const Piece& p = m.at(i);
        if (p.kind == PieceKind::material && p.choice > 0) {
            if (!instead.empty()) instead += " or ";
            instead += m.words(p);
        }
        if (p.kind == PieceKind::condition && !piece.optional) {
            if (!part.condition.empty()) part.condition += "; ";
            part.condition += m.words(p);
        }
        if (p.kind == PieceKind::amount) put_amount(m, p, &part, nullptr);
    }
    for (const int i : inner) {
        if (m.at(i).kind != PieceKind::material || m.at(i).choice > 0) continue;
        Ingredient ingredient;
        ingredient.material = material_of(m, i, instead, piece);
        const bool twice =
            std::any_of(part.made_of.begin(), part.made_of.end(), [&](const Ingredient& other) {
                return other.material == ingredient.material;
            });
        if (!twice) part.made_of.push_back(std::move(ingredient));
        instead.clear();
    }
    for (std::size_t i = 0; i < std::max<std::size_t>(1, piece.roles.size()); ++i) {
        Part one = part;
        if (i < piece.roles.size()) one.role = piece.roles[i];
        one.id = unlike(m.part_ids, id_of(one.role, "part"));
        m.part_of_role.emplace(one.role, one.id);
        m.recipe.parts.push_back(std::move(one));
    }
}

void add_step(Making& m, int at) {
    if (m.recipe.steps.size() >= most_parts) return;
    Step step;
    step.text = m.words(m.at(at));
    for (const int i : m.inside(at)) {
        const Piece& piece = m.at(i);
        const std::optional<Op> operation = op(piece.word);
        if (piece.kind != PieceKind::action || !operation) continue;
        Action action;
        action.op = *operation;
        if (!piece.roles.empty()) {
            const auto part = m.part_of_role.find(piece.roles.front());
            if (part != m.part_of_role.end()) action.part = part->second;
        }
        for (const int k : m.inside(i)) {
            const Piece& amount = m.at(k);
            if (amount.reading.unit == Unit::turns) action.turns.text = m.words(amount);
        }
        step.actions.push_back(std::move(action));
    }
    m.recipe.steps.push_back(std::move(step));
}

/// Takes back amounts that the recipe cannot hold as numbers: of a part that it has not, or in a ring.
/// Their words stay in the text of their part.
void settle_amounts(Recipe& recipe) {
    std::vector<std::string> ids;
    ids.reserve(recipe.parts.size());
    for (const Part& part : recipe.parts) ids.push_back(part.id);
    std::unordered_map<std::string, bool> leans; // parts with an amount relative to another part
    const auto each = [&](const auto& work) {
        for (Part& part : recipe.parts) {
            for (Amount* amount : {&part.turns, &part.count, &part.length}) {
                if (amount->given()) work(part, *amount, read_amount(amount->text, ids));
            }
        }
    };
    each([&](Part& part, Amount& amount, const Result<Reading>& reading) {
        const Unit wanted = &amount == &part.turns    ? Unit::turns
                            : &amount == &part.length ? Unit::length
                                                      : Unit::count;
        const bool fits =
            reading.ok() &&
            (reading.value().kind == AmountKind::word || reading.value().unit == wanted ||
             (wanted == Unit::count && reading.value().unit == Unit::pinch));
        if (!fits) amount = {};
        if (fits && reading.value().basis == Basis::part) leans[part.id] = true;
    });
    each([&](Part&, Amount& amount, const Result<Reading>& reading) {
        if (reading.ok() && leans.count(reading.value().part) > 0) amount = {};
    });
    for (Step& step : recipe.steps) {
        for (Action& action : step.actions) {
            const Result<Reading> turns = read_amount(action.turns.text, ids);
            const bool fits = turns.ok() && turns.value().unit == Unit::turns &&
                              turns.value().basis == Basis::none;
            if (!fits) action.turns = {};
        }
    }
}

} // namespace

Result<Recipe> make_recipe(std::string_view text, const LooseText& loose,
                           const std::vector<bool>& accepted, int fly) {
    WW_ASSERT(accepted.size() == loose.pieces.size());
    if (text.size() > most_text) {
        return Error{ErrorCode::too_large,
                     "a text over 2 MiB cannot be one recipe",
                     "cut out the part that is the recipe; the text itself stays where it is",
                     {}};
    }
    if (!is_utf8(text)) {
        return Error{ErrorCode::malformed,
                     "a text that is not UTF-8",
                     "save it in the encoding UTF-8, or open it as Windows-1252",
                     {}};
    }
    Making m{text, loose, accepted, fly};
    m.recipe.verbatim = text;
    std::vector<int> outer;
    for (std::size_t i = 0; i < loose.pieces.size(); ++i) {
        const int at = static_cast<int>(i);
        if (loose.pieces[i].in < 0 && m.counts(at)) outer.push_back(at);
    }
    for (const int at : outer) {
        const Piece& piece = m.at(at);
        switch (piece.kind) {
        case PieceKind::name:
            if (m.recipe.name.empty()) m.recipe.name = m.words(piece);
            add_sizes(m, at);
            break;
        case PieceKind::field:
            add_field(m, piece);
            add_sizes(m, at);
            break;
        case PieceKind::base: add_base(m, at); break;
        case PieceKind::part: add_part(m, at); break;
        default: break;
        }
    }
    for (const int at : outer) { // after the parts that their actions name
        if (m.at(at).kind == PieceKind::step) add_step(m, at);
    }
    settle_amounts(m.recipe);
    if (m.recipe.name.empty()) m.recipe.name = "Unnamed fly";
    m.recipe.id = id_of(m.recipe.name, "fly");
    return read_recipe(write_recipe(m.recipe));
}

} // namespace wrapwright
