// A whole recipe on eleven sizes: our run of the tying beside a closed-form loop of the same kind,
// both in one run and interleaved, on the thread's CPU time.
//
// The unit of equal work is one cell of one winding: read a diameter, take the length of strand
// across the cell, add to the diameter. The reference does just that and nothing else; ours also
// keeps the state machine, the record, the tally, the findings and a profile for each action. The
// ratio of the two times per unit is what the goal (3 at most) is about. Allocations are counted in
// the steady state.
// The reference is built as such a loop is: plain -O2, one cell after the other.
//
//   build/tests/bench/bench_recompute [repeats]

#include "core/tying/tie.h"
#include "tests/bench/closed_form.h"
#include "tests/support/fly_builder.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <new>
#include <numbers>
#include <vector>

namespace {

long allocations = 0;

double now() {
    timespec t{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

double median(std::vector<double> v) {
    std::sort(v.begin(), v.end());
    return v[v.size() / 2];
}

} // namespace

[[gnu::noinline]] void* operator new(std::size_t n) {
    ++allocations;
    if (void* p = std::malloc(n)) return p;
    std::abort();
}
[[gnu::noinline]] void operator delete(void* p) noexcept { std::free(p); }
[[gnu::noinline]] void operator delete(void* p, std::size_t) noexcept { std::free(p); }

namespace {

using namespace wrapwright;
using namespace wrapwright::test;
using namespace wrapwright::bench;

/// Forty-odd actions: the good nymph with more bodies, ribs and thread between its steps.
Recipe long_recipe() {
    Recipe r = good_nymph();
    for (int i = 0; i < 7; ++i) {
        Action base = action(Op::lay_base);
        base.from = spot(Landmark::bend);
        base.to = spot(Landmark::bead, 0.5);
        Action in = action(Op::tie_in, "body");
        in.to = spot(Landmark::bend);
        Action body = action(Op::wind, "body");
        body.to = spot(Landmark::bead, 0.4);
        Step s;
        s.actions = {base, in, body};
        r.steps.insert(r.steps.begin() + 2, s);
    }
    return r;
}

} // namespace

int main(int argc, char** argv) {
    const int repeats = argc > 1 ? std::atoi(argv[1]) : 301;
    const Result<Pattern> pattern = link(long_recipe());
    if (!pattern.ok()) return 1;

    constexpr int sizes = 11;
    std::vector<Rig> rigs;
    for (int i = 0; i < sizes; ++i) {
        Hook hook = test_hook();
        const double k = 1.6 * std::pow(0.93, i);
        for (Estimate<Length>* l : {&hook.shank, &hook.gape, &hook.wire, &hook.eye_length,
                                    &hook.eye_diameter, &hook.barb_height}) {
            *l = exactly(k * l->value, Origin::measured);
        }
        Result<Rig> rig = make_rig(pattern.value(), HookSize{8 + i}, &hook);
        if (!rig.ok()) return 1;
        rigs.push_back(std::move(rig).value());
    }
    std::vector<Resolved> numbers(sizes);
    std::vector<Tied> tied(sizes);
    const Limits limits;
    const auto recompute = [&] {
        for (std::size_t i = 0; i < sizes; ++i) {
            if (!resolve(pattern.value(), rigs[i], numbers[i]).ok()) std::abort();
            tie(pattern.value(), rigs[i], numbers[i], limits, tied[i]);
        }
    };
    recompute();
    recompute();
    const long before = allocations;
    recompute();
    const long steady = allocations - before;

    // The same stretches for the reference, and how many cells both walk.
    std::vector<std::vector<Stretch>> stretches(sizes);
    long cells = 0;
    std::size_t acts = 0, windings = 0;
    for (std::size_t i = 0; i < sizes; ++i) {
        const Profile& p = tied[i].profiles.front();
        for (const Winding& w : tied[i].windings) {
            const int a = p.index(std::min(w.from, w.to)), b = p.index(std::max(w.from, w.to));
            stretches[i].push_back({a, b, std::max(0.1, w.turns), w.height.si, w.width.si, 1e-5});
            cells += b - a + 1;
        }
        acts += tied[i].moments.size();
        windings += tied[i].windings.size();
    }
    std::vector<double> ours, theirs;
    double keep = 0.0;
    double diameter[profile_cells];
    for (int r = 0; r < repeats; ++r) {
        double t = now();
        recompute();
        ours.push_back(now() - t);
        t = now();
        for (std::size_t i = 0; i < sizes; ++i) {
            keep += closed_form(stretches[i], tied[i].profiles.front().cell.si,
                                rigs[i].hooks[0].wire.value.si, diameter);
        }
        theirs.push_back(now() - t);
    }
    const double a = median(ours), b = median(theirs), n = static_cast<double>(cells);
    std::printf("recipe of %zu acts x %d sizes: %zu windings, %ld cells walked (checksum %.3g)\n",
                acts / sizes, sizes, windings, cells, keep);
    std::printf(
        "ours %.1f us, %.2f ns per cell, %.0f ns per act and size; reference %.1f us, %.2f ns "
        "per cell\n",
        a * 1e6, a * 1e9 / n, a * 1e9 / static_cast<double>(acts), b * 1e6, b * 1e9 / n);
    std::printf("ratio per unit of equal work: %.2f (goal: 3 at most) %s\n", a / b,
                a / b <= 3.0 ? "met" : "MISSED");
    std::printf("allocations in the steady state: %ld (goal: 0) %s\n", steady,
                steady == 0 ? "met" : "MISSED");
    return 0;
}
