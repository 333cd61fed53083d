#include "gui/sizes_work.h"

#include "core/recipe/by_size.h"
#include "core/units/number_words.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

struct PartAmount {
    const char* key;
    const char* words;
    Amount Part::* amount;
    Number PartNumbers::* number;
};

constexpr std::array<PartAmount, 5> part_amounts{
    {{"length", "length", &Part::length, &PartNumbers::length},
     {"count", "how many", &Part::count, &PartNumbers::count},
     {"turns", "turns", &Part::turns, &PartNumbers::turns},
     {"pitch", "from turn to turn", &Part::pitch, &PartNumbers::pitch},
     {"diameter", "thick", &Part::diameter, &PartNumbers::diameter}}};

struct MaterialAmount {
    const char* key;
    const char* words;
    Amount RecipeMaterial::* amount;
};

constexpr std::array<MaterialAmount, 5> material_amounts{
    {{"size", "across", &RecipeMaterial::size},
     {"linear", "thread weight", &RecipeMaterial::linear},
     {"barb_length", "barbs", &RecipeMaterial::barb_length},
     {"fibre_length", "length of one", &RecipeMaterial::fibre_length},
     {"bore", "bore", &RecipeMaterial::bore}}};

SizeWay way_of(const Amount& amount) {
    if (!amount.by_size.empty()) return SizeWay::steps;
    if (amount.reading.kind == AmountKind::relative) return SizeWay::scales;
    return amount.reading.kind == AmountKind::word ? SizeWay::a_word : SizeWay::stays;
}

std::string number_words(const Number& n) {
    if (n.unit == Unit::length) return length_words(Length{n.value}, false);
    return turn_words(n.value);
}

/// What is written for a size.
std::string said_at(const Amount& amount, HookSize size) {
    const std::string& text = words_at(amount, size);
    return text.empty() ? "-" : text;
}

} // namespace

std::string_view words(SizeWay way) {
    switch (way) {
    case SizeWay::scales: return "scales";
    case SizeWay::steps: return "steps";
    case SizeWay::stays: return "stays";
    case SizeWay::a_word: return "a word";
    }
    return {};
}

const Amount* amount_at(const Recipe& recipe, const std::string& path) {
    const std::size_t dot = path.rfind('.');
    if (dot == std::string::npos) return nullptr;
    const RowPlace at = place_of(path.substr(0, dot));
    const std::string key = path.substr(dot + 1);
    const auto i = static_cast<std::size_t>(std::max(0, at.index));
    if (at.list == "parts" && i < recipe.parts.size()) {
        for (const PartAmount& a : part_amounts) {
            if (key == a.key) return &(recipe.parts[i].*a.amount);
        }
    }
    if (at.list == "materials" && i < recipe.materials.size()) {
        for (const MaterialAmount& a : material_amounts) {
            if (key == a.key) return &(recipe.materials[i].*a.amount);
        }
    }
    return nullptr;
}

std::shared_ptr<const SizesWork> sizes_of(const EditWork& work) {
    auto out = std::make_shared<SizesWork>();
    const Recipe& r = work.draft().recipe;
    std::vector<HookSize> sizes = r.size_list;
    std::sort(sizes.begin(), sizes.end());
    for (const HookSize size : sizes) {
        SizesWork::Column column;
        column.size = size;
        auto fly = open_fly(work.id, r, &size);
        if (fly.ok()) {
            column.fly = std::move(fly).value();
            for (const Finding& f : column.fly->tied.findings) {
                column.stops += f.level == Level::stops ? 1 : 0;
                column.likely += f.level == Level::likely ? 1 : 0;
            }
        } else {
            column.halted = fly.error().message;
        }
        out->columns.push_back(std::move(column));
    }
    for (std::size_t p = 0; p < r.parts.size(); ++p) {
        const Part& part = r.parts[p];
        for (const PartAmount& a : part_amounts) {
            const Amount& amount = part.*a.amount;
            if (!amount.given()) continue;
            SizesWork::Row row;
            row.path = row_of("parts", static_cast<int>(p)) + "." + a.key;
            row.label = (part.role.empty() ? part.id : part.role) + ", " + a.words;
            row.way = way_of(amount);
            for (const auto& column : out->columns) {
                if (!column.fly || p >= column.fly->resolved.parts.size()) {
                    row.cells.push_back(said_at(amount, column.size));
                    continue;
                }
                const PartNumbers& numbers = column.fly->resolved.parts[p];
                const Number& n = numbers.*a.number;
                row.cells.push_back(!numbers.present ? std::string()
                                    : n.given        ? number_words(n)
                                                     : said_at(amount, column.size));
            }
            out->rows.push_back(std::move(row));
        }
    }
    for (std::size_t m = 0; m < r.materials.size(); ++m) {
        for (const MaterialAmount& a : material_amounts) {
            const Amount& amount = r.materials[m].*a.amount;
            if (!amount.given()) continue;
            SizesWork::Row row;
            row.path = row_of("materials", static_cast<int>(m)) + "." + a.key;
            row.label = r.materials[m].id + ", " + a.words;
            row.way = way_of(amount);
            for (const auto& column : out->columns) {
                row.cells.push_back(said_at(amount, column.size));
            }
            out->rows.push_back(std::move(row));
        }
    }
    return out;
}

} // namespace wrapwright
