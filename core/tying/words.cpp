#include "core/tying/words.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

std::string counted(double count, std::string_view one, std::string_view many) {
    std::string text = write_rounded(count, 1);
    const bool single = text == "1";
    text += ' ';
    text += single ? one : many;
    return text;
}

std::string mm_words(Length length) { return write_rounded(in_millimetres(length), 2) + " mm"; }

std::string part_words(const Recipe& recipe, int part) {
    const Part& said = recipe.parts[static_cast<std::size_t>(part)];
    if (said.role.empty()) return said.id;
    const auto shared = std::count_if(recipe.parts.begin(), recipe.parts.end(),
                                      [&](const Part& p) { return p.role == said.role; });
    return shared > 1 ? said.role + " (" + said.id + ")" : said.role;
}

std::string material_words(const Recipe& recipe, int material) {
    const RecipeMaterial& said = recipe.materials[static_cast<std::size_t>(material)];
    return said.text.empty() ? said.id : said.text;
}

std::string base_words(const Recipe& recipe, int base) {
    if (recipe.bases.size() < 2) return recipe.bases.empty() ? "hook" : recipe.bases.front().kind;
    const Base& said = recipe.bases[static_cast<std::size_t>(base)];
    return said.id == said.kind
               ? said.id
               : said.id + " " + (said.kind.find("hook") != std::string::npos ? "hook" : said.kind);
}

std::string_view sense_words(Sense sense) {
    return sense == Sense::with_thread ? "over the top, away from you"
                                       : "over the top, towards you";
}

} // namespace wrapwright
