// The main of every test program: the cases run in a new order each time, under whatever locale and
// time zone the environment names (tests/run names odd ones). WW_TEST_SEED repeats an order.

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <random>

int main(int argc, char** argv) {
    std::setlocale(LC_ALL, "");
    const char* repeated = std::getenv("WW_TEST_SEED");
    const int seed =
        repeated ? std::atoi(repeated) : static_cast<int>(std::random_device{}() >> 1U);
    std::printf("order of the cases: WW_TEST_SEED=%d\n", seed);
    std::fflush(stdout);
    doctest::Context context;
    context.setOption("order-by", "rand");
    context.setOption("rand-seed", seed);
    context.applyCommandLine(argc, argv);
    return context.run();
}
