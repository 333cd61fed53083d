#include "core/share/fork.h"

namespace wrapwright {

namespace {

void add_line(std::string& to, std::string_view line) {
    if (!to.empty()) to += '\n';
    to += line;
}

} // namespace

Recipe fork_recipe(const Recipe& recipe, std::string_view id, std::string_view name,
                   std::string_view author) {
    Recipe mine = recipe;
    mine.id = id;
    mine.name = name;
    Provenance& p = mine.provenance;
    p.version_of = recipe.name.empty() ? recipe.id : recipe.name;
    // Whose it was stays said, whatever the new author's name is.
    if (!p.author.empty() && p.author != author) {
        std::string credit = "after " + p.author;
        if (p.credit.find(credit) == std::string::npos) add_line(p.credit, credit);
    }
    p.author = author;
    return mine;
}

} // namespace wrapwright
