#include "tests/platform/cli/program.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
using Json = nlohmann::json;

TEST_CASE("7/64 in is 2.778125 mm, exactly") {
    // Source  1 in = 25.4 mm exactly: 7 * 25.4 / 64 = 2.778125, which a double near it prints so
    const Ran ran = wrapwright::test::wrapwright({"size", "7/64 in"});
    REQUIRE(ran.code == 0);
    CHECK(ran.out.find("2.778125 mm") != std::string::npos);
}

TEST_CASE("a size that nothing can be made of is refused in one line") {
    const Ran ran = wrapwright::test::wrapwright({"size", "a handful"});
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err.find('\n') == ran.err.size() - 1);
}
