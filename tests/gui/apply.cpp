// The one place where the model changes, driven as a person drives it: by commands and wishes.

#include "gui/apply.h"
#include "core/tally/lay_out.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// A window on a model, with the store as a list of what it was told to keep.
struct Desk {
    Model model{};
    std::vector<Event> stored{};
    std::vector<Effect> effects{};
    double now = 100.0;

    explicit Desk(const char* recipe) {
        const Result<std::shared_ptr<const OpenFly>> fly = open_fly(recipe, demo(recipe).recipe);
        REQUIRE(fly.ok());
        model.now = seconds(now);
        model = with_fly(model, fly.value());
    }
    void wish(const Wish& w, double later = 1.0) {
        now += later;
        Applied answer = apply(model, w, seconds(now));
        for (const Effect& e : answer.effects) {
            if (e.kind == EffectKind::begin_sitting) stored = {e.event};
            if (e.kind == EffectKind::append) stored.push_back(e.event);
            effects.push_back(e);
        }
        model = std::move(answer.model);
    }
    void key(Command command, double later = 1.0) { wish(wrapwright::wish(command), later); }
    int told(EffectKind kind) const {
        return static_cast<int>(std::count_if(effects.begin(), effects.end(),
                                              [&](const Effect& e) { return e.kind == kind; }));
    }
};

bool same(const SittingState& a, const SittingState& b) {
    return a.at == b.at && a.turns == b.turns && a.redo_until == b.redo_until &&
           a.breaks == b.breaks && a.fly_state == b.fly_state && a.spoilt_why == b.spoilt_why &&
           a.otherwise.size() == b.otherwise.size() && a.step_seconds == b.step_seconds;
}

} // namespace

TEST_CASE("one key alone lays out, begins and ties a whole fly") {
    for (const char* recipe : {"weirfoot-jig", "sill-dun", "millpool-leech"}) {
        CAPTURE(recipe);
        Desk desk(recipe);
        CHECK(desk.model.laid_out.size() > 5);
        int presses = 0;
        const auto finished = [&] {
            return !desk.model.events.empty() && desk.model.state.finished(desk.model.course);
        };
        while (!finished() && presses < 2000) {
            desk.key(Command::press);
            ++presses;
        }
        CHECK(finished());
        CHECK(desk.model.state.fly_state == std::vector{FlyState::done});
        CHECK(desk.stored == desk.model.events);
    }
}

TEST_CASE("a second press within half a second does nothing and says so") {
    Desk desk("sill-dun");
    desk.wish(wish(WishKind::begin, 1));
    desk.key(Command::skip);
    const int stood = desk.model.state.at;
    desk.key(Command::skip, 0.4);
    CHECK(desk.model.state.at == stood);
    CHECK_FALSE(desk.model.notice.empty());
    desk.key(Command::skip, 0.2); // 0.6 s after the first
    CHECK(desk.model.state.at == stood + 1);
}

TEST_CASE("the press after the last turn of a winding is not taken for going on by mistake") {
    Desk desk("weirfoot-jig");
    desk.wish(wish(WishKind::begin, 1));
    while (counted_at(*desk.model.fly, moment_of(desk.model)).turns < 1.0) {
        desk.key(Command::press);
    }
    const double turns = std::round(counted_at(*desk.model.fly, moment_of(desk.model)).turns);
    const int stood = desk.model.state.at;
    for (int i = 0; i < static_cast<int>(turns) + 1; ++i) desk.key(Command::press, 0.3);
    CHECK(desk.model.state.at == stood);
    CHECK(desk.model.state.turns == turns);
    desk.key(Command::press);
    CHECK(desk.model.state.at == stood + 1);
}

TEST_CASE("the counter runs by itself at the pace that was set, and stops when all is counted") {
    Desk desk("weirfoot-jig");
    desk.wish({WishKind::set, 0, 0, 0, "pace", "0.5"});
    desk.wish({WishKind::set, 0, 0, 0, "tick", "on"});
    desk.wish(wish(WishKind::begin, 1));
    while (counted_at(*desk.model.fly, moment_of(desk.model)).turns < 1.0) desk.key(Command::skip);
    desk.key(Command::count_by_itself);
    CHECK(desk.model.counting);
    const double began = desk.now;
    while (desk.model.counting && desk.now < began + 60.0) {
        desk.wish(wish(WishKind::tick_clock), next_change(desk.model).si - desk.now);
    }
    const double turns = std::round(counted_at(*desk.model.fly, moment_of(desk.model)).turns);
    CHECK(desk.model.state.turns == turns);
    CHECK(desk.told(EffectKind::tick) == static_cast<int>(turns));
    // Tolerance  the times are sums of halves, which are exact, on a start that is exact
    CHECK(std::abs(desk.now - began - 0.5 * turns) < 1e-6);
}

TEST_CASE("a broken thread falls back, and undo takes it back") {
    Desk desk("weirfoot-jig");
    desk.wish(wish(WishKind::begin, 1));
    for (int i = 0; i < 12; ++i) desk.key(Command::skip);
    const SittingState before = desk.model.state;
    desk.key(Command::thread_broke);
    CHECK(desk.model.sheet == Sheet::thread_broke);
    CHECK(same(desk.model.state, before));
    desk.key(Command::press); // yes
    CHECK(desk.model.sheet == Sheet::closed);
    CHECK(desk.model.state.at < before.at);
    CHECK(desk.model.state.redo_until == before.at);
    desk.key(Command::undo);
    CHECK(desk.model.state.at == before.at);
    CHECK(desk.model.state.breaks == 0);
}

TEST_CASE("a window that only looks on changes nothing and says why") {
    Desk desk("sill-dun");
    desk.model.read_only = true;
    for (int kind = 0; kind <= static_cast<int>(WishKind::quit); ++kind) {
        for (int number = 0; number < command_count; ++number) {
            desk.wish(wish(static_cast<WishKind>(kind), number, "text"));
        }
    }
    CHECK(desk.stored.empty());
    CHECK(desk.told(EffectKind::begin_sitting) == 0);
    CHECK(desk.told(EffectKind::append) == 0);
    CHECK(desk.told(EffectKind::duplicate) == 0);
    CHECK(desk.told(EffectKind::restore) == 0);
}

TEST_CASE(
    "whatever is wished, what is stored folds to what is shown, and undo of all is the start") {
    Dice dice{20261125};
    for (int round = 0; round < 40; ++round) {
        Desk desk(round % 2 == 0 ? "weirfoot-jig" : "millpool-leech");
        desk.wish(wish(WishKind::begin, 1 + dice.roll(4)));
        for (int i = 0; i < 250; ++i) {
            const double later = 0.1 * dice.roll(30);
            const int pick = dice.roll(12);
            if (pick < 6) {
                desk.key(dice.roll(3) == 0 ? Command::press : Command::skip, later);
            } else if (pick < 10) {
                desk.key(static_cast<Command>(dice.roll(command_count)), later);
            } else {
                const auto kind =
                    static_cast<WishKind>(dice.roll(static_cast<int>(WishKind::tick_clock) + 1));
                if (kind == WishKind::begin) continue;
                desk.wish({kind, dice.roll(30), 0.1F, -0.1F, "tick", "on"}, later);
            }
            if (desk.model.events.empty()) break;
            REQUIRE(desk.stored == desk.model.events);
        }
        const OpenFly& fly = *desk.model.fly;
        CHECK(same(fold(fly.pattern, fly.tied, desk.stored), desk.model.state));
        // The same events from the store put a new window where this one stands.
        const Model again = with_fly(Model{}, desk.model.fly, desk.stored);
        CHECK(same(again.state, desk.model.state));
        CHECK(again.course == desk.model.course);
        while (standing(desk.model.events).size() > 1) desk.key(Command::undo);
        CHECK(same(desk.model.state, fold(fly.pattern, fly.tied, {desk.stored.front()})));
    }
}
