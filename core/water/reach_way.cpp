#include "core/water/reach.h"

#include <algorithm>
#include <array>

namespace wrapwright {

ReachStock stock_of(const std::vector<RecipeMaterial>& materials) {
    ReachStock stock;
    for (const RecipeMaterial& m : materials) {
        if (m.kind == MaterialKind::bead || m.kind == MaterialKind::cone) stock.beads.push_back(m);
        if (m.kind == MaterialKind::ballast) stock.strands.push_back(m);
    }
    return stock;
}

namespace {

/// The material as the stock has it, under the id that the recipe knows it by.
void put_in(RecipeMaterial& place, const RecipeMaterial& from) {
    const std::string id = place.id;
    const bool has_colour = !from.colour.empty() || !from.tint.empty();
    const std::string colour = has_colour ? from.colour : place.colour;
    const std::string tint = has_colour ? from.tint : place.tint;
    place = from;
    place.id = id;
    place.colour = colour;
    place.tint = tint;
}

/// The material of an action: its own, else the first of its part's.
int material_of(const Pattern& pattern, const Pattern::LinkedAction& linked) {
    if (linked.material != none || linked.part == none) return linked.material;
    const Pattern::LinkedPart& part = pattern.parts[static_cast<std::size_t>(linked.part)];
    return part.ingredients == 0
               ? none
               : pattern.ingredients[static_cast<std::size_t>(part.first_ingredient)].material;
}

int material_of_first(const Pattern& pattern, Op op, bool bead) {
    for (const Pattern::LinkedAction& linked : pattern.actions) {
        const int material = material_of(pattern, linked);
        if (linked.base != 0 || material == none) continue;
        const Action& action = pattern.recipe.steps[static_cast<std::size_t>(linked.step)]
                                   .actions[static_cast<std::size_t>(linked.index)];
        const MaterialKind kind = pattern.recipe.materials[static_cast<std::size_t>(material)].kind;
        const bool is_bead = kind == MaterialKind::bead || kind == MaterialKind::cone;
        if (action.op == op && is_bead == bead) return material;
    }
    return none;
}

Amount exact_turns(int n) {
    Amount a;
    a.text = std::to_string(n).append(" turns");
    const double v = n;
    a.reading = {AmountKind::exact, Unit::turns, Basis::none, v, v, v, {}};
    return a;
}

} // namespace

Pattern with_way(const Pattern& pattern, const ReachStock& stock, const ReachWay& way) {
    Pattern out = pattern;
    const int bead = material_of_first(out, Op::slide_on, true);
    const int ballast = material_of_first(out, Op::wind_ballast, false);
    if (bead != none && way.bead != none) {
        put_in(out.recipe.materials[static_cast<std::size_t>(bead)],
               stock.beads[static_cast<std::size_t>(way.bead)]);
    }
    if (ballast == none) return out;
    const auto action = [&](const Pattern::LinkedAction& linked) -> Action& {
        return out.recipe.steps[static_cast<std::size_t>(linked.step)]
            .actions[static_cast<std::size_t>(linked.index)];
    };
    if (way.turns > 0 && way.strand != none) {
        put_in(out.recipe.materials[static_cast<std::size_t>(ballast)],
               stock.strands[static_cast<std::size_t>(way.strand)]);
        for (const Pattern::LinkedAction& linked : out.actions) {
            Action& a = action(linked);
            if (linked.base != 0 || a.op != Op::wind_ballast) continue;
            a.turns = exact_turns(way.turns);
            a.to = {}; // so many touching turns, wherever they end
            break;
        }
    } else {
        std::erase_if(out.actions, [&](const Pattern::LinkedAction& linked) {
            const Op op = action(linked).op;
            return linked.base == 0 && (op == Op::wind_ballast || op == Op::lock_ballast);
        });
    }
    return out;
}

std::string_view rung_colour(std::size_t rung, std::size_t rungs) {
    constexpr std::array<std::string_view, 6> colours{"white", "yellow", "orange",
                                                      "red",   "brown",  "black"};
    if (rungs <= 1) return colours[0];
    const std::size_t last = colours.size() - 1;
    return colours[std::min(last, rungs <= colours.size() ? rung : rung * last / (rungs - 1))];
}

} // namespace wrapwright
