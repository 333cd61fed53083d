// Run with an environment in which the system has no graphics driver: see CMakeLists.txt.

#include "platform/gl/photographer.h"

#include <doctest/doctest.h>

using namespace wrapwright;

TEST_CASE("without a graphics driver no picture is taken, and what to install is said") {
    for (const GlKind kind : {GlKind::desktop_33, GlKind::es_30}) {
        const Result<Photographer> photographer = Photographer::open(kind);
        REQUIRE_FALSE(photographer.ok());
        CHECK(photographer.error().code == ErrorCode::not_found);
        CHECK(photographer.error().remedy.find("libgl1-mesa-dri") != std::string::npos);
    }
}
