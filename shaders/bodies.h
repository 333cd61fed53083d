#pragma once
// The shader bodies of this folder, embedded at build time. GLSL ES 3.00 without a #version line.

#include <string_view>
#include <vector>

namespace wrapwright {

/// The text of the body in that file of shaders/.
/// Valid   a name that shaders/CMakeLists.txt lists
[[nodiscard]] std::string_view shader_body(std::string_view name);

/// The names of all bodies, sorted by file as the build lists them.
[[nodiscard]] std::vector<std::string_view> shader_names();

} // namespace wrapwright
