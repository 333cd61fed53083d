// The open fly, and the swap's tags, as pages for a printer.

#include "platform/app.h"

#include "core/card/gauge.h"
#include "core/card/recipe_pages.h"
#include "core/check/photo_found.h"
#include "core/stock/kit.h"
#include "core/units/hook_size.h"

namespace wrapwright {

namespace {

constexpr std::string_view stems[] = {"card",   "handout", "handout-left", "tags",
                                      "labels", "list",    "gauge",        "swap-tags"};

std::string page_of(Paper which, const PageFacts& facts, const PageSize& sheet,
                    const PageSize& card, const std::vector<PartTarget>& targets) {
    switch (which) {
    case Paper::card: return recipe_card(card, facts);
    case Paper::tags: return toe_tags(sheet, facts);
    case Paper::labels: return box_labels(sheet, facts);
    case Paper::list: return lay_out_page(sheet, facts);
    case Paper::gauge: return gauge_page(sheet, facts.pattern, facts.resolved, facts.tied, targets);
    default: return handout(sheet, facts);
    }
}

} // namespace

Result<bool> App::write_recipe_page(Paper which, Model& next) {
    const BookSettings& s = next.settings.book;
    const PageSize& sheet = s.letter ? page_letter : page_a4;
    const std::string day = write_day(next.book.today);
    std::string name(stems[static_cast<std::size_t>(which)]);
    std::string page;
    if (which == Paper::swap_tags) {
        std::vector<std::string> people;
        for (const Sender& of : s.roster) people.push_back(of.name);
        const SwapCount count = swap_count(static_cast<int>(people.size()), next.book.for_host);
        page = blank_tags(sheet, people, count.each, day);
    } else {
        if (!next.fly) return true;
        const OpenFly& fly = *next.fly;
        if (which == Paper::gauge && fly.tied.moments.empty()) {
            return Error{ErrorCode::not_found,
                         "this recipe is in words alone: there is nothing to gauge",
                         "write its steps first",
                         {}};
        }
        const PageFacts facts{fly.pattern, fly.resolved, fly.tied,  which == Paper::handout_left,
                              s.maker,     day,          next.flies};
        page = page_of(which, facts, sheet, s.letter ? page_index : page_a6,
                       only(next.check.targets, standard_of(next)));
        name.insert(0, fly.pattern.recipe.id + '-' + write_hook_size(fly.size) + '-');
    }
    return hand_out(std::filesystem::path(next.data_folder) / "pages" / (name + ".html"), page,
                    next);
}

} // namespace wrapwright
