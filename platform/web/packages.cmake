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

# Nothing of ours throws here, and nothing catches: a throw of the standard library ends the program, and the
# page then says so. Without the ways out of each call the program is smaller. The tests are compiled
# with exceptions again.
add_compile_options(-fno-exceptions)
add_link_options(-fno-exceptions)
# Copies, and whole numbers out of broken ones, by one instruction of the machine and not by many;
# browsers have them since 2021 (Safari 15 was the last; from memory).
add_compile_options(-mbulk-memory -mnontrapping-fptoint -msign-ext)
add_link_options(-mbulk-memory -mnontrapping-fptoint -msign-ext)
# What is small arrives sooner; core/CMakeLists.txt says where speed counts more.
foreach(language C CXX)
  set(CMAKE_${language}_FLAGS_RELEASE "-Oz -DNDEBUG")
endforeach()
