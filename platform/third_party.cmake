# The third-party sources that .ci/fetch put into .deps/: one ImGui and one SQLite for all targets.
# Both are built only where something links to them, and without our warnings.
set(WW_DEPS_DIR ${PROJECT_SOURCE_DIR}/.deps)
if(NOT EXISTS ${WW_DEPS_DIR}/imgui/imgui.h OR NOT EXISTS ${WW_DEPS_DIR}/sqlite/sqlite3.c)
  message(FATAL_ERROR "Dear ImGui and SQLite are not in .deps/. Run .ci/fetch and start again.")
endif()

# ww_imgui: windows and widgets, no backend. Fonts through its own stb_truetype and not FreeType,
# so that the web, which has no FreeType, draws the same letters.
add_library(ww_imgui STATIC EXCLUDE_FROM_ALL
  ${WW_DEPS_DIR}/imgui/imgui.cpp
  ${WW_DEPS_DIR}/imgui/imgui_draw.cpp
  ${WW_DEPS_DIR}/imgui/imgui_tables.cpp
  ${WW_DEPS_DIR}/imgui/imgui_widgets.cpp
  ${WW_DEPS_DIR}/imgui/misc/cpp/imgui_stdlib.cpp)
target_include_directories(ww_imgui SYSTEM PUBLIC
  ${WW_DEPS_DIR}/imgui ${WW_DEPS_DIR}/imgui/misc/cpp)
# Letters of 32 bits: a field of text that is touched keeps what stands beyond the first plane.
target_compile_definitions(ww_imgui PUBLIC
  IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_OBSOLETE_KEYIO IMGUI_USE_WCHAR32)
target_compile_options(ww_imgui PRIVATE -w)
if(EMSCRIPTEN) # what only its own developers look at
  target_compile_definitions(ww_imgui PRIVATE IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS)
endif()

# ww_sqlite: the amalgamation, with full-text search. DQS=0: "text" in double quotes is an error
# and not silently a string. A connection may be used by one thread at a time (THREADSAFE=2).
add_library(ww_sqlite STATIC EXCLUDE_FROM_ALL ${WW_DEPS_DIR}/sqlite/sqlite3.c)
target_include_directories(ww_sqlite SYSTEM PUBLIC ${WW_DEPS_DIR}/sqlite)
target_compile_definitions(ww_sqlite PRIVATE
  SQLITE_THREADSAFE=$<IF:$<BOOL:${EMSCRIPTEN}>,0,2> SQLITE_DQS=0 SQLITE_ENABLE_FTS5 SQLITE_OMIT_LOAD_EXTENSION
  SQLITE_OMIT_DEPRECATED SQLITE_DEFAULT_FOREIGN_KEYS=1)
if(EMSCRIPTEN) # no memory there that a log could be shared through; and what the store never calls
  target_compile_definitions(ww_sqlite PRIVATE SQLITE_OMIT_WAL
    SQLITE_OMIT_AUTHORIZATION SQLITE_OMIT_COMPILEOPTION_DIAGS SQLITE_OMIT_COMPLETE
    SQLITE_OMIT_DATETIME_FUNCS SQLITE_OMIT_DECLTYPE SQLITE_OMIT_DESERIALIZE SQLITE_OMIT_GET_TABLE
    SQLITE_OMIT_PROGRESS_CALLBACK SQLITE_OMIT_SHARED_CACHE SQLITE_OMIT_TCL_VARIABLE
    SQLITE_OMIT_TRACE SQLITE_OMIT_UTF16 SQLITE_UNTESTABLE SQLITE_DEFAULT_MEMSTATUS=0)
endif()
# Not sanitized: its compilation would take minutes.
target_compile_options(ww_sqlite PRIVATE -w $<IF:$<BOOL:${EMSCRIPTEN}>,-Oz,-O2> $<$<BOOL:${WW_SANITIZE}>:-fno-sanitize=all>)

# ww_stb: pictures read and written. Debian builds it as a library; for the web we do.
if(EMSCRIPTEN)
  add_library(ww_stb STATIC EXCLUDE_FROM_ALL platform/web/stb.cpp)
  target_include_directories(ww_stb SYSTEM PUBLIC ${WW_HOST_HEADERS})
  target_compile_options(ww_stb PRIVATE -w)
else()
  find_package(PkgConfig REQUIRED)
  pkg_check_modules(STB REQUIRED IMPORTED_TARGET GLOBAL stb)
  add_library(ww_stb ALIAS PkgConfig::STB)
endif()
