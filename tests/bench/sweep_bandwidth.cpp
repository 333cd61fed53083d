// Sweeping against the speed of memory: the best of several plain fills of the same buffer is the
// limit, and what we write into it is held against that. All alternate in one process.
//
// Instructions per vertex, which do not depend on the machine's load:
//   valgrind --tool=callgrind --toggle-collect='*sweep_winding*'
//   build/tests/bench/bench_sweep_bandwidth --count
// then divide the total by the vertices that it prints (and likewise '*sweep_path*',
// '*append_sweep_indices*').

#include "core/geometry/sweep.h"
#include "tests/bench/measure.h"
#include "tests/bench/test_helix.h"

#include <atomic>
#include <cstdlib>
#include <cstring>
#include <functional>
#include <new>
#include <string>
#if defined(__SSE__)
#include <xmmintrin.h>
#endif

namespace {
std::atomic<long> allocations{0};
}
void* operator new(std::size_t size) {
    ++allocations;
    if (void* p = std::malloc(size)) return p;
    throw std::bad_alloc();
}
void operator delete(void* p) noexcept { std::free(p); }
void operator delete(void* p, std::size_t) noexcept { std::free(p); }

using namespace wrapwright;
using namespace wrapwright::bench;

namespace {

struct Contest {
    std::string name;
    std::function<void()> work;
    std::vector<double> seconds{};
};

void fill_loop(float* p, std::size_t n) {
    for (std::size_t i = 0; i < n; ++i) p[i] = 1.5F;
    keep(p);
}

void fill_streamed(float* p, std::size_t n) {
#if defined(__SSE__)
    const __m128 v = _mm_set1_ps(1.5F);
    for (std::size_t i = 0; i + 4 <= n; i += 4) _mm_stream_ps(p + i, v);
    _mm_sfence();
#else
    fill_loop(p, n);
#endif
    keep(p);
}

void race(int turns) {
    const std::vector<PathPoint> path = helix_points(turns);
    const std::vector<CoreKnot> knots = helix_knots(turns);
    const WindingPath winding = helix_winding(knots, turns);
    const Section section = ellipse_section(wire_sides);
    const int points = winding_points(winding);
    Buffer<Vertex> buffer(static_cast<std::size_t>(points) * wire_sides);
    float* floats = buffer.data()->position;
    const std::size_t count = buffer.size() * 6;
    SweepIndices indices;
    indices.build(points, wire_sides);
    constexpr std::size_t fills = 3;
    std::vector<Contest> contests{
        {"memset",
         [&] {
             std::memset(floats, 1, count * 4);
             keep(floats);
         }},
        {"fill, plain loop", [&] { fill_loop(floats, count); }},
        {"fill, past the cache", [&] { fill_streamed(floats, count); }},
        {"winding",
         [&] {
             sweep_winding(winding, section, buffer);
             keep(floats);
         }},
        {"any path",
         [&] {
             sweep_path(path, section, buffer);
             keep(floats);
         }},
        {"indices, rebuilt",
         [&] {
             indices.points = 0;
             indices.build(points, wire_sides);
             keep(indices.indices.data());
         }},
    };
    const int repeats = turns <= 100 ? 200 : turns <= 2000 ? 3 : 1;
    const int rounds = turns > 2000 ? 11 : 31;
    for (int r = 0; r < rounds; ++r) {
        for (Contest& c : contests) c.seconds.push_back(seconds_of(repeats, c.work));
    }
    double best = 1e9;
    for (std::size_t i = 0; i < fills; ++i) best = std::min(best, median(contests[i].seconds));
    const double bytes = static_cast<double>(buffer.size() * sizeof(Vertex));
    std::printf("\n%d turns, %zu vertices, %.2f MB\n", turns, buffer.size(), bytes / 1e6);
    for (const Contest& c : contests) {
        const double t = median(c.seconds);
        std::printf("  %-22s %9.1f us %7.3f ns/vertex %6.2f x best fill\n", c.name.c_str(), t * 1e6,
                    t * 1e9 / static_cast<double>(buffer.size()), t / best);
    }
    const double ratio = median(contests[fills].seconds) / best;
    const double limit = bytes >= 18e6 ? 1.3 : 2.5;
    goal("winding over best fill", ratio, "<=", limit, ratio <= limit);

    const long faults_before = page_faults();
    const long allocations_before = allocations;
    sweep_winding(winding, section, buffer);
    sweep_path(path, section, buffer);
    indices.build(points, wire_sides);
    const auto faults = static_cast<double>(page_faults() - faults_before);
    const auto allocated = static_cast<double>(allocations - allocations_before);
    goal("page faults of a second sweep", faults, "==", 0.0, faults == 0.0);
    goal("allocations of a second sweep", allocated, "==", 0.0, allocated == 0.0);
}

// One sweep of each kind and nothing else, for callgrind.
void count() {
    constexpr int turns = 100;
    const std::vector<PathPoint> path = helix_points(turns);
    const std::vector<CoreKnot> knots = helix_knots(turns);
    const WindingPath winding = helix_winding(knots, turns);
    const Section section = ellipse_section(wire_sides);
    Buffer<Vertex> buffer(path.size() * wire_sides);
    sweep_winding(winding, section, buffer);
    sweep_path(path, section, buffer);
    SweepIndices indices;
    indices.build(static_cast<int>(path.size()), wire_sides);
    std::printf("%zu vertices\n", buffer.size());
}

} // namespace

int main(int argc, char** argv) {
    if (argc > 1 && std::strcmp(argv[1], "--count") == 0) {
        count();
        return 0;
    }
    for (const int turns : {10, 100, 1000, 2000, 20000}) race(turns);
}
