#include "core/units/quantity.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using wrapwright::test::within_share;

template <class A, class B>
concept Addable = requires(A a, B b) { a + b; };

TEST_CASE("lengths add to lengths and to nothing else") {
    static_assert(Addable<Length, Length>);
    static_assert(!Addable<Length, Mass>);
    static_assert(!Addable<Density, LinearDensity>);
    CHECK((millimetres(2.0) + millimetres(3.0)) == millimetres(5.0));
}

TEST_CASE("an inch is 25.4 millimetres") {
    // Source     international yard and pound agreement of 1959: 1 in = 25.4 mm exactly
    // Tolerance  two roundings of a double, 2^-52 each
    CHECK(within_share(in_millimetres(inches(1.0)), 25.4, 5e-16));
    CHECK(within_share(in_inches(millimetres(25.4)), 1.0, 5e-16));
}
