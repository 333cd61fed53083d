#pragma once
// Triangle meshes for the picture and the printer. Mass never comes from one.

#include <cstddef>
#include <cstdint>
#include <glm/mat4x4.hpp>
#include <new>
#include <vector>

namespace wrapwright {

/// A corner of a triangle: 24 bytes, as the renderer reads it.
/// Units   position in MILLIMETRES (the only place in core that is not SI); normal is a unit vector
struct Vertex {
    float position[3];
    float normal[3];
};
static_assert(sizeof(Vertex) == 24);

/// Gives buffers that start a cache line and do not clear what is about to be overwritten.
///
/// Both are for the sweeps: a store that crosses a cache line costs two (measured, a third of the
/// speed), and clearing first writes everything twice.
/// Shape   elements added by resize() hold nothing until written
template <class T>
struct BufferAllocator {
    using value_type = T;
    static constexpr std::align_val_t line{64};

    BufferAllocator() = default;
    template <class U>
    BufferAllocator(const BufferAllocator<U>&) {}
    T* allocate(std::size_t n) { return static_cast<T*>(::operator new(n * sizeof(T), line)); }
    void deallocate(T* p, std::size_t) { ::operator delete(p, line); }
    template <class U>
    void construct(U* p) {
        ::new (static_cast<void*>(p)) U;
    }
    template <class U, class... Args>
    void construct(U* p, Args&&... args) {
        ::new (static_cast<void*>(p)) U(static_cast<Args&&>(args)...);
    }
    friend bool operator==(const BufferAllocator&, const BufferAllocator&) { return true; }
};

template <class T>
using Buffer = std::vector<T, BufferAllocator<T>>;

/// Triangles by index, counter-clockwise from outside.
struct Mesh {
    Buffer<Vertex> vertices{};
    Buffer<std::uint32_t> indices{};
};

/// What can be said of a mesh as a solid.
struct MeshCheck {
    bool closed = false; ///< each edge runs once in each direction
    int euler = 0; ///< V - E + F over corners at the same place: 2 for each plain solid, 0 for
                   ///< each ring
    double volume_mm3 = 0.0; ///< positive when the triangles face outwards
};

/// Checks a mesh as a solid; corners at exactly the same place count as one, so that a crease with
/// two normals is no gap. Triangles that such corners flatten to a line are left out.
/// Cost    a sort of the vertices and one of the edges: for tests and exporters
/// Source  volume by the divergence theorem, (1/6) sum a . (b x c)
[[nodiscard]] MeshCheck check_mesh(const Mesh& mesh);

/// Puts a copy of `part` behind what `mesh` holds.
void append(Mesh& mesh, const Mesh& part);

/// Moves the vertices from `first` on by a matrix that turns and shifts and may scale evenly.
/// Shape   a mirror image turns the triangles inside out; use append_mirrored for one
void transform(Mesh& mesh, std::size_t first, const glm::mat4& placing);

} // namespace wrapwright
