// Sweeping a tube against VTK's tube and triangle filters: the same helix, points and sides, the
// two interleaved in one process. Both give triangles with normals; ours also closes the ends.
//
// Instructions of VTK per vertex: valgrind --tool=callgrind
// --toggle-collect='vtkTubeFilter::RequestData*' (and vtkTriangleFilter::RequestData*) on this
// program with the argument 100.

#include "core/geometry/sweep.h"
#include "tests/bench/measure.h"
#include "tests/bench/test_helix.h"

#include <cmath>
#include <cstdlib>
#include <vtkCellArray.h>
#include <vtkMassProperties.h>
#include <vtkNew.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkTriangleFilter.h>
#include <vtkTubeFilter.h>

using namespace wrapwright;
using namespace wrapwright::bench;

namespace {

// Our mesh as VTK's, so that VTK can measure it.
vtkNew<vtkPolyData> as_vtk(const Mesh& mesh) {
    vtkNew<vtkPoints> points;
    for (const Vertex& v : mesh.vertices) points->InsertNextPoint(v.position);
    vtkNew<vtkCellArray> cells;
    for (std::size_t t = 0; t < mesh.indices.size(); t += 3) {
        const vtkIdType corners[3] = {mesh.indices[t], mesh.indices[t + 1], mesh.indices[t + 2]};
        cells->InsertNextCell(3, corners);
    }
    vtkNew<vtkPolyData> data;
    data->SetPoints(points);
    data->SetPolys(cells);
    return data;
}

double volume_by_vtk(const Mesh& mesh) {
    const vtkNew<vtkPolyData> data = as_vtk(mesh);
    vtkNew<vtkMassProperties> mass;
    mass->SetInputData(data);
    mass->Update();
    return mass->GetVolume();
}

struct Times {
    std::vector<double> vtk_tube, vtk_both, path, path_kept, winding, winding_kept;
};

void race(int turns, int rounds) {
    const std::vector<PathPoint> path = helix_points(turns);
    const std::vector<CoreKnot> knots = helix_knots(turns);
    const WindingPath winding = helix_winding(knots, turns);
    const Section section = ellipse_section(wire_sides);
    const int count = static_cast<int>(path.size());

    vtkNew<vtkPoints> points;
    points->SetDataTypeToFloat();
    vtkNew<vtkCellArray> line;
    line->InsertNextCell(count);
    for (int i = 0; i < count; ++i) {
        const glm::vec3& p = path[static_cast<std::size_t>(i)].position;
        points->InsertNextPoint(p.x, p.y, p.z);
        line->InsertCellPoint(i);
    }
    vtkNew<vtkPolyData> data;
    data->SetPoints(points);
    data->SetLines(line);
    vtkNew<vtkTubeFilter> tube;
    tube->SetInputData(data);
    tube->SetNumberOfSides(wire_sides);
    tube->SetRadius(wire_radius);
    tube->CappingOn();
    vtkNew<vtkTriangleFilter> triangles;
    triangles->SetInputConnection(tube->GetOutputPort());

    Mesh mesh;
    mesh.vertices.resize(path.size() * wire_sides);
    SweepIndices indices;
    const auto rebuild = [&] {
        indices.points = 0; // forget the shape
        indices.build(count, wire_sides);
        keep(indices.indices.data());
    };
    rebuild();
    Times times;
    for (int r = 0; r < rounds; ++r) {
        tube->Modified();
        const double start = cpu_seconds();
        tube->Update();
        const double tube_done = cpu_seconds();
        triangles->Update();
        times.vtk_tube.push_back(tube_done - start);
        times.vtk_both.push_back(cpu_seconds() - start);
        const auto ours = [&](std::vector<double>& seconds, auto&& work) {
            seconds.push_back(seconds_of(1, work));
            keep(mesh.vertices.data());
        };
        ours(times.path, [&] {
            sweep_path(path, section, mesh.vertices);
            rebuild();
        });
        ours(times.path_kept, [&] { sweep_path(path, section, mesh.vertices); });
        ours(times.winding, [&] {
            sweep_winding(winding, section, mesh.vertices);
            rebuild();
        });
        ours(times.winding_kept, [&] { sweep_winding(winding, section, mesh.vertices); });
    }

    const auto vtk_triangles = static_cast<double>(triangles->GetOutput()->GetNumberOfPolys());
    const auto our_triangles = static_cast<double>(sweep_triangles(count, wire_sides));
    const double vtk = median(times.vtk_both) / vtk_triangles;
    std::printf("\n%d turns: %.0f triangles of VTK, %.0f of ours\n", turns, vtk_triangles,
                our_triangles);
    const auto row = [&](const char* name, const std::vector<double>& seconds, double n) {
        const double each = median(seconds) / n;
        std::printf("  %-34s %9.3f ms %8.2f ns/triangle  VTK/this %6.1f\n", name,
                    median(seconds) * 1e3, each * 1e9, vtk / each);
        return vtk / each;
    };
    row("vtkTubeFilter (strips)", times.vtk_tube, vtk_triangles);
    row("vtkTubeFilter + vtkTriangleFilter", times.vtk_both, vtk_triangles);
    const double path_ratio = row("any path, indices rebuilt", times.path, our_triangles);
    row("any path, indices kept", times.path_kept, our_triangles);
    const double winding_ratio = row("winding, indices rebuilt", times.winding, our_triangles);
    row("winding, indices kept", times.winding_kept, our_triangles);
    if (turns >= 2000) {
        goal("any path: VTK over ours per triangle", path_ratio, ">=", 20.0, path_ratio >= 20.0);
        goal("winding: VTK over ours per triangle", winding_ratio, ">=", 40.0,
             winding_ratio >= 40.0);
    }
}

// The same solid, measured by VTK and by us; and its share of the wire it stands for.
void compare_volumes() {
    constexpr int turns = 20;
    Mesh mesh;
    append_path(mesh, helix_points(turns), with_true_area(ellipse_section(wire_sides)));
    const double ours = check_mesh(mesh).volume_mm3;
    const double off = std::abs(volume_by_vtk(mesh) / ours - 1.0);
    std::printf("\nvolume of 20 turns: %.6f mm3, of the wire by Pappus %.6f\n", ours,
                helix_volume(turns));
    goal("volume by VTK over ours, less 1, in parts of 1e-4", off * 1e4, "<=", 1.0, off <= 1e-4);
}

} // namespace

int main(int argc, char** argv) {
    if (argc > 1) {
        race(std::atoi(argv[1]), 1);
        return 0;
    }
    compare_volumes();
    for (const int turns : {10, 100}) race(turns, 51);
    for (const int turns : {1000, 2000}) race(turns, 15);
}
