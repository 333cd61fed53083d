#pragma once
// Meshes as files that other programs read: glTF for pictures, STL for printing.

#include "core/geometry/mesh.h"

#include <span>
#include <string>

namespace wrapwright {

/// A mesh with a name and a surface.
struct NamedMesh {
    const Mesh* mesh = nullptr;
    std::string name{};                ///< UTF-8
    float rgb[3] = {0.5F, 0.5F, 0.5F}; ///< linear, 0 to 1
    float metallic = 0.0F;             ///< 0 to 1
    float roughness = 0.5F;            ///< 0 to 1
    float opacity = 1.0F;              ///< 0 to 1
};

/// The bytes of a binary glTF file: one node, mesh and material for each mesh that has triangles.
///
/// Units   metres, as glTF demands
/// Valid   finite coordinates, less than 4 GiB in all
/// Source  Khronos, glTF 2.0 Specification: 4.4 (GLB), 3.6-3.9, 5
[[nodiscard]] std::string write_glb(std::span<const NamedMesh> meshes);

/// The bytes of a binary STL file: all triangles in one list, with their flat normals.
///
/// Units   mm, as printers take it
/// Source  80 bytes, a count of 32 bits, then 50 bytes a triangle (the common binary form)
[[nodiscard]] std::string write_stl(std::span<const NamedMesh> meshes);

} // namespace wrapwright
