# For the browser and for node: emscripten as .ci/fetch_web put it into .deps/em.
get_filename_component(WW_EM ${CMAKE_CURRENT_LIST_DIR}/../.deps/em ABSOLUTE)
if(NOT EXISTS ${WW_EM}/version)
  message(FATAL_ERROR "The compiler for the web is not in .deps/em. Run .ci/fetch_web and start again.")
endif()
include(${WW_EM}/usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake)
set(WW_PARSE_ONCE ON CACHE BOOL "Its library takes seconds to read; the build for this machine reads it for each file")
