#include "platform/gl/api.h"

namespace wrapwright {

Result<Gl> load_gl(GlKind kind, GlAddress address_of) {
    Gl gl;
    gl.kind = kind;
#define WW_GL_LOAD(upper, name)                                                                    \
    gl.name = reinterpret_cast<PFNGL##upper##PROC>(address_of("gl" #name));                        \
    if (gl.name == nullptr) {                                                                      \
        return Error{ErrorCode::not_found, "the graphics driver has no gl" #name,                  \
                     "install a driver with OpenGL 3.3, such as the package libgl1-mesa-dri"};     \
    }
    WW_GL_CALLS(WW_GL_LOAD)
#undef WW_GL_LOAD
    return gl;
}

} // namespace wrapwright
