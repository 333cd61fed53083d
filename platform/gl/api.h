#pragma once
// The OpenGL calls that the program makes: those that GL 3.3 core and ES 3.0 (WebGL 2) share.

#include "core/result.h"

#include <GL/glcorearb.h>

namespace wrapwright {

// clang-format off
#define WW_GL_CALLS(X) \
    X(ACTIVETEXTURE, ActiveTexture) X(ATTACHSHADER, AttachShader) X(BINDBUFFER, BindBuffer) \
    X(BINDFRAMEBUFFER, BindFramebuffer) X(BINDRENDERBUFFER, BindRenderbuffer) \
    X(BINDTEXTURE, BindTexture) X(BINDVERTEXARRAY, BindVertexArray) \
    X(BLENDFUNCSEPARATE, BlendFuncSeparate) X(BLITFRAMEBUFFER, BlitFramebuffer) \
    X(BUFFERDATA, BufferData) X(CHECKFRAMEBUFFERSTATUS, CheckFramebufferStatus) X(CLEAR, Clear) \
    X(CLEARCOLOR, ClearColor) X(COLORMASK, ColorMask) X(COMPILESHADER, CompileShader) \
    X(CREATEPROGRAM, CreateProgram) X(CREATESHADER, CreateShader) X(CULLFACE, CullFace) \
    X(DELETEBUFFERS, DeleteBuffers) X(DELETEFRAMEBUFFERS, DeleteFramebuffers) \
    X(DELETEPROGRAM, DeleteProgram) X(DELETERENDERBUFFERS, DeleteRenderbuffers) \
    X(DELETESHADER, DeleteShader) X(DELETETEXTURES, DeleteTextures) \
    X(DELETEVERTEXARRAYS, DeleteVertexArrays) X(DEPTHFUNC, DepthFunc) X(DEPTHMASK, DepthMask) \
    X(DISABLE, Disable) X(DRAWARRAYS, DrawArrays) X(DRAWBUFFERS, DrawBuffers) \
    X(DRAWELEMENTS, DrawElements) X(ENABLE, Enable) \
    X(ENABLEVERTEXATTRIBARRAY, EnableVertexAttribArray) \
    X(FRAMEBUFFERRENDERBUFFER, FramebufferRenderbuffer) \
    X(FRAMEBUFFERTEXTURE2D, FramebufferTexture2D) X(FRONTFACE, FrontFace) \
    X(GENBUFFERS, GenBuffers) X(GENFRAMEBUFFERS, GenFramebuffers) \
    X(GENRENDERBUFFERS, GenRenderbuffers) X(GENTEXTURES, GenTextures) \
    X(GENVERTEXARRAYS, GenVertexArrays) X(GETERROR, GetError) X(GETINTEGERV, GetIntegerv) \
    X(GETPROGRAMINFOLOG, GetProgramInfoLog) X(GETPROGRAMIV, GetProgramiv) \
    X(GETSHADERINFOLOG, GetShaderInfoLog) X(GETSHADERIV, GetShaderiv) X(GETSTRING, GetString) \
    X(GETUNIFORMLOCATION, GetUniformLocation) X(LINKPROGRAM, LinkProgram) \
    X(PIXELSTOREI, PixelStorei) X(READPIXELS, ReadPixels) \
    X(RENDERBUFFERSTORAGEMULTISAMPLE, RenderbufferStorageMultisample) X(SCISSOR, Scissor) \
    X(SHADERSOURCE, ShaderSource) X(TEXIMAGE2D, TexImage2D) X(TEXPARAMETERI, TexParameteri) \
    X(UNIFORM1F, Uniform1f) X(UNIFORM1I, Uniform1i) X(UNIFORM2F, Uniform2f) \
    X(UNIFORM3F, Uniform3f) X(UNIFORM3FV, Uniform3fv) X(UNIFORM4F, Uniform4f) \
    X(UNIFORMMATRIX4FV, UniformMatrix4fv) X(USEPROGRAM, UseProgram) \
    X(VERTEXATTRIBPOINTER, VertexAttribPointer) X(VIEWPORT, Viewport)
// clang-format on

/// The two kinds of context that one set of shader bodies serves.
enum class GlKind : unsigned char { desktop_33, es_30 };

/// The calls, by their names without "gl". Belongs to one context, which must be current.
struct Gl {
    GlKind kind = GlKind::desktop_33;
#define WW_GL_MEMBER(upper, name) PFNGL##upper##PROC name = nullptr;
    WW_GL_CALLS(WW_GL_MEMBER)
#undef WW_GL_MEMBER
};

/// The address of a call by its full name, such as "glClear"; null where there is none.
using GlAddress = void (*(*)(const char* name))();

/// The calls of the current context.
/// Fails   not_found, naming the first call that the driver lacks
[[nodiscard]] Result<Gl> load_gl(GlKind kind, GlAddress address_of);

} // namespace wrapwright
