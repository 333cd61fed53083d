// The solids that flies are drawn from: fibres, sheets, turned bodies.

#include "core/geometry/fly/fibre.h"
#include "core/geometry/fly/sheet.h"
#include "core/geometry/fly/turned.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using test::within_share;

TEST_CASE("a fibre is one closed solid, whole or in bands") {
    const FibreSections sections;
    Fibre fibre;
    fibre.bend = {0.0F, 0.3F, 0.2F};
    fibre.wave = {0.0F, 0.1F, 0.0F};
    fibre.waves = 1.5F;
    for (const Section* section :
         {&sections.fine, &sections.round, &sections.blade, &sections.ribbon}) {
        Mesh mesh;
        add_fibre(mesh, *section, fibre, 8);
        const MeshCheck whole = check_mesh(mesh);
        CHECK(whole.closed);
        CHECK(whole.euler == 2);
        CHECK(whole.volume_mm3 > 0.0);
        mesh = {};
        add_fibre(mesh, *section, fibre, 3, 0.0F, 0.4F);
        add_fibre(mesh, *section, fibre, 3, 0.4F, 1.0F);
        CHECK(check_mesh(mesh).closed);
    }
}

TEST_CASE("an even straight fibre has the volume of its polygonal cylinder") {
    // Source     area of a regular n-gon in a circle of radius r: n/2 r^2 sin(2 pi / n)
    // Tolerance  1e-4: float coordinates of a body 0.2 mm thick
    Fibre fibre;
    fibre.length = 5.0F;
    fibre.thick = fibre.tip = 0.2F;
    Mesh mesh;
    add_fibre(mesh, ellipse_section(12), fibre, 4);
    const double area = 6.0 * 0.1 * 0.1 * std::sin(std::numbers::pi / 6.0);
    CHECK(within_share(check_mesh(mesh).volume_mm3, 5.0 * area, 1e-4));
}

TEST_CASE("a sheet is closed and holds its area times its thickness") {
    SheetGrid grid;
    grid.rows = 5;
    grid.columns = 4;
    for (int r = 0; r < grid.rows; ++r) {
        for (int c = 0; c < grid.columns; ++c) {
            grid.at(r, c) = {static_cast<float>(r), 0.0F, -0.5F * static_cast<float>(c)};
        }
    }
    Mesh mesh;
    add_sheet(mesh, grid, 0.1F);
    const MeshCheck check = check_mesh(mesh);
    CHECK(check.closed);
    CHECK(check.euler == 2);
    // 4 mm by 1.5 mm by 0.1 mm. Tolerance 1e-5: float coordinates.
    CHECK(within_share(check.volume_mm3, 0.6, 1e-5));
}

TEST_CASE("a drilled bead is a ring whose volume is that of the napkin ring") {
    // Source     V = pi h^3 / 6 with h the length of the hole
    // Tolerance  3 %: 48 sides of a circle lose 0.3 %, arcs of the outline the rest
    Mesh mesh;
    add_round_bead(mesh, {}, 1.4F, 1.0F, {}, 48);
    const MeshCheck check = check_mesh(mesh);
    CHECK(check.closed);
    CHECK(check.euler == 0);
    const double h = 2.0 * std::sqrt(1.4 * 1.4 - 0.5 * 0.5);
    CHECK(within_share(check.volume_mm3, std::numbers::pi * h * h * h / 6.0, 0.03));
}

TEST_CASE("a countersink and a slot each take material away and leave the bead closed") {
    Mesh plain, sunk, slotted;
    add_round_bead(plain, {}, 1.4F, 0.9F, {}, 40);
    add_round_bead(sunk, {}, 1.4F, 0.9F, {1.8F, 1.0F}, 40);
    add_slotted_bead(slotted, {}, 1.4F, 0.9F, 0.8F, -0.2F, 40);
    const double whole = check_mesh(plain).volume_mm3;
    CHECK(check_mesh(sunk).closed);
    CHECK(check_mesh(sunk).euler == 0);
    CHECK(check_mesh(slotted).closed);
    CHECK(check_mesh(slotted).euler == 0);
    CHECK(check_mesh(sunk).volume_mm3 < whole);
    // The slot is about as wide as 0.8 mm, as deep as from bore to surface (0.8 mm on the mean),
    // as long as from -0.2 to 1.3 mm: 0.9 mm3. Tolerance 25 %: a derived estimate of a curved body.
    CHECK(within_share(whole - check_mesh(slotted).volume_mm3, 0.9, 0.25));
}

TEST_CASE("a slot wider than the bore still leaves a closed bead") {
    for (const float width : {0.3F, 0.6F, 0.9F, 1.1F, 1.6F}) {
        CAPTURE(width);
        Mesh mesh;
        add_slotted_bead(mesh, {}, 1.4F, 0.9F, width, -0.2F, 32);
        CHECK(check_mesh(mesh).closed);
        CHECK(check_mesh(mesh).volume_mm3 > 0.0);
    }
}
