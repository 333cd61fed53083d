// The contrast that the themes promise.

#include "gui/theme.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("contrast is that of the published formula") {
    // Source     WCAG 2.1: black on white is 21:1; #767676 on white is 4.54:1, the grey that its
    //            understanding documents name as just enough (from memory)
    // Tolerance  the digits that are given
    CHECK(within(contrast({0, 0, 0}, {255, 255, 255}), 21.0, 1e-9));
    CHECK(within(contrast({0x76, 0x76, 0x76}, {255, 255, 255}), 4.54, 0.005));
    CHECK(within(contrast({9, 99, 200}, {9, 99, 200}), 1.0, 1e-12));
}

TEST_CASE("step text stands out 7 to 1 and all other text 4.5 to 1, in every theme") {
    for (const Theme theme : {Theme::light, Theme::paper, Theme::dark}) {
        CAPTURE(name(theme));
        const Palette& p = palette(theme);
        for (const Colour behind : {p.ground, p.sheet, p.field}) {
            CHECK(contrast(p.ink, behind) >= 7.0);
            CHECK(contrast(p.soft, behind) >= 4.5);
            CHECK(contrast(p.warn, behind) >= 4.5);
            CHECK(contrast(p.good, behind) >= 4.5);
            CHECK(contrast(p.near, behind) >= 4.5);
        }
        CHECK(contrast(p.accent_ink, p.accent) >= 7.0);
        // Edges and icons that carry meaning. Source: WCAG 2.1, 1.4.11 (from memory)
        CHECK(contrast(p.accent, p.ground) >= 3.0);
        CHECK(contrast(p.accent, p.sheet) >= 3.0);
    }
}
