// Fuzz target: any numbers for water, stream, tippet, falls and weighings, on a fly that is built here;
// and any bytes as a rule file. No NaN comes out, ever.

#include "core/assert.h"
#include "core/check/rules.h"
#include "core/water/reach.h"
#include "core/water/water_words.h"
#include "tests/support/fly_builder.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>

using namespace wrapwright;

namespace {

/// Bytes as doubles, any bit pattern; zeros when they run out.
struct Numbers {
    const std::uint8_t* data;
    std::size_t left;

    double next() {
        double v = 0.0;
        if (left < sizeof v) return v;
        std::memcpy(&v, data, sizeof v);
        data += sizeof v;
        left -= sizeof v;
        return v;
    }
};

template <class Q>
void check(const Estimate<Q>& e) {
    WW_ASSERT(std::isfinite(e.low.si) && std::isfinite(e.high.si));
    WW_ASSERT(e.low <= e.value && e.value <= e.high);
}

struct Fly {
    Pattern pattern;
    Rig rig;
    Resolved numbers;
    Tied tied;

    Fly() : pattern(link(test::good_nymph()).value()) {
        const Hook hook = test::test_hook();
        rig = make_rig(pattern, HookSize{14}, &hook).value();
        WW_ASSERT(resolve(pattern, rig, numbers).ok());
        tie(pattern, rig, numbers, Limits{}, tied);
    }
};

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const Fly fly;
    const Result<RuleSet> rules = read_rules({reinterpret_cast<const char*>(data), size});
    if (rules.ok()) {
        for (const RuleRow& row : check_rules(rules.value(), fly.pattern, fly.numbers, fly.tied)) {
            WW_ASSERT(std::isfinite(row.value) && !rule_words(row).empty());
        }
    } else {
        WW_ASSERT(!rules.error().remedy.empty());
    }
    Numbers n{data, size};
    Fishing f;
    f.temperature = {n.next()};
    f.tippet = {{n.next()}, {n.next()}};
    f.stream = {{n.next()}, {n.next()}, {n.next()}};
    f.drift = {n.next()};
    f.air = {n.next()};
    f.kind = size % 2 == 0 ? WaterKind::fresh : WaterKind::sea;
    if (size % 3 == 0) f.weighed = exactly(Mass{n.next()}, Origin::measured);
    if (size % 5 == 0) {
        f.falls = {{{n.next()}, {n.next()}, {n.next()}, f.kind, {n.next()}, size % 4 == 0}};
    }
    const Result<InWater> w = in_water(fly.pattern, fly.numbers, fly.tied, f);
    if (w.ok()) {
        check(w.value().mass);
        check(w.value().volume);
        check(w.value().weight);
        check(w.value().sink);
        check(w.value().sink_free);
        for (const DriftPlace& p : w.value().drift) check(p.depth);
        WW_ASSERT(std::isfinite(w.value().ride.delta.si) && std::isfinite(w.value().hang.si));
        WW_ASSERT(!sink_words(w.value()).empty());
    } else {
        WW_ASSERT(!w.error().remedy.empty());
    }
    ReachGoal goal;
    if (size % 2 == 0) goal.mass = Mass{n.next()};
    if (size % 7 == 0) goal.sink = Speed{n.next()};
    if (size % 11 == 0) goal.depth = Length{n.next()};
    const ReachStock stock = stock_of(fly.pattern.recipe.materials);
    const Result<ReachFound> found = reach(fly.pattern, fly.rig, stock, goal, f, 2);
    if (found.ok()) {
        for (const ReachWay& way : found.value().ways) {
            check(way.mass);
            check(way.sink);
            WW_ASSERT(std::isfinite(way.distance) && std::isfinite(way.depth.si));
        }
    }
    return 0;
}
