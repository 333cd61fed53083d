#include "gui/edit_work.h"

#include "gui/sizes_work.h"

#include <cstdlib>

namespace wrapwright {

RowPlace place_of(const std::string& row) {
    const std::size_t open = row.rfind('[');
    if (open == std::string::npos || !row.ends_with(']')) return {};
    return {row.substr(0, open), std::atoi(row.c_str() + open + 1)};
}

std::string row_of(const std::string& list, int index) {
    return std::string(list).append("[").append(std::to_string(index)).append("]");
}

StepPlace step_of(const std::string& row) {
    if (!row.starts_with("steps[")) return {};
    StepPlace place;
    place.step = static_cast<std::size_t>(std::atoi(row.c_str() + 6));
    const std::size_t action = row.find(".actions[");
    if (action != std::string::npos) {
        place.action = static_cast<std::size_t>(std::atoi(row.c_str() + action + 9));
    }
    return place;
}

int entries_of(const Recipe& recipe, const std::string& list) {
    if (list == "parts") return static_cast<int>(recipe.parts.size());
    if (list == "materials") return static_cast<int>(recipe.materials.size());
    if (list == "bases") return static_cast<int>(recipe.bases.size());
    if (list == "joints") return static_cast<int>(recipe.joints.size());
    if (list == "targets") return static_cast<int>(recipe.targets.size());
    if (list == "steps") return static_cast<int>(recipe.steps.size());
    const StepPlace at = step_of(list);
    if (!at.step || *at.step >= recipe.steps.size()) return 0;
    return static_cast<int>(recipe.steps[*at.step].actions.size());
}

int moment_of(const EditWork& work) {
    if (!work.fly || work.fly->tied.moments.empty()) return none;
    const auto& moments = work.fly->tied.moments;
    StepPlace at = step_of(work.row);
    if (work.picking) at = {work.pick_step, work.pick_action};
    if (!at.step) return static_cast<int>(moments.size()) - 1;
    int found = 0;
    for (std::size_t i = 0; i < moments.size(); ++i) {
        const Act& act = work.fly->resolved.acts[static_cast<std::size_t>(moments[i].act)];
        const auto step = static_cast<std::size_t>(act.step);
        const auto index = static_cast<std::size_t>(act.index);
        const bool passed =
            step > *at.step || (step == *at.step && at.action &&
                                (work.picking ? index >= *at.action : index > *at.action));
        if (passed) break;
        found = static_cast<int>(i);
    }
    return found;
}

EditWork begin_writing(std::string id, Draft draft, Recipe saved, HookSize size) {
    EditWork work;
    work.id = std::move(id);
    work.history.emplace(std::move(draft));
    work.saved = std::make_shared<const Recipe>(std::move(saved));
    work.size = size;
    run_draft(work);
    return work;
}

void run_draft(EditWork& work) {
    auto fly = open_fly(work.id, work.draft().recipe, &work.size);
    if (fly.ok()) {
        work.fly = std::move(fly).value();
        work.halted.clear();
    } else {
        const Error& error = fly.error();
        work.halted = error.message + "; " + error.remedy;
        if (!error.place.key.empty()) work.halted += " (" + error.place.key + ")";
    }
    if (work.view == EditView::sizes) work.sizes = sizes_of(work);
    work.next.clear();
    if (!work.picking) return;
    auto next = next_ops(work.draft().recipe, work.size, nullptr, work.pick_step, work.pick_action);
    if (next.ok()) work.next = std::move(next).value();
}

} // namespace wrapwright
