// What the store keeps of a fly in the water, the library's sink rates, and the rule sets.

#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/units/hook_size.h"
#include "platform/app.h"
#include "platform/files.h"

#include <algorithm>
#include <chrono>

namespace wrapwright {

Result<bool> App::keep_measure(const Effect& effect, Model& next) {
    const std::string& id = next.fly->id;
    const std::string size = write_hook_size(next.fly->size);
    Result<bool> done = true;
    if (effect.kind == EffectKind::keep_fall) {
        done = store_.add_fall(id, size, next.falls.back(), today());
    } else if (effect.kind == EffectKind::drop_fall) {
        const auto i = static_cast<std::size_t>(effect.number);
        if (i < fall_ids_.size()) done = store_.drop_fall(fall_ids_[i]);
    } else if (next.weighed.value.si > 0.0) {
        done = store_.add_weighing(id, size, next.weighed, today());
    } else {
        done = store_.drop_weighings(id, size);
    }
    return done.ok() ? recall_measures(next) : done;
}

Result<bool> App::recall_measures(Model& next) {
    fall_ids_.clear();
    if (!next.fly) return true;
    const Result<StoredMeasures> kept =
        store_.measures(next.fly->id, write_hook_size(next.fly->size));
    if (!kept.ok()) return kept.error();
    next.falls = kept.value().falls;
    next.weighed = kept.value().weighed;
    fall_ids_ = kept.value().fall_ids;
    if (next.screen == Screen::water) dip(next);
    return recall_readings(next);
}

void App::load_stock(const std::filesystem::path& assets) {
    // A person's own set stands in place of the catalogue.
    for (const auto& file : {std::filesystem::path(model_.data_folder) / "sets" / "own.json",
                             assets / "sets" / "catalogue.json"}) {
        const Result<std::string> text = read_file(file);
        if (!text.ok()) continue;
        const Result<Recipe> set = read_recipe(text.value());
        if (!set.ok()) {
            model_.trouble = file.string();
            model_.trouble.append(": ").append(set.error().message);
            model_.trouble.append("; ").append(set.error().remedy);
            continue;
        }
        model_.stock = stock_of(set.value().materials);
        return;
    }
}

void App::load_rules(const std::filesystem::path& assets) {
    // A set of the person's own with the id of one that came along stands in its place.
    for (const auto& folder :
         {assets / "rules", std::filesystem::path(model_.data_folder) / "rules"}) {
        for (const std::filesystem::path& file : recipe_files(folder)) {
            const Result<std::string> text = read_file(file);
            if (!text.ok()) continue;
            Result<RuleSet> rules = read_rules(text.value());
            if (!rules.ok()) {
                const Error& e = rules.error();
                model_.trouble = file.string();
                model_.trouble.append(":").append(std::to_string(e.place.line)).append(": ");
                model_.trouble.append(e.message).append("; ").append(e.remedy);
                continue;
            }
            if (rules.value().id.empty()) rules.value().id = file.stem().string();
            std::erase_if(model_.rule_sets,
                          [&](const RuleSet& r) { return r.id == rules.value().id; });
            model_.rule_sets.push_back(std::move(rules).value());
        }
    }
}

/// Reckons some of the library's flies, for as long as a frame has room; whether all are done.
void App::rank_some() {
    if (!to_rank_) return;
    if (rank_queue_.empty() && !ranking_) {
        const auto rows = store_.library("");
        if (!rows.ok()) {
            to_rank_ = false;
            return;
        }
        for (const StoredRow& row : rows.value()) rank_queue_.push_back({row.id, row.name});
        std::reverse(rank_queue_.begin(), rank_queue_.end());
        ranked_.clear();
        ranking_ = true;
    }
    const auto until = std::chrono::steady_clock::now() + std::chrono::milliseconds(6);
    while (!rank_queue_.empty() && std::chrono::steady_clock::now() < until) {
        const auto [id, name] = rank_queue_.back();
        rank_queue_.pop_back();
        const Result<std::string> text = store_.recipe_text(id);
        if (!text.ok()) continue;
        Result<Recipe> recipe = read_recipe(text.value());
        if (!recipe.ok()) continue;
        const auto fly = open_fly(id, std::move(recipe).value());
        if (!fly.ok() || fly.value()->tied.moments.empty()) continue;
        const OpenFly& f = *fly.value();
        const Water water = water_at(celsius(10.0)).value();
        const FlyBody body = fly_body(f.pattern, f.resolved, f.tied);
        const Force weight = weight_in_water(body.mass.value, body.volume.value, water);
        const WetShape shape = wet_shape(f.pattern, f.resolved, f.tied);
        ranked_.push_back(
            {id, name, f.size, terminal_speed(shape, weight, water), body.mass.value});
    }
    if (!rank_queue_.empty()) {
        wake();
        return;
    }
    to_rank_ = ranking_ = false;
    std::sort(ranked_.begin(), ranked_.end(),
              [](const Sinker& a, const Sinker& b) { return a.sink < b.sink; });
    model_.sinkers = ranked_;
    wake();
}

} // namespace wrapwright
