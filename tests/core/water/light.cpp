#include "core/water/light.h"

#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("water takes red light within metres and leaves blue") {
    // Source     Pope & Fry 1997: 0.0565 1/m at 550 nm, 0.340 at 650, 0.00922 at 450 (from memory)
    // Tolerance  the table here has every second row; half way between it is linear
    CHECK(within_share(water_absorption(650.0), 0.340, 0.08));
    CHECK(within_share(water_absorption(550.0), 0.0565, 0.05));
    CHECK(within_share(water_absorption(450.0), 0.00922, 0.15));
    const auto at_4_m = light_left(metres(4.0));
    CHECK(at_4_m[0] < 0.45);
    CHECK(at_4_m[1] > 0.7);
    CHECK(at_4_m[2] > 0.9);
}

TEST_CASE("at the surface all light is there, and more water never leaves more") {
    std::array<double, 3> before{1.0, 1.0, 1.0};
    CHECK(light_left(Length{}) == before);
    for (double depth = 0.1; depth < 30.0; depth *= 1.5) {
        const auto now = light_left(metres(depth));
        for (std::size_t i = 0; i < 3; ++i) {
            CHECK(now[i] < before[i]);
            CHECK(now[i] > 0.0);
        }
        CHECK(now[0] < now[1]);
        CHECK(now[1] < now[2]);
        before = now;
    }
}
