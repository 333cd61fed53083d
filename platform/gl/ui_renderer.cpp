#include "platform/gl/ui_renderer.h"

#include <cstddef>
#include <cstdint>
#include <imgui.h>

namespace wrapwright {

namespace {

const void* offset(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

template <class T>
void fill(const Gl& gl, GLenum target, const ImVector<T>& data) {
    gl.BufferData(target, static_cast<GLsizeiptr>(data.size_in_bytes()), data.Data, GL_STREAM_DRAW);
}

} // namespace

Result<UiRenderer> UiRenderer::make(const Gl& gl, ImFontAtlas& fonts) {
    Result<Program> program = Program::make(gl, "ui");
    if (!program.ok()) return program.error();
    UiRenderer renderer(gl, std::move(program).value());
    unsigned char* pixels = nullptr;
    PixelSize size;
    fonts.GetTexDataAsRGBA32(&pixels, &size.width, &size.height);
    gl.ActiveTexture(GL_TEXTURE0);
    renderer.font_ = make_image(gl, size, pixels);
    fonts.SetTexID(reinterpret_cast<ImTextureID>(std::uintptr_t{renderer.font_.name()}));
    renderer.array_ = make_vertex_array(gl);
    renderer.vertices_ = make_buffer(gl);
    renderer.indices_ = make_buffer(gl);
    return renderer;
}

void UiRenderer::draw(const ImDrawData& lists) {
    const Gl& gl = *gl_;
    gl.Disable(GL_DEPTH_TEST);
    gl.Disable(GL_CULL_FACE);
    gl.Enable(GL_BLEND);
    gl.Enable(GL_SCISSOR_TEST);
    gl.BlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    program_.use();
    const ImVec2 size = lists.DisplaySize;
    const ImVec2 scale = lists.FramebufferScale;
    program_.set("to_clip", glm::vec4(2.0F / size.x, -2.0F / size.y,
                                      -1.0F - 2.0F * lists.DisplayPos.x / size.x,
                                      1.0F + 2.0F * lists.DisplayPos.y / size.y));
    program_.set("image", 0);
    gl.BindVertexArray(array_.name());
    gl.BindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    gl.BindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
    for (const GLuint attribute : {0U, 1U, 2U}) gl.EnableVertexAttribArray(attribute);
    for (const ImDrawList* list : lists.CmdLists) {
        fill(gl, GL_ARRAY_BUFFER, list->VtxBuffer);
        fill(gl, GL_ELEMENT_ARRAY_BUFFER, list->IdxBuffer);
        for (const ImDrawCmd& command : list->CmdBuffer) {
            // ES 3.0 has no base vertex, so the arrays themselves start further on.
            const std::size_t base = command.VtxOffset * sizeof(ImDrawVert);
            constexpr auto stride = static_cast<GLsizei>(sizeof(ImDrawVert));
            gl.VertexAttribPointer(0, 2, GL_FLOAT, GL_FALSE, stride,
                                   offset(base + offsetof(ImDrawVert, pos)));
            gl.VertexAttribPointer(1, 2, GL_FLOAT, GL_FALSE, stride,
                                   offset(base + offsetof(ImDrawVert, uv)));
            gl.VertexAttribPointer(2, 4, GL_UNSIGNED_BYTE, GL_TRUE, stride,
                                   offset(base + offsetof(ImDrawVert, col)));
            const ImVec4 clip = command.ClipRect;
            const float left = (clip.x - lists.DisplayPos.x) * scale.x;
            const float bottom = (size.y - (clip.w - lists.DisplayPos.y)) * scale.y;
            const float width = (clip.z - clip.x) * scale.x;
            const float height = (clip.w - clip.y) * scale.y;
            if (width <= 0.0F || height <= 0.0F) continue;
            gl.Scissor(static_cast<GLint>(left), static_cast<GLint>(bottom),
                       static_cast<GLsizei>(width), static_cast<GLsizei>(height));
            const auto texture = reinterpret_cast<std::uintptr_t>(command.GetTexID());
            bind_texture(gl, 0, static_cast<GLuint>(texture));
            gl.DrawElements(GL_TRIANGLES, static_cast<GLsizei>(command.ElemCount),
                            sizeof(ImDrawIdx) == 2 ? GL_UNSIGNED_SHORT : GL_UNSIGNED_INT,
                            offset(command.IdxOffset * sizeof(ImDrawIdx)));
        }
    }
    gl.BindVertexArray(0);
    gl.Disable(GL_SCISSOR_TEST);
    gl.Disable(GL_BLEND);
}

} // namespace wrapwright
