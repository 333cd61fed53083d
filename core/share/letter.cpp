#include "core/share/letter.h"

#include "core/recipe/text.h"
#include "core/share/pack.h"
#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr std::size_t columns = 64;
constexpr std::string_view mark = "[wrapwrightrecipe"; ///< without its blanks

void add_line(std::string& out, std::string_view label, std::string_view words) {
    if (words.empty()) return;
    if (!label.empty()) out.append(label).append(": ");
    out.append(words).append("\n");
}

std::string amount_words(const Amount& amount) {
    std::string words = amount.text.empty() ? amount.is : amount.text;
    for (const SizedText& row : amount.by_size) {
        words.append(words.empty() ? "" : "; ").append("#").append(row.sizes).append(": ");
        words.append(row.text);
    }
    return words;
}

std::string part_words(const Recipe& recipe, const Part& part) {
    std::string words = part.text;
    const auto add = [&](std::string_view more) {
        if (more.empty() || words.find(more) != std::string::npos) return;
        if (!words.empty()) words += "; ";
        words += more;
    };
    for (const Ingredient& i : part.made_of) {
        for (const RecipeMaterial& m : recipe.materials) {
            if (m.id != i.material) continue;
            add(m.text);
            add(amount_words(m.size));
            if (!m.instead.empty()) words.append(" (or ").append(m.instead).append(")");
        }
    }
    for (const Amount* a : {&part.turns, &part.count, &part.length}) add(amount_words(*a));
    add(part.condition);
    if (part.optional) words += words.empty() ? "optional" : " (optional)";
    return words;
}

/// The text without quote marks before its lines, blanks and line ends.
///
/// The marks of the exact lines and their letters hold none, so that what mail does to blanks is gone.
std::string bare(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    bool line_begins = true;
    for (const char c : text) {
        if (c == '\n' || c == '\r') {
            line_begins = true;
        } else if (c == ' ' || c == '\t') {
            continue;
        } else if (line_begins && (c == '>' || c == '|')) {
            continue;
        } else {
            line_begins = false;
            out += c;
        }
    }
    return out;
}

} // namespace

std::string recipe_words(const Recipe& r) {
    std::string out = r.name.empty() ? r.id : r.name;
    out += "\n";
    const Provenance& p = r.provenance;
    add_line(out, "Class", r.fly_class);
    add_line(out, "Sizes", r.sizes);
    add_line(out, "Author", p.author);
    add_line(out, "Date", p.date);
    add_line(out, "Source", p.source);
    add_line(out, "Credit", p.credit);
    add_line(out, "Permission", p.permission);
    add_line(out, "Version of", p.version_of);
    out += "\n";
    for (const Base& b : r.bases) {
        std::string label = b.kind.empty() ? "hook" : b.kind;
        label.front() = static_cast<char>(
            label.front() >= 'a' && label.front() <= 'z' ? label.front() - 32 : label.front());
        add_line(out, label, b.text);
    }
    for (const Part& part : r.parts) {
        std::string label = part.role.empty() ? part.id : part.role;
        if (!label.empty() && label.front() >= 'a' && label.front() <= 'z') {
            label.front() = static_cast<char>(label.front() - 32);
        }
        add_line(out, label, part_words(r, part));
    }
    int number = 0;
    for (const Step& s : r.steps) {
        if (number == 0) out += "\nSteps:\n";
        out.append(std::to_string(++number)).append(". ").append(s.text).append("\n");
        if (!s.tip.empty()) out.append("   (").append(s.tip).append(")\n");
    }
    if (!r.verbatim.empty()) out.append("\n").append(r.verbatim).append("\n");
    add_line(out, "Fishing", r.fishing);
    add_line(out, "Imitates", r.imitates);
    add_line(out, "History", r.history);
    add_line(out, "Notes", r.notes);
    // A recipe's own words must not look like the exact lines.
    for (std::size_t at = 0; (at = out.find("[wrapwright", at)) != std::string::npos;)
        out[at] = '(';
    return out;
}

Result<std::string> write_letter(const Recipe& recipe) {
    const std::string exact = write_recipe(recipe);
    if (exact.size() > most_packed_text) {
        return Error{ErrorCode::too_large, "a recipe over 4 MiB is no letter", "send the file", {}};
    }
    std::string out = recipe_words(recipe);
    out += "\nThe lines below hold the same recipe exactly. Copy all of it into Wrapwright.\n";
    out.append("[wrapwright recipe ").append(std::to_string(letter_version)).append(":\n");
    const std::string letters = base64(pack(exact));
    for (std::size_t at = 0; at < letters.size(); at += columns) {
        out.append(letters, at, columns).append("\n");
    }
    return out + "]\n";
}

bool is_letter(std::string_view text) { return bare(text).find(mark) != std::string::npos; }

Result<std::string> read_letter(std::string_view text) {
    // 4 MiB of what cannot be packed, quoted and broken, is still far below.
    if (text.size() > (std::size_t{16} << 20U)) {
        return Error{ErrorCode::too_large, "a letter over 16 MiB", "cut out the exact lines", {}};
    }
    const std::string all = bare(text);
    const std::size_t found = all.rfind(mark);
    if (found == std::string::npos) {
        return Error{ErrorCode::not_found,
                     "no exact lines in this text",
                     "read it as loose text; or ask for all lines from '[wrapwright recipe' to ']'",
                     {}};
    }
    std::string_view rest = std::string_view(all).substr(found + mark.size());
    const std::size_t end = rest.find(']');
    if (end == std::string_view::npos) {
        return Error{ErrorCode::malformed,
                     "the exact lines have no end",
                     "copy them again, up to and with the ']'",
                     {}};
    }
    rest = rest.substr(0, end);
    const std::size_t colon = rest.find(':');
    if (colon == std::string_view::npos || colon == 0 || colon > 6 ||
        !std::all_of(rest.begin(), rest.begin() + static_cast<std::ptrdiff_t>(colon),
                     detail::is_digit)) {
        return Error{
            ErrorCode::malformed, "the exact lines have no version", "copy them again", {}};
    }
    if (rest.substr(0, colon) != std::to_string(letter_version)) {
        return Error{ErrorCode::unknown_version,
                     "the letter was written by a newer program",
                     "take the newer program, or read its words as loose text",
                     {}};
    }
    const Result<std::string> packed = from_base64(rest.substr(colon + 1));
    if (!packed.ok()) return packed.error();
    return unpack(packed.value());
}

} // namespace wrapwright
