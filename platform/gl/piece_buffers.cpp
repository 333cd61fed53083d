#include "platform/gl/piece_buffers.h"

#include <glm/common.hpp>

namespace wrapwright {

namespace {

template <class T>
void fill(const Gl& gl, GLenum target, const T& data) {
    gl.BufferData(target, static_cast<GLsizeiptr>(data.size() * sizeof(data[0])), data.data(),
                  GL_STATIC_DRAW);
}

const void* offset(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

} // namespace

void PieceBuffers::send(const Gl& gl, const Scene& scene) {
    if (filled_ && stamp_ != 0 && stamp_ == scene.model_stamp) return;
    // All pieces behind one another: two buffers and one vertex array, whatever their number.
    Buffer<Vertex> vertices;
    Buffer<std::uint32_t> indices;
    std::vector<Grain> grains;
    std::vector<Grain> piece_grains;
    ranges_.clear();
    for (const FlyPiece& piece : scene.model->pieces) {
        Range range{static_cast<GLsizei>(piece.mesh.indices.size()),
                    indices.size() * sizeof(std::uint32_t), glm::vec3(1e9F), glm::vec3(-1e9F)};
        const auto first = static_cast<std::uint32_t>(vertices.size());
        for (const std::uint32_t index : piece.mesh.indices) indices.push_back(first + index);
        for (const Vertex& v : piece.mesh.vertices) {
            const glm::vec3 p(v.position[0], v.position[1], v.position[2]);
            range.low = glm::min(range.low, p);
            range.high = glm::max(range.high, p);
        }
        vertices.insert(vertices.end(), piece.mesh.vertices.begin(), piece.mesh.vertices.end());
        find_grain(piece.mesh, piece_grains);
        grains.insert(grains.end(), piece_grains.begin(), piece_grains.end());
        ranges_.push_back(range);
    }
    if (!filled_) {
        array_ = make_vertex_array(gl);
        vertices_ = make_buffer(gl);
        grains_ = make_buffer(gl);
        indices_ = make_buffer(gl);
    }
    gl.BindVertexArray(array_.name());
    gl.BindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    fill(gl, GL_ARRAY_BUFFER, vertices);
    gl.VertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(Vertex), offset(0));
    gl.VertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, sizeof(Vertex), offset(12));
    gl.BindBuffer(GL_ARRAY_BUFFER, grains_.name());
    fill(gl, GL_ARRAY_BUFFER, grains);
    gl.VertexAttribPointer(2, 3, GL_SHORT, GL_TRUE, sizeof(Grain), offset(0));
    for (const GLuint attribute : {0U, 1U, 2U}) gl.EnableVertexAttribArray(attribute);
    gl.BindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
    fill(gl, GL_ELEMENT_ARRAY_BUFFER, indices);
    gl.BindVertexArray(0);
    stamp_ = scene.model_stamp;
    filled_ = true;
}

void PieceBuffers::draw(const Gl& gl, std::size_t piece) const {
    const Range& range = ranges_[piece];
    if (range.count == 0) return;
    gl.BindVertexArray(array_.name());
    gl.DrawElements(GL_TRIANGLES, range.count, GL_UNSIGNED_INT, offset(range.offset));
}

} // namespace wrapwright
