#include "platform/gl/grain.h"

#include "tests/support/small_fly.h"

#include <doctest/doctest.h>

using namespace wrapwright;

namespace {

// A ring of radius 3 in the xz plane, as a tube of radius 0.1.
Mesh tube() {
    std::vector<PathPoint> path;
    for (int i = 0; i <= 60; ++i) {
        const float a = 5.0F * static_cast<float>(i) / 60.0F;
        path.push_back({{3.0F * std::cos(a), 0.0F, 3.0F * std::sin(a)}, 0.1F});
    }
    Mesh mesh;
    append_path(mesh, path, ellipse_section(10));
    return mesh;
}

glm::vec3 along(const Grain& g) { return glm::vec3(g[0], g[1], g[2]) / 32767.0F; }

} // namespace

TEST_CASE("on a tube the grain runs along it, one way all along") {
    const Mesh mesh = tube();
    std::vector<Grain> grains;
    find_grain(mesh, grains);
    REQUIRE(grains.size() == mesh.vertices.size());
    for (std::size_t v = 20; v + 20 < grains.size(); ++v) { // the caps at its ends aside
        CAPTURE(v);
        const glm::vec3 g = along(grains[v]);
        // Source     the tangent of a circle at angle a: (-sin a, 0, cos a), a from its number
        // Tolerance  1 degree: the mesh is a polygon
        const float a = 5.0F * static_cast<float>(v / 10) / 60.0F;
        CHECK(glm::dot(glm::normalize(g), glm::vec3(-std::sin(a), 0, std::cos(a))) > 0.99985F);
        CHECK(glm::length(g) > 0.9F);
    }
}

TEST_CASE("a ball has no grain") {
    std::vector<Grain> grains;
    const Mesh mesh = test::ball({}, 1.5F, 24);
    find_grain(mesh, grains);
    for (std::size_t v = 0; v < grains.size(); ++v) {
        const int row = static_cast<int>(v) / 48;
        if (row < 8 || row > 16) continue; // towards its poles the triangles are narrow
        CAPTURE(v);
        CHECK(glm::length(along(grains[v])) < 0.1F);
    }
}

TEST_CASE("a flat sheet has no grain") {
    Mesh sheet;
    for (const auto& [x, y] : {std::pair{0.0F, 0.0F}, {1.0F, 0.0F}, {1.0F, 1.0F}, {0.0F, 1.0F}}) {
        sheet.vertices.push_back({{x, y, 0}, {0, 0, 1}});
    }
    for (const std::uint32_t i : {0U, 1U, 2U, 0U, 2U, 3U}) sheet.indices.push_back(i);
    std::vector<Grain> grains;
    find_grain(sheet, grains);
    for (const Grain& g : grains) {
        CHECK(glm::length(along(g)) == 0.0F); // exact: there is nothing to go by
    }
}

TEST_CASE("an empty mesh has no grains") {
    std::vector<Grain> grains(3);
    find_grain(Mesh{}, grains);
    CHECK(grains.empty());
}
