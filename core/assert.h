#pragma once
// Assertions for our own bugs: always on, never reachable by input.

#include <cstdlib>

namespace wrapwright {

/// Ends the program: an assertion failed, so nothing that it would compute can be trusted.
[[noreturn]] inline void assertion_failed() { std::abort(); }

} // namespace wrapwright

#define WW_ASSERT(condition) ((condition) ? void(0) : ::wrapwright::assertion_failed())
