#include "core/water/floating.h"

#include "tests/support/close.h"
#include "tests/support/water_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("what is lighter than its water floats without the film") {
    const FloatingCheck check = floating(newtons(-1e-5), millimetres(3.0), {});
    CHECK(check.verdict == Floating::floats);
    CHECK(check.margin == 0.0);
}

TEST_CASE("an even stretch under the middle of the weight holds with all of it") {
    const std::vector<Lying> body{{millimetres(0.0), millimetres(10.0), newtons(1.4e-3)}};
    const FloatingCheck middle = floating(newtons(1e-3), millimetres(5.0), body);
    CHECK(within_share(middle.film.si, 1.4e-3, 1e-9));
    CHECK(middle.verdict == Floating::sinks_when_wet);
    // Derived: about a weight at 2 mm, 4 mm of it balance from 0 to 4; the rest would lift the tail.
    const FloatingCheck front = floating(newtons(1e-3), millimetres(2.0), body);
    CHECK(within_share(front.film.si, 0.4 * 1.4e-3, 1e-9));
    CHECK(front.verdict == Floating::sinks);
}

TEST_CASE("a weight beyond the end of all that lies on the film is not held") {
    const std::vector<Lying> body{{millimetres(2.0), millimetres(10.0), newtons(5e-3)}};
    CHECK(floating(newtons(1e-4), millimetres(1.0), body).film.si == 0.0);
    CHECK(floating(newtons(1e-4), millimetres(1.0), {}).verdict == Floating::sinks);
}

TEST_CASE("more on the film never holds less") {
    std::vector<Lying> parts{{millimetres(0.0), millimetres(8.0), newtons(1e-3)}};
    const double before = floating(newtons(1e-3), millimetres(3.0), parts).film.si;
    parts.push_back({millimetres(1.0), millimetres(2.0), newtons(4e-4)});
    CHECK(floating(newtons(1e-3), millimetres(3.0), parts).film.si >= before);
}
