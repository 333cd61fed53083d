// From an edit to its picture's meshes: the run of the tying and the fly built anew, as the what-if
// does it while a slider moves; and how many triangles 2,000 wraps come to at fit-to-window.

#include "core/geometry/fly/build.h"
#include "core/recipe/text.h"
#include "gui/model.h"
#include "tests/bench/measure.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

using namespace wrapwright;

namespace {

constexpr double window_mm = 16.0; ///< what the height of the wraps' picture shows
constexpr double window_dots = 800.0;
constexpr int edits = 200;

std::shared_ptr<const OpenFly> fly_of(const std::string& name) {
    std::ifstream file(WW_SOURCE_DIR "/assets/recipes/" + name + ".json");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) std::exit(1);
    const auto fly = open_fly(name, std::move(recipe).value());
    if (!fly.ok()) std::exit(1);
    return fly.value();
}

int moment_of(const OpenFly& fly, Op op) {
    for (std::size_t i = 0; i < fly.resolved.acts.size(); ++i) {
        if (fly.resolved.acts[i].op == op) return static_cast<int>(i);
    }
    std::exit(1);
}

double triangles(const FlyModel& model) {
    std::size_t count = 0;
    for (const FlyPiece& piece : model.pieces) count += piece.mesh.indices.size() / 3;
    return static_cast<double>(count);
}

} // namespace

int main() {
    const FlyDetail detail{window_dots / window_mm, true, true};
    for (const char* name : {"weirfoot-jig", "sill-dun", "tailrace-spider"}) {
        const auto fly = fly_of(name);
        const int moment = moment_of(*fly, Op::lay_base);
        const int last = static_cast<int>(fly->tied.moments.size()) - 1;
        FlyModel model;
        std::vector<double> times;
        for (int i = 0; i < edits; ++i) {
            Trials trials{};
            trials[static_cast<std::size_t>(Trial::turns)] = 20.0 + i % 40;
            const double start = bench::cpu_seconds();
            const auto tried = try_out(*fly, moment, trials);
            build_fly(tried->pattern, tried->tied, last, detail, model);
            times.push_back(bench::cpu_seconds() - start);
        }
        std::sort(times.begin(), times.end());
        std::printf(
            "%s: edit to meshes, median %.1f ms, p95 %.1f ms of 16.7 ms; %.2f M triangles\n", name,
            1e3 * bench::median(times), 1e3 * times[edits * 95 / 100], triangles(model) / 1e6);
    }
    const auto fly = fly_of("weirfoot-jig");
    const int moment = moment_of(*fly, Op::counter_rib);
    Trials trials{};
    trials[static_cast<std::size_t>(Trial::turns)] = 2000.0;
    const auto tried = try_out(*fly, moment, trials);
    FlyModel model;
    build_fly(tried->pattern, tried->tied, moment, detail, model);
    const Counted own = counted_at(*tried, moment);
    std::printf("%.0f wraps of the rib at fit to window: %.2f M triangles (goal 0.4)\n", own.turns,
                triangles(model) / 1e6);
    return 0;
}
