# ww_embed_texts(TARGET files...): adds a generated .cpp to TARGET with every file's text, for
# shaders/bodies.h. Configures again when a file changes.
function(ww_embed_texts target)
  set(rows "")
  foreach(file IN LISTS ARGN)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
    file(READ ${file} text)
    string(APPEND rows "    {\"${file}\", R\"body(${text})body\"},\n")
  endforeach()
  set(generated ${CMAKE_CURRENT_BINARY_DIR}/bodies.cpp)
  file(CONFIGURE OUTPUT ${generated} CONTENT [[
#include "shaders/bodies.h"

#include "core/assert.h"

namespace wrapwright {

namespace {

struct Body {
    std::string_view name, text;
};

constexpr Body bodies[] = {
@rows@};

} // namespace

std::string_view shader_body(std::string_view name) {
    for (const Body& body : bodies) {
        if (body.name == name) return body.text;
    }
    assertion_failed();
}

std::vector<std::string_view> shader_names() {
    std::vector<std::string_view> names;
    for (const Body& body : bodies) names.push_back(body.name);
    return names;
}

} // namespace wrapwright
]] @ONLY)
  target_sources(${target} PRIVATE ${generated})
endfunction()

# ww_embed_bytes(TARGET NAME FILE): adds a generated .cpp to TARGET that defines
# `std::span<const unsigned char> NAME()` in namespace wrapwright, the bytes of FILE.
function(ww_embed_bytes target name file)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
  file(READ ${file} bytes HEX)
  string(REGEX REPLACE "(..)" "0x\\1," bytes "${bytes}")
  set(generated ${CMAKE_CURRENT_BINARY_DIR}/${name}.cpp)
  file(CONFIGURE OUTPUT ${generated} CONTENT [[
#include <span>

namespace wrapwright {

std::span<const unsigned char> @name@();

static constexpr unsigned char bytes[] = {@bytes@};

std::span<const unsigned char> @name@() { return bytes; }

} // namespace wrapwright
]] @ONLY)
  target_sources(${target} PRIVATE ${generated})
endfunction()
