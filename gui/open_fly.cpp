#include "gui/open_fly.h"

#include "core/tying/tie.h"

#include <algorithm>
#include <utility>

namespace wrapwright {

Result<std::shared_ptr<const OpenFly>> open_fly(std::string id, Recipe recipe, const HookSize* size,
                                                const Hook* own) {
    auto fly = std::make_shared<OpenFly>();
    fly->id = std::move(id);
    Result<Pattern> pattern = link(std::move(recipe));
    if (!pattern.ok()) return pattern.error();
    fly->pattern = std::move(pattern).value();
    std::vector<HookSize> sizes = fly->pattern.recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    if (size != nullptr) {
        fly->size = *size;
    } else if (own != nullptr && own->size) {
        fly->size = *own->size;
    } else if (!sizes.empty()) {
        fly->size = sizes[sizes.size() / 2];
    }
    if (fly->pattern.actions.empty()) return std::shared_ptr<const OpenFly>(std::move(fly));
    if (own != nullptr) fly->own = *own;
    Result<Rig> rig = make_rig(fly->pattern, fly->size, own);
    if (!rig.ok()) return rig.error();
    fly->rig = std::move(rig).value();
    const Result<bool> resolved = resolve(fly->pattern, fly->rig, fly->resolved);
    if (!resolved.ok()) return resolved.error();
    tie(fly->pattern, fly->rig, fly->resolved, Limits{}, fly->tied);
    return std::shared_ptr<const OpenFly>(std::move(fly));
}

} // namespace wrapwright
