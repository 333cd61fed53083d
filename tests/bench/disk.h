#pragma once
// What benches of the disk share: waiting is told by the clock, and a refusal ends the run.

#include "core/result.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <utility>

namespace wrapwright::bench {

/// Seconds on the clock, for a sync is waiting and not work.
template <class Work>
double clock_seconds(Work work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// The value, or the end of the program.
template <class T>
T must(Result<T> result) {
    if (result.ok()) return std::move(result).value();
    std::fprintf(stderr, "%s\n", result.error().message.c_str());
    std::exit(1);
}

} // namespace wrapwright::bench
