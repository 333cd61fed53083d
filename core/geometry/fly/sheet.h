#pragma once
// Thin closed sheets: feather slips, wing cases, foam, film, painted eyes.

#include "core/geometry/mesh.h"

#include <array>
#include <glm/vec3.hpp>

namespace wrapwright {

/// The middle surface of a sheet as a grid of points: rows along it, columns across.
struct SheetGrid {
    static constexpr int most_rows = 40;
    static constexpr int most_columns = 24;
    int rows = 2;
    int columns = 2;
    std::array<glm::vec3, std::size_t{most_rows} * most_columns> points{};

    glm::vec3& at(int row, int column) { return points[index(row, column)]; }
    [[nodiscard]] const glm::vec3& at(int row, int column) const {
        return points[index(row, column)];
    }

  private:
    [[nodiscard]] std::size_t index(int row, int column) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
               static_cast<std::size_t>(column);
    }
};

/// Adds a sheet of even thickness as a closed mesh, its edges sharp.
///
/// The upper side is the one that (next row) x (next column) points to.
/// Units   mm
/// Valid   rows and columns from 2 to the most
void add_sheet(Mesh& mesh, const SheetGrid& grid, float thickness);

} // namespace wrapwright
