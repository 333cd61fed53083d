#pragma once
// What the benches measure with. Times are of the thread's own CPU, so that other work on the
// machine counts less; only ratios inside one run mean anything.

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <sys/resource.h>
#include <vector>

namespace wrapwright::bench {

/// Seconds of CPU that this thread has used.
inline double cpu_seconds() {
    timespec t{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

inline double median(std::vector<double> v) {
    std::ranges::sort(v);
    const std::size_t n = v.size();
    return n % 2 != 0 ? v[n / 2] : 0.5 * (v[n / 2 - 1] + v[n / 2]);
}

/// Page faults of this process so far that needed no disk: memory touched for the first time.
inline long page_faults() {
    rusage u{};
    getrusage(RUSAGE_SELF, &u);
    return u.ru_minflt;
}

/// Seconds of one call, from `repeats` of them in a row.
template <class Work>
double seconds_of(int repeats, Work&& work) {
    const double start = cpu_seconds();
    for (int i = 0; i < repeats; ++i) work();
    return (cpu_seconds() - start) / repeats;
}

/// Keeps the compiler from leaving out the work that wrote to p.
inline void keep(const void* p) { asm volatile("" : : "r"(p) : "memory"); }

/// Prints one goal and whether this run met it.
inline void goal(const char* what, double actual, const char* relation, double wanted, bool met) {
    std::printf("GOAL %-58s %8.2f  (%s %.2f)  %s\n", what, actual, relation, wanted,
                met ? "met" : "MISSED");
}

} // namespace wrapwright::bench
