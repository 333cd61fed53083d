# The header-only packages of this system, for the compiler of the web: each in a folder of its own.
# Never /usr/include itself, whose C library would stand before emscripten's.
set(WW_HOST_HEADERS ${PROJECT_BINARY_DIR}/host-headers)
foreach(package glm nlohmann doctest stb)
  file(MAKE_DIRECTORY ${WW_HOST_HEADERS})
  file(CREATE_LINK /usr/include/${package} ${WW_HOST_HEADERS}/${package} SYMBOLIC)
endforeach()
file(MAKE_DIRECTORY ${WW_HOST_HEADERS}/GL)
file(CREATE_LINK /usr/include/GL/glcorearb.h ${WW_HOST_HEADERS}/GL/glcorearb.h SYMBOLIC)
foreach(target glm::glm nlohmann_json::nlohmann_json doctest::doctest)
  add_library(${target} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${target} SYSTEM INTERFACE ${WW_HOST_HEADERS})
endforeach()

# Nothing of ours throws, but the standard library may; without this a throw has no way out.
add_compile_options(-fwasm-exceptions)
add_link_options(-fwasm-exceptions)
