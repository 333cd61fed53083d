// Fuzz target: the text form of recipes and hooks on any bytes; what is read is written, read back,
// linked, tied, put into water and drawn, so that no file can end the program.

#include "core/assert.h"
#include "core/geometry/fly/build.h"
#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/water/in_water.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

using namespace wrapwright;

namespace {

void check_error(const Error& error) {
    WW_ASSERT(!error.message.empty() && !error.remedy.empty());
    for (const char c : error.message) WW_ASSERT(c != '\n' && c != '\r'); // one line
}

/// The record holds finite numbers, and places that are on the wire.
void check_record(const Tied& tied) {
    WW_ASSERT(std::isfinite(tied.mass.value.si) && tied.mass.low <= tied.mass.value);
    for (const Winding& w : tied.windings) {
        WW_ASSERT(std::isfinite(w.length.si) && w.length.si >= 0.0 && std::isfinite(w.turns));
        WW_ASSERT(w.from.si >= 0.0 && w.to.si >= 0.0);
        WW_ASSERT(w.profile_below >= 0 && w.profile_below < static_cast<int>(tied.profiles.size()));
    }
    for (const Profile& p : tied.profiles) {
        for (const double d : p.diameter) WW_ASSERT(std::isfinite(d) && d > 0.0);
    }
}

void check_water(const InWater& w) {
    WW_ASSERT(std::isfinite(w.sink.low.si) && w.sink.low <= w.sink.value);
    WW_ASSERT(std::isfinite(w.sink.high.si) && w.sink.value <= w.sink.high);
    WW_ASSERT(std::isfinite(w.weight.low.si) && std::isfinite(w.weight.high.si));
    WW_ASSERT(std::isfinite(w.ride.delta.si) && std::isfinite(w.hang.si));
    for (const DriftPlace& p : w.drift) WW_ASSERT(std::isfinite(p.depth.value.si));
}

void run(const Recipe& recipe) {
    Result<Pattern> pattern = link(recipe);
    if (!pattern.ok()) return check_error(pattern.error());
    const HookSize size = recipe.size_list.empty() ? HookSize{14} : recipe.size_list.front();
    const Result<Rig> rig = make_rig(pattern.value(), size);
    if (!rig.ok()) return check_error(rig.error());
    Resolved numbers;
    const Result<bool> resolved = resolve(pattern.value(), rig.value(), numbers);
    if (!resolved.ok()) return check_error(resolved.error());
    Tied tied;
    tie(pattern.value(), rig.value(), numbers, Limits{}, tied);
    check_record(tied);
    const Result<InWater> water = in_water(pattern.value(), numbers, tied, {});
    WW_ASSERT(water.ok());
    check_water(water.value());
    FlyModel model;
    if (tied.moments.size() < 200) { // or one input takes as long as a thousand others
        build_fly(pattern.value(), tied, static_cast<int>(tied.moments.size()) - 1,
                  {.pixels_per_mm = 5.0}, model);
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const Result<Hook> hook = read_hook(text);
    if (hook.ok()) {
        const std::string once = write_hook(hook.value());
        const Result<Hook> back = read_hook(once);
        WW_ASSERT(back.ok() && write_hook(back.value()) == once);
    } else {
        check_error(hook.error());
    }
    const Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) {
        check_error(recipe.error());
        return 0;
    }
    const std::string once = write_recipe(recipe.value());
    const Result<Recipe> back = read_recipe(once);
    WW_ASSERT(back.ok() && write_recipe(back.value()) == once);
    run(recipe.value());
    return 0;
}
