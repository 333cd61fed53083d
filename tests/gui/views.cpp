// Other looks: the whole tying as a film, and what if.

#include "gui/wraps.h"
#include "tests/gui/person.h"
#include "tests/support/close.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

std::shared_ptr<const OpenFly> fly_of(const char* recipe) {
    const auto fly = open_fly(recipe, demo(recipe).recipe);
    REQUIRE(fly.ok());
    return fly.value();
}

int moment_with(const OpenFly& fly, Op op) {
    for (std::size_t i = 0; i < fly.resolved.acts.size(); ++i) {
        if (fly.resolved.acts[i].op == op) return static_cast<int>(i);
    }
    FAIL("no such action");
    return none;
}

const Winding& own_winding(const OpenFly& fly, int moment) {
    return fly.tied.windings[static_cast<std::size_t>(counted_at(fly, moment).first)];
}

} // namespace

TEST_CASE("what if gives the turns, the pitch and the places that are asked for") {
    const auto fly = fly_of("weirfoot-jig");
    const int rib = moment_with(*fly, Op::counter_rib);
    const Winding& was = own_winding(*fly, rib);
    Trials trials{};
    trials[static_cast<std::size_t>(Trial::turns)] = 9.0;
    const auto nine = try_out(*fly, rib, trials);
    CHECK(within(own_winding(*nine, rib).turns, 9.0, 1e-9));
    // The stretch is the same, so that more turns lie closer.
    CHECK(within(own_winding(*nine, rib).from.si, was.from.si, 1e-9));
    CHECK(own_winding(*nine, rib).pitch < was.pitch);
    CHECK(own_winding(*nine, rib).mass > was.mass);
    CHECK(nine->tied.mass.value > fly->tied.mass.value);

    trials = {};
    trials[static_cast<std::size_t>(Trial::from)] = was.from.si - 1e-3;
    const auto shorter = try_out(*fly, rib, trials);
    CHECK(within(in_millimetres(own_winding(*shorter, rib).from), in_millimetres(was.from) - 1.0,
                 1e-6));

    trials = {};
    trials[static_cast<std::size_t>(Trial::width)] = 2.0 * was.width.si;
    const auto thicker = try_out(*fly, rib, trials);
    CHECK(within_share(own_winding(*thicker, rib).width.si, 2.0 * was.width.si, 1e-9));
    // Four times the section; a little more round, for the thicker wire's middle lies further out.
    CHECK(own_winding(*thicker, rib).mass.si > 4.0 * was.mass.si);
    CHECK(own_winding(*thicker, rib).mass.si < 5.0 * was.mass.si);
}

TEST_CASE("what if changes nothing else, and nothing at all where nothing is asked") {
    const auto fly = fly_of("weirfoot-jig");
    const int rib = moment_with(*fly, Op::counter_rib);
    const auto same = try_out(*fly, rib, {});
    CHECK(same->tied.mass.value == fly->tied.mass.value);
    CHECK(same->tied.windings.size() == fly->tied.windings.size());
    CHECK_FALSE(trial_ranges(*fly, moment_with(*fly, Op::clamp)).has_value());
    CHECK(trial_ranges(*fly, rib).has_value());
}

TEST_CASE("no slider, wherever it is dragged, makes a number that is none") {
    for (const char* recipe : {"weirfoot-jig", "sill-dun", "lockgate-sedge", "tailrace-spider"}) {
        const auto fly = fly_of(recipe);
        for (int m = 0; m < static_cast<int>(fly->tied.moments.size()); ++m) {
            const auto ranges = trial_ranges(*fly, m);
            if (!ranges) continue;
            for (std::size_t i = 0; i < trial_count; ++i) {
                CHECK((*ranges)[i].least < (*ranges)[i].most);
                for (const double value : {(*ranges)[i].least, (*ranges)[i].most}) {
                    Trials trials{};
                    trials[i] = value;
                    const auto tried = try_out(*fly, m, trials);
                    CAPTURE(recipe);
                    CAPTURE(m);
                    CAPTURE(i);
                    CHECK(std::isfinite(tried->tied.mass.value.si));
                    for (const Winding& w : tried->tied.windings) {
                        CHECK(std::isfinite(w.length.si));
                    }
                }
            }
        }
    }
}

TEST_CASE("a what-if is dropped without a trace, and kept with a note in the sitting") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Begin now");
    while (!trial_ranges(*person.model.fly, moment_of(person.model))) person.key(ImGuiKey_Tab);
    const auto before = person.model.fly;
    const auto events = person.stored.size();
    person.press("What if");
    CHECK(person.model.screen == Screen::what_if);
    person.press("Turns"); // the middle of its slider
    CHECK(person.model.tried != before);
    person.press("Drop it");
    CHECK(person.model.fly == before);
    CHECK(person.stored.size() == events);
    person.press("What if");
    person.press("Turns");
    person.press("Side by side");
    REQUIRE(pictured(person.model, Picture::more).fly);
    const auto turns = [&](Picture which) {
        return own_winding(*pictured(person.model, which).fly, moment_of(person.model)).turns;
    };
    CHECK(within(turns(Picture::more), turns(Picture::own) + 2.0, 1e-9));
    CHECK(within(turns(Picture::fewer), turns(Picture::own) - 2.0, 1e-9));
    person.frame();
    for (const Box& box : person.shown.wraps) CHECK(box.width > 100.0F);
    person.press("Keep it");
    CHECK(person.model.fly != before);
    REQUIRE(person.stored.size() == events + 1);
    CHECK(person.stored.back().kind == EventKind::done_otherwise);
    CHECK(person.stored.back().text.find("turns") != std::string::npos);
    CHECK(person.model.screen == Screen::bench);
}

TEST_CASE("the film shows every action once, by itself, and stops at the end") {
    Person person("sill-dun", {1280, 800});
    person.press("Film");
    person.key(ImGuiKey_Escape);
    CHECK(person.model.screen == Screen::bench);
    person.press("Film");
    person.press("moment"); // the middle of the slider
    const int last = static_cast<int>(person.model.fly->tied.moments.size()) - 1;
    CHECK(std::abs(person.model.film_at - last / 2) <= 1);
    person.press(">");
    person.press("<");
    person.press("Play");
    std::vector<int> seen;
    for (int i = 0; i < 400 && person.model.film_playing; ++i) {
        if (seen.empty() || seen.back() != person.model.film_at)
            seen.push_back(person.model.film_at);
        person.wait(0.1);
    }
    CHECK_FALSE(person.model.film_playing);
    CHECK(person.model.film_at == last);
    for (std::size_t i = 1; i < seen.size(); ++i) CHECK(seen[i] == seen[i - 1] + 1);
}

TEST_CASE("the picture is composed anew when something of it changes, and only then") {
    Person person("weirfoot-jig", {1280, 800});
    WrapsScene wraps;
    const PixelSize size{600, 400};
    (void)wraps.compose(person.model, size, 16.0F);
    CHECK(wraps.changed());
    (void)wraps.compose(person.model, size, 16.0F);
    CHECK_FALSE(wraps.changed());
    const auto stamp = wraps.compose(person.model, size, 16.0F).model_stamp;
    person.model.wraps.yaw = 0.3F;
    // Another look does not build the meshes anew.
    CHECK(wraps.compose(person.model, size, 16.0F).model_stamp == stamp);
    CHECK(wraps.changed());
    person.model.wraps.zoom = 6.0F;
    CHECK(wraps.compose(person.model, size, 16.0F).model_stamp != stamp);
    person.model.settings.left_handed = true;
    CHECK(wraps.compose(person.model, size, 16.0F).camera.mirrored);
    person.model.settings.facing = true; // from the other side it is as it was
    CHECK_FALSE(wraps.compose(person.model, size, 16.0F).camera.mirrored);
    person.model.settings.depth_m = 4.0;
    const glm::vec3 light = wraps.compose(person.model, size, 16.0F).light;
    CHECK(light.x < light.y);
    CHECK(light.z == 1.0F);
}
